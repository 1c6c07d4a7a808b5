package rule

import (
	"slipfit/core/brief"
	"slipfit/core/build"
)

// ServeCacheWrite holds the held writing speed under the work in hand against the need.
var ServeCacheWrite = Rule{
	ID:    "serve-cache-write",
	Group: Serve,
	Title: "Work in hand is written fast enough",
	Doc: `have = writing speed of the cache drive once its fast cache is full, MB/s; of the boot drive where there is no cache drive
need = floor of the brief: media rate × streams × 1.5, MB/s
The first gigabytes go faster on many drives; a long copy or a long take does not. When short: a drive that states a higher
	held speed.`,
	Source: "held write for capture = rate × streams × 1.5: common practice",
	Reads:  []build.Seat{build.Boot, build.Cache},
	First:  []build.Seat{build.Cache, build.Boot},
	Check: func(v *View) []Margin {
		return v.writes(brief.CacheWrite, build.Cache)
	},
}

// writes adds the margin of a tier's held writing speed, on the drive the tier lies on.
func (v *View) writes(r brief.Resource, s build.Seat) []Margin {
	n, ok := v.Needs.Get(r)
	d := v.carrier(s).Drive
	if !ok || d == nil {
		return nil
	}
	have := figure(v, d.Held, &d.Article, "write_held_mb_s")
	v.serve(n, int64(have), say("%s writes %s for as long as asked; %s", d.Name, have.Q(), n.Reason))
	return v.margins
}
