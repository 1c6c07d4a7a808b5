package rule

import (
	"slipfit/core/brief"
	"slipfit/core/build"
)

// ServeSingle holds the processor's one-thread work against the need.
var ServeSingle = Rule{
	ID:    "serve-single",
	Group: Serve,
	Title: "One thread is fast enough",
	Doc: `have = one-thread work of the processor, work points
need = floor of the brief for one thread, work points
What cannot be shared out among cores (a click answered, a game's main loop, a formula recalculated) goes only as fast as one
	core. What a work point is stands in the catalog's calibration block. When short: a processor with faster cores, not one
	with more of them.`,
	Source: "serial share of a job: Amdahl 1967, as written in Gustafson 1988; points: the catalog's calibration block",
	Reads:  []build.Seat{build.Processor},
	Check: func(v *View) []Margin {
		n, ok := v.Needs.Get(brief.SingleWork)
		if !ok || v.Processor == nil {
			return nil
		}
		have := figure(v, v.Processor.Single, &v.Processor.Article, "single_points")
		v.serve(n, int64(have), say("one thread of %s does %s; %s", v.Processor.Name, have.Q(), n.Reason))
		return v.margins
	},
}
