package brief

import (
	"slipfit/core/media"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// Live is sending pictures and sound live.
type Live struct {
	Width   unit.Figure[unit.Whole] `json:"width_px,omitzero" range:"640..7680" doc:"Picture width; 1920 where not said."`
	Height  unit.Figure[unit.Whole] `json:"height_px,omitzero" range:"360..4320" doc:"Picture height; 1080 where not said."`
	Rate    unit.Figure[unit.Whole] `json:"frames_s,omitzero" range:"15..120" doc:"Frames a second; 60 where not said."`
	Cameras unit.Figure[unit.Whole] `json:"cameras,omitzero" range:"0..16" doc:"Cameras at once; 1 where not said."`
	Kept    unit.Figure[unit.Whole] `json:"hours_kept,omitzero" range:"0..20000" doc:"Hours of recordings kept; 50 where not said."`
}

func (*Live) name() string { return "live" }

// ask turns a broadcast into needs. With p = width × height × frames a second, in 10^9 pixels a second: an engine writes the
// picture, and the processor mixes p × (1 + cameras) at a tenth of what writing it itself would take. What no engine keeps up
// with, the processor writes too.
//
// Sources: capture rate 50 Mbit/s at 1080p60, common practice, scaled by pixels; calibration block.
func (l *Live) ask(a *asker) {
	w := take(a, l.Width, "width_px", "picture width", 1920, 1920)
	h := take(a, l.Height, "height_px", "picture height", 1080, 1080)
	fps := take(a, l.Rate, "frames_s", "frames a second", 60, 60)
	cameras := take(a, l.Cameras, "cameras", "cameras", 1, 2)
	kept := take(a, l.Kept, "hours_kept", "hours kept", 50, 150)
	kpx := ceil(w*h*fps, 1000)
	mixing := ceil(kpx*(1+cameras)*int64(a.cal.VideoEncode), 10_000_000)
	threads, does := limit(AllWork, 0, mixing), "mixed"
	writing := ceil(kpx*int64(a.cal.VideoEncode), 1_000_000)
	if w*h <= part.CodecH264.LargestPicture() && kpx*int64(a.cal.VideoEngine) <= 1000*1_000_000 {
		a.writes(part.CodecH264, "the picture is written while it is sent")
		threads.Engine = &Engine{Codec: part.CodecH264, Writes: true, Without: mixing + writing}
	} else {
		threads.Moving, does = mixing+writing, "written on the processor, which no engine does so fast, and mixed"
	}
	a.need(AllWork, threads.Moving, threads.Moving+2*mixing, 30, "calibration block", "%d × %d × %d frames/s %s with %d cameras", w, h, fps, does, cameras)
	a.need(Threads, 4, 8, 15, practice, "mixing, sound and sending")
	a.need(DrawWork, ceil(kpx, 2000), ceil(kpx, 1000), 15, practice, "scenes are drawn together: half a point for every million pixels a second")
	a.pairs(2)
	a.need(MemorySize, int64(2*unit.GiB)+cameras*int64(unit.GiB)/2, int64(4*unit.GiB)+cameras*int64(unit.GiB), 15, practice, "2 GiB + half a GiB for each of %d cameras", cameras)
	a.need(GraphicsMemory, int64(unit.GiB), int64(2*unit.GiB), 10, practice, "1 GiB of pictures in flight")
	base, _ := media.FixedRateNamed("Screen or game capture 1080p60")
	bits := ceil(base.BitPerS*w*h*fps, 1920*1080*60)
	hourMB := ceil(media.BytesPerHour(bits), media.MB)
	a.need(BootSize, int64(10*unit.Gigabyte), int64(20*unit.Gigabyte), 5, practice, "10 GB for programs")
	a.need(CacheSize, 10*hourMB, 20*hourMB, 10, practice, "ten hours in hand × %s an hour", size(hourMB))
	a.need(CacheWrite, max(ceil(media.CaptureBytePerS(bits, 1+cameras), media.MB), 20), 100, 10, "rate × streams × 1.5: common practice", "%d Mbit/s × %d streams × 1.5", bits/1_000_000, 1+cameras)
	a.need(ArchiveSize, kept*hourMB, 2*kept*hourMB, 15, practice, "%d h × %s an hour", kept, size(hourMB))
	a.need(FastPorts, 1+cameras, 2+cameras, 15, practice, "%d cameras and a microphone", cameras)
	a.writesYearly(0, 52*a.hours*hourMB, 52*a.hours*hourMB)
	a.reach("pictures a second sent without dropping one", pictureUnit, fps, Calibrated, "calibration block",
		threads, limit(DrawWork, 0, ceil(kpx, 2000)))
	a.reach("hours of recordings the archive holds", hourUnit, kept, Practice, practice, limit(ArchiveSize, 0, kept*hourMB))
	a.window(Practice, practice, kept*hourMB, 52*a.hours*hourMB)
	a.load(30, 30, 20, 10)
}
