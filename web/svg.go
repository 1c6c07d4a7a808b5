package web

import (
	"strconv"

	"github.com/maxence-charriere/go-app/v9/pkg/app"
)

// svg returns an SVG element with attributes given as name, value, name, value. Style sheets select it by its
// data attributes: go-app cannot set a class on an SVG element in the browser.
func svg(tag string, attributes ...string) app.HTMLElem {
	e := app.Elem(tag).XMLNS("http://www.w3.org/2000/svg")
	for i := 0; i+1 < len(attributes); i += 2 {
		e = e.Attr(attributes[i], attributes[i+1])
	}
	return e
}

// percent writes a share, 0 to 1, as a length of its container.
func percent(share float64) string {
	return strconv.FormatFloat(100*share, 'f', 2, 64) + "%"
}
