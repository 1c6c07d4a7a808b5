package outcome

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"slipfit/core/brief"
	"slipfit/core/media"
	"slipfit/core/unit"
)

// result is what a law makes of what a build gives.
type result struct {
	value   float64 // thousandths of the aim's unit
	by      string  // what sets it: a resource's title, or the engine
	why     string
	missing []string
}

// work applies a law.
func work(l *brief.Law, u brief.Unit, h *Have) result {
	switch {
	case l.Job != nil:
		return job(l.Job, u, h)
	case l.Tokens != nil:
		return tokens(l.Tokens, u, h)
	}
	return roofline(l.Limits, u, h)
}

// missingOf is what the sheets lack of several resources.
func (h *Have) missingOf(list ...brief.Resource) []string {
	var all []string
	for _, r := range list {
		for _, m := range h.Missing[r] {
			if !slices.Contains(all, m) {
				all = append(all, m)
			}
		}
	}
	return all
}

// roofline is the least of what several resources pay for. The first that sets it is named.
//
// Source: Williams, Waterman, Patterson, CACM 52(4), 2009, with as many roofs as an activity has resources.
func roofline(limits []brief.Limit, u brief.Unit, h *Have) result {
	best := result{value: math.Inf(1)}
	at := -1
	for i, l := range limits {
		best.missing = append(best.missing, h.missingOf(l.Resource)...)
		if v := pays(&l, h); v < best.value {
			best.value, best.by, at = v, l.Resource.Title(), i
		}
	}
	if len(best.missing) == 0 && at >= 0 {
		best.why = limitWhy(&limits[at], best.value, u, h)
	}
	return best
}

// pays is what one resource pays for, in thousandths of the aim's unit.
func pays(l *brief.Limit, h *Have) float64 {
	have := float64(usable(l, h)) - float64(l.Others) - float64(l.Fixed)
	return max(0, float64(l.Per)*have/float64(h.takes(l.Moving, l.Engine)))
}

// usable is what a build gives of a limit's resource, of a drive without the share kept free.
func usable(l *brief.Limit, h *Have) int64 {
	have := h.By[l.Resource]
	if free := l.Resource.Free(); free > 0 {
		return have * (1000 - free) / 1000
	}
	return have
}

func limitWhy(l *brief.Limit, value float64, u brief.Unit, h *Have) string {
	k := l.Resource.Kind()
	q := func(n int64) string { return unit.Quantity{N: n, Kind: k}.String() }
	var b strings.Builder
	fmt.Fprintf(&b, "%s sets it: %s", l.Resource.Title(), q(h.By[l.Resource]))
	if free := l.Resource.Free(); free > 0 {
		fmt.Fprintf(&b, " of which %s is kept free", unit.Share(free*100).Q())
	}
	if l.Others > 0 {
		fmt.Fprintf(&b, " − %s for other work", q(l.Others))
	}
	if l.Fixed > 0 {
		fmt.Fprintf(&b, " − %s in any case", q(l.Fixed))
	}
	fmt.Fprintf(&b, ", at %s for %s = %s", q(h.takes(l.Moving, l.Engine)), Say(l.Per, u), Say(round(value, u), u))
	b.WriteString(h.lacks(l.Engine))
	if l.Yearly > 0 {
		b.WriteString(windowWhy(l, usable(l, h)-l.Others-l.Fixed, Say(round(value, u), u)))
	}
	return b.String()
}

// windowWhy says whether an archive with so much room holds what is to be kept, and what becomes of what is older than it
// reaches back.
func windowWhy(l *brief.Limit, room int64, back string) string {
	q := func(n int64) string { return unit.Quantity{N: n, Kind: l.Resource.Kind()}.String() }
	holds := fmt.Sprintf("only %s of the %s to be kept fit", q(max(room, 0)), q(l.Moving))
	if room >= l.Moving {
		holds = fmt.Sprintf("it holds the %s to be kept with %s to spare and is never full", q(l.Moving), unit.Share((room-l.Moving)*100_000/l.Moving).Q())
	}
	return fmt.Sprintf("; %s: at %s a year what is older than %s makes way, to copies elsewhere or for good", holds, q(l.Yearly), back)
}

// lacks says that no engine does what was reckoned with; empty where one does or none was reckoned with.
func (h *Have) lacks(e *brief.Engine) string {
	switch {
	case e == nil || h.has(e):
		return ""
	case e.Writes:
		return fmt.Sprintf("; no engine writes %s", e.Codec)
	}
	return fmt.Sprintf("; no engine reads %s", e.Codec)
}

// job is how long a piece of work takes, by the quicker of the ways the build has: on threads and card alone, or with an engine
// that writes the result.
func job(j *brief.Job, u brief.Unit, h *Have) result {
	r := way(j, j.CoreMS, "", u, h)
	w := j.Writing
	if w == nil || !slices.Contains(h.Writes, w.Codec) {
		return r
	}
	by := *j
	by.Beside = true
	lacks := h.lacks(w.Reading)
	if e := way(&by, h.takes(w.CoreMS, w.Reading), lacks, u, h, step{float64(w.EngineMS) / 1000, "the encoding engine",
		fmt.Sprintf("an engine writes %s: %s", w.Codec, duration(float64(w.EngineMS)/1000))}); e.value < r.value {
		return e
	}
	return r
}

// step is one part of a job.
type step struct {
	seconds float64
	by      string
	why     string
}

// way is one way to do a job. With single and all points of the processor, what is left of all when others work too, and
// compute points of the graphics engine:
//
//	core = core milliseconds/single × ((1 − p) + p × single/left)      Amdahl's law over left/single equal workers
//	card = CardMS/compute
//	move = megabytes ÷ rate
//	T = core + card + move + further steps, or the longest of them where they go on side by side
//
// Where the build cannot do a step at all (no engine) the time has no end.
func way(j *brief.Job, coreMS int64, note string, u brief.Unit, h *Have, steps ...step) result {
	var r result
	if coreMS > 0 {
		r.missing = append(r.missing, h.missingOf(brief.SingleWork, brief.AllWork)...)
		steps = append(steps, core(j, coreMS, note, h))
	}
	if j.CardMS > 0 {
		r.missing = append(r.missing, h.missingOf(brief.ComputeWork)...)
		s := per(float64(j.CardMS), h.By[brief.ComputeWork])
		steps = append(steps, step{s, brief.ComputeWork.Title(), fmt.Sprintf("%s card seconds at %s points: %s", group(j.CardMS/1000), group(h.By[brief.ComputeWork]), duration(s))})
	}
	if j.MoveMB > 0 {
		r.missing = append(r.missing, h.missingOf(j.Over)...)
		s := per(float64(j.MoveMB), h.By[j.Over]-j.Moving)
		steps = append(steps, step{s, j.Over.Title(), fmt.Sprintf("%s MB over %s of %s MB/s: %s", group(j.MoveMB), j.Over.Title(), group(h.By[j.Over]), duration(s))})
	}
	var total, longest float64
	var whys []string
	for _, s := range steps {
		if s.seconds > longest || len(whys) == 0 {
			longest, r.by = s.seconds, s.by
		}
		total += s.seconds
		whys = append(whys, s.why)
	}
	if j.Beside {
		total = longest
	}
	r.why = strings.Join(whys, "; ")
	if j.Beside && len(steps) > 1 {
		r.why += "; side by side, the longest sets it"
	}
	total /= float64(j.Pieces)
	if j.Pieces > 1 {
		r.why += fmt.Sprintf("; shared out over %s pieces", group(j.Pieces))
	}
	r.value = total * 1000
	if u == brief.Minutes {
		r.value = total * 1000 / 60
	}
	return r
}

// core is a job's step on the processor.
func core(j *brief.Job, coreMS int64, note string, h *Have) step {
	single := float64(h.By[brief.SingleWork])
	left := float64(h.By[brief.AllWork] - j.Others)
	p := float64(j.Parallel) / 100_000
	by := brief.AllWork
	s := math.Inf(1)
	if single > 0 && left > 0 {
		workers := left / single
		s = float64(coreMS) / single / media.Amdahl(p, workers)
		if 1-p > p/workers {
			by = brief.SingleWork
		}
	}
	return step{s, by.Title(), fmt.Sprintf("%s core seconds%s, %s of them in parallel, at %s points a thread and %s in all%s: %s", group(coreMS/1000), note,
		j.Parallel.Q(), group(h.By[brief.SingleWork]), group(h.By[brief.AllWork]), lessOthers(j.Others), duration(s))}
}

func lessOthers(points int64) string {
	if points == 0 {
		return ""
	}
	return fmt.Sprintf(", %s of which other work takes", group(points))
}

func per(amount float64, rate int64) float64 {
	if rate <= 0 {
		return math.Inf(1)
	}
	return amount / float64(rate)
}

func duration(s float64) string {
	if math.IsInf(s, 1) {
		return "never"
	}
	return Say(round(float64(s*1000/60), brief.Minutes), brief.Minutes)
}

// tokens is the pace of a language model. Of the weights, what fits on the card beside the cache is read at the card's rate
// and the rest at main memory's, each at the share of the peak that streaming reads reach; a weight takes a fifth more room
// than its own size. Where card and memory together do not hold the weights nothing is written.
func tokens(t *brief.Tokens, _ brief.Unit, h *Have) result {
	r := result{by: brief.MemoryRate.Title(), missing: h.missingOf(brief.MemorySize, brief.MemoryRate)}
	weights := float64(t.WeightMB)
	onCard := 0.0
	if t.OnCard {
		r.missing = append(r.missing, h.missingOf(brief.GraphicsMemory, brief.GraphicsRate)...)
		room := float64(h.By[brief.GraphicsMemory]-t.CardFixedMiB-t.CacheMiB) * mibInMB
		if h.By[brief.GraphicsRate] > 0 {
			onCard = min(max(room, 0), weights)
		}
	}
	inMemory := weights - onCard
	room := float64(h.By[brief.MemorySize]-t.MemoryFixed) * mibInMB
	if !t.OnCard {
		room -= float64(t.CacheMiB) * mibInMB
	}
	if inMemory > max(room, 0) {
		r.by = brief.MemorySize.Title()
		r.why = fmt.Sprintf("%s MB of weights do not fit: %s MB on the card, %s MB left in memory", group(t.WeightMB), group(int64(onCard)), group(int64(max(room, 0))))
		return r
	}
	share := float64(t.Stream) / 100_000
	s := 0.0
	if onCard > 0 {
		s += onCard / (float64(h.By[brief.GraphicsRate]) * share)
	}
	slow := 0.0
	if inMemory > 0 {
		slow = per(inMemory/share, h.By[brief.MemoryRate]-t.RateFixed)
		s += slow
	}
	if s > 0 {
		r.value = 1000 / s
	}
	if slow <= s/2 {
		r.by = brief.GraphicsRate.Title()
	}
	if t.OnCard && inMemory > 0 {
		r.by = brief.GraphicsMemory.Title()
	}
	r.why = fmt.Sprintf("a token reads %s MB of weights: %s MB on the card at %s MB/s, %s MB in memory at %s MB/s, %s of the peak reached", group(t.WeightMB),
		group(int64(onCard)), group(h.By[brief.GraphicsRate]), group(int64(inMemory)), group(h.By[brief.MemoryRate]), t.Stream.Q())
	return r
}

// mibInMB is a MiB in decimal megabytes.
const mibInMB = float64(media.MiB) / media.MB
