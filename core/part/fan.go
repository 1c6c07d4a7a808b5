package part

import "slipfit/core/unit"

// Fan is a case fan, sold singly or in packs.
type Fan struct {
	Article
	FanFigures
	Pack   unit.Figure[unit.Whole]  `json:"pack,omitzero" range:"1..5" doc:"Fans in the pack."`
	Holes  unit.Figure[unit.Length] `json:"hole_pitch_mm,omitzero" range:"30..180" doc:"Between screw holes; match pitch, not frame."`
	Lights []Lead                   `json:"lighting_leads,omitempty" doc:"Lighting leads of each fan."`
}
