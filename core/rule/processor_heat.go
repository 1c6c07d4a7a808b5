package rule

import "slipfit/core/predict"

// ProcessorHeat holds the processor under the temperature at which it slows itself.
var ProcessorHeat = Rule{
	ID:    "processor-heat",
	Group: Cool,
	Title: "Processor stays under its limit",
	Doc: `For each activity, in the brief's room on its hottest day and at its altitude: have = temperature at which the processor slows
	itself, °C; need = predicted temperature of its junction, °C
T = air or coolant at the sink + P × (junction to lid + paste + sink or plate), K/W
  P = draw at rest + the activity's share × (sustained draw − draw at rest), W, or less where it is held back (see held-power)
  paste = 50 µm ÷ (5 W/(m·K) × lid area)
  air cooler: 40 % of its sheet's resistance stays, 60 % goes as (full speed ÷ speed)^0.6 and as density^−0.6
  liquid: coolant − air at the radiator = Q ÷ (ε × Cmin), ε of unmixed crossflow, UA as (flow ÷ 54 m³/h)^0.5; the plate takes
	the coolant as the radiator gives it
Air at the sink lies between what enters its chamber and the chamber's mixed air. All flows, temperatures and fan speeds are
	solved together: fans turn only as fast as their curves ask, and at the limit to full speed, then the power is cut. So the
	prediction never passes the limit: a margin of nought means held back.
With no brief: everything at work at 22 °C. When nought: a larger cooler, a radiator that takes room air, more case air.`,
	Source: "ε-NTU, unmixed crossflow: Bergman/Incropera, Fundamentals of Heat and Mass Transfer, ch. 11; series resistances and fan laws: ASHRAE Handbook; splits, paste and control curves: common practice",
	Reads:  loadSeats,
	Holds:  (*View).cool,
	Check: func(v *View) []Margin {
		return v.asked(func(_ *predict.Forecast, r *predict.Run) { v.temperature(v.find, r.Load.Activity, r, &r.Parts[0]) })
	},
}
