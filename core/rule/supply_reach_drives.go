package rule

import (
	"slipfit/core/build"
	"slipfit/core/part"
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
	Check: func(v *View) []Margin {
		if !v.both(build.Case, build.Supply) || !v.cabled() {
			return nil
		}
		v.reach("", 1, v.Layout.Routes.Drive, "routes.drive_mm", func(p part.PlugKind) bool { return p == part.PlugSATA })
		return v.margins
	},
}

// cabled reports whether a drive of the build hangs on a cable.
func (v *View) cabled() bool {
	for _, s := range [...]build.Storage{v.Boot, v.Cache, v.Archive} {
		if s.Drive != nil && s.Drive.Form != part.FormM2 {
			return true
		}
	}
	return false
}
