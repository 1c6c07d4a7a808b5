package rule

import (
	"fmt"

	"slipfit/core/build"
	"slipfit/core/feed"
	"slipfit/core/unit"
)

// Mains is the continuous share of the outlet's circuit against what machine and screens take from it.
var Mains = Rule{
	ID:    "mains",
	Group: Feed,
	Title: "The outlet's circuit carries machine and screens",
	Doc: `have = 80 % of the circuit's fuse or breaker, A
need = (wall power with everything at work + screens bought) ÷ power factor ÷ mains voltage, A
Wall power as in the rule supply-efficiency; the power factor is the least of the supply's level. What else hangs on the circuit (a
	heater, a printer, a second machine) comes on top, and the customer must say so. The brief's voltage and circuit hold, 230 V and 10 A
	where it does not say. This is a warning, not a design: wiring, cords and outlets are for local codes and a licensed electrician.`,
	Source: "continuous load at most 80 % of the overcurrent device: NEC 210.20(A), 1 ÷ 1.25; elsewhere common practice; power factor: 80 PLUS programme",
	Reads: []build.Seat{build.Case, build.Board, build.Processor, build.Cooler, build.Memory, build.Graphics, build.Supply, build.Boot,
		build.Cache, build.Archive, build.Fans, build.Cards, build.Screens},
	Check: func(v *View) []Margin {
		if !v.both(build.Supply, build.Board, build.Processor) {
			return nil
		}
		w := wallOf(v, allOut(v))
		if !w.known && len(v.missing) == 0 {
			return nil // past the rating, which the rule supply-steady tells
		}
		take := w.watts + screenLoad(v)
		volts := mains(v.Needs) * 1000
		have := unit.Current(feed.Circuit{VoltageMV: volts, RatingMA: int64(v.Needs.Place.Circuit.Or(10_000))}.PlannedShareMA())
		need := unit.Current(feed.CurrentMA(apparent(v, take), volts))
		v.find("", have.Q(), need.Q(), func() string {
			text := fmt.Sprintf("machine and screens take up to %s, %s at %d V, and %s is planned for on that circuit", take.Q(), need.Q(), volts/1000, have.Q())
			if need > have {
				text += ": ask a licensed electrician, local codes rule"
			}
			return text
		})
		return v.margins
	},
}

// screenLoad is what the screens bought take from the mains.
func screenLoad(v *View) unit.Power {
	var sum unit.Power
	for i := range v.Screens {
		m := v.Screens[i].Monitor
		sum += figure(v, m.Power, &m.Article, "power_w") * unit.Power(v.Screens[i].Count)
	}
	return sum
}

// apparent is the apparent power of a power from the mains, mVA, at the power factor that the supply's level promises.
func apparent(v *View, taken unit.Power) int64 {
	factor, ok := feed.LeastPowerFactorPercent(feed.LevelNamed(string(v.Supply.Level)))
	if !ok {
		factor = 90
	}
	return feed.ApparentMVA(int64(taken), factor)
}
