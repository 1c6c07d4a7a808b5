package plan

import (
	"context"

	"slipfit/core/unit"
)

// Least finds the cheapest build that stands. Of several at that price it gives the first in tie order.
func (p *Problem) Least(ctx context.Context) Answer {
	return p.answer(ctx, cheapest, p.leastBuild)
}

func (p *Problem) leastBuild() Answer {
	a := Answer{Certificate: Certificate{Combinations: p.combinations()}}
	if p.emptied() {
		return p.infeasible(a)
	}
	low := p.least()
	best := low.best
	p.conclude(&a, best, low.proven())
	a.Certificate.Root.Price = unit.Money(low.root())
	if a.Status == Feasible || a.Status == Unknown {
		a.Certificate.Final.Price = unit.Money(low.floor())
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

// priceBound is the bound on price alone of what the purse pays.
func (p *Problem) priceBound() *bound {
	if p.priced == nil {
		p.priced = p.roughPrice().hang(p.purse)
	}
	return p.priced
}

// roughPrice is the bound on price alone that takes every column by itself.
func (p *Problem) roughPrice() *bound {
	return p.rough(p.blankFrame(p.usual(-1)), weights{perMinor: 1})
}

// lowest is what a search for the cheapest choice has come to.
type lowest struct {
	best  *leaf  // nil where none was found
	bound *bound // on all choices that cost no more than the best
	open  int64  // least bound among what an end left unexplored
}

// proven reports that no choice was left unexplored that may cost less.
func (low *lowest) proven() bool {
	return low.open == never || low.best != nil && low.open >= low.best.price-low.bound.p.fixed
}

// floor is what no choice costs less than, where the search was ended.
func (low *lowest) floor() int64 { return max(low.root(), low.bound.p.fixed+low.open) }

// root is what no choice costs less than by the bound alone, which knows nothing of what costs more than its limit.
func (low *lowest) root() int64 {
	return low.bound.p.fixed + min(low.bound.root(), low.bound.limit+1)
}

// least looks for the cheapest choice.
func (p *Problem) least() *lowest {
	low := &lowest{best: p.known(p.cheaper)}
	most := p.purse // that the cheapest may cost
	if low.best == nil {
		low.bound = p.priceBound()
	} else {
		most = low.best.price - p.fixed
		low.bound = p.frameFor(weights{perMinor: 1}, p.usual(-1), most)
	}
	s := newSearch(low.bound, most)
	take := func(l *leaf) {
		low.best, most = l, l.price-p.fixed
		s.seek(corner{price: most - 1}, corner{price: most, rival: l})
		p.watch.cheaper(l)
	}
	if low.best != nil {
		take(low.best)
	}
	s.found = func(s *search) {
		if l := s.leaf(); low.best == nil || p.cheaper(&l, low.best) {
			p.remember(&l)
			take(&l)
		}
	}
	p.watch.costsNoLess(low.root())
	p.watch.nearer = func() { p.watch.costsNoLess(p.fixed + min(s.ahead(), most)) }
	s.run()
	p.watch.nearer = nil
	low.open = s.open
	return low
}

// cheaper reports a choice that costs less than another, or as much and comes first in tie order.
func (p *Problem) cheaper(l, than *leaf) bool {
	return l.price < than.price || l.price == than.price && p.before(l, than)
}

// conclude fills in what a search found.
func (p *Problem) conclude(a *Answer, best *leaf, proven bool) {
	a.Certificate.Nodes = p.watch.course.Nodes
	a.Certificate.Checks = p.index.checks - p.asked
	switch {
	case best == nil && !proven:
		a.Status = Unknown
	case best == nil:
		*a = p.infeasible(*a)
	default:
		a.Status = Feasible
		if proven {
			a.Status = Optimal
		}
		a.Build, a.Price, a.Worth, a.found = p.build(best), unit.Money(best.price), best.worth, best
	}
}
