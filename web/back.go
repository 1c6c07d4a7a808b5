package web

import "github.com/maxence-charriere/go-app/v9/pkg/app"

// back lays out the papers.
func (d *Desk) back() []app.UI {
	if d.paper == nil {
		return []app.UI{region("papers", "The quote",
			blank("No quote yet. It is drawn up from the machine on the front of this sheet, and there is none on it."))}
	}
	return []app.UI{app.Section().Class("region").DataSet("region", "papers").Aria("label", "The quote").Body(paperView(d.paper))}
}
