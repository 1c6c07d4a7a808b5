package rule

import (
	"slices"

	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/predict"
)

// coreSeats hold what settles the air of a case. Memory, drives and cards only warm it.
var coreSeats = []build.Seat{build.Case, build.Board, build.Processor, build.Cooler, build.Graphics, build.Supply, build.Fans}

// everyWarmth counts all the seats that only warm it.
var everyWarmth = build.SetOf(predict.Warming...)

// except is a list of seats without one.
func except(list []build.Seat, s build.Seat) []build.Seat {
	return slices.DeleteFunc(slices.Clone(list), func(x build.Seat) bool { return x == s })
}

// warm reports that something holds of a build in some activity, by what its core comes to with the heat of some of the memory,
// drives and cards that it holds.
func (v *View) warm(counted build.Set, holds func(w *predict.Warmth, load int) bool) bool {
	w := v.predictor().Warmth(v.Build, v.Needs, counted, v.besides)
	if w == nil {
		return false
	}
	return v.hardest(func(load int) bool { return holds(w, load) })
}

// hardest reports that something holds of a build in some activity. Of activities of which another asks as much of every part it does not
// ask: what fails in one of them hardly ever stands in the other, and the rule itself asks all.
func (v *View) hardest(holds func(load int) bool) bool {
	asked := predict.Asked(v.Needs)
	for i := range asked {
		if !outdone(asked, i) && holds(i) {
			return true
		}
	}
	return false
}

// outdone reports an activity of which another asks as much of every part, the earlier one of two alike.
func outdone(asked []brief.Load, nth int) bool {
	l := asked[nth]
	for i, o := range asked {
		more := o.Processor > l.Processor || o.Graphics > l.Graphics || o.Memory > l.Memory || o.Drives > l.Drives
		less := o.Processor < l.Processor || o.Graphics < l.Graphics || o.Memory < l.Memory || o.Drives < l.Drives
		if i != nth && !less && (more || i < nth) {
			return true
		}
	}
	return false
}

// every reports that something holds of a whole build in every activity, by what its core comes to with more heat besides.
func (v *View) every(holds func(w *predict.Warmth, load int) bool) bool {
	w := v.predictor().Warmth(v.Build, v.Needs, everyWarmth, v.besides)
	if w == nil {
		return false
	}
	for i := range predict.Asked(v.Needs) {
		if !holds(w, i) {
			return false
		}
	}
	return true
}

// cool reports a whole build none of whose parts comes near its limit.
func (v *View) cool() bool { return v.every((*predict.Warmth).Cool) }

// Brings is what board, memory, drives and cards of a build bring into its air in each activity asked, W, as far as their sheets
// say it.
func (v *View) Brings() []float64 {
	asked := predict.Asked(v.Needs)
	list := make([]float64, len(asked))
	for i := range asked {
		list[i] = predict.Brings(v.Build, &asked[i])
	}
	return list
}

// Disks is how loud the turning disks of a build are, dB(A) of sound power; nought where there are none.
func (v *View) Disks() float64 { return predict.Disks(v.Build) }
