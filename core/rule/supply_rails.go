package rule

import (
	"fmt"

	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// SupplyRails is the currents of the supply's rails against what hangs on each.
var SupplyRails = Rule{
	ID:    "supply-rails",
	Group: Feed,
	Title: "Each rail of the supply carries its own parts",
	Doc: `12 V: have = current of all 12 V rails, A; need = (processor boost + graphics card + cards + fans + pump + 12 V lighting +
disks) ÷ 12 V
5 V: have = current of the 5 V rail, A; need = (memory + 2.5 and 3.5 inch drives + board + USB devices + 5 V lighting) ÷ 5 V
3.3 V: have = current of the 3.3 V rail, A; need = (M.2 modules + board) ÷ 3.3 V
minor: have = power of 5 V and 3.3 V together, W; need = their sum, the board counted once, W
Where a sheet does not say which rail a part draws from, the part counts in full on each it may use: a 3.5 inch disk on 12 V and 5 V, the
board's own on 5 V and 3.3 V. Fans, pump and all lighting count on 12 V, lighting of 5 V also on 5 V. When short: another supply.`,
	Source: "which rail feeds what: ATX design guide and drive practice, common practice",
	Reads:  loadSeats,
	Early:  []Early{{Seats: []build.Seat{build.Board, build.Processor, build.Supply}}, {Seats: []build.Seat{build.Board, build.Processor, build.Graphics, build.Supply}}},
	Check: func(v *View) []Margin {
		if !v.both(build.Supply, build.Board, build.Processor) {
			return nil
		}
		supply := v.Supply
		twelve := steadyLoad(v, build.Graphics) + steadyLoad(v, build.Cards) + steadyLoad(v, build.Case) + steadyLoad(v, build.Cooler) + steadyLoad(v, build.Fans) +
			figure(v, v.Processor.Boost, &v.Processor.Article, "boost_w") + drivesOn(v, isDisk)
		have := figure(v, supply.Rail12, &supply.Article, "rail_12v_a")
		v.find("12 V", have.Q(), amperes(twelve, 12_000).Q(), railSays(supply, "12 V", have, twelve))

		five := fiveVolts(v) + steadyLoad(v, build.Board)
		have = figure(v, supply.Rail5, &supply.Article, "rail_5v_a")
		v.find("5 V", have.Q(), amperes(five, 5_000).Q(), railSays(supply, "5 V", have, five))

		three := drivesOn(v, isModule) + figure(v, v.Board.Own, &v.Board.Article, "own_power_w")
		have = figure(v, supply.Rail33, &supply.Article, "rail_3v3_a")
		v.find("3.3 V", have.Q(), amperes(three, 3_300).Q(), railSays(supply, "3.3 V", have, three))

		both := figure(v, supply.Minor, &supply.Article, "minor_rails_w")
		sum := fiveVolts(v) + drivesOn(v, isModule) + steadyLoad(v, build.Board)
		v.find("5 V and 3.3 V", both.Q(), sum.Q(), func() string {
			return fmt.Sprintf("5 V and 3.3 V of %s give %s together, and %s hangs on them", supply.Name, both.Q(), sum.Q())
		})
		return v.margins
	},
}

func railSays(s *part.Supply, rail string, have unit.Current, load unit.Power) func() string {
	return func() string {
		return fmt.Sprintf("the %s of %s gives %s, and %s hangs on it", rail, s.Name, have.Q(), load.Q())
	}
}

// amperes is the current of a power at a voltage in mV, rounded up.
func amperes(p unit.Power, millivolts int64) unit.Current {
	return unit.Current((int64(p)*1000 + millivolts - 1) / millivolts)
}

// fiveVolts is what draws on 5 V, the board left out.
func fiveVolts(v *View) unit.Power {
	sum := steadyLoad(v, build.Memory) + drivesOn(v, isCabled)
	var room [32]unit.Current
	for _, lead := range lightLeads(v, part.HeaderARGB, room[:0]) {
		sum += unit.Power(lead) * 5
	}
	return sum
}

// drivesOn is what the drives of a sort draw.
func drivesOn(v *View, is func(*part.Drive) bool) unit.Power {
	var sum unit.Power
	for _, s := range [...]build.Storage{v.Boot, v.Cache, v.Archive} {
		if s.Drive != nil && is(s.Drive) {
			sum += driveLoad(v, s)
		}
	}
	return sum
}

func isModule(d *part.Drive) bool { return d.Form == part.FormM2 }
func isCabled(d *part.Drive) bool { return d.Form != part.FormM2 }
func isDisk(d *part.Drive) bool   { return d.Form == part.Form35 }
