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
	b := p.priceBound()
	root := p.fixed + b.root()
	a.Certificate.Root.Price = unit.Money(root)
	best, s := p.least(ctx, b)
	a.Certificate.Nodes = s.nodes
	if best != nil && !s.stopped {
		a.Certificate.Nodes += first(ctx, best, b, best.price-p.fixed)
	}
	p.conclude(&a, s, best)
	if a.Status == Feasible || a.Status == Unknown {
		a.Certificate.Final.Price = unit.Money(max(root, p.fixed+s.open))
	}
	if a.Status == Optimal {
		a.Certificate.Final.Price = a.Price
	}
	if best != nil {
		a.Certificate.Final.Price = min(a.Price, a.Certificate.Final.Price)
		a.Certificate.Gap.Price = a.Price - a.Certificate.Final.Price
	}
	return a
}

// priceBound is the bound on price alone.
func (p *Problem) priceBound() *bound {
	w := weights{perMinor: 1}
	if p.priced == nil {
		p.priced = p.newBound(p.newFrame(w, -1), w)
	}
	return p.priced
}

// least looks for the cheapest choice.
func (p *Problem) least(ctx context.Context, b *bound) (*leaf, *search) {
	var best *leaf
	s := newSearch(ctx, b, p.purse)
	s.found = func(s *search) {
		l := s.leaf()
		best = &l
		s.limit = l.price - p.fixed - 1
	}
	s.run()
	return best, s
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
func (p *Problem) conclude(a *Answer, s *search, best *leaf) {
	a.Certificate.Checks = p.index.checks - p.asked
	switch {
	case best == nil && s.stopped:
		a.Status = Unknown
	case best == nil:
		*a = p.infeasible(*a)
	default:
		a.Status = Feasible
		if !s.stopped {
			a.Status = Optimal
		}
		a.Build, a.Price, a.Worth = p.build(best), unit.Money(best.price), best.worth
	}
}
