package rule

import (
	"fmt"

	"slipfit/core/brief"
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
	Suffices: func(*brief.Needs) []Sum { return mostTaken[:] },
	Check: func(v *View) []Margin {
		if !v.both(build.Supply, build.Board, build.Processor) {
			return nil
		}
		w := wallOf(v, allOut(v))
		if !w.known && len(v.missing) == 0 {
			return nil // past the rating, which the rule supply-steady tells
		}
		take := w.watts + screenLoad(v)
		have, volts := circuit(v.Needs)
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

// circuit is what is planned for on the place's circuit, and its voltage in mV.
func circuit(n *brief.Needs) (have unit.Current, volts int64) {
	volts = mains(n) * 1000
	return unit.Current(feed.Circuit{VoltageMV: volts, RatingMA: int64(n.Place.Circuit.Or(10_000))}.PlannedShareMA()), volts
}

// mostTaken is what a circuit carries less what supply and screens take of it at most, whatever the supply feeds.
var mostTaken = [...]Sum{{Kind: unit.Ampere, Term: func(v *View, s build.Seat) (gives, takes int64) {
	have, volts := circuit(v.Needs)
	switch {
	case s == build.Screens:
		takes = feed.CurrentMA(feed.ApparentMVA(int64(screenLoad(v)), leastFactorPercent), volts)
	case s == build.Supply && v.Supply != nil:
		gives, takes = int64(have), feed.CurrentMA(apparent(v, mostWall(v)), volts)
	default:
		steadyLoad(v, s) // for what its sheet lacks
	}
	return gives, takes
}}}

// beyondCircuits is more than any circuit carries.
const beyondCircuits = 1_000_000_000 * unit.Watts

// mostWall is what a supply takes from the mains at most, rounded up to a watt: nowhere between two load points is it less efficient than at
// both, and under the first it takes no more than there.
func mostWall(v *View) unit.Power {
	rating := figure(v, v.Supply.Rating, &v.Supply.Article, "rating_w")
	least := int64(1_000_000)
	for _, percent := range [...]unit.Power{10, 20, 50, 100} { // the published load points
		if w := wallOf(v, rating*percent/100); w.known {
			least = min(least, w.floorPPM)
		}
	}
	for _, p := range v.Supply.Curve {
		least = min(least, int64(p.Efficiency)*10)
	}
	if least <= 0 {
		return beyondCircuits
	}
	return unit.Power(int64(rating)*1_000_000/least) + 1000
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

// leastFactorPercent is the power factor of what promises none: no level promises less.
const leastFactorPercent = 90

// apparent is the apparent power of a power from the mains, mVA, at the power factor that the supply's level promises.
func apparent(v *View, taken unit.Power) int64 {
	factor, ok := feed.LeastPowerFactorPercent(feed.LevelNamed(string(v.Supply.Level)))
	if !ok {
		factor = leastFactorPercent
	}
	return feed.ApparentMVA(int64(taken), factor)
}
