package rule

import (
	"slices"

	"slipfit/core/brief"
	"slipfit/core/build"
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
		{Seats: []build.Seat{build.Case, build.Board, build.Graphics, build.Boot, build.Cache, build.Archive, build.Cards}, Fails: (*View).hotInOpen},
		{Seats: []build.Seat{build.Case, build.Board, build.Graphics, build.Cards, build.Boot, build.Cache, build.Archive}, Fails: func(v *View) bool {
			return v.Board != nil && slices.ContainsFunc(v.Needs.Loads, func(l brief.Load) bool { return predict.OverLimit(v.Build, l, &v.Needs.Place) })
		}},
		{Seats: append(slices.Clone(coreSeats), build.Boot), Fails: (*View).hotInCase},
		{Seats: append(slices.Clone(coreSeats), build.Cache), Fails: (*View).hotInCase},
		{Seats: append(slices.Clone(coreSeats), build.Archive), Fails: (*View).hotInCase},
	},
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
	for _, l := range v.Needs.Loads {
		if c, ok := predict.CoolestC(v.Board, s.Drive, l, &v.Needs.Place); ok && known && c > limitC {
			return true
		}
	}
	return false
}

// hotInOpen reports drives of which one passes its limit in some activity where the board puts it, even in room air.
func (v *View) hotInOpen() bool {
	if v.Board == nil {
		return false
	}
	for _, l := range v.Needs.Loads {
		o := v.predictor().Open(v.Build, v.Needs, l, predict.Hottest)
		for i := range o.Drives {
			if d := &o.Drives[i]; len(d.Missing) == 0 && d.TempC.Expected > d.LimitC {
				return true
			}
		}
	}
	return false
}

// hotInCase reports a drive that passes its limit in the case, in whatever socket and whatever else is in there.
func (v *View) hotInCase() bool {
	f := v.predictor().Core(v.Build, v.Needs)
	if f == nil || v.Board == nil || !named(v.Needs) {
		return false
	}
	for _, t := range v.Tiers() {
		limitC, known := predict.LimitC(t.Drive)
		for i := range f.Asked() {
			if known && always(f, i, f.Day(), func(r *predict.Run) bool {
				c, ok := r.CoolestDriveC(t.Drive)
				return ok && c > limitC
			}) {
				return true
			}
		}
	}
	return false
}
