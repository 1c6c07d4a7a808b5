package plan

import (
	"slipfit/core/build"
	"slipfit/core/unit"
)

// rungs is a question of how low a limit can be set, the limits being the rungs of a ladder: where a build stands under one, it
// stands under every higher one.
type rungs struct {
	*watch
	under func(low, high int) *Problem   // what is allowed up to a rung, nothing being known to stand below low; nil where a seat is left without options
	on    func(b *build.Build) int       // the lowest rung that allows a build
	note  func(c *Course, low, high int) // says what is known: a build on rung high, none below low
}

// lowest finds the lowest rung on which a build stands and the cheapest build there, first in tie order. No build stands
// below rung low of the result, and the answer's build stands on rung high: the same unless the context ended the search.
func (r rungs) lowest(top int) (a Answer, low, high int) {
	q := r.under(0, top)
	if q == nil {
		return Answer{Status: Infeasible}, 0, top
	}
	l, settled := q.some(0)
	switch {
	case l == nil && settled:
		return q.infeasible(a), 0, top
	case l == nil:
		return a, 0, top
	}
	b := q.build(l)
	high = r.on(b)
	tell := func() {
		r.found(l)
		r.note(&r.course, low, high)
	}
	tell()
	// try moves low or high by what is found out about a rung with so much effort
	try := func(rung int, cap int64) (settled bool) {
		q := r.under(low, rung)
		if q == nil {
			low = rung + 1
			return true
		}
		lower, settled := q.some(cap)
		switch {
		case lower != nil:
			l, b = lower, q.build(lower)
			high = r.on(b)
		case settled:
			low = rung + 1
		}
		tell()
		return settled
	}
	for cap := int64(firstTry); low < high && !r.look(); cap *= tryMore {
		for from := low; from < high && !r.ended; from = max(from, low) { // down to where builds are hard to find
			if mid := (from + high) / 2; !try(mid, cap) {
				from = mid + 1
			}
		}
		for to := high; low < to && !r.ended; to = min(to, high) { // up to where it is hard to show that there are none
			if mid := (low + to) / 2; !try(mid, cap) {
				to = mid
			}
		}
	}
	root := unit.Money(q.fixed + q.priceBound().root())
	a.Certificate.Root.Price, a.Certificate.Final.Price = root, root
	if !r.ended {
		a = r.under(low, high).leastBuild()
	}
	if a.Build == nil || r.on(a.Build) == high && l.price < int64(a.Price) { // ended before it found one as good
		a.Status, a.Build, a.Price, a.Worth, a.found, a.Cuts = Feasible, b, unit.Money(l.price), l.worth, l, nil
		c := &a.Certificate
		c.Root.Price, c.Final.Price = min(a.Price, c.Root.Price), min(a.Price, c.Final.Price)
		c.Gap.Price = a.Price - c.Final.Price
	}
	high = r.on(a.Build)
	if low < high {
		a.Status = Feasible
	}
	return a, low, high
}

// A rung is given so much effort at first, and more in each round, so that a hard one keeps no other waiting.
const (
	firstTry = 64
	tryMore  = 8
)

// some looks for any choice that stands, with so much effort where there is a cap. Settled is false where the cap or the context
// ended the search before it was known whether there is one.
func (p *Problem) some(cap int64) (l *leaf, settled bool) {
	if p.emptied() {
		return nil, true
	}
	if l := p.known(nil); l != nil {
		return l, true
	}
	if p.priced == nil {
		b := p.roughPrice()
		if b.root() > p.purse {
			return nil, true
		}
		p.priced = b.hang(p.purse)
	}
	s := newSearch(p.priceBound(), p.purse)
	s.cap = cap
	s.found = func(s *search) {
		first := s.leaf()
		l, s.stop = &first, true
		p.remember(l)
	}
	s.run()
	return l, l != nil || s.open == never
}
