package rule

import (
	"fmt"

	"slipfit/core/build"
	"slipfit/core/unit"
)

// SupplySteady is the planned share of the supply's rating against what all parts draw without end.
var SupplySteady = Rule{
	ID:    "supply-steady",
	Group: Feed,
	Title: "The supply carries everything at work without end",
	Doc: `have = 90 % of the supply's rating, W
need = sum of what each part draws without end with everything at work, W: processor sustained, graphics card, memory module ×
	modules, drives, fans at 12 V, pump, lighting, cards, the board's own, and 10 W for keyboard, mouse and sticks
The tenth left is for age, heat and the next card. Parts seldom all work at once: the rule activity-load tells what each activity
	draws. Peaks are the rule supply-excursion. When short: a larger supply, or a card or processor that draws less. A supply is
	never opened: it holds lethal charge after it is unplugged.`,
	Source: "planned share of nine tenths and allowance for USB devices: common practice",
	Reads:  loadSeats,
	Sum: &Sum{
		Kind: unit.Watt,
		Term: func(v *View, s build.Seat) (gives, takes int64) {
			if s == build.Supply {
				if v.Supply == nil {
					return 0, 0
				}
				return int64(planned(v)), 0
			}
			return 0, int64(steadyLoad(v, s))
		},
	},
	Check: func(v *View) []Margin {
		if !v.both(build.Supply, build.Board, build.Processor) {
			return nil
		}
		supply := v.Supply
		v.sum("", func(gives, takes int64) string {
			return fmt.Sprintf("with everything at work the parts draw %s, and %s is planned for %s of its %s", unit.Power(takes).Q(), supply.Name, unit.Power(gives).Q(), supply.Rating.Or(0).Q())
		})
		return v.margins
	},
}
