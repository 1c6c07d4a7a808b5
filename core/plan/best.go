package plan

import (
	"context"
	"math"
)

// scale is how many parts of cost a value point counts for; the price counts for a whole number of parts.
const scale = 1 << 16

// Best finds the build that serves the most value within the budget, and of several the cheapest, and of those the first
// in tie order. The bound weighs price against value: for any price of a value point, cost = price − value bounds the
// value that fits a budget.
func (p *Problem) Best(ctx context.Context) Answer {
	a := Answer{Certificate: Certificate{Combinations: p.combinations()}}
	if p.emptied() {
		return p.infeasible(a)
	}
	p.appraise()
	w := p.weigh()
	a.Certificate.Root.Worth = w.worth(w.bound.root())
	s := p.newSearch(ctx, w.bound, w.limit(nil))
	s.perPoint = scale
	var best *leaf
	s.found = func(s *search) {
		l := s.leaf()
		if l.price-p.fixed > w.budget {
			return
		}
		if best == nil || l.worth > best.worth || l.worth == best.worth && l.price < best.price {
			best = &l
			s.limit = min(s.limit, w.limit(best))
		}
	}
	s.run()
	if best != nil && !s.stopped {
		a.Certificate.Nodes += p.first(ctx, w.bound, best, w.cost(best), scale)
	}
	p.conclude(&a, s, best)
	final := a.Worth
	if s.open < never {
		final = min(a.Certificate.Root.Worth, w.worth(s.open))
	}
	a.Certificate.Final.Worth = max(final, a.Worth)
	a.Certificate.Gap.Worth = a.Certificate.Final.Worth - a.Worth
	return a
}

// weighing is a price of value under which the bound is tightest.
type weighing struct {
	p        *Problem
	perMinor int64 // parts of cost a minor unit of money counts for
	budget   int64 // most the open seats may cost
	bound    *bound
}

// weigh looks for the price of value whose bound on the value within the budget is least. That bound is convex in the
// price, so a search over its logarithm finds it.
func (p *Problem) weigh() *weighing {
	budget := int64(0)
	for _, c := range p.cols {
		most := int64(0)
		for o := c.live.next(0); o >= 0; o = c.live.next(o + 1) {
			most = max(most, c.price[o])
		}
		budget += most
	}
	for _, t := range p.sums {
		if room, ok := t.pays(p); ok {
			budget = min(budget, room)
		}
	}
	try := func(x float64) *weighing {
		w := &weighing{p: p, perMinor: int64(math.Exp2(x)), budget: budget}
		w.bound = p.newBound(p.order(), p.costs(w.perMinor))
		return w
	}
	value := func(w *weighing) int64 { return w.perMinor*w.budget - w.bound.root() }
	lo, hi := 0.0, 24.0
	a, b := try(lo+(hi-lo)*0.382), try(lo+(hi-lo)*0.618)
	for hi-lo > 0.1 {
		if value(a) <= value(b) {
			hi = lo + (hi-lo)*0.618
			b = a
			a = try(lo + (hi-lo)*0.382)
		} else {
			lo = lo + (hi-lo)*0.382
			a = b
			b = try(lo + (hi-lo)*0.618)
		}
	}
	if value(b) < value(a) {
		return b
	}
	return a
}

// costs charges every option its price, less the value it serves.
func (p *Problem) costs(perMinor int64) [][]int64 {
	cost := make([][]int64, len(p.cols))
	for i, c := range p.cols {
		cost[i] = make([]int64, len(c.options))
		for o := range c.options {
			cost[i][o] = perMinor*c.price[o] - scale*c.worth[o]
		}
	}
	for _, f := range p.many {
		if f.most != nil {
			for o, w := range f.most {
				cost[f.home][o] -= scale * w
			}
		}
	}
	return cost
}

// cost of a choice.
func (w *weighing) cost(l *leaf) int64 {
	return w.perMinor*(l.price-w.p.fixed) - scale*(l.worth-w.p.settled)
}

// limit is the most a choice may cost that is of use besides the best so far: one that serves more within the budget,
// or as much for less.
func (w *weighing) limit(best *leaf) int64 {
	if best == nil {
		return w.perMinor * w.budget
	}
	more := w.perMinor*w.budget - scale*(best.worth+1-w.p.settled)
	less := w.perMinor*(best.price-w.p.fixed-1) - scale*(best.worth-w.p.settled)
	return max(more, less)
}

// worth is the most value that fits the budget where no choice costs less than the bound.
func (w *weighing) worth(bound int64) int64 {
	return w.p.settled + (w.perMinor*w.budget-bound)/scale
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
