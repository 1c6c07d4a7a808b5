package rule

import (
	"fmt"

	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/feed"
	"slipfit/core/unit"
)

// SupplyEfficiency tells what each activity takes from the mains, what becomes heat and what it costs.
var SupplyEfficiency = Rule{
	ID:    "supply-efficiency",
	Group: Feed,
	Title: "What each activity takes from the mains and costs",
	Doc: `For each activity of the brief, and with everything at work: have = efficiency of the supply at that load, %; need = least that its
	level promises there, %
wall power = load ÷ efficiency, W; heat in the supply = wall power − load; all of the wall power warms the room
energy a year = wall power × hours a year ÷ 1000, kWh; cost = energy × price of a kilowatt-hour
Efficiency is the supply's own load points where the sheet states them, else the least of its level, on a straight line between the
	published loads; under the lowest published load its loss in watts is kept. The level is taken at 115 V, where most supplies are
	tested; at 230 V they lose a little less, so that the meter should show no more. It never fails a build. The price is the brief's, 30 minor
	units where it does not say.`,
	Source: "80 PLUS programme, internal supplies at 115 V; between its loads: straight lines, our reading",
	Reads:  loadSeats,
	Check: func(v *View) []Margin {
		if !v.both(build.Supply, build.Board, build.Processor) {
			return nil
		}
		for i := range v.Needs.Loads {
			l := &v.Needs.Loads[i]
			efficiency(v, l.Activity, activityLoad(v, l), l)
		}
		efficiency(v, "everything at work", allOut(v), nil)
		return v.margins
	},
}

// efficiency finds the margin of one load; l is the activity it belongs to, nil for none.
func efficiency(v *View, subject string, load unit.Power, l *brief.Load) {
	w := wallOf(v, load)
	if !w.known && len(v.missing) == 0 {
		return // past the rating, which the rule supply-steady tells
	}
	hours := 0
	if l != nil {
		hours = l.Hours
	}
	price := int64(v.Needs.Place.Energy.Or(30))
	v.advise(subject, unit.Share(w.ppm/10).Q(), unit.Share(w.floorPPM/10).Q(), func() string {
		text := fmt.Sprintf("%s of load takes %s from the mains, of which %s becomes heat in the supply", w.load.Q(), w.watts.Q(), unit.Power(feed.HeatMW(int64(w.watts), int64(w.load))).Q())
		if hours > 0 {
			wh := feed.EnergyWh(feed.Use{WallMW: int64(w.watts), MinutesPerDay: 60, DaysPerYear: int64(hours)})
			text += fmt.Sprintf("; in %s a year %d kWh, which cost %s", plural(hours, "hour"), (wh+500)/1000, unit.Money(feed.CostMinor(wh, price*1000)))
		}
		return text
	})
}
