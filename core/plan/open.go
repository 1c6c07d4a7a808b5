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
	Price unit.Money    // least price of a whole build with it, of those found

	found *leaf
	of    *Problem
}

// Build is a whole build with it at its price; nil where none was found.
func (w *Way) Build() *build.Build {
	if w.found == nil {
		return nil
	}
	return w.of.build(w.found)
}

// An option is given so much toil at first, and more in each round, so that a hard one keeps no other seat waiting; nought is no end.
var looks = [...]int64{7000, 220000, 0}

// Open says for every part in every open seat, or in those named, whether a whole build that stands can hold it, and the least
// price of one. Nothing is guessed: a part it calls possible leads to a build, and one it calls impossible leads to none. Done of
// the course told is the share of the seats that has been looked at, each several times.
func (p *Problem) Open(ctx context.Context, seats ...build.Seat) []Way {
	p.begin(ctx)
	late := p.emptied()
	w := &opening{Problem: p, searched: make([][]int, len(p.cols)), tells: make([][]*factor, len(p.cols)), toil: slices.Repeat([]routesToil{{0, unknownToil}}, len(p.cols))}
	for _, col := range p.cols {
		settled := make([]bool, len(col.options))
		for o := range settled {
			settled[o] = late || !col.live.has(o)
		}
		w.settled = append(w.settled, settled)
		w.best = append(w.best, make([]*leaf, len(col.options)))
		w.tried = append(w.tried, make([]int, len(col.options)))
		w.floor = append(w.floor, make([]int64, len(col.options)))
	}
	wanted := func(c int) bool { return len(seats) == 0 || slices.Contains(seats, p.cols[c].seat) }
	if !late {
		w.resume()
		w.recall()
		for c := range p.cols {
			if wanted(c) {
				w.sweep(c)
			}
		}
	}
	for pass, cap := range looks {
		for c := range p.cols {
			if !late && wanted(c) {
				w.open(c, pass, cap)
			}
			p.watch.course.Done = float64(pass*len(p.cols)+c+1) / float64(len(looks)*len(p.cols))
			p.watch.look()
		}
	}
	if !late {
		w.keep()
	}
	var list []Way
	for c := range p.cols {
		if wanted(c) {
			list = append(list, w.ways(c)...)
		}
	}
	return list
}

// opening is what has been found of the options of a problem.
type opening struct {
	*Problem
	space    space
	best     [][]*leaf    // by column and option: the cheapest choice found with it
	floor    [][]int64    // by column and option: what a choice with it costs at least, as far as the Index knew
	settled  [][]bool     // by column and option: whether nothing cheaper holds it
	cheapest []numbered   // of all choices found, the cheapest first
	notes    int          // how many choices were found
	tried    [][]int      // by column and option: how many had been when it was last put into the cheapest
	searched [][]int      // by column: the options that a search found a choice with, the last one last
	toil     []routesToil // by column
	tells    [][]*factor  // by column; nil until they are asked for
}

// numbered is a choice found, and how many were found by then.
type numbered struct {
	*leaf
	nth int
}

// An option is put into as many as swapped of the cheapest choices found, to see whether it stands there, and into one with each of as many
// as latest of the options of its seat that were searched last.
const (
	swapped = 4
	latest  = 8
)

// recall begins with what the Index remembers.
func (w *opening) recall() {
	list := w.remembered()
	for _, l := range list[:min(len(list), tried)] {
		if w.admits(l) {
			w.note(l)
		}
	}
}

// note takes in a choice found.
func (w *opening) note(l *leaf) {
	for c, o := range l.pick {
		if x := w.best[c][o]; x == nil || l.price < x.price {
			w.best[c][o] = l
		}
	}
	w.notes++
	at := 0
	for at < len(w.cheapest) && w.cheapest[at].price <= l.price {
		at++
	}
	if at < swapped {
		w.cheapest = slices.Insert(w.cheapest[:min(len(w.cheapest), swapped-1)], at, numbered{l, w.notes})
	}
}

// open settles the options of one column with so much toil for each: at first by themselves, then in groups.
func (w *opening) open(c, pass int, cap int64) {
	left := w.unsettled(c, w.cols[c].live.list())
	switch {
	case len(left) == 0 || w.watch.ended:
	case pass > 0:
		w.group(w.Problem, c, left, cap)
	default:
		b := w.frameFor(weights{perMinor: 1}, w.usual(c), w.purse)
		w.each(b, c, cap)
		for _, o := range left {
			w.settled[c][o] = w.settled[c][o] || b.reach[c][o] >= never
		}
	}
}

// each settles one by one the options of a column that is decided first in a bound, with so much toil for each where there is a cap,
// until that was too little for one: those still to come are sooner settled in groups.
func (w *opening) each(b *bound, c int, cap int64) {
	by := routes{w.route(b)}
	for _, x := range b.rank(c) {
		o := int(x)
		if w.settled[c][o] {
			continue
		}
		if w.watch.ended {
			return
		}
		w.swapIn(c, o)
		for _, other := range w.searched[c][max(0, len(w.searched[c])-latest):] {
			w.swap(w.best[c][other], c, o)
		}
		if w.bottom(c, o) || by.rules(w, c, o) {
			w.settled[c][o] = true
			continue
		}
		before := w.best[c][o]
		w.settled[c][o] = by.settle(w, c, o, cap)
		if w.best[c][o] != before {
			w.searched[c] = append(w.searched[c], o)
		}
		if !w.settled[c][o] {
			return
		}
	}
}

// unsettled lists those of some options of a column that are not settled.
func (w *opening) unsettled(c int, among []int) []int {
	return slices.DeleteFunc(slices.Clone(among), func(o int) bool { return w.settled[c][o] })
}

// limit is the most that a choice with an option of a column may cost to be of use: of a part, only the cheapest counts.
func (w *opening) limit(c, o int) int64 {
	limit, first := w.purse, w.cols[c].first
	for same := first[o]; same < len(first) && first[same] == first[o]; same++ {
		if l := w.best[c][same]; l != nil {
			limit = min(limit, l.price-w.fixed-1)
		}
	}
	return limit
}

// swap tries an option of a column in a choice found.
func (w *opening) swap(l *leaf, c, o int) {
	if l == nil || !w.cols[c].live.has(o) {
		return
	}
	price := l.price + w.cols[c].price[o] - w.cols[c].price[l.pick[c]]
	if price-w.fixed > w.limit(c, o) || !w.joins(l, c, o) {
		return
	}
	was := l.pick[c]
	var room [build.Seats]int
	swapped := leaf{pick: room[:copy(room[:], l.pick)], price: price}
	swapped.pick[c] = o
	if !w.affords(c, swapped.pick) {
		return
	}
	for _, f := range w.telling(c) {
		if !(f.seen != nil && f.noEasier(w.Problem, c, was, o)) && f.of(w.Problem, &swapped) == failed {
			return
		}
	}
	if w.stands(c, o) {
		w.note(&leaf{pick: slices.Clone(swapped.pick), price: price})
	}
}

// affords reports a choice that leaves none of the sums short that bind a column.
func (w *opening) affords(c int, pick []int) bool {
	for _, t := range w.sums {
		if !t.binds(c) {
			continue
		}
		left := t.base
		for q, o := range pick {
			if t.net[q] != nil {
				left += t.net[q][o]
			}
		}
		if left < 0 {
			return false
		}
	}
	return true
}

// telling lists the factors that tell of a column what its matches with each other column do not. Early queries say no more of a whole
// choice than their rules.
func (w *opening) telling(c int) []*factor {
	if w.tells[c] == nil {
		w.tells[c] = []*factor{}
		for _, f := range w.many {
			if f.columns>>c&1 != 0 && f.early == nil && (len(f.open) > 2 || f.cost > 0) {
				w.tells[c] = append(w.tells[c], f)
			}
		}
	}
	return w.tells[c]
}

// joins reports an option of a column that stands with every other of a choice by the quick rules that hang on two columns.
func (w *opening) joins(l *leaf, c, o int) bool {
	for q, other := range l.pick {
		if q == c {
			continue
		}
		m := w.match(q, c)
		if with := m.company(w.Problem, other); with != nil && !m.joins(w.Problem, with, other, o) {
			return false
		}
	}
	return true
}

// swapIn tries an option of a column in the cheapest choices found, in which it was not tried yet.
func (w *opening) swapIn(c, o int) {
	before := w.tried[c][o]
	w.tried[c][o] = w.notes
	var room [swapped]numbered
	for _, x := range room[:copy(room[:], w.cheapest)] {
		if x.nth > before {
			w.swap(x.leaf, c, o)
		}
	}
}

// sweep tries every option of a column so.
func (w *opening) sweep(c int) {
	for o := range w.cols[c].options {
		if !w.settled[c][o] && !w.watch.ended {
			w.swapIn(c, o)
		}
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
	l.spent = l.spent[:0]
}

// ways gathers the options of a column by part.
func (w *opening) ways(c int) []Way {
	var list []Way
	var unsettled []bool // by way: whether some option of its part is
	col := w.cols[c]
	at := map[string]int{}
	for o, option := range col.options {
		i, known := at[option.ID()]
		if !known {
			i = len(list)
			at[option.ID()] = i
			way := Way{Seat: col.seat, of: w.Problem}
			if option.Part != nil {
				way.Part = option.Part.Common()
			}
			list, unsettled = append(list, way), append(unsettled, false)
		}
		if l := w.best[c][o]; l != nil && (list[i].found == nil || unit.Money(l.price) < list[i].Price) {
			list[i].Price, list[i].found = unit.Money(l.price), l
		}
		unsettled[i] = unsettled[i] || !w.settled[c][o]
	}
	for i := range list {
		switch {
		case list[i].found != nil && unsettled[i]:
			list[i].State = Feasible
		case list[i].found != nil:
			list[i].State = Optimal
		case unsettled[i]:
			list[i].State = Unknown
		default:
			list[i].State = Infeasible
		}
	}
	return list
}
