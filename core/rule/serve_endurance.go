package rule

import (
	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/unit"
)

// ServeEndurance holds the life of the most written solid-state drive against the years asked for.
var ServeEndurance = Rule{
	ID:    "serve-endurance",
	Group: Serve,
	Title: "Drives outlive what is written to them",
	Doc: `have = drives × rated endurance, TB written ÷ TB written a year to the tiers on them, years; of the drive that is spent first
need = floor of the brief, years
1 TB = 10^12 bytes. A tier without a drive of its own is written to the boot drive. Hard disks have no such rating and are
	left out, and so is a drive nothing is written to. When short: a drive rated for more, or a larger one, which is rated for
	more in proportion.`,
	Source: "TB written: JESD218; 8 hours a day at 40 °C for the client class",
	Reads:  []build.Seat{build.Boot, build.Cache, build.Archive},
	Check: func(v *View) []Margin {
		n, ok := v.Needs.Get(brief.Endurance)
		if !ok {
			return nil
		}
		var spent *spentDrive
		for _, t := range tiers {
			if d := v.holds(t.seat); d.Drive != nil && !d.Drive.Disk {
				if s := v.spent(t.seat, d); s.yearly > 0 && (spent == nil || s.years < spent.years) {
					spent = &s
				}
			}
		}
		if spent == nil {
			return nil
		}
		s := *spent
		v.find(s.seat.Title(), unit.Quantity{N: s.years, Kind: unit.Year}, n.FloorQ(),
			say("%s is rated for %d TB written and %s a year go to it; %s", s.name, s.rated, s.yearly.Q(), n.Reason))
		return v.margins
	},
}

type spentDrive struct {
	seat   build.Seat
	name   string
	rated  int64        // TB written
	yearly unit.Storage // MB a year
	years  int64        // thousandths
}

// spent is how long a tier's solid-state drives last under what is written to the tiers that lie on them.
func (v *View) spent(s build.Seat, d build.Storage) spentDrive {
	w := v.Needs.Written
	var yearly unit.Storage
	switch s {
	case build.Cache:
		yearly = w.Cache
	case build.Archive:
		yearly = w.Archive
	default:
		yearly = w.Boot
		if !v.Filled(build.Cache) {
			yearly += w.Cache
		}
		if !v.Filled(build.Archive) {
			yearly += w.Archive
		}
	}
	out := spentDrive{seat: s, name: d.Drive.Name, yearly: yearly}
	if yearly > 0 {
		rated := figure(v, d.Drive.Endures, &d.Drive.Article, "endurance_tbw")
		out.rated = int64(rated) * int64(v.counted(s, d.Count))
		out.years = out.rated * int64(unit.Terabyte) * 1000 / int64(yearly)
	}
	return out
}
