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

// HolePitch is the distance between screw holes of a fan of a frame size; the size itself where no pattern is known.
// Source: public CAD models of fans; 80 and 92 mm from memory.
func HolePitch(size unit.Length) unit.Length {
	switch size / unit.Millimetre {
	case 40:
		return 32 * unit.Millimetre
	case 50:
		return 40 * unit.Millimetre
	case 60:
		return 50 * unit.Millimetre
	case 80:
		return 71_500
	case 92:
		return 82_500
	case 120:
		return 105 * unit.Millimetre
	case 140:
		return 124_500
	case 200:
		return 154 * unit.Millimetre
	}
	return size
}
