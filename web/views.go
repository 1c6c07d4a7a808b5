package web

import (
	"strings"

	"github.com/maxence-charriere/go-app/v9/pkg/app"
)

// views draws the machine in two views, or their places while there is none.
func (d *Desk) views() []app.UI {
	if d.drawing == nil {
		return []app.UI{
			app.Figure().Class("views").Body(app.Raw(emptyViews)),
			blank("No machine drawn yet. Both views come to one scale from the parts’ data sheets, with dimensions where the clearance is tightest."),
		}
	}
	return []app.UI{
		app.Figure().Class("views views-drawn").TabIndex(0).Role("group").Aria("label", "The machine in two views").Body(app.Raw(d.drawing.SVG)),
		app.If(len(d.drawing.Undrawn) > 0, app.P().Class("hint").Text("Not drawn, for want of a figure: "+strings.Join(d.drawing.Undrawn, ", ")+".")),
	}
}

// emptyViews holds the places of the two views in phantom line, with the centre lines and blank dimensions.
const emptyViews = `<svg xmlns="http://www.w3.org/2000/svg" data-part="views" viewBox="0 0 720 330" role="img" aria-label="Two empty places for the views of the machine">
<g fill="none" stroke="currentColor">
<g data-line="phantom" stroke-width="1.3" stroke-dasharray="18 4 3 4 3 4"><path d="M70 24H250M430 24H250M70 270H250M430 270H250M70 24V147M70 270V147M430 24V147M430 270V147"/><path d="M520 24H583M646 24H583M520 270H583M646 270H583M520 24V147M520 270V147M646 24V147M646 270V147"/></g>
<g data-line="centre" stroke-width="0.8" stroke-dasharray="16 4 3 4"><path d="M50 147H450M250 8V286M500 147H666M583 8V286"/></g>
<g data-line="dimension" stroke-width="0.8"><path d="M70 276V306M430 276V306M70 300H236M264 300H430M520 276V306M646 276V306M520 300H569M597 300H646M64 24H34M64 270H34M40 24V135M40 159V270"/></g></g>
<g data-line="arrow" fill="currentColor"><path d="M70 300l10 -3v6zM430 300l-10 -3v6zM520 300l10 -3v6zM646 300l-10 -3v6zM40 24l-3 10h6zM40 270l-3 -10h6z"/></g></svg>`
