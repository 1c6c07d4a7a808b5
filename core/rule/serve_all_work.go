package rule

import (
	"slipfit/core/brief"
	"slipfit/core/build"
)

// ServeAllWork holds the processor's all-thread work against the need.
var ServeAllWork = Rule{
	ID:    "serve-all-work",
	Group: Serve,
	Title: "All threads together are fast enough",
	Doc: `have = all-thread work of the processor at sustained power, work points
need = floor of the brief for all threads, work points
The points are those of sustained power: whether the cooler holds that power is another rule's business (held-power). When
	short: a processor with more or faster cores.`,
	Source: "the catalog's calibration block",
	Reads:  []build.Seat{build.Processor},
	Check: func(v *View) []Margin {
		n, ok := v.Needs.Get(brief.AllWork)
		if !ok || v.Processor == nil {
			return nil
		}
		have := figure(v, v.Processor.All, &v.Processor.Article, "all_points")
		v.serve(n, int64(have), say("all threads of %s do %s; %s", v.Processor.Name, have.Q(), n.Reason))
		return v.margins
	},
}
