package rule

import (
	"fmt"

	"slipfit/core/brief"
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
	Source:   "which rail feeds what: ATX design guide and drive practice, common practice",
	Reads:    loadSeats,
	Early:    []Early{{Seats: []build.Seat{build.Board, build.Processor, build.Supply}}, {Seats: []build.Seat{build.Board, build.Processor, build.Graphics, build.Supply}}},
	Suffices: func(*brief.Needs) []Sum { return railSums[:] },
	Check: func(v *View) []Margin {
		if !v.both(build.Supply, build.Board, build.Processor) {
			return nil
		}
		supply := v.Supply
		for _, r := range rails {
			have, load := r.current(v), r.hangs(v)
			v.find(r.name, have.Q(), amperes(load, r.millivolts).Q(), func() string {
				return fmt.Sprintf("the %s of %s gives %s, and %s hangs on it", r.name, supply.Name, have.Q(), load.Q())
			})
		}
		both, load := minorRails(v), minor.hangs(v)
		v.find(minor.name, both.Q(), load.Q(), func() string {
			return fmt.Sprintf("%s of %s give %s together, and %s hangs on them", minor.name, supply.Name, both.Q(), load.Q())
		})
		return v.margins
	},
}

// rail is one voltage of a supply.
type rail struct {
	name       string
	millivolts int64
	current    func(v *View) unit.Current
	load       func(v *View, s build.Seat) unit.Power // of the part in one seat
}

var rails = [...]rail{
	{"12 V", 12_000, func(v *View) unit.Current { return figure(v, v.Supply.Rail12, &v.Supply.Article, "rail_12v_a") }, load12},
	{"5 V", 5_000, func(v *View) unit.Current { return figure(v, v.Supply.Rail5, &v.Supply.Article, "rail_5v_a") }, load5},
	{"3.3 V", 3_300, func(v *View) unit.Current { return figure(v, v.Supply.Rail33, &v.Supply.Article, "rail_3v3_a") }, load33},
}

// minor is the two lower voltages together, of which a sheet states the power.
var minor = rail{name: "5 V and 3.3 V", load: func(v *View, s build.Seat) unit.Power {
	if s == build.Board {
		return load5(v, s) // which counts the board in full
	}
	return load5(v, s) + load33(v, s)
}}

func minorRails(v *View) unit.Power {
	return figure(v, v.Supply.Minor, &v.Supply.Article, "minor_rails_w")
}

// hangs is what hangs on a rail.
func (r *rail) hangs(v *View) unit.Power {
	var sum unit.Power
	for _, s := range loadSeats {
		sum += r.load(v, s)
	}
	return sum
}

// railSums are the rails as sums, mW.
var railSums = [...]Sum{rails[0].sum(rails[0].power), rails[1].sum(rails[1].power), rails[2].sum(rails[2].power), minor.sum(minorRails)}

// power is what a rail gives at its voltage.
func (r *rail) power(v *View) unit.Power {
	return unit.Power(int64(r.current(v)) * r.millivolts / 1000)
}

// sum is what a rail gives less what hangs on it.
func (r *rail) sum(gives func(v *View) unit.Power) Sum {
	return Sum{Kind: unit.Watt, Term: func(v *View, s build.Seat) (int64, int64) {
		if s == build.Supply && v.Supply != nil {
			return int64(gives(v)), 0
		}
		return 0, int64(r.load(v, s))
	}}
}

// amperes is the current of a power at a voltage in mV, rounded up.
func amperes(p unit.Power, millivolts int64) unit.Current {
	return unit.Current((int64(p)*1000 + millivolts - 1) / millivolts)
}

// load12 is what the part in a seat draws on 12 V.
func load12(v *View, s build.Seat) unit.Power {
	switch s {
	case build.Graphics, build.Cards, build.Case, build.Cooler, build.Fans:
		return steadyLoad(v, s)
	case build.Processor:
		if v.Processor != nil {
			return figure(v, v.Processor.Boost, &v.Processor.Article, "boost_w")
		}
	}
	return drivesOn(v, s, func(d *part.Drive) bool { return d.Form == part.Form35 })
}

// load5 is what the part in a seat draws on 5 V.
func load5(v *View, s build.Seat) unit.Power {
	if s == build.Memory || s == build.Board {
		return steadyLoad(v, s)
	}
	sum := drivesOn(v, s, func(d *part.Drive) bool { return d.Form != part.FormM2 })
	var room [32]unit.Current
	for _, lead := range lightLeadsOf(v, s, part.HeaderARGB, room[:0]) {
		sum += unit.Power(lead) * 5
	}
	return sum
}

// load33 is what the part in a seat draws on 3.3 V.
func load33(v *View, s build.Seat) unit.Power {
	if s == build.Board && v.Board != nil {
		return figure(v, v.Board.Own, &v.Board.Article, "own_power_w")
	}
	return drivesOn(v, s, func(d *part.Drive) bool { return d.Form == part.FormM2 })
}

// drivesOn is what the drives in a seat draw that are of a sort.
func drivesOn(v *View, s build.Seat, sort func(*part.Drive) bool) unit.Power {
	var drives build.Storage
	switch s {
	case build.Boot, build.Cache, build.Archive:
		drives = v.holds(s)
	}
	if drives.Drive == nil || !sort(drives.Drive) {
		return 0
	}
	return driveLoad(v, drives)
}
