package rule

import (
	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// ServeCompute holds the graphics engine's computing work against the need.
var ServeCompute = Rule{
	ID:    "serve-compute",
	Group: Serve,
	Title: "Graphics computing is fast enough",
	Doc: `have = computing work of the graphics card, or of the processor's own graphics where there is no card, graphics points
need = floor of the brief for graphics computing, graphics points
Effects, matching of photographs, path tracing and models run on the engine's arithmetic units. When short: a stronger card.`,
	Source: "the catalog's calibration block",
	Reads:  []build.Seat{build.Processor, build.Graphics},
	First:  []build.Seat{build.Graphics, build.Processor},
	Check: func(v *View) []Margin {
		return v.draws(brief.ComputeWork, "compute_points", func(e *part.Engine) unit.Figure[unit.Points] { return e.Compute })
	},
}
