package outcome

import (
	"fmt"
	"math"
	"slices"

	"slipfit/core/part"
	"slipfit/core/unit"
)

// Measurement is one measurement of a machine: how much work it did in how long, or how much it kept up with.
type Measurement struct {
	Line     int     // in the file, for errors and residuals
	Measure  string  // name of the measure
	Amount   float64 // work done, in the measure's unit; 0 where what is kept up with is measured
	Single   float64 // one-thread points of the processor; 0 where the measure does not read it
	All      float64 // all-thread points
	Graphics float64 // graphics points of the card: computing, or drawing for games
	Measured float64 // seconds, or what was kept up with
}

// Measure is something a shop can measure to fit coefficients of the calibration block.
//
// Work that takes time is fitted as
//
//	seconds = amount × (serial/single + parallel/all + card/graphics)
//
// by least squares of the residuals as shares of what was measured, so that a slow machine counts no more than a fast one; serial and parallel give the core coefficient and its parallel share. Where the machines
// measured are too alike in cores to tell serial from parallel, the share is kept and the coefficient alone is fitted. What is
// kept up with is fitted as measured = points/coefficient, and the loop of a game as
// pictures a second = 100 × (single − loop)/loop_per_100_hz.
type Measure struct {
	Name     string
	Amount   string // what amount counts; empty where what is kept up with is measured
	Measured string // what measured counts
	Reads    string // the points it reads
	core     func(*part.Calibration) *int64
	parallel func(*part.Calibration) *unit.Share
	card     func(*part.Calibration) *int64
	rate     func(*part.Calibration) *int64
	loop     bool
	points   func(*Measurement) float64
	perCore  float64 // coefficient for one core second per unit of the amount
	perCard  float64
	perRate  float64 // coefficient for one point per unit kept up with
	fields   []string
}

// Fields lists the fields of the calibration block that the measure fits.
func (m *Measure) Fields() []string { return m.fields }

func all(m *Measurement) float64      { return m.All }
func graphics(m *Measurement) float64 { return m.Graphics }

// fixed is what has the same pace on every machine.
func fixed(*Measurement) float64 { return 1000 }

// Measures lists what can be measured.
func Measures() []Measure {
	points := func(p *unit.Points) *int64 { return (*int64)(p) }
	whole := func(p *unit.Whole) *int64 { return (*int64)(p) }
	return []Measure{
		{Name: "video-play", Measured: "10^9 pixels a second of 8-bit camera video played on the processor", Reads: "all", points: all, perRate: 1,
			rate: func(c *part.Calibration) *int64 { return points(&c.VideoPlay) }, fields: []string{"video_play_points_per_gpx_s"}},
		{Name: "video-grade", Measured: "10^9 pixels a second graded while they play", Reads: "graphics", points: graphics, perRate: 1,
			rate: func(c *part.Calibration) *int64 { return points(&c.VideoGrade) }, fields: []string{"video_grade_points_per_gpx_s"}},
		{Name: "video-encode", Amount: "10^9 pixels written out on the processor", Measured: "seconds", Reads: "single, all", perCore: 1000,
			core:     func(c *part.Calibration) *int64 { return points(&c.VideoEncode) },
			parallel: func(c *part.Calibration) *unit.Share { return &c.VideoParallel }, fields: []string{"video_encode_points_per_gpx_s", "video_encode_parallel_percent"}},
		{Name: "game-draw", Measured: "10^9 pixels a second of a demanding game", Reads: "graphics", points: graphics, perRate: 1,
			rate: func(c *part.Calibration) *int64 { return points(&c.GameDraw) }, fields: []string{"game_points_per_gpx_s"}},
		{Name: "game-loop", Measured: "pictures a second of a game that the processor holds back", Reads: "single", loop: true, fields: []string{"game_loop_points", "game_loop_points_per_100_hz"}},
		{Name: "match", Amount: "10^6 pixels of photographs matched into a model", Measured: "seconds", Reads: "single, all, graphics", points: graphics, perCore: 1000, perCard: 1000,
			core:     func(c *part.Calibration) *int64 { return whole(&c.MatchCore) },
			card:     func(c *part.Calibration) *int64 { return whole(&c.MatchCard) },
			parallel: func(c *part.Calibration) *unit.Share { return &c.MatchParallel }, fields: []string{"match_core_ms_per_mpx", "match_parallel_percent", "match_card_ms_per_mpx"}},
		{Name: "render-core", Amount: "10^9 samples rendered on the processor", Measured: "seconds", Reads: "single, all", perCore: 1,
			core:     func(c *part.Calibration) *int64 { return whole(&c.RenderCore) },
			parallel: func(c *part.Calibration) *unit.Share { return &c.RenderParallel }, fields: []string{"render_core_s_per_gsample", "render_parallel_percent"}},
		{Name: "video-engine", Amount: "10^9 pixels written out by one engine", Measured: "seconds", Reads: "none", points: fixed, perCard: 1000,
			card: func(c *part.Calibration) *int64 { return whole(&c.VideoEngine) }, fields: []string{"video_engine_ms_per_gpx"}},
		{Name: "render-card", Amount: "10^9 samples rendered on the card", Measured: "seconds", Reads: "graphics", points: graphics, perCard: 1,
			card: func(c *part.Calibration) *int64 { return whole(&c.RenderCard) }, fields: []string{"render_card_s_per_gsample"}},
		{Name: "develop", Amount: "10^6 pixels of raw photographs developed", Measured: "seconds", Reads: "single, all", perCore: 1000,
			core:     func(c *part.Calibration) *int64 { return whole(&c.DevelopCore) },
			parallel: func(c *part.Calibration) *unit.Share { return &c.DevelopParallel }, fields: []string{"develop_core_ms_per_mpx", "develop_parallel_percent"}},
		{Name: "compile", Amount: "source files of ordinary compiled code built", Measured: "seconds", Reads: "single, all", perCore: 1000,
			core:     func(c *part.Calibration) *int64 { return whole(&c.CompileCore) },
			parallel: func(c *part.Calibration) *unit.Share { return &c.CompileParallel }, fields: []string{"compile_core_ms_per_file", "compile_parallel_percent"}},
		{Name: "plug-in", Measured: "ordinary plug-ins at 48 kHz, a large buffer, before the first dropped one", Reads: "all", points: all, perRate: 1000,
			rate: func(c *part.Calibration) *int64 { return whole(&c.PlugIn) }, fields: []string{"plug_in_milli_points"}},
		{Name: "scan", Amount: "hours of one channel at 48 kHz searched", Measured: "seconds", Reads: "single, all", perCore: 1,
			core:     func(c *part.Calibration) *int64 { return whole(&c.ScanCore) },
			parallel: func(c *part.Calibration) *unit.Share { return &c.ScanParallel }, fields: []string{"scan_core_s_per_hour", "scan_parallel_percent"}},
		{Name: "cell", Amount: "10^9 cells of a table gone through by a model (cells × passes)", Measured: "seconds", Reads: "single, all", perCore: 1,
			core:     func(c *part.Calibration) *int64 { return whole(&c.CellCore) },
			parallel: func(c *part.Calibration) *unit.Share { return &c.CellParallel }, fields: []string{"cell_core_ns", "cell_parallel_percent"}},
		{Name: "guest", Measured: "busy threads of virtual machines that keep their pace", Reads: "all", points: all, perRate: 1,
			rate: func(c *part.Calibration) *int64 { return points(&c.GuestPoints) }, fields: []string{"guest_points_per_thread"}},
	}
}

// Fitted is what the measurements of one measure come to.
type Fitted struct {
	Measure      string
	Coefficients []Coefficient
	Note         string // what could not be told, empty where everything could
	Residuals    []Residual
	RMS          float64 // root of the mean square of the residuals, as shares of the measured values
}

// Coefficient is one field of the calibration block before and after.
type Coefficient struct {
	Field    string
	Old, New int64 // in the field's own unit; shares in thousandths of a per cent
}

// Residual is one measurement against what the fitted coefficients tell.
type Residual struct {
	Line           int
	Measured, Told float64
}

// Fit fits the coefficients that measurements are about and returns the calibration block with them in it.
func Fit(old part.Calibration, list []Measurement) (part.Calibration, []Fitted, error) {
	cal := old
	var fits []Fitted
	for _, m := range Measures() {
		var own []Measurement
		for _, x := range list {
			if x.Measure == m.Name {
				own = append(own, x)
			}
		}
		if len(own) == 0 {
			continue
		}
		f, err := m.fit(&cal, own)
		if err != nil {
			return old, nil, fmt.Errorf("%s: %w", m.Name, err)
		}
		fits = append(fits, f)
	}
	return cal, fits, nil
}

// enough is how much of a column others must not explain for the measurements to tell it apart.
const enough = 0.05

func (m *Measure) fit(cal *part.Calibration, own []Measurement) (Fitted, error) {
	f := Fitted{Measure: m.Name}
	var tell func(*Measurement) float64
	var err error
	switch {
	case m.loop:
		tell, err = m.fitLoop(&f, cal, own)
	case m.rate != nil:
		tell, err = m.fitRate(&f, cal, own)
	default:
		tell, err = m.fitTime(&f, cal, own)
	}
	if err != nil {
		return f, err
	}
	var sum float64
	for i := range own {
		r := Residual{own[i].Line, own[i].Measured, tell(&own[i])}
		share := (r.Told - r.Measured) / r.Measured
		sum += float64(share * share)
		f.Residuals = append(f.Residuals, r)
	}
	f.RMS = math.Sqrt(sum / float64(len(own)))
	return f, nil
}

func (m *Measure) fitRate(f *Fitted, cal *part.Calibration, own []Measurement) (func(*Measurement) float64, error) {
	x := make([][]float64, len(own))
	for i := range own {
		x[i] = []float64{m.points(&own[i])}
	}
	b, err := relative(x, own, 0)
	if err != nil {
		return nil, err
	}
	if b[0] <= 0 {
		return nil, fmt.Errorf("more points keep up with less: no coefficient does that")
	}
	f.put(m.fields[0], m.rate(cal), m.perRate/b[0])
	return func(o *Measurement) float64 { return m.points(o) * m.perRate / float64(*m.rate(cal)) }, nil
}

func (m *Measure) fitLoop(f *Fitted, cal *part.Calibration, own []Measurement) (func(*Measurement) float64, error) {
	x := make([][]float64, len(own))
	for i := range own {
		x[i] = []float64{own[i].Single, 1}
	}
	b, err := relative(x, own, enough)
	if err != nil {
		return nil, err
	}
	if b[0] <= 0 || b[1] > 0 {
		return nil, fmt.Errorf("a loop of nought points or less, or none for a picture: no game does that")
	}
	f.put(m.fields[0], (*int64)(&cal.GameLoop), -b[1]/b[0])
	f.put(m.fields[1], (*int64)(&cal.GameLoopHz), 100/b[0])
	return func(o *Measurement) float64 {
		return 100 * (o.Single - float64(cal.GameLoop)) / float64(cal.GameLoopHz)
	}, nil
}

// fitTime fits serial, parallel and card seconds for a unit of the amount, at 1000 points each.
func (m *Measure) fitTime(f *Fitted, cal *part.Calibration, own []Measurement) (func(*Measurement) float64, error) {
	serial := func(o *Measurement) float64 { return o.Amount * 1000 / o.Single }
	shared := func(o *Measurement) float64 { return o.Amount * 1000 / o.All }
	onCard := func(o *Measurement) float64 { return o.Amount * 1000 / m.points(o) }
	columns := func(list ...func(*Measurement) float64) [][]float64 {
		x := make([][]float64, len(own))
		for i := range own {
			for _, c := range list {
				x[i] = append(x[i], c(&own[i]))
			}
		}
		return x
	}
	var card []func(*Measurement) float64
	if m.card != nil {
		card = append(card, onCard)
	}
	if m.core == nil {
		b, err := relative(columns(onCard), own, enough)
		if err != nil {
			return nil, err
		}
		f.put(m.fields[0], m.card(cal), b[0]*m.perCard)
		return func(o *Measurement) float64 { return onCard(o) * float64(*m.card(cal)) / m.perCard }, nil
	}
	p := float64(*m.parallel(cal)) / 100_000
	b, err := relative(columns(slices.Concat([]func(*Measurement) float64{serial, shared}, card)...), own, enough)
	var core float64
	var rest []float64
	if err == nil && b[0] >= 0 && b[1] > 0 {
		core, p, rest = b[0]+b[1], b[1]/(b[0]+b[1]), b[2:]
		share := m.parallel(cal)
		old := int64(*share)
		*share = unit.Share(math.Round(p*1000) * 100) // to a tenth of a per cent
		f.Coefficients = append(f.Coefficients, Coefficient{m.fields[1], old, int64(*share)})
	} else {
		f.Note = "the machines measured are too alike in cores to tell what spreads over threads; that share is kept"
		amdahl := func(o *Measurement) float64 { return (1-p)*serial(o) + float64(p*shared(o)) }
		if b, err = relative(columns(slices.Concat([]func(*Measurement) float64{amdahl}, card)...), own, enough); err != nil {
			return nil, err
		}
		core, rest = b[0], b[1:]
	}
	if core <= 0 || m.card != nil && rest[0] <= 0 {
		return nil, fmt.Errorf("the measurements give a cost of nought or less: check the amounts and points of each line")
	}
	f.put(m.fields[0], m.core(cal), core*m.perCore)
	if m.card != nil {
		f.put(m.fields[2], m.card(cal), rest[0]*m.perCard)
	}
	return func(o *Measurement) float64 {
		p := float64(*m.parallel(cal)) / 100_000
		s := ((1-p)*serial(o) + float64(p*shared(o))) * float64(*m.core(cal)) / m.perCore
		if m.card != nil {
			s += onCard(o) * float64(*m.card(cal)) / m.perCard
		}
		return s
	}, nil
}

// relative is the least squares of residuals as shares of what was measured.
func relative(x [][]float64, own []Measurement, alike float64) ([]float64, error) {
	y := make([]float64, len(own))
	for i := range own {
		for k := range x[i] {
			x[i][k] /= own[i].Measured
		}
		y[i] = 1
	}
	return leastSquares(x, y, alike)
}

// put states a fitted coefficient, rounded to the whole number its field takes.
func (f *Fitted) put(field string, at *int64, value float64) {
	c := Coefficient{Field: field, Old: *at, New: int64(math.Round(value))}
	*at = c.New
	f.Coefficients = append(f.Coefficients, c)
}
