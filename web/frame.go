package web

import (
	"strconv"

	"github.com/maxence-charriere/go-app/v9/pkg/app"
)

// The grid of reference along the edge of the sheet: numbers from the left, letters from the top.
const (
	zoneColumns = 8
	zoneRows    = "ABCDEF"
)

// Sheet draws one face of the sheet: edge, zones, centring marks and frame around the body. Side is "front"
// or "back"; turned says that the user has just turned it, which may show as a movement.
func Sheet(side string, turned bool, body ...app.UI) app.UI {
	return app.Main().ID("sheet").Class("sheet").TabIndex(-1).
		Aria("labelledby", "side-title").
		DataSet("side", side).DataSet("turned", strconv.FormatBool(turned)).
		Body(
			zones("top"), zones("bottom"), zones("left"), zones("right"),
			app.Div().Class("field").Body(body...),
			app.Div().Class("marks").Aria("hidden", "true").Body(
				app.Span().Class("mark mark-top"), app.Span().Class("mark mark-bottom"),
				app.Span().Class("mark mark-left"), app.Span().Class("mark mark-right"),
			),
		)
}

// zones draws the strip of references along one edge. It is for the eye alone.
func zones(edge string) app.UI {
	var names []string
	if edge == "left" || edge == "right" {
		for _, letter := range zoneRows {
			names = append(names, string(letter))
		}
	} else {
		for n := range zoneColumns {
			names = append(names, strconv.Itoa(n+1))
		}
	}
	return app.Div().Class("zones zones-"+edge).Aria("hidden", "true").Body(
		app.Range(names).Slice(func(i int) app.UI { return app.Span().Text(names[i]) }),
	)
}

// region draws one titled area of the sheet. Name is its hook for styles and tests.
func region(name, title string, body ...app.UI) app.UI {
	id := name + "-title"
	return app.Section().Class("region").DataSet("region", name).Aria("labelledby", id).Body(
		append([]app.UI{app.H2().ID(id).Text(title)}, body...)...,
	)
}

// blank says what will stand in an area that has nothing yet.
func blank(text string) app.UI { return app.P().Class("blank").Text(text) }
