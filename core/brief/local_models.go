package brief

import (
	"slipfit/core/media"
	"slipfit/core/unit"
)

// LocalModels is running language models on the machine itself.
type LocalModels struct {
	Parameters unit.Figure[unit.Whole]   `json:"million_parameters,omitzero" range:"1..2000000" doc:"Parameters of the largest model, in millions; 8000 where not said."`
	Bits       unit.Figure[unit.Whole]   `json:"bits,omitzero" range:"2..32" doc:"Bits a weight: 16 as trained, 8 or 4 packed; 4 where not said."`
	Context    unit.Figure[unit.Whole]   `json:"context_tokens,omitzero" range:"256..2000000" doc:"Tokens of text held in mind; 8192 where not said."`
	Speed      unit.Figure[unit.Whole]   `json:"tokens_s,omitzero" range:"1..1000" doc:"Tokens a second wanted; 8, a reader's pace, where not said."`
	Runs       RunsOn                    `json:"runs_on,omitempty" doc:"card or memory: where its weights lie; the card where not said."`
	Kept       unit.Figure[unit.Storage] `json:"kept_gb,omitzero" range:"0..100000" doc:"Models kept on the drive; 200 GB where not said."`
}

// RunsOn is where a model's weights lie.
type RunsOn string

// Where weights lie.
const (
	RunsOnCard   RunsOn = "card"
	RunsOnMemory RunsOn = "memory"
)

// Values lists the accepted words.
func (RunsOn) Values() []string { return []string{"card", "memory"} }

func (*LocalModels) name() string { return "local models" }

// shape is the usual build of a model of a size: layers, key-value heads and their size. From memory of published model
// cards; a larger model never has a smaller one.
func shape(millions int64) (layers, heads, width int64) {
	switch {
	case millions <= 4_000:
		return 28, 8, 128
	case millions <= 10_000:
		return 32, 8, 128
	case millions <= 20_000:
		return 48, 8, 128
	case millions <= 40_000:
		return 64, 8, 128
	case millions <= 80_000:
		return 80, 8, 128
	}
	return 126, 8, 128
}

// ask turns a model into needs.
//
//	weights      parameters × bits / 8; four-bit weights carry their scales: 4.5 bits
//	context      2 × layers × key-value heads × head size × tokens × 2 bytes
//	card         weights + context, a fifth on top, at least 1 GB; 1 GiB for the desktop is the system's own
//	memory       the weights once more on their way to the card + 4 GiB; or weights + context + 8 GiB where they lie
//	             in memory
//	bandwidth    tokens a second × weights, of the card's memory or of main memory, wherever they lie: each token reads every
//	             weight once
//
// Sources: arithmetic of package media; a fifth on top is common practice.
func (m *LocalModels) ask(a *asker) {
	parameters := take(a, m.Parameters, "million_parameters", "parameters in millions", 8000, 14000)
	bits := take(a, m.Bits, "bits", "bits a weight", 4, 8)
	context := take(a, m.Context, "context_tokens", "tokens of context", 8192, 16384)
	speed := take(a, m.Speed, "tokens_s", "tokens a second", 8, 25)
	runs := takeWord(a, m.Runs, "runs_on", "where the weights lie", RunsOnCard, RunsOnCard)
	kept := take(a, m.Kept, "kept_gb", "models kept", 200*unit.Gigabyte, 500*unit.Gigabyte)
	milliBits := bits * 1000
	if bits == 4 {
		milliBits = 4500
	}
	weights := media.WeightBytes(parameters*1_000_000, milliBits)
	layers, heads, width := shape(parameters)
	cache := media.KVCacheBytes(layers, heads, width, context, 1, 2)
	total := ceil(media.InferenceBytes(weights, cache), media.MiB)
	weightMB := ceil(weights, media.MB)
	why := "%d million parameters × %d.%d bits = %d MB, %d tokens of context = %d MB, a fifth on top"
	args := []any{parameters, milliBits / 1000, milliBits % 1000 / 100, weightMB, context, ceil(cache, media.MB)}
	const once = "one reading of every weight a token; streaming reads reach a share of the peak: calibration block"
	own := int64(4 * unit.GiB)
	if runs == RunsOnMemory {
		own = int64(8 * unit.GiB)
	}
	if runs == RunsOnCard {
		a.need(GraphicsMemory, total, total+total/2, 70, "arithmetic of weights and of the key and value cache", why, args...)
		a.need(GraphicsRate, a.streamed(speed*weightMB), a.streamed(2*speed*weightMB), 50, once,
			"%d tokens/s × %d MB of weights, at %s of the peak", speed, weightMB, a.cal.Stream.Q())
		a.need(ComputeWork, 800, 2000, 40, practice, "a prompt is read in seconds")
		a.need(MemorySize, int64(4*unit.GiB)+ceil(weights, media.MiB), int64(8*unit.GiB)+ceil(2*weights, media.MiB), 30, practice,
			"weights of %d MB are read in through memory + 4 GiB", weightMB)
		a.need(AllWork, 4000, 8000, 10, practice, "text is taken apart and put together beside the card")
		a.need(Threads, 6, 12, 10, practice, "a few threads feed the card")
		a.load(20, 90, 40, 5)
	} else {
		a.need(MemorySize, int64(8*unit.GiB)+total, int64(8*unit.GiB)+2*total, 70, "arithmetic of weights and of the key and value cache", why+" + 8 GiB", args...)
		a.need(MemoryRate, a.streamed(speed*weightMB), a.streamed(2*speed*weightMB), 60, once,
			"%d tokens/s × %d MB of weights, at %s of the peak", speed, weightMB, a.cal.Stream.Q())
		a.need(AllWork, 9000, 20000, 40, practice, "a prompt is read in on the processor")
		a.need(Threads, 12, 16, 20, practice, "as many threads as fill the memory's bandwidth")
		a.load(90, 5, 100, 5)
	}
	a.pairs(4)
	a.need(SingleWork, 1100, 1500, 10, practice, "tokens are handed over one at a time")
	a.need(BootSize, int64(40*unit.Gigabyte)+kept, int64(60*unit.Gigabyte)+2*kept, 15, practice, "40 GB for programs and %s of models", size(kept))
	a.need(BootRead, max(ceil(weightMB, 20), 500), max(ceil(weightMB, 4), 3000), 15, practice, "weights of %d MB are loaded in 20 s", weightMB)
	a.writesYearly(5*kept, 0, 0)
	a.mode(2560, 1440, 60, 8)
	if a.cal.Stream > 0 {
		a.aim(Aim{What: "text written by the model", Unit: tokenUnit, Want: speed * 1000, Basis: Calibrated, Source: once, Usual: Law{Tokens: &Tokens{
			WeightMB: weightMB, CacheMiB: total - ceil(weights, media.MiB), MemoryFixed: own, OnCard: runs == RunsOnCard, Stream: a.cal.Stream}}})
	}
	a.work("the model loaded from the drive", waitUnit, 20_000, Arithmetic, "arithmetic", Job{MoveMB: weightMB, Over: BootRead})
}
