package rule

import (
	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/unit"
)

// ServeGraphicsRate holds the bandwidth of the graphics card's memory against the need.
var ServeGraphicsRate = Rule{
	ID:    "serve-graphics-rate",
	Group: Serve,
	Title: "The graphics card's memory is fast enough",
	Doc: `have = bandwidth of the memory on the graphics card, MB/s; 0 without a card, whose own memory the need is about
need = floor of the brief for that bandwidth, MB/s
A language model writes a token each time all of its weights have been read. Peak figures; the need allows for what streaming
	reads reach of them. When short: a card with faster memory, or a model with fewer or smaller weights.`,
	Source: "Williams, Waterman, Patterson, CACM 52(4), 2009; the catalog's calibration block",
	Reads:  []build.Seat{build.Graphics},
	Check: func(v *View) []Margin {
		n, ok := v.Needs.Get(brief.GraphicsRate)
		if !ok {
			return nil
		}
		if v.Graphics == nil {
			v.serve(n, 0, say("there is no graphics card; %s", n.Reason))
			return v.margins
		}
		have := unit.Throughput(figure(v, v.Graphics.MemoryRate, &v.Graphics.Article, "memory_gb_s")) * 1000
		v.serve(n, int64(have), say("%s reads its memory at %s; %s", v.Graphics.Name, have.Q(), n.Reason))
		return v.margins
	},
}
