package part

import "slipfit/core/unit"

// Cooler is a processor cooler, air or closed-loop liquid.
type Cooler struct {
	Article
	Sockets []string                `json:"sockets" min:"1" doc:"Sockets its mounting kit fits."`
	Air     *AirCooler              `json:"air,omitzero" doc:"Figures of an air cooler."`
	Liquid  *LiquidCooler           `json:"liquid,omitzero" doc:"Figures of a closed liquid loop."`
	Fan     FanFigures              `json:"fan" doc:"Each of its fans."`
	Fans    unit.Figure[unit.Whole] `json:"fans,omitzero" range:"0..4" doc:"Fans that come with it."`
	Rated   unit.Figure[unit.Power] `json:"rated_w,omitzero" range:"20..600" doc:"Processor power it is rated for."`
	Lights  []Lead                  `json:"lighting_leads,omitempty" doc:"Lighting leads."`
}

// AirCooler is a heat-sink with fans. Widths are across the air stream, depths along it; reaches run from the socket's
// centre.
type AirCooler struct {
	Height    unit.Figure[unit.Length]     `json:"height_mm,omitzero" range:"20..200" doc:"Above the board, fans in their lowest place."`
	FanTop    unit.Figure[unit.Length]     `json:"fan_top_mm,omitzero" range:"20..200" doc:"Top of the fan on the memory side above the board, in its lowest place."`
	Raise     unit.Figure[unit.Length]     `json:"fan_raise_mm,omitzero" range:"0..60" doc:"How far that fan can be moved up; 0 where it is fixed."`
	ToMemory  unit.Figure[unit.Length]     `json:"reach_memory_mm,omitzero" range:"10..120" doc:"Reach towards the memory, fan included."`
	UnderFan  unit.Figure[unit.Length]     `json:"memory_clear_mm,omitzero" range:"0..120" doc:"Free height above the board under that overhang, fan in its lowest place."`
	ToCard    unit.Figure[unit.Length]     `json:"reach_card_mm,omitzero" range:"10..120" doc:"Reach towards the card slots."`
	ToTop     unit.Figure[unit.Length]     `json:"reach_top_mm,omitzero" range:"10..120" doc:"Reach towards the board edge away from the slots."`
	BaseClear unit.Figure[unit.Length]     `json:"base_clear_mm,omitzero" range:"0..120" doc:"Free height above the board all round the base, beyond the mounting frame."`
	BaseReach unit.Figure[unit.Length]     `json:"base_reach_mm,omitzero" range:"5..90" doc:"Reach of the base and its mounting frame."`
	Sink      unit.Figure[unit.Resistance] `json:"sink_k_w,omitzero" range:"0.03..1" doc:"Heat-sink to air at full fan speed."`
}

// LiquidCooler is a closed loop: cold plate with pump, tubes, radiator, fans.
type LiquidCooler struct {
	FanSize     unit.Figure[unit.Length]     `json:"fan_size_mm,omitzero" range:"80..200" doc:"Fan size of the radiator's hole pattern."`
	Sections    unit.Figure[unit.Whole]      `json:"sections,omitzero" range:"1..4" doc:"Fans side by side."`
	Length      unit.Figure[unit.Length]     `json:"radiator_length_mm,omitzero" range:"100..600" doc:"Radiator with its tanks."`
	Width       unit.Figure[unit.Length]     `json:"radiator_width_mm,omitzero" range:"80..220" doc:"Radiator."`
	Thickness   unit.Figure[unit.Length]     `json:"radiator_thickness_mm,omitzero" range:"15..90" doc:"Radiator without fans."`
	Tube        unit.Figure[unit.Length]     `json:"tube_mm,omitzero" range:"150..900" doc:"Free length of the tubes."`
	PumpHeight  unit.Figure[unit.Length]     `json:"pump_height_mm,omitzero" range:"20..120" doc:"Cold plate and pump above the board."`
	PumpReach   unit.Figure[unit.Length]     `json:"pump_reach_mm,omitzero" range:"20..90" doc:"Reach of the cold plate and pump from the socket's centre."`
	PumpPower   unit.Figure[unit.Power]      `json:"pump_w,omitzero" range:"0.5..30" doc:"Pump."`
	PumpCurrent unit.Figure[unit.Current]    `json:"pump_current_a,omitzero" range:"0.05..3" doc:"Current of the pump lead."`
	PumpSound   unit.Figure[unit.Sound]      `json:"pump_dba,omitzero" range:"5..45" doc:"Sound pressure of the pump at 1 m."`
	Plate       unit.Figure[unit.Resistance] `json:"plate_k_w,omitzero" range:"0.01..0.3" doc:"Cold plate, lid to coolant."`
	Conductance unit.Figure[unit.Resistance] `json:"section_ua_w_k,omitzero" range:"2..60" doc:"UA of one radiator section at 54 m³/h of air (0.015 m³/s), watts a kelvin."`
	CoolantFlow unit.Figure[unit.Flow]       `json:"coolant_m3_h,omitzero" range:"0.01..1" doc:"Coolant flow."`
}
