package part

import "slipfit/core/unit"

// Memory is a kit of one or more equal modules.
type Memory struct {
	Article
	Type    MemoryType                     `json:"type" doc:"Memory generation."`
	Modules unit.Figure[unit.Whole]        `json:"modules,omitzero" range:"1..8" doc:"Modules in the kit."`
	Module  unit.Figure[unit.Memory]       `json:"module_gib,omitzero" range:"1..256" doc:"Size of one module."`
	Speed   unit.Figure[unit.TransferRate] `json:"speed_mt_s,omitzero" range:"1600..10000" doc:"Fastest profile."`
	Latency unit.Figure[unit.Whole]        `json:"cas_latency,omitzero" range:"9..80" doc:"CAS latency at that profile, clocks."`
	ECC     unit.Figure[bool]              `json:"ecc,omitzero" doc:"Error-correcting module."`
	Height  unit.Figure[unit.Length]       `json:"height_mm,omitzero" range:"18..70" doc:"Module with its heat spreader."`
	Power   unit.Figure[unit.Power]        `json:"module_power_w,omitzero" range:"0.5..20" doc:"Draw of one module at work."`
	Form    string                         `json:"module_form" pattern:"^(udimm|so-dimm|rdimm)$" doc:"Module form: udimm, so-dimm, rdimm."`
}
