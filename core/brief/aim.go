package brief

import (
	"fmt"
	"slices"

	"slipfit/core/part"
	"slipfit/core/unit"
)

// Aim is something a customer will notice of an activity, in their own units: streams played at once, minutes for a model,
// hours of footage that fit. The floors of the needs are made from the same figures, so that a build exactly at its floors
// gives exactly what the aims want. What a build makes of an aim is package outcome's business.
type Aim struct {
	Activity string
	What     string // "streams played at once without dropping frames"
	Unit     Unit
	Want     int64 // what the brief asks, thousandths of the unit; 0 where it asks nothing and the figure is only told
	Basis    Basis
	Source   string
	Usual    Law  // what holds when every answer not given is the usual one
	High     Law  // and when it is the high one; the same as Usual where everything was said
	Load     Load // what the work draws on, with what goes on at once
}

// computes reports an aim that the speed of processor or graphics has a part in.
func (l *Law) computes() bool {
	return l.Job != nil && (l.Job.CoreMS > 0 || l.Job.CardMS > 0) ||
		slices.ContainsFunc(l.Limits, func(l Limit) bool { return l.Resource.Kind() == unit.Work })
}

// Computes reports an aim that the speed of processor or graphics has a part in, so that heat can hold it back.
func (m *Aim) Computes() bool { return m.Usual.computes() || m.High.computes() }

// Unit is what an aim is counted in.
type Unit struct {
	One, Many string // "stream", "streams"
	Time      bool   // a time, of which less is better
}

// Basis is what an aim's figure rests on, which says how far it may be off.
type Basis uint8

// Bases, from the surest.
const (
	Arithmetic Basis = iota // bytes and rates as standards and sheets state them
	Practice                // a figure of common practice
	Calibrated              // a coefficient of the calibration block
)

// Law turns what a build gives into an aim's figure. Exactly one of its kinds is set.
type Law struct {
	Limits []Limit // a roofline: the least of several resources
	Job    *Job    // work the customer waits for
	Tokens *Tokens // a language model's pace
}

// Limit is one resource that holds an aim back: what others take is taken off, then what the activity takes whatever the
// figure, and the rest pays for it in proportion:
//
//	figure = Per × (have − Others − Fixed) / Moving
type Limit struct {
	Resource Resource
	Others   int64 // in the resource's base: what goes on at once, or lies on the same tier
	Fixed    int64
	Moving   int64
	Per      int64   // thousandths of the aim's unit that Moving pays for
	Engine   *Engine // an engine that Moving reckons with; nil where none
	Yearly   int64   // of a window that moves with the work, what a year brings; 0 of anything else
}

// Engine is a video format that an engine of the build is to read or write, and what the same work takes of the processor
// where none does.
type Engine struct {
	Codec   part.Codec
	Writes  bool // else it reads
	Without int64
}

// Job is a piece of work the customer waits for, in milliseconds of the catalog's references and megabytes moved.
type Job struct {
	CoreMS   int64      // milliseconds of one thread of the reference core
	Parallel unit.Share // share of CoreMS that spreads over threads
	CardMS   int64      // milliseconds of the reference card
	MoveMB   int64      // megabytes moved
	Over     Resource   // at the rate of this resource
	Beside   bool       // core, card and moving go on side by side, so that the slowest sets the time; else one after the other
	Others   int64      // all-thread points that go to what goes on at once
	Moving   int64      // of the rate, what goes on at once takes
	Pieces   int64      // equal pieces the time is told for; 1 for the whole
	Writing  *Writing   // the same job with its result written by an engine; nil where none could
}

// Writing is a job whose result a hardware engine writes: the processor reads and mixes, the card and the engine work beside
// it, and the slowest sets the time. A build with such an engine takes whichever way is quicker.
type Writing struct {
	Codec    part.Codec // the engine must write it
	EngineMS int64      // milliseconds of one engine
	CoreMS   int64      // milliseconds of the reference core that stay with the processor, spread over threads like the job's own
	Reading  *Engine    // an engine that CoreMS reckons with; nil where none
}

// Tokens is the pace of a language model: each token reads every weight once. What fits on the card is read at the card's
// rate, the rest at main memory's.
type Tokens struct {
	WeightMB     int64
	CardFixedMiB int64      // graphics memory taken before the first weight: the desktop and what else goes on
	CacheMiB     int64      // key and value cache, with the overhead that weights have too
	MemoryFixed  int64      // MiB of main memory taken by everything else
	RateFixed    int64      // MB/s of main memory's bandwidth taken by everything else
	OnCard       bool       // whether the card is used
	Stream       unit.Share // share of peak bandwidth that streaming reads reach
}

// Units that figures are told in elsewhere too.
var (
	Minutes = Unit{"minute", "minutes", true}
	Years   = Unit{"year", "years", false}
)

// The other units of aims.
var (
	streamUnit   = Unit{"stream", "streams", false}
	pictureUnit  = Unit{"picture a second", "pictures a second", false}
	secondUnit   = Unit{"second", "seconds", false}
	minuteUnit   = Minutes
	waitUnit     = Unit{"second", "seconds", true}
	hourUnit     = Unit{"hour", "hours", false}
	yearUnit     = Years
	gigabyteUnit = Unit{"GB", "GB", false}
	megabyteUnit = Unit{"MB/s", "MB/s", false}
	tokenUnit    = Unit{"token a second", "tokens a second", false}
	photoUnit    = Unit{"photograph", "photographs", false}
	objectUnit   = Unit{"object", "objects", false}
	layerUnit    = Unit{"layer", "layers", false}
	gameUnit     = Unit{"game", "games", false}
	jobUnit      = Unit{"job", "jobs", false}
	trackUnit    = Unit{"track", "tracks", false}
	plugInUnit   = Unit{"plug-in", "plug-ins", false}
	noteUnit     = Unit{"note", "notes", false}
	rowUnit      = Unit{"million rows", "million rows", false}
	triangleUnit = Unit{"million triangles", "million triangles", false}
	partUnit     = Unit{"part", "parts", false}
	guestUnit    = Unit{"guest", "guests", false}
	pageUnit     = Unit{"page", "pages", false}
	serviceUnit  = Unit{"service", "services", false}
)

// limit is one line of a roofline: what the resource pays for the figure wanted.
func limit(r Resource, fixed, moving int64) Limit {
	return Limit{Resource: r, Fixed: fixed, Moving: moving}
}

// reach notes a figure that grows with what the build gives. want is in whole units; the limits pay for exactly that.
func (a *asker) reach(what string, u Unit, want int64, basis Basis, source string, limits ...Limit) {
	a.promise(what, u, want*1000, basis, source, limits, want*1000)
}

// window notes how far back the archive reaches at the pace at which work comes in. What is kept is a window that moves with the
// work: an archive that holds it is never full, since the oldest makes way for the new, to copies elsewhere or for good. It reaches
// back kept ÷ what a year brings, which is what the brief asks, and further with what it has to spare. Where nothing new comes in
// there is nothing to tell.
func (a *asker) window(basis Basis, source string, keptMB, yearMB int64) {
	want := int64(0)
	if yearMB > 0 {
		want = keptMB * 1000 / yearMB
	}
	kept := limit(ArchiveSize, 0, keptMB)
	kept.Yearly = yearMB
	a.promise("how far back the archive reaches at this pace", yearUnit, want, basis, source, []Limit{kept}, want)
}

func (a *asker) promise(what string, u Unit, want int64, basis Basis, source string, limits []Limit, per int64) {
	if a.cal.Tolerance == 0 && basis == Calibrated {
		return
	}
	var list []Limit
	for _, l := range limits {
		if l.Moving > 0 && per > 0 && !(l.Resource.Kind() == unit.Work && a.cal.Tolerance == 0) {
			l.Per = per
			list = append(list, l)
		}
	}
	a.aim(Aim{What: what, Unit: u, Want: want, Basis: basis, Source: source, Usual: Law{Limits: list}})
}

// job notes a piece of work the customer waits for, so many minutes at most.
func (a *asker) job(what string, wait int64, j Job) {
	a.work(what, minuteUnit, wait*1000, Calibrated, "Amdahl 1967, as written in Gustafson 1988; calibration block", j)
}

func (a *asker) work(what string, u Unit, want int64, basis Basis, source string, j Job) {
	if a.cal.Tolerance == 0 && basis == Calibrated {
		return
	}
	j.Pieces = max(j.Pieces, 1)
	a.aim(Aim{What: what, Unit: u, Want: want, Basis: basis, Source: source, Usual: Law{Job: &j}})
}

// empty reports a law that nothing limits, such as room for what is not kept.
func (l Law) empty() bool { return len(l.Limits) == 0 && l.Job == nil && l.Tokens == nil }

// aim notes an aim: its usual law the first time the activity is asked, its high law the second time, in the same order.
func (a *asker) aim(m Aim) {
	if !a.high {
		m.Activity, m.High = a.out.name, m.Usual
		a.out.aims = append(a.out.aims, m)
		return
	}
	if at := a.out.highs; at < len(a.out.aims) {
		a.out.aims[at].High = m.Usual
		a.out.highs++
	}
}

// settle fills in what the others take of the resources that an activity's aims read.
func (d *demand) settle(all []demand) {
	for i := range d.aims {
		d.aims[i].Load = d.meanwhile(all)
		for _, l := range []*Law{&d.aims[i].Usual, &d.aims[i].High} {
			for k := range l.Limits {
				l.Limits[k].Others = d.others(l.Limits[k].Resource, all)
			}
			if l.Job != nil {
				l.Job.Others = d.others(AllWork, all)
				if l.Job.MoveMB > 0 {
					l.Job.Moving = d.others(l.Job.Over, all)
				}
			}
			if l.Tokens != nil {
				l.Tokens.CardFixedMiB = d.others(GraphicsMemory, all)
				l.Tokens.MemoryFixed += d.others(MemorySize, all)
				l.Tokens.RateFixed = d.others(MemoryRate, all)
			}
		}
	}
}

// others is what the other activities take of a resource while this one is done: what goes on at once, and for what stays on
// a drive everything. What goes on at once with this one counts the heaviest of those done one at a time too.
func (d *demand) others(r Resource, all []demand) int64 {
	if shared[r] == most {
		return 0
	}
	var sum, top int64
	for i := range all {
		o := &all[i]
		switch floor := o.by[r].Floor; {
		case o == d:
		case shared[r] == standing || o.atOnce:
			sum += floor
		default:
			top = max(top, floor)
		}
	}
	if d.atOnce {
		sum += top
	}
	return sum
}

// meanwhile is an activity's load with that of what goes on at once; of those done one at a time beside it the heaviest.
func (d *demand) meanwhile(all []demand) Load {
	sum, rest := d.load, Load{}
	for i := range all {
		switch o := &all[i]; {
		case o == d:
		case o.atOnce:
			sum.add(o.load)
		case d.atOnce:
			rest.heaviest(o.load)
		}
	}
	sum.add(rest)
	return sum
}

// Free is the share of a tier's drive that is kept free, in thousandths; 0 for what is no tier's size.
func (r Resource) Free() int64 { return headroom(r) }

// String is a unit's word for many.
func (u Unit) String() string { return u.Many }

// allPoints is the all-thread points that bring a job's core work into so many seconds, the serial share running on one
// thread of the given points. Where the serial share alone takes more than three quarters of the time, no number of threads
// brings the job into it, and what the last quarter asks is given.
func allPoints(coreMS int64, parallel unit.Share, seconds, single int64) int64 {
	serialS := ceil(ceil(coreMS, 1000)*int64(fullLoad-parallel), 100*single)
	left := max(seconds-serialS, ceil(seconds, 4), 1)
	return ceil(ceil(coreMS, 1000)*int64(parallel), 100*left)
}

// enoughPoints is allPoints for what is enough: threads past which twice as many would take less than a fifth off the time buy
// little. With a share p in parallel and the rest s serial on n workers the time goes as s + p/n, so that is n = 3p/2s.
func enoughPoints(coreMS int64, parallel unit.Share, seconds, single int64) int64 {
	points := allPoints(coreMS, parallel, seconds, single)
	if serial := int64(fullLoad - parallel); serial > 0 {
		points = min(points, ceil(3*int64(parallel)*single, 2*serial))
	}
	return points
}

// hundredths prints a share that spreads over threads.
func hundredths(s unit.Share) string { return fmt.Sprintf("%s in parallel", s.Q()) }
