package part

import "slipfit/core/unit"

// Drive is a storage drive.
type Drive struct {
	Article
	Form      DriveForm                     `json:"form" doc:"m.2, 2.5 or 3.5."`
	Bus       BusKind                       `json:"bus" doc:"pcie or sata."`
	Disk      bool                          `json:"disk,omitzero" doc:"Turning disks; otherwise solid state."`
	Capacity  unit.Figure[unit.Storage]     `json:"capacity_gb,omitzero" range:"16..100000" doc:"Capacity, decimal."`
	Module    unit.Figure[unit.Whole]       `json:"module_length,omitzero" range:"30..110" doc:"For m.2: 30, 42, 60, 80, 110."`
	Above     unit.Figure[unit.Length]      `json:"height_above_mm,omitzero" range:"0.5..30" doc:"For m.2: height above the module board, own heat-sink included."`
	TwoSided  unit.Figure[bool]             `json:"two_sided,omitzero" doc:"For m.2: chips on both sides."`
	Sink      unit.Figure[bool]             `json:"own_heat_sink,omitzero" doc:"For m.2: comes with a heat-sink of its own."`
	Height    unit.Figure[unit.Length]      `json:"height_mm,omitzero" range:"5..45" doc:"For 2.5 and 3.5: height of the drive."`
	PCIe      unit.Figure[unit.Release]     `json:"pcie,omitzero" range:"1..7" doc:"PCIe generation."`
	Lanes     unit.Figure[unit.Whole]       `json:"lanes,omitzero" range:"1..4" doc:"PCIe lanes."`
	Read      unit.Figure[unit.Throughput]  `json:"read_mb_s,omitzero" range:"20..20000" doc:"Sustained sequential read."`
	Write     unit.Figure[unit.Throughput]  `json:"write_mb_s,omitzero" range:"20..20000" doc:"Sequential write at its best."`
	Held      unit.Figure[unit.Throughput]  `json:"write_held_mb_s,omitzero" range:"20..20000" doc:"Sequential write once its fast cache is full."`
	Endures   unit.Figure[unit.Endurance]   `json:"endurance_tbw,omitzero" range:"10..50000" doc:"Terabytes written, after JESD218; left out for disks."`
	Power     unit.Figure[unit.Power]       `json:"power_w,omitzero" range:"0.5..20" doc:"At work."`
	Idle      unit.Figure[unit.Power]       `json:"idle_w,omitzero" range:"0.01..12" doc:"At rest."`
	SpinUp    unit.Figure[unit.Current]     `json:"spin_up_a,omitzero" range:"0..5" doc:"12 V current while starting; 0 for solid state."`
	Sound     unit.Figure[unit.Sound]       `json:"sound_dba,omitzero" range:"0..45" doc:"Sound pressure at 1 m, seeking; 0 for solid state."`
	SinkAir   unit.Figure[unit.Resistance]  `json:"sink_k_w,omitzero" range:"0.5..40" doc:"Controller to air with the sink it is used under."`
	Limit     unit.Figure[unit.Temperature] `json:"limit_c,omitzero" range:"40..110" doc:"Temperature at which it slows or must stop."`
	ErrorBits unit.Figure[unit.Whole]       `json:"error_bits_exponent,omitzero" range:"13..18" doc:"Unrecoverable read errors: one in ten to this power bits."`
}

// DriveForm is a drive form factor.
type DriveForm string

// Drive forms.
const (
	FormM2 DriveForm = "m.2"
	Form25 DriveForm = "2.5"
	Form35 DriveForm = "3.5"
)

// Values lists the accepted words.
func (DriveForm) Values() []string { return []string{"m.2", "2.5", "3.5"} }
