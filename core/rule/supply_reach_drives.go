package rule

import (
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// SupplyReachDrives keeps the supply's drive cables long enough for drives in bays.
var SupplyReachDrives = Rule{
	ID:    "supply-reach-drives",
	Group: Fit,
	Title: "Drive cables reach the bays",
	Doc: `have = longest cable with SATA plugs to its first plug, mm; need = routed way to the farthest bay of this layout, mm; only where
	a 2.5 or 3.5 inch drive is fitted. The first plug goes to the farthest bay, the next ones come back from it. See supply-reach.`,
	Source: "makers' sheets; common practice",
	Reads:  []build.Seat{build.Case, build.Supply, build.Boot, build.Cache, build.Archive},
	Early:  []Early{{Seats: []build.Seat{build.Case, build.Supply, build.Boot}}, {Seats: []build.Seat{build.Case, build.Supply, build.Cache}}, {Seats: []build.Seat{build.Case, build.Supply, build.Archive}}},
	Bounds: []Sum{reachTo(build.Boot), reachTo(build.Cache), reachTo(build.Archive)},
	Check: func(v *View) []Margin {
		if !v.both(build.Case, build.Supply) || !v.cabled() {
			return nil
		}
		v.reach("", 1, v.Layout.Routes.Drive, "routes.drive_mm", isSATA)
		return v.margins
	},
}

// everyWay is longer than any way in a case.
const everyWay = 1000 * 1000 * unit.Millimetre

// reachTo is the sum of the longest cable for drives less the way to their bays, as far as a drive of a tier needs one.
func reachTo(tier build.Seat) Sum {
	return Sum{
		Kind: unit.Metre,
		Term: func(v *View, s build.Seat) (gives, takes int64) {
			switch {
			case s == build.Case && v.Case != nil:
				takes = int64(figure(v, v.Layout.Routes.Drive, &v.Case.Article, "routes.drive_mm"))
			case s == build.Supply && v.Supply != nil:
				have, some := v.longest(1, isSATA)
				if gives = int64(have); !some {
					gives = int64(everyWay) // other rules tell of plugs that lack
				}
			case s == tier:
				if t := v.holds(s); t.Drive == nil || t.Drive.Form == part.FormM2 {
					gives = int64(everyWay)
				}
			}
			return gives, takes
		},
	}
}

func isSATA(p part.PlugKind) bool { return p == part.PlugSATA }

// cabled reports whether a drive of the build hangs on a cable.
func (v *View) cabled() bool {
	for _, s := range [...]build.Storage{v.Boot, v.Cache, v.Archive} {
		if s.Drive != nil && s.Drive.Form != part.FormM2 {
			return true
		}
	}
	return false
}
