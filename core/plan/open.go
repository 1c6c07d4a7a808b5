package plan

import (
	"context"
	"slices"

	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// Way is a part in a seat, and what comes of choosing it under everything said already.
type Way struct {
	Seat  build.Seat
	Part  *part.Article // nil leaves the seat empty
	State Status        // Optimal: it can be, from that price on; Infeasible: no build that stands holds it; else not settled in time
	Price unit.Money    // least price of a whole build with it
	Build *build.Build  // one at that price
}

// firstLook and secondLook are the effort an option is given before the others have had as much.
const (
	firstLook  = 64
	secondLook = 1024
)

// Open says for every part in every open seat, or in those named, whether a whole build that stands can hold it, and the least
// price of one. Nothing is guessed: a part it calls possible leads to a build, and one it calls impossible leads to none. Done of
// the course told is the share of the seats that has been looked at, each several times.
func (p *Problem) Open(ctx context.Context, seats ...build.Seat) []Way {
	p.begin(ctx)
	best := make([][]*leaf, len(p.cols)) // by column and option: the cheapest choice found with it
	for c, col := range p.cols {
		best[c] = make([]*leaf, len(col.options))
	}
	late := p.emptied()
	settled := make([][]bool, len(p.cols))
	for c, col := range p.cols {
		settled[c] = make([]bool, len(col.options))
		for o := range settled[c] {
			settled[c][o] = late || !col.live.has(o)
		}
	}
	wanted := func(c int) bool { return len(seats) == 0 || slices.Contains(seats, p.cols[c].seat) }
	// what is quickly settled first, so that one hard question does not keep the others waiting
	looks := [...]int64{firstLook, secondLook, 0}
	for pass, cap := range looks {
		for c := range p.cols {
			if !late && wanted(c) {
				p.open(c, best, settled[c], cap)
			}
			p.watch.course.Done = float64(pass*len(p.cols)+c+1) / float64(len(looks)*len(p.cols))
			p.watch.look()
		}
	}
	var list []Way
	for c, col := range p.cols {
		if !wanted(c) {
			continue
		}
		list = append(list, p.ways(col, best[c], settled[c])...)
	}
	return list
}

// open settles the options of one column, each with so much effort where there is a cap: the column is decided first,
// so that the bound speaks of it.
func (p *Problem) open(c int, best [][]*leaf, settled []bool, cap int64) {
	if p.watch.ended || !slices.Contains(settled, false) {
		return
	}
	b := p.frameFor(weights{perMinor: 1}, c)
	s := newSearch(b, p.purse)
	s.found = func(s *search) {
		l := s.leaf()
		for q, o := range l.pick {
			if x := best[q][o]; x == nil || l.price < x.price {
				best[q][o] = &l
			}
		}
		s.limit = l.price - p.fixed - 1
	}
	col := p.cols[c]
	for _, x := range b.rank(c) {
		o := int(x)
		if settled[o] {
			continue
		}
		s.limit = p.purse
		for same := col.first[o]; same < len(col.first) && col.first[same] == col.first[o]; same++ { // of a part, only the cheapest counts
			if l := best[c][same]; l != nil {
				s.limit = min(s.limit, l.price-p.fixed-1)
			}
		}
		if b.root()-b.tells[c][0]+b.reach[c][o] > s.limit {
			settled[o] = true
			continue
		}
		s.only(c, o)
		s.stop, s.cap = false, 0
		if cap > 0 {
			s.cap = s.effort + cap
		}
		s.open = never
		s.run()
		settled[o] = s.open == never
		if p.watch.ended {
			return
		}
	}
	for o := range settled {
		settled[o] = settled[o] || b.reach[c][o] >= never
	}
}

// only begins anew with one option of a column.
func (s *search) only(c, o int) {
	l := &s.levels[0]
	for q, col := range s.p.cols {
		copy(l.domain[q], col.live)
		l.lead[q] = 0
	}
	clear(l.domain[c])
	set(l.domain[c]).add(o)
}

// ways gathers the options of a column by part.
func (p *Problem) ways(col *column, best []*leaf, settled []bool) []Way {
	var list []Way
	at := map[string]int{}
	for o, option := range col.options {
		i, known := at[option.ID()]
		if !known {
			i = len(list)
			at[option.ID()] = i
			w := Way{Seat: col.seat, State: Infeasible}
			if option.Part != nil {
				w.Part = option.Part.Common()
			}
			list = append(list, w)
		}
		w := &list[i]
		l := best[o]
		if l != nil && (w.Build == nil || unit.Money(l.price) < w.Price) {
			w.Price, w.Build = unit.Money(l.price), p.build(l)
			w.State = max(w.State, Feasible)
		}
		if !settled[o] && w.State == Infeasible {
			w.State = Unknown
		}
	}
	for i := range list {
		list[i].seal(col, settled)
	}
	return list
}

// seal calls a way proven where every option of its part is settled.
func (w *Way) seal(col *column, settled []bool) {
	for o, option := range col.options {
		same := option.Part == nil && w.Part == nil || option.Part != nil && option.Part.Common() == w.Part
		if same && !settled[o] {
			return
		}
	}
	if w.State == Feasible {
		w.State = Optimal
	}
}
