package rule

import "slipfit/core/predict"

// GraphicsHeat holds the graphics card's core under its limit.
var GraphicsHeat = Rule{
	ID:    "graphics-heat",
	Group: Cool,
	Title: "Graphics card stays under its limit",
	Doc: `For each activity, in the brief's room on its hottest day and at its altitude: have = core temperature the card is held under, °C;
need = predicted core temperature, °C
T = air at the card + P × (fixed part + air part × (full speed ÷ speed)^0.6 × (standard density ÷ density)^0.6), K/W
P = draw at rest + the activity's share × (sustained draw − draw at rest), W, or less where it is held back (see held-power)
In one chamber the card breathes 60 % mixed case air; in a chamber of its own with an open panel its fans draw through the
	panel, and it breathes 20 % mixed air; with a closed panel mixed air alone. Its fans turn at 30 % up to 50 °C and at full speed
	3 K under the limit. With no brief: everything at work at 22 °C. A margin of nought means held back: a card with a larger
	cooler, an open panel, more case air.`,
	Source: "series resistances: Bergman/Incropera, Fundamentals of Heat and Mass Transfer, ch. 3; air-side exponent, mixing and control curve: common practice",
	Reads:  loadSeats,
	Holds:  (*View).cool,
	Check: func(v *View) []Margin {
		if v.Graphics == nil {
			return nil
		}
		return v.asked(func(_ *predict.Forecast, r *predict.Run) { v.temperature(v.find, r.Load.Activity, r, &r.Parts[1]) })
	},
}
