package rule

import (
	"slipfit/core/build"
	"slipfit/core/unit"
)

// DriveBays keeps the drives within the bays that the card and the radiator leave.
var DriveBays = Rule{
	ID:    "drive-bays",
	Group: Fit,
	Title: "Drives have bays that card and radiator leave",
	Doc: `3.5 inch: have = places left that take one; need = 3.5 inch drives
2.5 inch: have = places left that take one, beside the 3.5 inch drives; need = 2.5 inch drives
A bay is lost when the radiator's mount takes it, or when the card with a plug at its end is longer than the bay allows. When
	short: another bay or layout, a shorter card, another face for the radiator, or modules on the board.`,
	Source: "SFF-8301 and SFF-8201 forms; geometry of the case's sheet",
	Reads:  []build.Seat{build.Case, build.Graphics, build.Cooler, build.Boot, build.Cache, build.Archive},
	Early:  []Early{{Seats: []build.Seat{build.Case, build.Boot}}, {Seats: []build.Seat{build.Case, build.Cache}}, {Seats: []build.Seat{build.Case, build.Archive}}},
	Check: func(v *View) []Margin {
		if !v.both(build.Case) || !v.cabled() {
			return nil
		}
		bays := v.AssignBays()
		if bays.Need35 > 0 {
			v.bays("3.5 inch", bays.Have35, bays.Need35, bays)
		}
		if bays.Need25 > 0 {
			v.bays("2.5 inch", bays.Have25, bays.Need25, bays)
		}
		return v.margins
	},
}

func (v *View) bays(subject string, have, need int, bays build.Bays) {
	if have < need || len(bays.Missing) > 0 {
		for _, m := range bays.Missing {
			v.lacks(m.Owner, m.Field)
		}
	}
	v.find(subject, unit.Count(have), unit.Count(need), func() string {
		s := say("%s for %s drives, %d to be fitted", plural(have, "place"), subject, need)()
		for _, l := range bays.Lost {
			s += say("; bay %s is lost to the %s", l.Bay.ID, l.By.Title())()
		}
		return s
	})
}
