package part

import "slipfit/core/unit"

// Monitor is a screen.
type Monitor struct {
	Article
	Width    unit.Figure[unit.Whole]  `json:"width_px,omitzero" range:"640..16384" doc:"Picture width."`
	Height   unit.Figure[unit.Whole]  `json:"height_px,omitzero" range:"480..8640" doc:"Picture height."`
	Refresh  unit.Figure[unit.Whole]  `json:"refresh_hz,omitzero" range:"24..600" doc:"Fastest refresh at that size."`
	Depth    unit.Figure[unit.Whole]  `json:"bits_per_colour,omitzero" range:"6..12" doc:"Bits a colour."`
	Diagonal unit.Figure[unit.Length] `json:"diagonal_mm,omitzero" range:"200..2000" doc:"Picture diagonal."`
	Inputs   []Output                 `json:"inputs,omitempty" doc:"Inputs with their fastest link; compression says whether it accepts stream compression."`
	Power    unit.Figure[unit.Power]  `json:"power_w,omitzero" range:"3..400" doc:"Draw at the wall at ordinary brightness."`
	Gamut    string                   `json:"colour,omitempty" doc:"Colour space it covers, by its standard."`
}
