package plan

import (
	"context"

	"slipfit/core/unit"
)

// Least finds the cheapest build that stands. Of several at that price it gives the first in tie order.
func (p *Problem) Least(ctx context.Context) Answer {
	a := Answer{Certificate: Certificate{Combinations: p.combinations()}}
	if p.emptied() {
		return p.infeasible(a)
	}
	low := p.least(ctx)
	root := p.fixed + low.bound.root()
	best := low.best
	if best != nil && !low.stopped {
		low.nodes += first(ctx, best, low.bound, best.price-p.fixed)
	}
	a.Certificate.Nodes = low.nodes
	p.conclude(&a, best, low.stopped)
	a.Certificate.Root.Price = unit.Money(root)
	if a.Status == Feasible || a.Status == Unknown {
		a.Certificate.Final.Price = unit.Money(max(root, p.fixed+low.open))
	}
	if a.Status == Optimal {
		a.Certificate.Final.Price = a.Price
	}
	if best != nil {
		a.Certificate.Root.Price = min(a.Price, a.Certificate.Root.Price)
		a.Certificate.Final.Price = min(a.Price, a.Certificate.Final.Price)
		a.Certificate.Gap.Price = a.Price - a.Certificate.Final.Price
	}
	return a
}

// priceBound is the bound on price alone.
func (p *Problem) priceBound() *bound {
	if p.priced == nil {
		p.priced = p.frameFor(weights{perMinor: 1}, -1)
	}
	return p.priced
}

// lowest is what a search for the cheapest choice has come to.
type lowest struct {
	best    *leaf  // nil where none was found
	bound   *bound // on all choices that cost no more than the best
	nodes   int64
	open    int64 // least bound among what an end left unexplored
	stopped bool
}

// least looks for the cheapest choice.
func (p *Problem) least(ctx context.Context) *lowest {
	low := &lowest{bound: p.priceBound()}
	s := newSearch(ctx, low.bound, p.purse)
	s.found = func(s *search) {
		l := s.leaf()
		low.best = &l
		s.limit = l.price - p.fixed - 1
	}
	s.run()
	low.nodes, low.open, low.stopped = s.nodes, s.open, s.stopped
	return low
}

// first replaces a choice by the first in tie order that costs and serves the same.
func first(ctx context.Context, best *leaf, b *bound, limit int64, guards ...*bound) (nodes int64) {
	s := newSearch(ctx, b, limit, guards...)
	s.tidy = true
	s.found = func(s *search) {
		if l := s.leaf(); l.price == best.price && l.worth == best.worth {
			*best = l
			s.stop = true
		}
	}
	s.run()
	return s.nodes
}

// conclude fills in what a search found.
func (p *Problem) conclude(a *Answer, best *leaf, stopped bool) {
	a.Certificate.Checks = p.index.checks - p.asked
	switch {
	case best == nil && stopped:
		a.Status = Unknown
	case best == nil:
		*a = p.infeasible(*a)
	default:
		a.Status = Feasible
		if !stopped {
			a.Status = Optimal
		}
		a.Build, a.Price, a.Worth = p.build(best), unit.Money(best.price), best.worth
	}
}
