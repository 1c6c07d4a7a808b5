package rule

import (
	"slipfit/core/brief"
	"slipfit/core/build"
)

// ServeCache holds a cache drive's size against the work in hand.
var ServeCache = Rule{
	ID:    "serve-cache",
	Group: Serve,
	Title: "The cache drive holds the work in hand",
	Doc: `have = drives in the cache seat × capacity, decimal GB
need = floor of the brief for work in hand, decimal GB
Without a cache drive the work in hand lies on the boot drive and this rule says nothing (serve-boot does). When short: a
	larger cache drive, or fewer jobs in hand at once.`,
	Source: "a quarter of a scratch drive kept free: common practice",
	Reads:  []build.Seat{build.Cache},
	Check: func(v *View) []Margin {
		n, ok := v.Needs.Get(brief.CacheSize)
		if !ok || !v.Filled(build.Cache) {
			return nil
		}
		have := v.capacity(build.Cache)
		v.serve(n, int64(have), say("%d × %s %s %s; %s", v.Cache.Count, v.Cache.Drive.Name, agree(v.Cache.Count, "holds", "hold"), have.Q(), n.Reason))
		return v.margins
	},
}
