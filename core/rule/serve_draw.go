package rule

import (
	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// ServeDraw holds the graphics engine's picture work against the need.
var ServeDraw = Rule{
	ID:    "serve-draw",
	Group: Serve,
	Title: "Pictures are drawn fast enough",
	Doc: `have = picture work of the graphics card, or of the processor's own graphics where there is no card, graphics points
need = floor of the brief for picture work, graphics points
When short: a stronger card, fewer pixels, or fewer pictures a second.`,
	Source: "the catalog's calibration block",
	Reads:  []build.Seat{build.Processor, build.Graphics},
	First:  []build.Seat{build.Graphics, build.Processor},
	Check: func(v *View) []Margin {
		return v.draws(brief.DrawWork, "draw_points", func(e *part.Engine) unit.Figure[unit.Points] { return e.Draw })
	},
}
