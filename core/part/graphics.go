package part

import "slipfit/core/unit"

// Graphics is a graphics card.
type Graphics struct {
	Article
	Engine
	Memory     unit.Figure[unit.Memory]      `json:"memory_gib,omitzero" range:"1..256" doc:"Memory on the card."`
	MemoryRate unit.Figure[unit.Whole]       `json:"memory_gb_s,omitzero" range:"20..8000" doc:"Bandwidth of that memory, GB/s."`
	PCIe       unit.Figure[unit.Release]     `json:"pcie,omitzero" range:"1..7" doc:"PCIe generation."`
	Lanes      unit.Figure[unit.Whole]       `json:"lanes,omitzero" range:"1..16" doc:"Lanes it is wired for."`
	Length     unit.Figure[unit.Length]      `json:"length_mm,omitzero" range:"80..450" doc:"From the bracket plane to the far end, plug excluded."`
	Height     unit.Figure[unit.Length]      `json:"height_mm,omitzero" range:"55..200" doc:"From the slot edge to the top, plug excluded."`
	Thickness  unit.Figure[unit.Length]      `json:"thickness_mm,omitzero" range:"10..100" doc:"From the back of the card to the face of its cooler."`
	Slots      unit.Figure[unit.Whole]       `json:"bracket_slots,omitzero" range:"1..5" doc:"Bracket openings it takes."`
	Sockets    []Socket                      `json:"power_sockets,omitempty" doc:"Sockets the supply must feed."`
	PlugSide   string                        `json:"plug_side" pattern:"^(top|end|none)$" doc:"Where its power plug leaves: top (towards the side panel), end, none."`
	PlugRoom   unit.Figure[unit.Length]      `json:"plug_room_mm,omitzero" range:"0..90" doc:"Room the plug and its first bend need beyond the card."`
	Power      unit.Figure[unit.Power]       `json:"power_w,omitzero" range:"10..700" doc:"Sustained board power."`
	Peak       unit.Figure[unit.Power]       `json:"peak_w,omitzero" range:"10..2000" doc:"Measured peak over 100 µs, where the sheet states it; else the rule of its plug class holds."`
	Idle       unit.Figure[unit.Power]       `json:"idle_w,omitzero" range:"0..80" doc:"Draw at a still picture."`
	Advised    unit.Figure[unit.Power]       `json:"advised_supply_w,omitzero" range:"200..2000" doc:"Supply its maker advises."`
	Fans       unit.Figure[unit.Whole]       `json:"fans,omitzero" range:"0..4" doc:"Fans of its cooler; 0 where it is passive."`
	FanSpeed   unit.Figure[unit.Speed]       `json:"fan_rpm,omitzero" range:"0..5000" doc:"Full speed of those fans."`
	Sound      unit.Figure[unit.Sound]       `json:"sound_dba,omitzero" range:"0..60" doc:"Sound pressure at 1 m, full fan speed."`
	CoreFixed  unit.Figure[unit.Resistance]  `json:"core_fixed_k_w,omitzero" range:"0.01..2" doc:"Core to inlet air, the part that fan speed does not change."`
	CoreAir    unit.Figure[unit.Resistance]  `json:"core_air_k_w,omitzero" range:"0..2" doc:"Core to inlet air, the part that falls with fan speed, at full speed; 0 where the card is passive."`
	Limit      unit.Figure[unit.Temperature] `json:"limit_c,omitzero" range:"60..120" doc:"Core temperature it is held under."`
	Outputs    []Output                      `json:"outputs,omitempty" doc:"Display outputs."`
}
