package plan

import (
	"context"
	"math"

	"slipfit/core/unit"
)

// scale is how many parts of cost a value point counts for where price counts for a whole number of parts.
const scale = 1 << 16

// Best finds the build that serves the most value within the budget, and of several the cheapest, and of those the first
// in tie order. It first finds the most value, then the least price for it. A bound weighs price against value: for any
// price of a value point, what is left of value less price bounds the value that a budget can buy.
func (p *Problem) Best(ctx context.Context) Answer {
	a := Answer{Certificate: Certificate{Combinations: p.combinations()}}
	if p.emptied() {
		return p.infeasible(a)
	}
	p.appraise()
	best, s := p.least(ctx, p.priceBound())
	a.Certificate.Nodes += s.nodes
	if best == nil {
		p.conclude(&a, s, nil)
		return a
	}
	top := p.most(ctx, best, &a)
	if top.stopped {
		p.conclude(&a, top, best)
		a.Certificate.Final = Bound{Worth: max(best.worth, min(a.Certificate.Root.Worth, top.worthWithin(p.purse, top.open)))}
		a.Certificate.Gap.Worth = a.Certificate.Final.Worth - a.Worth
		return a
	}
	low := p.cheapestAt(ctx, best, &a)
	p.conclude(&a, low, best)
	a.Certificate.Final = Bound{Worth: a.Worth, Price: a.Price}
	if low.stopped {
		final := max(a.Certificate.Root.Price, unit.Money(p.fixed+low.priceFor(best.worth, low.open)))
		a.Certificate.Final.Price = min(a.Price, final)
		a.Certificate.Gap.Price = a.Price - a.Certificate.Final.Price
	}
	return a
}

// most raises a choice to the one of the most value within the budget.
func (p *Problem) most(ctx context.Context, best *leaf, a *Answer) *search {
	budget := p.purse
	if free := p.newBound(p.valueFrame(), weights{perPoint: scale}); free.worthWithin(budget, free.root()) <= best.worth {
		a.Certificate.Root.Worth = best.worth
		return newSearch(ctx, free, 0)
	}
	focus, main := p.focus(func(b *bound) int64 { return b.worthWithin(budget, b.root()) },
		func(b *bound) int64 { return b.costFor(budget, best.worth+1) })
	p = focus
	free := p.newBound(main.frame, weights{perPoint: scale})
	a.Certificate.Root.Worth = max(best.worth, min(main.worthWithin(budget, main.root()), free.worthWithin(budget, free.root())))
	s := newSearch(ctx, main, 0, free, p.priceBound())
	limit := func() {
		s.limit = main.costFor(budget, best.worth+1)
		s.guards[0].limit = free.costFor(budget, best.worth+1)
		s.guards[1].limit = budget
	}
	limit()
	s.found = func(s *search) {
		if l := s.leaf(); l.price-p.fixed <= budget && l.worth > best.worth {
			*best = l
			limit()
		}
	}
	s.run()
	a.Certificate.Nodes += s.nodes
	return s
}

// cheapestAt lowers a choice to the cheapest that serves as much, first in tie order.
func (p *Problem) cheapestAt(ctx context.Context, best *leaf, a *Answer) *search {
	focus, main := p.focus(func(b *bound) int64 { return -b.priceFor(best.worth, b.root()) },
		func(b *bound) int64 { return b.costFor(best.price-b.p.fixed, best.worth) })
	p = focus
	free := p.newBound(main.frame, weights{perPoint: scale})
	price := p.priceBound()
	a.Certificate.Root.Price = unit.Money(p.fixed + max(price.root(), main.priceFor(best.worth, main.root())))
	s := newSearch(ctx, main, 0, free, price)
	limit := func(s *search, price int64) {
		s.limit = main.costFor(price, best.worth)
		s.guards[0].limit = free.costFor(price, best.worth)
		s.guards[1].limit = price
	}
	limit(s, best.price-p.fixed-1)
	s.found = func(s *search) {
		if l := s.leaf(); l.worth >= best.worth && l.price < best.price {
			*best = l
			limit(s, best.price-p.fixed-1)
		}
	}
	s.run()
	a.Certificate.Nodes += s.nodes
	if s.stopped {
		return s
	}
	tie := newSearch(ctx, main, 0, free, price)
	limit(tie, best.price-p.fixed)
	tie.tidy = true
	tie.found = func(s *search) {
		if l := s.leaf(); l.price == best.price && l.worth == best.worth {
			*best = l
			s.stop = true
		}
	}
	tie.run()
	a.Certificate.Nodes += tie.nodes
	return s
}

// focus makes the tightest bound by a measure, leaves out the options that no choice of use has by it, and begins again
// with what is left, as long as that is much less. It returns what is left, and the bound on it.
func (p *Problem) focus(measure, limit func(b *bound) int64) (*Problem, *bound) {
	lo, hi := 0.0, 26.0
	for {
		b, at := p.tightest(p.valueFrame(), measure, lo, hi)
		q := p.within(b.useful(limit(b)))
		if q == nil || q.count()*10 > p.count()*9 {
			return p, b
		}
		p, lo, hi = q, max(0, at-3), at+3
	}
}

// valueFrame is the frame for bounds that weigh price against value.
func (p *Problem) valueFrame() *frame {
	worth := int64(1)
	for i := range p.ask.Needs.By {
		worth += int64(p.ask.Needs.By[i].Weight) * 1000
	}
	return p.newFrame(weights{perMinor: max(1, scale*worth/max(p.purse, 1)), perPoint: scale}, -1)
}

// tightest looks for the price of value whose bound is least by a measure convex in that price, between two powers of
// two, and says where it found it.
func (p *Problem) tightest(f *frame, measure func(b *bound) int64, lo, hi float64) (*bound, float64) {
	type trial struct {
		at    float64
		bound *bound
		value int64
	}
	try := func(x float64) trial {
		b := p.newBound(f, weights{perMinor: int64(math.Exp2(x)), perPoint: scale})
		return trial{x, b, measure(b)}
	}
	const golden = 0.381966
	a, b := try(lo+(hi-lo)*golden), try(hi-(hi-lo)*golden)
	for hi-lo > 1 {
		if a.value < b.value {
			hi, b = b.at, a
			a = try(lo + (hi-lo)*golden)
		} else {
			lo, a = a.at, b
			b = try(hi - (hi-lo)*golden)
		}
	}
	if a.value < b.value {
		return a.bound, a.at
	}
	return b.bound, b.at
}

// costFor is the most a choice can cost that is priced and worth so much, what is settled left out of the price.
func (b *bound) costFor(price, worth int64) int64 {
	return b.perMinor*price - b.perPoint*(worth-b.p.settled)
}

// worthWithin is the most value a budget can buy where no choice costs less than so much.
func (b *bound) worthWithin(budget, cost int64) int64 {
	return b.p.settled + floor(b.perMinor*budget-cost, b.perPoint)
}

// priceFor is the least price of so much value where no choice costs less than so much.
func (b *bound) priceFor(worth, cost int64) int64 {
	return -floor(-(cost + b.perPoint*(worth-b.p.settled)), b.perMinor)
}

// floor divides rounding down; d is positive.
func floor(n, d int64) int64 {
	q := n / d
	if n%d < 0 {
		q--
	}
	return q
}

// appraise works out the largest worth that each factor can reach.
func (p *Problem) appraise() {
	if p.appraised {
		return
	}
	p.appraised = true
	all := int64(0)
	for i := range p.ask.Needs.By {
		all += int64(p.ask.Needs.By[i].Weight) * 1000
	}
	for _, f := range p.many {
		f.appraise(p, all)
	}
}
