package rule

import (
	"slices"

	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/predict"
)

// DriveHeat holds every drive under the temperature at which it slows or must stop.
var DriveHeat = Rule{
	ID:    "drive-heat",
	Group: Cool,
	Title: "Drives stay under their limit",
	Doc: `For each activity and storage tier, in the brief's room on its hottest day: have = temperature at which the drive slows or must
	stop, °C; need = predicted temperature at what the activity asks, °C
T = air at the drive + P × controller to air, K/W; P = draw at rest + the activity's share × (draw at work − draw at rest), W
A storage module breathes 80 % mixed case air, a drive in a bay 50 %. A module with no heat-sink of its own in a socket the board
	brings none for is taken as bare: 20 K/W, or its sheet's figure where that is worse.
With no brief: everything at work at 22 °C, as advice, for no drive writes at full speed without end.
When short: a module with a heat-sink, another socket, a bay in moving air.`,
	Source: "NVM Express Base Specification, Identify Controller, composite temperature thresholds, for what a limit means; bare module 12 to 25 K/W: common practice",
	Reads:  loadSeats,
	Early: []Early{
		{Seats: []build.Seat{build.Board, build.Boot}, Fails: func(v *View) bool { return v.tooHot(v.Boot) }},
		{Seats: []build.Seat{build.Board, build.Cache}, Fails: func(v *View) bool { return v.tooHot(v.Cache) }},
		{Seats: []build.Seat{build.Board, build.Archive}, Fails: func(v *View) bool { return v.tooHot(v.Archive) }},
		{Seats: []build.Seat{build.Case, build.Board, build.Graphics, build.Cards, build.Boot, build.Cache, build.Archive}, Fails: func(v *View) bool {
			return v.Board != nil && named(v.Needs) && v.hardest(func(load int) bool { return predict.OverLimit(v.Build, v.Needs.Loads[load], &v.Needs.Place) })
		}},
		inCase(build.Boot), inCase(build.Cache), inCase(build.Archive),
		whicheverFans(build.Boot), whicheverFans(build.Cache), whicheverFans(build.Archive),
		whicheverFansAndCooler(build.Boot), whicheverFansAndCooler(build.Cache), whicheverFansAndCooler(build.Archive),
		whicheverSupply(build.Boot), whicheverSupply(build.Cache), whicheverSupply(build.Archive),
		whicheverCooler(build.Boot), whicheverCooler(build.Cache), whicheverCooler(build.Archive),
		whereItSits(build.Boot), whereItSits(build.Cache), whereItSits(build.Archive),
		{Seats: loadSeats, Warmer: []build.Seat{build.Memory}, AnySupply: true, Fails: func(v *View) bool {
			return v.hotWhereItSits(build.Boot, everyWarmth) || v.hotWhereItSits(build.Cache, everyWarmth) || v.hotWhereItSits(build.Archive, everyWarmth)
		}},
		{Seats: loadSeats, Fails: func(v *View) bool { return named(v.Needs) && v.warm(everyWarmth, (*predict.Warmth).DriveOverSo) }},
	},
	Holds: func(v *View) bool { return v.every((*predict.Warmth).DrivesCool) },
	Check: func(v *View) []Margin {
		return v.asked(func(_ *predict.Forecast, r *predict.Run) {
			for i := range r.Drives {
				d := &r.Drives[i]
				add := v.find
				if !named(v.Needs) {
					add = v.advise
				}
				v.temperature(add, r.Load.Activity+", "+d.Seat.String(), r, d)
			}
		})
	},
}

// tooHot reports a drive that passes its limit in some activity even in room air.
func (v *View) tooHot(s build.Storage) bool {
	if v.Board == nil || s.Drive == nil {
		return false
	}
	limitC, known := predict.LimitC(s.Drive)
	return known && named(v.Needs) && v.hardest(func(load int) bool {
		c, ok := predict.CoolestC(v.Board, s.Drive, v.Needs.Loads[load], &v.Needs.Place)
		return ok && c > limitC
	})
}

// inCase asks whether drives of a tier pass their limit in the case, in whatever socket and whatever else is in there.
func inCase(tier build.Seat) Early {
	return Early{Seats: append(slices.Clone(coreSeats), tier), Warms: except(predict.Warming, tier), AnySupply: true, Fails: func(v *View) bool {
		return named(v.Needs) && v.warm(build.SetOf(tier), (*predict.Warmth).DriveOverAnywhere)
	}}
}

// whereItSits asks whether drives of a tier pass their limit in the case where the board puts them beside the cards and the
// other drives.
func whereItSits(tier build.Seat) Early {
	placed := []build.Seat{build.Boot, build.Cache, build.Archive, build.Cards}
	return Early{
		Seats: slices.Concat(coreSeats, placed), AnySupply: true, Warms: except(predict.Warming, tier), Places: except(placed, tier),
		Placed: func(v *View) int64 { return int64(predict.BareIn(v.Build, tier)) },
		Fails:  func(v *View) bool { return v.hotWhereItSits(tier, build.SetOf(tier)) },
	}
}

// whicheverSupply is whereItSits with whichever supply, by how much air can come in at most, where that hangs on more than the kind of cooler.
func whicheverSupply(tier build.Seat) Early {
	e := whereItSits(tier)
	e.Seats = except(e.Seats, build.Supply)
	e.Fails = func(v *View) bool { return !v.coolerOfKind() && v.hotFed(tier, build.SetOf(tier)) }
	return e
}

// whicheverFans is whicheverSupply with whichever fans are bought for the case.
func whicheverFans(tier build.Seat) Early {
	e := whicheverSupply(tier)
	e.Seats, e.AnyFans = except(e.Seats, build.Fans), true
	e.Fails = func(v *View) bool {
		return !v.coolerOfKind() && v.overFed((*predict.Predictor).DriveOverWithAnyFans, tier, build.SetOf(tier))
	}
	return e
}

// whicheverCooler is whicheverSupply with whichever air cooler of a kind.
func whicheverCooler(tier build.Seat) Early {
	e := whicheverSupply(tier)
	e.Kinds, e.Layouts = []build.Seat{build.Cooler}, inOneChamber
	e.Fails = func(v *View) bool {
		return v.overFed((*predict.Predictor).DriveOverWithAnyCooler, tier, build.SetOf(tier))
	}
	return e
}

// whicheverFansAndCooler is whicheverFans with whichever air cooler of a kind.
func whicheverFansAndCooler(tier build.Seat) Early {
	e := whicheverFans(tier)
	e.Kinds, e.Layouts = []build.Seat{build.Cooler}, inOneChamber
	e.Fails = func(v *View) bool {
		return v.overFed((*predict.Predictor).DriveOverWithAnyFansAndCooler, tier, build.SetOf(tier))
	}
	return e
}

func inOneChamber(l *part.Layout) bool { return !l.Chambers }

// coolerOfKind reports a build in one chamber of whose cooler no more counts than its kind.
func (v *View) coolerOfKind() bool {
	_, known := predict.KindOf(v.Build)
	return known
}

// hotWhereItSits reports drives of a tier that pass their limit, counting the heat of some seats.
func (v *View) hotWhereItSits(tier build.Seat, counted build.Set) bool {
	return named(v.Needs) && v.warm(counted, func(w *predict.Warmth, load int) bool { return w.DriveOver(load, tier) }) ||
		v.Supply == nil && v.hotFed(tier, counted)
}

// hotFed is hotWhereItSits with whichever supply comes besides, by how much air can come in at most.
func (v *View) hotFed(tier build.Seat, counted build.Set) bool {
	return v.overFed((*predict.Predictor).DriveOverFed, tier, counted)
}

// driveOver reports drives of a tier over their limit in an activity, counting the heat of some seats.
type driveOver func(p *predict.Predictor, b *build.Build, n *brief.Needs, counted build.Set, besides predict.Besides, load int, tier build.Seat) bool

// overFed reports that in some activity of a brief.
func (v *View) overFed(over driveOver, tier build.Seat, counted build.Set) bool {
	return named(v.Needs) && v.hardest(func(load int) bool {
		return over(v.predictor(), v.Build, v.Needs, counted, v.besides, load, tier)
	})
}
