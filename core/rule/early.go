package rule

import (
	"slipfit/core/build"
	"slipfit/core/predict"
)

// coreSeats hold what settles the air of a case. Memory, drives and cards only warm it.
var coreSeats = []build.Seat{build.Case, build.Board, build.Processor, build.Cooler, build.Graphics, build.Supply, build.Fans}

// always reports that something holds of a build in an activity, by its place in the forecast's loads, whatever memory, drives
// and cards are put into it. It must be such that warmer air does not end it.
func always(f *predict.Forecast, load int, day predict.Day, holds func(*predict.Run) bool) bool {
	runs := f.Least(load, day)
	for _, r := range runs {
		if !holds(r) {
			return false
		}
	}
	return len(runs) > 0
}
