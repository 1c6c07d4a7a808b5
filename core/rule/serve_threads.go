package rule

import (
	"slipfit/core/brief"
	"slipfit/core/build"
)

// ServeThreads holds the processor's threads against the need.
var ServeThreads = Rule{
	ID:    "serve-threads",
	Group: Serve,
	Title: "Enough threads for what runs at once",
	Doc: `have = threads of the processor
need = floor of the brief for threads: what runs at once adds up
A thread more than the work can fill buys nothing. When short: a processor with more threads.`,
	Source: "common practice",
	Reads:  []build.Seat{build.Processor},
	Check: func(v *View) []Margin {
		n, ok := v.Needs.Get(brief.Threads)
		if !ok || v.Processor == nil {
			return nil
		}
		have := figure(v, v.Processor.Threads, &v.Processor.Article, "threads")
		v.serve(n, int64(have), say("%s runs %d threads; %s", v.Processor.Name, have, n.Reason))
		return v.margins
	},
}
