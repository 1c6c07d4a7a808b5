package rule

import (
	"fmt"

	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// HeaderCurrent is the current of each fan header against the fans that hang on it.
var HeaderCurrent = Rule{
	ID:    "header-current",
	Group: Feed,
	Title: "No fan header gives more current than it may",
	Doc: `pump: have = current of the header the pump takes, A; need = current of the pump, A
fans: have = current of the header that is nearest to its limit, A; need = current of the fans that hang on it, A
The fans of case and cooler and the added ones hang one on each header, heaviest first, the rest on splitters where most room is left;
	where that overloads a header every other way is tried. A hub that the supply feeds gives its own current; one that it does not feed only
	splits. A fan takes about half as much again for a second when it starts, which headers bear. When short: a fan hub that the supply feeds.`,
	Source: "1 A a fan header, 2 to 3 A a pump header: common practice, the board's sheet rules; start current at most 2.2 A for 1 s: 4-wire PWM fan specification § 2.1.2",
	Reads:  []build.Seat{build.Case, build.Board, build.Cooler, build.Fans, build.Cards},
	Check: func(v *View) []Margin {
		if !v.both(build.Case, build.Board, build.Cooler) {
			return nil
		}
		var leadRoom [32]unit.Current
		var pinRoom [24]pin
		if v.Cooler.Liquid != nil {
			need := figure(v, v.Cooler.Liquid.PumpCurrent, &v.Cooler.Article, "liquid.pump_current_a")
			pumps := pinsOf(v, part.HeaderPump, pinRoom[:0])
			if len(pumps) == 0 {
				pumps = pinsOf(v, part.HeaderFan, pumps)
			}
			var have unit.Current
			if len(pumps) > 0 {
				have = pumps[0].limit
			}
			v.find("pump", have.Q(), need.Q(), func() string {
				return fmt.Sprintf("the header of the pump gives %s, and it takes %s", have.Q(), need.Q())
			})
		}
		leads := fanLeads(v, leadRoom[:0])
		if len(leads) == 0 && len(v.missing) == 0 {
			return v.margins
		}
		count := len(leads)
		worst, _ := spread(leads, fanPins(v, pinRoom[:0]))
		v.find("fans", worst.limit.Q(), worst.load.Q(), func() string {
			return fmt.Sprintf("with %s spread over the headers, the fullest carries %s of its %s", plural(count, "fan"), worst.load.Q(), worst.limit.Q())
		})
		return v.margins
	},
}
