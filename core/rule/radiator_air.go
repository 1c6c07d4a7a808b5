package rule

import (
	"slipfit/core/build"
	"slipfit/core/unit"
)

// RadiatorAir advises on where the loop's air gathers.
var RadiatorAir = Rule{
	ID:    "radiator-air",
	Group: Fit,
	Title: "The loop's air gathers in the radiator, not in the pump",
	Doc: `have = 1 where the radiator's highest point lies above the pump, else 0; need = 1; advice only.
A closed loop loses a little coolant over the years and air gathers at its highest point. In the pump it is heard, and the
	pump runs dry. When short: hang the radiator higher, or with its tubes at the bottom; never with the pump at the top.`,
	Source: "common practice",
	Reads:  []build.Seat{build.Case, build.Cooler},
	Check: func(v *View) []Margin {
		if !v.both(build.Case, build.Cooler) {
			return nil
		}
		m := v.Mount()
		if m == nil {
			return nil
		}
		high := mountFigure(v, m, m.TankHigh, "tank_high")
		face := v.Face
		v.advise("", unit.Met(high), unit.Met(true), func() string {
			if high {
				return say("the radiator at the %s stands higher than the pump: air gathers in its tank", face)()
			}
			return say("the radiator at the %s does not rise above the pump: air gathers in the pump; a place higher up is kinder to it", face)()
		})
		return v.margins
	},
}
