package part

import "slipfit/core/unit"

// Calibration says how much work the activities of a brief are on the catalog's references. A shop that has measured its
// own machines puts its own figures here; nothing else in the program holds such a figure.
//
// 1000 work points are one thread of the reference core; 1000 graphics points are the reference card. A core second is a
// second of the reference core, a card second a second of the reference card: work of n core seconds takes n seconds at
// 1000 points. Pixels are counted in millions (Mpx) and thousands of millions (Gpx), whichever keeps the figure whole.
type Calibration struct {
	Core      string     `json:"core" doc:"Processor one thread of which is 1000 work points."`
	Card      string     `json:"card" doc:"Graphics card that is 1000 graphics points."`
	Tolerance unit.Share `json:"tolerance_percent" range:"1..90" doc:"How far a time told from these figures may be off, either way, for work like what was measured."`

	VideoPlay   unit.Points `json:"video_play_points_per_gpx_s" range:"1..1000000" doc:"Work points that read, scale and mix 10^9 pixels of camera video a second, 8 bits, on the processor."`
	VideoGrade  unit.Points `json:"video_grade_points_per_gpx_s" range:"1..1000000" doc:"Graphics points that grade 10^9 pixels a second with a few layers of correction."`
	VideoEncode unit.Points `json:"video_encode_points_per_gpx_s" range:"1..1000000" doc:"Work points that read, mix and write 10^9 pixels a second to a delivery format on the processor alone."`
	VideoEngine unit.Whole  `json:"video_engine_ms_per_gpx" range:"1..1000000" doc:"Milliseconds in which one hardware engine writes 10^9 pixels to a delivery format, whatever part it sits on. 2000, a picture of 2160 lines 60 times a second, is common practice."`

	GameDraw   unit.Points `json:"game_points_per_gpx_s" range:"1..1000000" doc:"Graphics points that draw 10^9 pixels a second of a demanding game."`
	GameLoop   unit.Points `json:"game_loop_points" range:"0..10000" doc:"One-thread points of a game's main loop, whatever the frame rate."`
	GameLoopHz unit.Points `json:"game_loop_points_per_100_hz" range:"0..10000" doc:"One-thread points more for every 100 pictures a second."`

	MatchCore unit.Whole `json:"match_core_ms_per_mpx" range:"1..1000000" doc:"Photogrammetry: milliseconds of the reference core for each million pixels of photographs."`
	MatchCard unit.Whole `json:"match_card_ms_per_mpx" range:"1..1000000" doc:"Photogrammetry: milliseconds of the reference card for each million pixels of photographs."`

	RenderCore unit.Whole `json:"render_core_s_per_gsample" range:"1..100000" doc:"Path tracing on the processor: core seconds for 10^9 samples."`
	RenderCard unit.Whole `json:"render_card_s_per_gsample" range:"1..100000" doc:"Path tracing on the card: card seconds for 10^9 samples."`

	DevelopCore unit.Whole  `json:"develop_core_ms_per_mpx" range:"1..100000" doc:"Photography: milliseconds of the reference core to develop and write out a million pixels of raw picture."`
	CompileCore unit.Whole  `json:"compile_core_ms_per_file" range:"1..1000000" doc:"Software: milliseconds of the reference core for one source file of ordinary compiled code."`
	PlugIn      unit.Whole  `json:"plug_in_milli_points" range:"1..1000000" doc:"Sound: thousandths of a work point that one ordinary plug-in takes at 48 kHz."`
	ScanCore    unit.Whole  `json:"scan_core_s_per_hour" range:"1..3600" doc:"Sound: core seconds to search an hour of one channel at 48 kHz for calls or words."`
	CellCore    unit.Whole  `json:"cell_core_ns" range:"1..10000" doc:"Statistics: nanoseconds of the reference core for one cell of a table in one pass of a model."`
	GuestPoints unit.Points `json:"guest_points_per_thread" range:"1..10000" doc:"Virtual machines: work points a busy guest's thread takes."`

	VideoParallel   unit.Share `json:"video_encode_parallel_percent" range:"0..100" doc:"Share of writing video that spreads over threads (Amdahl); the rest runs on one."`
	MatchParallel   unit.Share `json:"match_parallel_percent" range:"0..100" doc:"The same for photogrammetry on the processor."`
	RenderParallel  unit.Share `json:"render_parallel_percent" range:"0..100" doc:"The same for path tracing on the processor."`
	DevelopParallel unit.Share `json:"develop_parallel_percent" range:"0..100" doc:"The same for developing photographs."`
	CompileParallel unit.Share `json:"compile_parallel_percent" range:"0..100" doc:"The same for building software."`
	ScanParallel    unit.Share `json:"scan_parallel_percent" range:"0..100" doc:"The same for searching recordings."`
	CellParallel    unit.Share `json:"cell_parallel_percent" range:"0..100" doc:"The same for models of tables that use all threads."`

	Stream   unit.Share `json:"streaming_read_percent" range:"10..100" doc:"Share of a memory's peak bandwidth that streaming reads reach; 75 to 90 is common practice."`
	Practice unit.Share `json:"practice_tolerance_percent" range:"0..90" doc:"How far a figure of common practice (a sampled note is 64 KiB, a part 8 MiB) may be off, either way."`
}
