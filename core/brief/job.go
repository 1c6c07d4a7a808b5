package brief

import (
	"math"

	"slipfit/core/media"
	"slipfit/core/unit"
)

// Job is a piece of work the customer waits for: what it is on the catalog's references, so that a build can be told how
// long it takes.
type Job struct {
	Activity string
	What     string        // "a model of 180 photographs"
	CoreMS   int64         // milliseconds of the reference core
	Parallel int64         // share of CoreMS that spreads over threads, thousandths
	CardMS   int64         // milliseconds of the reference card, after the core's
	Wait     unit.Duration // how long the customer will wait
	Band     unit.Share    // tolerance of the calibration
}

// Estimate is a time in seconds with the band it may lie in.
type Estimate struct{ LowS, ExpectedS, HighS int64 }

// Time is how long the job takes on a processor of so many one-thread and all-thread points and a graphics engine of so many
// computing points:
//
//	T = core · 1000/single / Amdahl(parallel, all/single) + card · 1000/compute
//
// with Amdahl's law over all/single equal workers. A job with graphics work and no engine, or no processor points, has no
// time: ok is false.
//
// Source: Amdahl 1967, as written in Gustafson 1988; the figures of the references are the catalog's calibration block, and
// its tolerance is the band.
func (j Job) Time(single, all, compute unit.Points) (e Estimate, ok bool) {
	if j.CoreMS > 0 && (single <= 0 || all <= 0) || j.CardMS > 0 && compute <= 0 {
		return Estimate{}, false
	}
	var s float64
	if j.CoreMS > 0 {
		workers := max(1, float64(all)/float64(single))
		s += float64(j.CoreMS) / float64(single) / media.Amdahl(float64(j.Parallel)/1000, workers)
	}
	if j.CardMS > 0 {
		s += float64(j.CardMS) / float64(compute)
	}
	band := float64(j.Band) / 100_000
	return Estimate{
		LowS:      int64(math.Floor(float64(s * (1 - band)))),
		ExpectedS: int64(math.Round(s)),
		HighS:     int64(math.Ceil(float64(s * (1 + band)))),
	}, true
}

// allPoints is the all-thread points that bring a job's core work into so many seconds, the serial share running on one
// thread of the given points. Where the serial share alone takes more than three quarters of the time, no number of threads
// brings the job into it, and what the last quarter asks is given.
func allPoints(coreMS, parallelPermille, seconds, single int64) int64 {
	serialS := ceil(ceil(coreMS, 1000)*(1000-parallelPermille), single)
	left := max(seconds-serialS, ceil(seconds, 4), 1)
	return ceil(ceil(coreMS, 1000)*parallelPermille, left)
}
