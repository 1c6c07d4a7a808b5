package brief

import (
	"slipfit/core/media"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// Video is cutting and grading video.
type Video struct {
	Format  Footage                    `json:"format,omitempty" doc:"How the camera records; the commonest ten-bit camera format where not said."`
	Width   unit.Figure[unit.Whole]    `json:"width_px,omitzero" range:"640..16384" doc:"Picture width; 3840 where not said."`
	Height  unit.Figure[unit.Whole]    `json:"height_px,omitzero" range:"480..8640" doc:"Picture height; 2160 where not said."`
	Rate    unit.Figure[unit.Whole]    `json:"frames_s,omitzero" range:"12..240" doc:"Frames a second; 25 where not said."`
	Stated  unit.Figure[unit.LinkRate] `json:"camera_mbit_s,omitzero" range:"1..20000" doc:"Bit rate of the camera, where its sheet gives it."`
	Streams unit.Figure[unit.Whole]    `json:"streams,omitzero" range:"1..16" doc:"Streams played at once: angles, layers; 2 where not said."`
	Level   Finish                     `json:"finish,omitempty" doc:"cuts, grade or effects."`
	Out     part.Codec                 `json:"delivers,omitempty" doc:"Format the finished film is written in; the commonest eight-bit format where not said."`
	Kept    unit.Figure[unit.Whole]    `json:"hours_kept,omitzero" range:"0..20000" doc:"Hours of footage kept; 20 where not said."`
	InHand  unit.Figure[unit.Whole]    `json:"hours_in_hand,omitzero" range:"0..2000" doc:"Hours of footage of the jobs in hand; 4 where not said."`
	New     unit.Figure[unit.Whole]    `json:"new_hours_week,omitzero" range:"0..500" doc:"Hours of footage that come in a week; 2 where not said."`
}

// Footage is how a camera or recorder writes video, by its open standard.
type Footage string

// Recording formats.
const (
	FootageH264    Footage = "h264-8bit-420"  // long groups of pictures, ITU-T H.264
	FootageHEVC    Footage = "h265-10bit-420" // long groups of pictures, ITU-T H.265
	FootageHEVC422 Footage = "h265-10bit-422" // the same with full colour lines
	FootageIntra   Footage = "h264-10bit-422" // every picture for itself
	FootageVC3     Footage = "vc-3-high"      // SMPTE ST 2019-1, an editing format
	FootageUncoded Footage = "uncompressed-10bit-422"
)

// Values lists the accepted words.
func (Footage) Values() []string {
	return []string{"h264-8bit-420", "h265-10bit-420", "h265-10bit-422", "h264-10bit-422", "vc-3-high", "uncompressed-10bit-422"}
}

// Finish is how far the picture is worked on.
type Finish string

// Finishes: cuts alone, graded colour, effects in layers.
const (
	Cuts    Finish = "cuts"
	Grade   Finish = "grade"
	Effects Finish = "effects"
)

// Values lists the accepted words.
func (Finish) Values() []string { return []string{"cuts", "grade", "effects"} }

// exportWait is how many minutes ten minutes of programme may take to be written out. Common practice.
const exportWait = 30

// lightPlaying is the points of footage up to which eight threads play and write previews side by side: two streams of 1080 lines,
// not one of 2160 at 25 frames. Common practice: six cores for the first, eight and more for the second.
const lightPlaying = 3500

func (*Video) name() string { return "video" }

// bitPerS is the bit rate of footage. Camera formats have no rate in a standard: the classes of common practice are scaled by
// the pixels a second. Ten-bit long-group cameras write half of their rate whatever the frame rate, so 200 Mbit/s at 60 frames
// of 2160 lines become 150 at 30; with half the colour lines three quarters of it. VC-3 goes by the pixels of a frame;
// uncompressed is computed.
func (f Footage) bitPerS(width, height, rate int64) int64 {
	pixels := width * height
	scaled := func(name string, w, h, fps int64) int64 {
		base, _ := media.FixedRateNamed(name)
		return ceil(base.BitPerS*pixels*rate, w*h*fps)
	}
	switch f {
	case FootageH264:
		return scaled("Camera long-GOP 2160p30 8-bit 4:2:0", 3840, 2160, 30)
	case FootageHEVC, FootageHEVC422:
		base, _ := media.FixedRateNamed("Camera long-GOP 2160p60 10-bit 4:2:2")
		full := ceil(base.BitPerS*pixels*(60+rate), 3840*2160*120)
		if f == FootageHEVC {
			return ceil(full*3, 4)
		}
		return full
	case FootageIntra:
		return scaled("Camera all-intra 2160p30 10-bit 4:2:2", 3840, 2160, 30)
	case FootageVC3:
		frame, _ := media.VC3FrameBytes(1235)
		return media.WholeRate(rate).BitPerS(ceil(frame*8*pixels, 1920*1080))
	}
	return media.WholeRate(rate).BitPerS(media.PictureBits(width, height, 20))
}

// codec is the hardware engine that reads the format; none is needed for editing formats.
func (f Footage) codec() (part.Codec, bool) {
	switch f {
	case FootageH264:
		return part.CodecH264, true
	case FootageHEVC:
		return part.CodecHEVC, true
	case FootageHEVC422:
		return part.CodecHEVC422, true
	}
	return "", false
}

// playing is what reading and mixing footage takes of the processor, from what eight bits would take of it without an engine: a
// quarter more for ten bits, and three quarters of that where an engine reads the format.
func (f Footage) playing(work int64) (cost int64, reading *Engine) {
	if f.deep() {
		work = ceil(work*5, 4)
	}
	if codec, ok := f.codec(); ok {
		return ceil(work*3, 4), &Engine{Codec: codec, Without: work}
	}
	return work, nil
}

// deep reports ten bits a colour.
func (f Footage) deep() bool { return f != FootageH264 }

// finishing is what a finish costs: share of the calibration's grade, seconds of finished picture held in memory, graphics
// memory per pixel of a layer.
type finishing struct{ gradePermille, cacheS, layers int64 }

func (f Finish) cost() finishing {
	switch f {
	case Cuts:
		return finishing{300, 5, 6}
	case Grade:
		return finishing{1000, 20, 20}
	}
	return finishing{2500, 30, 40}
}

// ask turns footage into needs. With p = width × height × frames a second × streams, in 10^9 pixels a second:
//
//	all-thread work   p × video_play (× 1.25 for ten bits); three quarters of it where an engine reads the format
//	export            ten minutes of programme in half an hour, read and encoded on all threads while the card grades; where an
//	                  engine writes the format at that size, the threads only read, and the engine takes video_engine
//	computing         p × video_grade × (0.3 cuts, 1 grade, 2.5 effects)
//	memory            seconds of finished picture held (5, 20, 30) × frame at 8 bytes a pixel + half a second of every stream + 6 GiB
//	graphics memory   1 GiB + layers (6, 20, 40) × streams, of which the finished picture is one, so two at least, × frame at 16
//	                  bytes a pixel (float)
//	cache             footage in hand, and as much again for previews
//	archive           footage kept; with a month's new footage it is enough
//	cache writing     bit rate × streams × 1.5, and more than a disk does
//	archive writing   a day's footage copied in an hour
//
// Sources: rates as in package media; held frames, layers and previews: common practice.
func (v *Video) ask(a *asker) {
	format := takeWord(a, v.Format, "format", "camera format", FootageHEVC, FootageHEVC422)
	w := take(a, v.Width, "width_px", "picture width", 3840, 3840)
	h := take(a, v.Height, "height_px", "picture height", 2160, 2160)
	fps := take(a, v.Rate, "frames_s", "frames a second", 25, 50)
	streams := take(a, v.Streams, "streams", "streams at once", 2, 3)
	level := takeWord(a, v.Level, "finish", "finish", Grade, Grade)
	out := takeWord(a, v.Out, "delivers", "format of the finished film", part.CodecH264, part.CodecHEVC)
	kept := take(a, v.Kept, "hours_kept", "hours of footage kept", 20, 60)
	inHand := take(a, v.InHand, "hours_in_hand", "hours of footage in hand", 4, 8)
	fresh := take(a, v.New, "new_hours_week", "new hours a week", 2, 5)
	bits := format.bitPerS(w, h, fps)
	how := string(format)
	if stated, ok := v.Stated.Get(); ok {
		bits, how = int64(stated)*1_000_000, "the camera"
	}
	hourMB := ceil(media.BytesPerHour(bits), media.MB)
	cost := level.cost()

	// pixels a second, in thousands
	kpx := ceil(w*h*fps*streams, 1000)
	play, player := format.playing(ceil(kpx*int64(a.cal.VideoPlay), 1_000_000))
	said := "played on the processor"
	if player != nil {
		a.reads(player.Codec, "the camera's footage is played while it is cut")
		said = "three quarters of it, since an engine reads the format"
	}
	a.need(AllWork, play, 2*play, 60, "calibration block", "%d × %d × %d frames/s × %d streams = %d million pixels a second, %s", w, h, fps, streams, kpx/1000, said)
	threads := int64(8)
	if play > lightPlaying {
		threads = 12
	}
	a.need(Threads, threads, threads+8, 20, practice, "playing, decoding and writing previews go on side by side")
	a.need(SingleWork, 1200, 1700, 20, practice, "the timeline answers while it plays")
	grade := ceil(kpx*int64(a.cal.VideoGrade)*cost.gradePermille, 1_000_000_000)
	a.need(ComputeWork, grade, 2*grade, 50, "calibration block", "%d million pixels a second with %s", kpx/1000, level)
	programme := ceil(w*h*fps*600, 1_000_000) // millions of pixels of ten minutes
	export, colour := ceil(programme*int64(a.cal.VideoEncode), 1000), ceil(ceil(programme*int64(a.cal.VideoGrade), 1000)*cost.gradePermille, 1000)
	a.need(AllWork, allPoints(export, a.cal.VideoParallel, exportWait*60, 1200), 0, 60, "Amdahl 1967; calibration block",
		"ten minutes of %d × %d × %d frames/s written out in %d minutes", w, h, fps, exportWait)
	a.need(ComputeWork, ceil(colour, exportWait*60), 0, 50, "calibration block", "ten minutes graded in %d minutes", exportWait)
	a.need(DrawWork, 150, 400, 10, practice, "the finished picture is shown while it plays")

	frame := media.RasterBytes(w, h, 8)
	held := media.FrameCacheBytes(w, h, 8, media.WholeRate(fps), cost.cacheS)
	ahead := frame * ceil(fps, 2) * streams
	heldMiB, aheadMiB := ceil(held, media.MiB), ceil(ahead, media.MiB)
	memory := int64(6*unit.GiB) + heldMiB + aheadMiB
	a.pairs(2)
	a.need(MemorySize, memory, memory+heldMiB/4, 50, practice,
		"%d s of finished picture × %d frames/s × %d MB + half a second of %d streams + 6 GiB for the program", cost.cacheS, fps, ceil(frame, media.MB), streams)
	layers := ceil(media.RasterBytes(w, h, 16)*cost.layers*max(streams, 2), media.MiB)
	a.need(GraphicsMemory, int64(unit.GiB)+layers, int64(unit.GiB)+2*layers, 40, practice,
		"%d layers of %d streams at 16 bytes a pixel + 1 GiB", cost.layers, max(streams, 2))
	a.need(MemoryRate, 30_000, 60_000, 10, practice, "frames pass through memory several times")

	a.need(BootSize, int64(120*unit.Gigabyte), int64(200*unit.Gigabyte), 10, practice, "120 GB for editing programs, fonts and effects")
	a.need(CacheSize, 2*inHand*hourMB, ceil(5*inHand*hourMB, 2), 30, practice,
		"%d h in hand × %s an hour (%d Mbit/s, %s), and as much again for previews", inHand, size(hourMB), bits/1_000_000, how)
	write := ceil(media.CaptureBytePerS(bits, streams), media.MB)
	a.need(CacheWrite, write, 4*write, 20, "rate × streams × 1.5: common practice", "%d Mbit/s × %d streams × 1.5", bits/1_000_000, streams)
	a.need(CacheWrite, hither, 1000, 20, practice, "streams are read while previews are written, which no disk keeps up with")
	a.need(ArchiveSize, kept*hourMB, kept*hourMB+tidied*fresh*hourMB, 30, "as package media computes rates",
		"%d h kept × %s an hour", kept, size(hourMB))
	daily := ceil(fresh*hourMB, 5)
	copying := ceil(daily, 3600)
	a.need(ArchiveWrite, copying, max(2*copying, 120), 10, practice, "a day's footage, %s, is put away in an hour", size(daily))
	a.need(FastPorts, 2, 4, 10, practice, "a card reader and a drive that comes with the job")
	a.writesYearly(0, 52*fresh*hourMB*2, 52*fresh*hourMB)
	a.load(60, 60, 70, 40)

	bitsPerColour := 8
	if level != Cuts && format.deep() {
		bitsPerColour = 10
	}
	a.mode(3840, 2160, 60, bitsPerColour)
	playing := limit(AllWork, 0, play)
	playing.Engine = player
	a.reach("streams played at once without dropping pictures", streamUnit, streams, Calibrated, "calibration block; rate × streams × 1.5: common practice",
		playing, limit(ComputeWork, 0, grade), limit(GraphicsMemory, int64(unit.GiB), layers), limit(MemorySize, memory-aheadMiB, aheadMiB), limit(CacheWrite, 0, write))
	a.reach("seconds of finished picture held ready", secondUnit, cost.cacheS, Arithmetic, "bytes of a picture", limit(MemorySize, memory-heldMiB, heldMiB))
	job := Job{CoreMS: export, Parallel: a.cal.VideoParallel, CardMS: colour, Beside: true}
	if w*h <= out.LargestPicture() {
		read, reader := format.playing(ceil(programme*int64(a.cal.VideoPlay), 1000))
		job.Writing = &Writing{Codec: out, EngineMS: ceil(programme*int64(a.cal.VideoEngine), 1000), CoreMS: read, Reading: reader}
	}
	a.job("ten minutes of programme written out", exportWait, job)
	rates := Practice // a camera's rate has no standard
	if format == FootageVC3 || format == FootageUncoded || how == "the camera" {
		rates = Arithmetic
	}
	a.reach("hours of footage in hand, with their previews", hourUnit, inHand, rates, "as package media computes rates", limit(CacheSize, 0, 2*inHand*hourMB))
	a.reach("hours of footage the archive holds", hourUnit, kept, rates, "as package media computes rates", limit(ArchiveSize, 0, kept*hourMB))
	a.window(rates, "as package media computes rates", kept*hourMB, 52*fresh*hourMB)
}
