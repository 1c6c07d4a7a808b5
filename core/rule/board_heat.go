package rule

import "slipfit/core/predict"

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
		{Seats: coreSeats, Fails: func(v *View) bool { return v.warm(0, (*predict.Warmth).BoardOver) }, Warms: Warming},
		{Seats: loadSeats, Warmer: Warming, Fails: func(v *View) bool { return v.warm(everyWarmth, (*predict.Warmth).BoardOver) }},
	},
	Check: func(v *View) []Margin {
		return v.asked(func(_ *predict.Forecast, r *predict.Run) { v.temperature(v.find, r.Load.Activity, r, &r.Board) })
	},
}
