package plan

import (
	"context"

	"slipfit/core/unit"
)

// Least finds the cheapest build that stands. Of several at that price it gives the one first in tie order: by case,
// board, processor and so on, each by its id.
func (p *Problem) Least(ctx context.Context) Answer {
	a := Answer{Certificate: Certificate{Combinations: p.combinations()}}
	if p.emptied() {
		return p.infeasible(a)
	}
	cost := make([][]int64, len(p.cols))
	for i, c := range p.cols {
		cost[i] = c.price
	}
	b := p.newBound(p.order(), cost)
	root := p.fixed + b.root()
	a.Certificate.Root.Price = unit.Money(root)
	s := p.newSearch(ctx, b, never-1)
	var best *leaf
	s.found = func(s *search) {
		l := s.leaf()
		best = &l
		s.limit = l.price - p.fixed - 1
	}
	s.run()
	if best != nil && !s.stopped {
		a.Certificate.Nodes += p.first(ctx, b, best, best.price-p.fixed, 0)
	}
	final := min(never, p.fixed+s.open)
	p.conclude(&a, s, best)
	switch {
	case best == nil && s.stopped:
		a.Certificate.Final.Price = unit.Money(max(final, root))
	case best != nil:
		a.Certificate.Final.Price = min(a.Price, unit.Money(max(final, root)))
		a.Certificate.Gap.Price = a.Price - a.Certificate.Final.Price
		if a.Certificate.Gap.Price == 0 {
			a.Status = Optimal
		}
	}
	return a
}

// conclude fills in what a search found.
func (p *Problem) conclude(a *Answer, s *search, best *leaf) {
	a.Certificate.Nodes += s.nodes
	a.Certificate.Checks = p.checks
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
