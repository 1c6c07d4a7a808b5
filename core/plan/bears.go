package plan

import (
	"math"
	"slices"

	"slipfit/core/build"
	"slipfit/core/predict"
	"slipfit/core/rule"
)

// bearing is how much heat memory, drives and cards may bring into the cores of a problem before a rule fails whatever they are, as
// far as that was found out.
type bearing struct {
	core  *query                 // asks a core, with whichever supply where that is open
	known map[corePick][]int64   // mW by activity asked, never where there is no limit
	seats [build.Seats]*bringing // by column
	all   []int64                // what all these seats bring at least, settled ones too, mW by activity asked
}

// corePick is the options of a core's columns.
type corePick [8]int32

// bringing is what a seat brings, and what every option of its column does, one after the other.
type bringing struct {
	*warming
	of     []int64
	stride int
}

// bears finds the early query of a problem that asks all that one with Bears does and what memory, drives and cards there are; nil
// where there is none.
func (p *Problem) bears() *factor {
	for _, f := range p.many {
		if f.early != nil && f.fed == nil && len(f.early.Warmer) == len(predict.Warming) && slices.ContainsFunc(f.rule.Early, tellsBears) {
			return f
		}
	}
	return nil
}

func tellsBears(e rule.Early) bool { return e.Bears != nil }

// borne makes the bearing of a posed problem.
func (p *Problem) borne(r *rule.Rule) *bearing {
	nth := slices.IndexFunc(r.Early, tellsBears)
	x := &bearing{}
	if p.colOf[build.Supply] >= 0 {
		x.core = p.soon(r, nth, p.fedBy().all)
	} else {
		x.core = p.soon(r, nth, nil)
	}
	x.core.besides = p.besides(x.core)
	x.known = p.index.learnt(p, x.core).bears
	x.all = make([]int64, len(predict.Asked(p.ask.Needs)))
	for _, s := range predict.Warming {
		w := p.warming(s)
		for i := range x.all {
			x.all[i] += w.least[i]
		}
		if c := p.colOf[s]; c >= 0 {
			of := p.index.brings(p, p.cols[c])
			x.seats[c] = &bringing{w, of, len(w.least)}
		}
	}
	return x
}

// watchHeat has a search look at how much heat its cores bear, where a rule tells.
func (s *search) watchHeat() {
	if s.hot = s.p.bears(); s.hot == nil {
		return
	}
	posed := s.p.posed()
	if posed.bearing == nil {
		posed.bearing = posed.borne(s.hot.rule)
	}
	s.heat = posed.bearing
	for _, c := range s.heat.core.cols {
		s.warmFrom = max(s.warmFrom, s.place[c]+1)
	}
	s.levels[0].heat = slices.Clone(s.heat.all)
}

// coreOf is what is decided of the core.
func (s *search) coreOf(x *bearing) (at corePick) {
	for i, c := range x.core.cols {
		at[i] = int32(s.pick[c])
	}
	return at
}

// learn finds out how much heat the core decided at depth d bears, after a rule failed with what warms it.
func (s *search) learn(d int) {
	x := s.heat
	at := s.coreOf(x)
	if x.known[at] != nil {
		return
	}
	p := s.p
	s.watch.poll(predicting)
	p.lone = *x.core.base
	for _, c := range x.core.cols {
		p.lone.Set(p.cols[c].options[s.pick[c]])
	}
	p.view.Build = &p.lone
	limits := make([]int64, len(x.all))
	for i := range limits {
		limits[i] = never
	}
	for i, w := range p.view.BearsEarly(x.core.rule.Early[x.core.nth], x.core.besides) {
		if !math.IsInf(w, 1) {
			limits[i] = int64(w * 1000)
		}
	}
	x.known[at] = limits
	for at := s.warmFrom; at <= d; at++ {
		s.levels[at].bears = limits
	}
}

// warm carries the heat of what is decided over to the next depth, with option o of column c decided.
func (s *search) warm(d, c, o int) {
	from, to := &s.levels[d], &s.levels[d+1]
	to.heat = append(to.heat[:0], from.heat...)
	if b := s.heat.seats[c]; b != nil {
		for i, mW := range b.of[o*b.stride : o*b.stride+len(to.heat)] {
			to.heat[i] += mW - b.least[i]
		}
	}
	switch to.bears = from.bears; {
	case d+1 < s.warmFrom:
		to.bears = nil
	case d+1 == s.warmFrom:
		to.bears = s.heat.known[s.coreOf(s.heat)]
	}
}

// unbearable reports more heat than the core bears with an option of an undecided column, as far as that is known.
func (s *search) unbearable(l *level, q, o int) bool {
	b := s.heat.seats[q]
	for i, most := range l.bears {
		heat := l.heat[i]
		if b != nil {
			heat += b.of[o*b.stride+i] - b.least[i]
		}
		if heat >= most {
			return true
		}
	}
	return false
}
