package web

import (
	"strconv"

	"github.com/maxence-charriere/go-app/v9/pkg/app"
)

// back lays out the paper that is chosen.
func (d *Desk) back() []app.UI {
	if len(d.job.Build) == 0 {
		return []app.UI{region("papers", "The papers",
			blank("No papers yet. The quote and the forecast are drawn up from the machine on the front of this sheet, and there is none on it."))}
	}
	leaf := blank("The paper is being drawn up.")
	if d.paper != nil {
		leaf = d.paper.view()
	}
	return []app.UI{app.Section().Class("region").DataSet("region", "papers").Aria("label", "The papers").Body(
		app.Div().Class("leaves").Role("group").Aria("label", "Which paper").Body(
			app.Range(papers[:]).Slice(func(i int) app.UI {
				return app.Button().Type("button").Class("toggle").ID("paper-"+papers[i].name).Text(papers[i].title).
					Aria("pressed", strconv.FormatBool(i == d.leaf)).OnClick(d.choosePaper(i), i)
			})),
		leaf,
	)}
}
