package plan

import (
	"context"

	"slipfit/core/build"
	"slipfit/core/unit"
)

// rungs is a question of how low a limit can be set, the limits being the rungs of a ladder: where a build stands under one, it
// stands under every higher one.
type rungs struct {
	under func(low, high int) *Problem // what is allowed up to a rung, nothing being known to stand below low; nil where a seat is left without options
	on    func(b *build.Build) int     // the lowest rung that allows a build
}

// lowest finds the lowest rung on which a build stands and the cheapest build there, first in tie order. No build stands
// below rung low of the result, and the answer's build stands on rung high: the same unless ctx ended the search.
func (r rungs) lowest(ctx context.Context, top int) (a Answer, low, high int) {
	q := r.under(0, top)
	if q == nil {
		return Answer{Status: Infeasible}, 0, top
	}
	l, settled := q.some(ctx, 0, &a)
	if l == nil {
		c := a.Certificate
		if a = (Answer{Status: Unknown}); settled {
			a = q.infeasible(a)
		}
		a.Certificate.Nodes, a.Certificate.Checks = c.Nodes, c.Checks
		return a, 0, top
	}
	b := q.build(l)
	high = r.on(b)
	// try moves low or high by what is found out about a rung with so much effort
	try := func(rung int, cap int64) (settled bool) {
		q := r.under(low, rung)
		if q == nil {
			low = rung + 1
			return true
		}
		lower, settled := q.some(ctx, cap, &a)
		switch {
		case lower != nil:
			l, b = lower, q.build(lower)
			high = r.on(b)
		case settled:
			low = rung + 1
		}
		return settled
	}
	for cap := int64(firstTry); low < high && !ended(ctx); cap *= tryMore {
		for from := low; from < high; from = max(from, low) { // down to where builds are hard to find
			if mid := (from + high) / 2; !try(mid, cap) {
				from = mid + 1
			}
		}
		for to := high; low < to; to = min(to, high) { // up to where it is hard to show that there are none
			if mid := (low + to) / 2; !try(mid, cap) {
				to = mid
			}
		}
	}
	so := a.Certificate
	a = r.under(low, high).Least(ctx)
	a.Certificate.Nodes += so.Nodes
	a.Certificate.Checks += so.Checks
	if a.Build == nil { // ended before it found one
		a.Status, a.Build, a.Price, a.Worth, a.Cuts = Feasible, b, unit.Money(l.price), l.worth, nil
		a.Certificate.Final.Price = min(a.Price, a.Certificate.Root.Price)
		a.Certificate.Gap.Price = a.Price - a.Certificate.Final.Price
	}
	high = r.on(a.Build)
	if low < high {
		a.Status = Feasible
	}
	return a, low, high
}

// ended reports a context that has ended.
func ended(ctx context.Context) bool {
	select {
	case <-ctx.Done():
		return true
	default:
		return false
	}
}

// A rung is given so much effort at first, and more in each round, so that a hard one keeps no other waiting.
const (
	firstTry = 64
	tryMore  = 8
)

// some looks for any choice that stands, with so much effort where there is a cap, and adds what that took to a certificate.
// Settled is false where the cap or the context ended the search before it was known whether there is one.
func (p *Problem) some(ctx context.Context, cap int64, a *Answer) (l *leaf, settled bool) {
	if p.emptied() {
		return nil, true
	}
	before := p.index.checks
	s := newSearch(ctx, p.priceBound(), p.purse)
	s.cap = cap
	s.found = func(s *search) {
		first := s.leaf()
		l, s.stop = &first, true
	}
	s.run()
	a.Certificate.Nodes += s.nodes
	a.Certificate.Checks += p.index.checks - before
	return l, l != nil || !s.stopped && !s.stop
}
