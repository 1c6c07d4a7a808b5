package brief

import (
	"fmt"

	"slipfit/core/media"
	"slipfit/core/unit"
)

// Sound is recording, mixing and searching sound, and making music.
type Sound struct {
	Tracks    unit.Figure[unit.Whole]   `json:"tracks,omitzero" range:"0..1000" doc:"Tracks of a mix; 24 where not said."`
	PlugIns   unit.Figure[unit.Whole]   `json:"plug_ins_a_track,omitzero" range:"0..50" doc:"Plug-ins on a track; 4 where not said."`
	Weight    PlugInWeight              `json:"plug_ins,omitempty" doc:"light, ordinary or heavy (modelled instruments, long reverberation)."`
	Buffer    unit.Figure[unit.Whole]   `json:"buffer_frames,omitzero" range:"16..4096" doc:"Buffer in frames; 128 where not said: smaller answers sooner and asks more."`
	Rate      unit.Figure[unit.Whole]   `json:"sample_hz,omitzero" range:"8000..768000" doc:"Sample rate; 48000 where not said."`
	Libraries unit.Figure[unit.Storage] `json:"libraries_gb,omitzero" range:"0..20000" doc:"Sample libraries; 100 GB where not said."`
	Zones     unit.Figure[unit.Whole]   `json:"zones,omitzero" range:"0..1000000" doc:"Sampled notes held ready at once; 200 a gigabyte of libraries and at least 20000 where not said."`
	Channels  unit.Figure[unit.Whole]   `json:"channels_recorded,omitzero" range:"0..256" doc:"Channels recorded at once; 8 where not said."`
	Kept      unit.Figure[unit.Whole]   `json:"hours_kept,omitzero" range:"0..1000000" doc:"Hours of recordings kept; 200 where not said."`
	Search    unit.Figure[unit.Whole]   `json:"search_hours_week,omitzero" range:"0..10000" doc:"Hours of recordings searched a week for calls or words; none where not said."`
}

// PlugInWeight is how much work a plug-in is.
type PlugInWeight string

// Weights of plug-ins.
const (
	PlugInLight    PlugInWeight = "light"
	PlugInOrdinary PlugInWeight = "ordinary"
	PlugInHeavy    PlugInWeight = "heavy"
)

// Values lists the accepted words.
func (PlugInWeight) Values() []string { return []string{"light", "ordinary", "heavy"} }

func (*Sound) name() string { return "sound" }

// bitsPerSample and bytesPerSample of recordings: 24 bits, kept in three bytes.
const bitsPerSample = 24

// notesPerGigabyte is the sampled notes that a gigabyte of libraries holds ready in a large piece, where it is not said. Common
// practice: composers who own two or three terabytes of instruments work with 64 GB of memory.
const notesPerGigabyte = 200

// ask turns a mix and recordings into needs. With f = sample rate / 48 kHz:
//
//	all-thread work   tracks × plug-ins × plug_in × (0.3 light, 1 ordinary, 4 heavy) × f × (1 + 64/buffer), and the same again
//	                  kept free, since a dropped buffer is heard
//	one thread        1200 + a track's plug-ins as above: one track's chain cannot be shared out
//	memory            zones × 64 KiB + 6 GiB
//	boot reading      libraries stream from the drive while they play
//	archive           hours × channels × sample rate × 24 bits
//	search            hours × channels × scan_core × f, in one night of ten hours a week
//
// Sources: PCM arithmetic, IEC 60958 and AES3 rates; preload as package media gives it; the rest calibration block.
func (s *Sound) ask(a *asker) {
	tracks := take(a, s.Tracks, "tracks", "tracks", 24, 48)
	plugIns := take(a, s.PlugIns, "plug_ins_a_track", "plug-ins on a track", 4, 8)
	weight := takeWord(a, s.Weight, "plug_ins", "weight of plug-ins", PlugInOrdinary, PlugInOrdinary)
	buffer := take(a, s.Buffer, "buffer_frames", "buffer", 128, 64)
	rate := take(a, s.Rate, "sample_hz", "sample rate", 48000, 48000)
	libraries := take(a, s.Libraries, "libraries_gb", "sample libraries", 100*unit.Gigabyte, 500*unit.Gigabyte)
	ready := notesPerGigabyte * unit.Whole(s.Libraries.Or(0)/unit.Gigabyte)
	zones := take(a, s.Zones, "zones", "sampled notes held ready", max(20000, ready), max(60000, ready))
	channels := take(a, s.Channels, "channels_recorded", "channels recorded at once", 8, 16)
	kept := take(a, s.Kept, "hours_kept", "hours of recordings kept", 200, 300)
	search := int64(s.Search.Or(0))

	permille := map[PlugInWeight]int64{PlugInLight: 300, PlugInOrdinary: 1000, PlugInHeavy: 4000}[weight]
	chain := ceil(plugIns*int64(a.cal.PlugIn)*permille, 1_000_000) // points of one track at 48 kHz
	chain = ceil(chain*rate*(buffer+64), 48000*buffer)
	mix := 2 * tracks * chain
	a.need(AllWork, mix, 2*mix, 50, "calibration block", "%d tracks × %d %s plug-ins at %d Hz with a buffer of %d frames, %.1f ms there and back, and as much kept free",
		tracks, plugIns, weight, rate, buffer, float64(media.BufferRoundTripUS(buffer, rate))/1000)
	a.need(SingleWork, 1100+chain, 1500+2*chain, 60, "calibration block", "one track's %d plug-ins cannot be shared out: 1100 + %d points", plugIns, chain)
	a.need(Threads, 8, 16, 20, practice, "tracks are worked side by side")
	memory := int64(6*unit.GiB) + ceil(media.PreloadBytes(zones, media.UsualPreloadBytes), media.MiB)
	a.pairs(2)
	a.need(MemorySize, memory, 2*memory, 40, practice, "%d sampled notes × 64 KiB + 6 GiB", zones)
	a.need(DrawWork, 40, 100, 5, practice, "meters and waves are drawn")
	a.need(BootSize, int64(40*unit.Gigabyte)+libraries, int64(80*unit.Gigabyte)+ceil(libraries*3, 2), 20, practice,
		"40 GB for programs and %s of sample libraries, which stream while they play", size(libraries))
	a.need(BootRead, 500, 3000, 10, practice, "sampled notes stream while they play")
	bits := media.PCMBitPerS(rate, bitsPerSample, max(channels, 1))
	hourMB := ceil(media.BytesPerHour(bits), media.MB)
	a.need(CacheSize, 40*hourMB, 100*hourMB, 10, practice, "40 h in hand × %d channels × %d Hz × 24 bits = %s an hour", channels, rate, size(hourMB))
	a.need(CacheWrite, max(ceil(media.CaptureBytePerS(bits, 1), media.MB), 50), 200, 5, practice, "%d channels are recorded × 1.5", channels)
	a.need(ArchiveSize, kept*hourMB, ceil(kept*hourMB*3, 2), 25, "IEC 60958, AES3", "%d h × %d channels × %d Hz × 24 bits", kept, channels, rate)
	a.need(ArchiveWrite, 40, 150, 5, practice, "a session is put away in minutes")
	a.need(FastPorts, 2, 3, 10, practice, "a sound interface and a drive")
	if search > 0 {
		core := ceil(search*channels*int64(a.cal.ScanCore)*1000*rate, 48000)
		const night = 10 * 3600
		a.need(SingleWork, 1200, 1500, 10, practice, "what of a search cannot be shared out")
		a.need(AllWork, allPoints(core, a.cal.ScanParallel, night, 1200), enoughPoints(core, a.cal.ScanParallel, night/4, 1500), 40, "Amdahl 1967; calibration block",
			"%d h × %d channels at %d Hz searched in a night of ten hours", search, channels, rate)
		a.job(fmt.Sprintf("a week's %d hours of recordings searched", search), night/60, Job{CoreMS: core, Parallel: a.cal.ScanParallel})
	}
	a.writesYearly(int64(unit.Terabyte), 52*max(a.hours, 1)*hourMB, 52*max(a.hours, 1)*hourMB)
	a.load(40, 5, 40, 10)
	a.mode(1920, 1080, 60, 8)
	a.reach("tracks of a mix played without a dropped buffer", trackUnit, tracks, Calibrated, "calibration block", limit(AllWork, 0, mix))
	a.reach("plug-ins on one track", plugInUnit, plugIns, Calibrated, "calibration block", limit(SingleWork, 1100, chain))
	a.reach("sampled notes held ready", noteUnit, zones, Practice, practice, limit(MemorySize, int64(6*unit.GiB), memory-int64(6*unit.GiB)))
	a.reach("hours of recordings the archive holds", hourUnit, kept, Arithmetic, "IEC 60958, AES3", limit(ArchiveSize, 0, kept*hourMB))
	a.window(Arithmetic, "IEC 60958, AES3", kept*hourMB, 52*max(a.hours, 1)*hourMB)
}
