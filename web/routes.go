package web

import "github.com/maxence-charriere/go-app/v9/pkg/app"

// Routes sets the page for every path: there is one sheet, whatever the address says. It must be called
// once, before the page runs or is rendered.
func Routes() {
	app.RouteWithRegexp("^/.*$", &Page{})
}
