package plan

import (
	"cmp"
	"context"
	"slices"

	"slipfit/core/unit"
)

// scale is how many parts of cost a value point counts for where price counts for a whole number of parts.
const scale = 1 << 16

// Best finds the build that serves the most value within the budget, and of several the cheapest, and of those the first
// in tie order. It first finds the most value, then the least price for it. A bound weighs price against value: for any
// price of a value point, what is left of value less price bounds the value that a budget can buy.
func (p *Problem) Best(ctx context.Context) Answer {
	p.begin(ctx)
	a := Answer{Certificate: Certificate{Combinations: p.combinations()}}
	if p.emptied() {
		return p.infeasible(a)
	}
	low := p.least()
	best := low.best
	if best == nil {
		p.conclude(&a, nil, low.proven())
		return a
	}
	h := &hunt{p: p, best: best, shares: p.shares()}
	a.Certificate.Root = Bound{Worth: max(best.worth, h.ceiling()), Price: unit.Money(min(best.price, p.fixed+low.bound.root()))}
	worth, price := h.most(), int64(a.Certificate.Root.Price)
	if worth == best.worth {
		price = max(price, h.cheapest())
	}
	p.conclude(&a, best, worth == best.worth && price == best.price)
	a.Certificate.Final = Bound{Worth: worth, Price: unit.Money(price)}
	a.Certificate.Gap = Bound{Worth: worth - best.worth, Price: unit.Money(best.price - price)}
	return a
}

// hunt is a search for the best build in progress. The problem is searched in shares, which differ in what seats they leave
// empty: rules can say much more of a seat that is known to be filled.
type hunt struct {
	p      *Problem
	best   *leaf
	shares []*share
}

// share is one share of a problem. Its choices are known by the same options.
type share struct {
	*Problem
	most int64 // no choice of it within the budget is worth more
}

// shares splits the problem by which seats that may be left empty are, those that may serve most first. Once the context has ended
// it splits no further.
func (p *Problem) shares() []*share {
	list := []*Problem{p}
	for c, col := range p.cols {
		if filled, empty := col.filled(); !filled || !empty {
			continue
		}
		var next []*Problem
		for _, q := range list {
			if p.watch.ended {
				next = append(next, q)
				continue
			}
			for _, fill := range [...]bool{false, true} {
				if r := q.within(q.leaving(c, fill)); r != nil {
					next = append(next, r)
				}
			}
		}
		list = next
	}
	var shares []*share
	for _, q := range list {
		q.appraise()
		free := q.rough(q.blankFrame(-1), weights{perPoint: scale})
		shares = append(shares, &share{q, free.worthWithin(q.purse, free.root())})
	}
	slices.SortStableFunc(shares, func(a, b *share) int { return cmp.Compare(b.most, a.most) })
	return shares
}

// leaving is what is live, but of one column only the options that fill its seat, or that do not.
func (p *Problem) leaving(c int, fill bool) []set {
	live := make([]set, len(p.cols))
	for i, col := range p.cols {
		live[i] = slices.Clone(col.live)
	}
	for o, option := range p.cols[c].options {
		if (option.Part != nil) != fill {
			live[c].drop(o)
		}
	}
	return live
}

// ceiling is the most that any share may be worth.
func (h *hunt) ceiling() int64 {
	if len(h.shares) == 0 {
		return 0
	}
	return h.shares[0].most
}

// worthier gauges what is worth more than the best, within the budget.
func (h *hunt) worthier() gauge {
	budget := h.p.purse
	return gauge{
		func(b *bound) int64 { return b.worthWithin(budget, b.root()) },
		func(b *bound) int64 { return b.costFor(budget, h.best.worth+1) },
	}
}

// cheaper gauges what is worth as much as the best and costs no more.
func (h *hunt) cheaper() gauge {
	worth := h.best.worth
	return gauge{
		func(b *bound) int64 { return -b.priceFor(worth, b.root()) },
		func(b *bound) int64 { return b.costFor(h.best.price-h.p.fixed, worth) },
	}
}

// most raises the best to the choice of the most value within the budget, and returns what no choice is worth more than.
func (h *hunt) most() int64 {
	ceiling := h.best.worth
	for i, part := range h.shares {
		if part.most <= h.best.worth {
			continue
		}
		if h.p.watch.ended {
			ceiling = max(ceiling, part.most)
			continue
		}
		p, main := part.focus(h.worthier(), h.rising)
		if p == nil {
			continue
		}
		worth := func(cost int64) int64 { return min(part.most, main.worthWithin(h.p.purse, cost)) }
		if h.p.watch.ended {
			ceiling = max(ceiling, worth(main.root()))
			continue
		}
		s := h.rising(main, p.newBound(main.frame, weights{perPoint: scale}), p.priceBound())
		rest := h.shares[i+1:]
		h.p.watch.nearer = func() {
			most := max(h.best.worth, ceiling, worth(s.ahead()))
			if len(rest) > 0 {
				most = max(most, rest[0].most)
			}
			h.p.watch.servesNoMore(most)
		}
		s.run()
		h.p.watch.nearer = nil
		if s.open < never {
			ceiling = max(ceiling, worth(s.open))
		}
	}
	return max(ceiling, h.best.worth)
}

// rising is a search for what is worth more than the best.
func (h *hunt) rising(b *bound, guards ...*bound) *search {
	s := newSearch(b, 0, guards...)
	s.price(h.p.purse, h.best.worth+1)
	s.found = func(s *search) {
		if l := s.leaf(); l.price-h.p.fixed <= h.p.purse && l.worth > h.best.worth {
			*h.best = l
			s.watch.found(&l)
			s.price(h.p.purse, h.best.worth+1)
		}
	}
	return s
}

// falling is a search for what is worth as much as the best and costs less.
func (h *hunt) falling(b *bound, guards ...*bound) *search {
	s := newSearch(b, 0, guards...)
	s.price(h.best.price-h.p.fixed-1, h.best.worth)
	s.found = func(s *search) {
		if l := s.leaf(); l.worth >= h.best.worth && l.price < h.best.price {
			*h.best = l
			s.watch.found(&l)
			s.price(h.best.price-h.p.fixed-1, h.best.worth)
		}
	}
	return s
}

// price holds a search to choices of so much worth at no more than a price, what is settled left out of that.
func (s *search) price(price, worth int64) {
	s.limit = s.costFor(price, worth)
	for i := range s.guards {
		s.guards[i].limit = s.guards[i].costFor(price, worth)
	}
}

// cheapest lowers the best to the cheapest choice that serves as much, first in tie order, and returns what no such choice
// costs less than.
func (h *hunt) cheapest() int64 {
	watch := h.p.watch
	watch.servesNoMore(h.best.worth)
	floor := int64(never)
	var ties []*search
	for _, part := range h.shares {
		if part.most < h.best.worth {
			continue
		}
		if watch.ended {
			return 0
		}
		p, main := part.focus(h.cheaper(), h.falling)
		if p == nil {
			continue
		}
		s := h.falling(main, p.newBound(main.frame, weights{perPoint: scale}), p.priceBound())
		s.run()
		if s.open < never {
			floor = min(floor, h.p.fixed+main.priceFor(h.best.worth, s.open))
		}
		ties = append(ties, newSearch(main, 0, s.guards[0].bound, s.guards[1].bound))
	}
	for _, s := range ties {
		h.first(s)
	}
	return min(floor, h.best.price)
}

// first replaces the best by what one search finds that costs and serves the same and comes first in tie order, where it
// comes before the best.
func (h *hunt) first(s *search) {
	s.price(h.best.price-h.p.fixed, h.best.worth)
	if h.p.watch.ended || s.root() > s.limit {
		return
	}
	s.tidy = true
	s.found = func(s *search) {
		if l := s.leaf(); l.price == h.best.price && l.worth == h.best.worth {
			if h.p.before(&l, h.best) {
				*h.best = l
			}
			s.stop = true
		}
	}
	s.run()
}

// before reports a choice that comes earlier in tie order than another.
func (p *Problem) before(a, b *leaf) bool {
	for _, s := range sequence {
		if c := p.colOf[s]; c >= 0 && a.pick[c] != b.pick[c] {
			return a.pick[c] < b.pick[c]
		}
	}
	return false
}

// appraise works out the largest worth that each factor can reach.
func (p *Problem) appraise() {
	if p.appraised {
		return
	}
	p.appraised = true
	for _, f := range p.many {
		f.appraise(p)
	}
}
