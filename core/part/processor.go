package part

import "slipfit/core/unit"

// Processor is a central processor.
type Processor struct {
	Article
	Socket    string                        `json:"socket" doc:"Socket it fits."`
	Platforms []Platform                    `json:"platforms" min:"1" doc:"Chipsets that run it, each from a firmware version on."`
	Cores     unit.Figure[unit.Whole]       `json:"cores,omitzero" range:"1..128" doc:"Cores."`
	Threads   unit.Figure[unit.Whole]       `json:"threads,omitzero" range:"1..256" doc:"Threads."`
	Single    unit.Figure[unit.Points]      `json:"single_points,omitzero" range:"1..100000" doc:"One-thread work in the catalog's work points."`
	All       unit.Figure[unit.Points]      `json:"all_points,omitzero" range:"1..1000000" doc:"All-thread work in the same points, at sustained power."`
	TDP       unit.Figure[unit.Power]       `json:"tdp_w,omitzero" range:"5..400" doc:"Thermal design power."`
	Sustained unit.Figure[unit.Power]       `json:"sustained_w,omitzero" range:"5..500" doc:"Power it may draw without end at full work."`
	Boost     unit.Figure[unit.Power]       `json:"boost_w,omitzero" range:"5..600" doc:"Power it may draw for more than a second; the most a board must carry."`
	Idle      unit.Figure[unit.Power]       `json:"idle_w,omitzero" range:"1..80" doc:"Draw with nothing to do."`
	Limit     unit.Figure[unit.Temperature] `json:"limit_c,omitzero" range:"60..120" doc:"Temperature at which it slows itself."`
	Spread    unit.Figure[unit.Resistance]  `json:"junction_to_lid_k_w,omitzero" range:"0.02..1" doc:"Thermal resistance from junction to lid."`
	Lid       unit.Figure[unit.Whole]       `json:"lid_mm2,omitzero" range:"100..6000" doc:"Lid area under the cooler, square millimetres."`

	Memory   []MemoryRate              `json:"memory" min:"1" doc:"Memory it drives, with the rate for one and two modules a channel."`
	MemoryTo unit.Figure[unit.Memory]  `json:"memory_limit_gib,omitzero" range:"8..2048" doc:"Most memory in all."`
	ECC      unit.Figure[bool]         `json:"ecc,omitzero" doc:"Whether it runs error-correcting memory."`
	Channels unit.Figure[unit.Whole]   `json:"channels,omitzero" range:"1..8" doc:"Memory channels."`
	Lanes    unit.Figure[unit.Whole]   `json:"lanes,omitzero" range:"4..128" doc:"PCIe lanes for slots and storage."`
	PCIe     unit.Figure[unit.Release] `json:"pcie,omitzero" range:"1..7" doc:"PCIe generation of those lanes."`
	Graphics *Engine                   `json:"graphics,omitzero" doc:"Graphics on the processor; left out where it has none."`
	Cooler   bool                      `json:"cooler_included,omitzero" doc:"Whether a cooler comes in the box."`
	Accuracy []string                  `json:"instructions,omitempty" doc:"Wide-vector instruction sets programs ask for, by their generic names."`
}

// Platform is a chipset that runs a processor.
type Platform struct {
	Chipset  string                    `json:"chipset" doc:"Chipset."`
	Firmware unit.Figure[unit.Release] `json:"firmware,omitzero" range:"0..99" doc:"Earliest board firmware that knows the processor."`
}

// MemoryRate is how fast a processor drives one generation of memory.
type MemoryRate struct {
	Type MemoryType                     `json:"type" doc:"Memory generation."`
	One  unit.Figure[unit.TransferRate] `json:"one_mt_s,omitzero" range:"1600..10000" doc:"One module a channel."`
	Two  unit.Figure[unit.TransferRate] `json:"two_mt_s,omitzero" range:"1600..10000" doc:"Two modules a channel."`
}

// Engine is a graphics engine: on a card or on a processor.
type Engine struct {
	Draw    unit.Figure[unit.Points] `json:"draw_points,omitzero" range:"1..1000000" doc:"Picture work in the catalog's graphics points."`
	Compute unit.Figure[unit.Points] `json:"compute_points,omitzero" range:"1..1000000" doc:"Compute work in the catalog's graphics points."`
	Decode  []Codec                  `json:"decode,omitempty" doc:"Video formats decoded in hardware."`
	Encode  []Codec                  `json:"encode,omitempty" doc:"Video formats encoded in hardware."`
	Engines unit.Figure[unit.Whole]  `json:"encode_engines,omitzero" range:"0..8" doc:"Encoding engines that run at once."`
	Screens unit.Figure[unit.Whole]  `json:"screens,omitzero" range:"1..8" doc:"Screens driven at once."`
}

// Codec is a video format, by its open standard.
type Codec string

// Video formats.
const (
	CodecH264    Codec = "h264-8bit-420"
	CodecH264422 Codec = "h264-10bit-422"
	CodecHEVC    Codec = "h265-10bit-420"
	CodecHEVC422 Codec = "h265-10bit-422"
	CodecAV1     Codec = "av1-10bit-420"
)

// LargestPicture is the most pixels of a picture that engines write in a format: what its highest common level allows.
//
// Source: ITU-T H.264 Table A-1, level 5.2, 36 864 macroblocks of 256; ITU-T H.265 Table A.8, level 6.2, and the AV1 bitstream
// specification, Annex A, level 6.3; all from memory. That engines go up to these levels is common practice.
func (c Codec) LargestPicture() int64 {
	if c == CodecH264 || c == CodecH264422 {
		return 36_864 * 256
	}
	return 35_651_584
}

// Values lists the accepted words.
func (Codec) Values() []string {
	return []string{"h264-8bit-420", "h264-10bit-422", "h265-10bit-420", "h265-10bit-422", "av1-10bit-420"}
}
