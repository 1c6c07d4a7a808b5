package rule

import (
	"math"
	"slices"

	"slipfit/core/build"
	"slipfit/core/predict"
)

// BoardHeat holds the board's converters under their limit.
var BoardHeat = Rule{
	ID:    "board-heat",
	Group: Cool,
	Title: "Board's converters stay under their limit",
	Doc: `For each activity, in the brief's room on its hottest day: have = 105 °C; need = predicted temperature of the converters, °C
T = case air + 65 K × processor power ÷ power the board holds without end
The board's figure is taken to hold in case air of 40 °C: there the converters just reach 105 °C. Warmer case air leaves less.
	With no brief: everything at work at 22 °C. When short: a board with larger converters, more case air over it.`,
	Source: "limit and the air a board's figure holds in: common practice",
	Reads:  loadSeats,
	Early: []Early{
		{Seats: coreSeats, Warms: predict.Warming, Fails: boardOver(0), Bears: boardBears, AnySupply: true, Leans: &HeldPower},
		{Seats: loadSeats, Warmer: predict.Warming, Fails: boardOver(everyWarmth), AnySupply: true, Leans: &HeldPower},
		{Seats: loadSeats, Fails: boardOverSo, Leans: &HeldPower},
	},
	Holds: func(v *View) bool { return v.every((*predict.Warmth).BoardCool) },
	Check: func(v *View) []Margin {
		return v.asked(func(_ *predict.Forecast, r *predict.Run) { v.temperature(v.find, r.Load.Activity, r, &r.Board) })
	},
}

// boardBears is what a core bears before boardOver says so.
func boardBears(v *View) []float64 {
	w := v.predictor().Warmth(v.Build, v.Needs, 0, v.besides)
	if w == nil {
		return nil
	}
	asked := predict.Asked(v.Needs)
	list := slices.Repeat([]float64{math.Inf(1)}, len(asked))
	for i := range asked {
		if !outdone(asked, i) {
			list[i] = w.BoardBearsW(i, float64(keptSpeed)/100_000)
		}
	}
	return list
}

// boardOverSo is boardOver of just that build.
func boardOverSo(v *View) bool {
	return v.warm(everyWarmth, (*predict.Warmth).BoardOverSo)
}

// boardOver asks whether converters pass their limit, or a part is held back, with the heat of some seats or more.
func boardOver(counted build.Set) func(v *View) bool {
	return func(v *View) bool {
		return v.warm(counted, func(w *predict.Warmth, load int) bool { return w.BoardOver(load, float64(keptSpeed)/100_000) })
	}
}
