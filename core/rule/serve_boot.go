package rule

import (
	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/unit"
)

// ServeBoot holds the boot drive's size against what lies on it.
var ServeBoot = Rule{
	ID:    "serve-boot",
	Group: Serve,
	Title: "The boot drive holds what lies on it",
	Doc: `have = drives in the boot seat × capacity, decimal GB
need = boot + cache where no cache drive is fitted + archive where no archive drive is fitted, decimal GB
One drive will do where it holds everything: a tier without a drive of its own lies on the boot drive. Every size already
	includes the share of a drive that is best kept free. As a sum: the boot seat gives its capacity and takes all three sizes;
	a drive in the cache or archive seat gives its tier's size back. When short: a larger boot drive, or a drive of its own for
	one of the tiers.`,
	Source: "free space kept: common practice; sizes decimal, as drives are sold (IEC 80000-13 prefixes)",
	Reads:  []build.Seat{build.Boot, build.Cache, build.Archive},
	Filled: []build.Seat{build.Cache, build.Archive},
	Sum:    &Sum{Kind: unit.StorageByte, Term: bootTerm},
	Check: func(v *View) []Margin {
		n, ok := v.pooled(v.onBoot)
		if !ok || !v.Filled(build.Boot) {
			return nil
		}
		have := v.capacity(build.Boot)
		v.serve(n, int64(have), say("%d × %s %s %s; %s", v.Boot.Count, v.Boot.Drive.Name, agree(v.Boot.Count, "holds", "hold"), have.Q(), n.Reason))
		return v.margins
	},
}

func bootTerm(v *View, s build.Seat) (gives, takes int64) {
	if !v.Filled(s) {
		return 0, 0
	}
	if s == build.Boot {
		for _, t := range tiers {
			takes += v.Needs.By[t.size].Floor
		}
		return int64(v.capacity(build.Boot)), takes
	}
	if s == build.Cache {
		return v.Needs.By[brief.CacheSize].Floor, 0
	}
	return v.Needs.By[brief.ArchiveSize].Floor, 0
}
