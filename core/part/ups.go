package part

import "slipfit/core/unit"

// UPS is an uninterruptible supply.
type UPS struct {
	Article
	Apparent unit.Figure[unit.Power] `json:"rating_va,omitzero" range:"200..6000" doc:"Apparent power, VA."`
	Real     unit.Figure[unit.Power] `json:"rating_w,omitzero" range:"100..6000" doc:"Real power, W; both ratings bind."`
	Sine     unit.Figure[bool]       `json:"sine,omitzero" doc:"Sine wave on battery."`
	Transfer unit.Figure[unit.Whole] `json:"transfer_ms,omitzero" range:"0..30" doc:"Transfer time, milliseconds."`
	Runtime  []Runtime               `json:"runtime,omitempty" doc:"Minutes at loads, falling."`
	Outlets  unit.Figure[unit.Whole] `json:"outlets,omitzero" range:"1..16" doc:"Battery-backed outlets."`
}

// Runtime is how long a UPS holds a load.
type Runtime struct {
	Load    unit.Power    `json:"load_w" range:"10..6000" doc:"Load."`
	Minutes unit.Duration `json:"minutes_min" range:"1..600" doc:"Minutes on battery."`
}
