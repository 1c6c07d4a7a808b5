package plan

import (
	"cmp"
	"context"
	"slices"

	"slipfit/core/build"
	"slipfit/core/unit"
)

// scale is how many parts of cost a value point counts for where price counts for a whole number of parts.
const scale = 1 << 16

// Best finds the build that serves the most value within the budget, and of several the cheapest, and of those the first
// in tie order. A bound weighs price against value: for any price of a value point, what is left of value less price bounds the
// value that a budget can buy.
func (p *Problem) Best(ctx context.Context) Answer {
	return p.answer(ctx, worthiest, p.bestBuild)
}

func (p *Problem) bestBuild() Answer {
	a := Answer{Certificate: Certificate{Combinations: p.combinations()}}
	if p.emptied() {
		return p.infeasible(a)
	}
	best := p.known(p.betters)
	root := p.fixed
	if best != nil {
		root += p.roughPrice().root()
	} else {
		low := p.least()
		if best = low.best; best == nil {
			p.conclude(&a, nil, low.proven())
			return a
		}
		root = low.root()
	}
	p.watch.found(best)
	h := &hunt{p: p, best: best, shares: p.shares()}
	a.Certificate.Root = Bound{Worth: max(best.worth, h.ceiling()), Price: unit.Money(min(best.price, root))}
	worth, price := h.search(int64(a.Certificate.Root.Price))
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
	shares []*share // those that are not done with
	aim    int64    // what is looked for is worth no less
}

// share is one share of a problem. Its choices are known by the same options.
type share struct {
	*Problem
	most int64   // no choice of it within the budget is worth more
	at   float64 // the price of value, as a power of two, at which that was found
	step int64   // how much less it was last aimed at
}

// splitting is the seats that may be left empty by which a problem is split before it is searched: those on which most other seats hang, or
// much of the value.
var splitting = [...]build.Seat{build.Graphics, build.Cache, build.Archive}

// shares splits the problem by which of these seats are left empty, those that may serve most first. Once the context has ended it splits
// no further.
func (p *Problem) shares() []*share {
	list := []*Problem{p}
	for _, s := range splitting {
		c := p.colOf[s]
		if c < 0 {
			continue
		}
		if filled, empty := p.cols[c].filled(); !filled || !empty {
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
		l := q.outline()
		within := func(b *bound) int64 { return b.worthWithin(q.purse, b.root()) }
		b, at := l.tightest(gauge{to: steepest, measure: within})
		shares = append(shares, &share{Problem: q, most: min(within(b), within(l.bound(weights{perPoint: scale}))), at: at})
	}
	slices.SortStableFunc(shares, func(a, b *share) int { return cmp.Compare(b.most, a.most) })
	return shares
}

// leaving is what is live, but of one column only the options that fill its seat, or that do not.
func (p *Problem) leaving(c int, fill bool) []set {
	live := p.alive()
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

// corners lists what is looked for in a share: what is worth as much as aimed at within the budget. Where that is no more than the best
// is worth, it is what is as good and costs less, or as much and comes first in tie order, and what is worth more, where anything of
// the share may be.
func (h *hunt) corners(part *share) []corner {
	if h.aim > h.best.worth {
		return []corner{{price: h.p.purse, worth: h.aim}}
	}
	price, worth := h.best.price-h.p.fixed, h.best.worth
	list := []corner{{price: price - 1, worth: worth}, {price: price, worth: worth, rival: h.best}}
	if part.most > worth {
		list = append(list, corner{price: h.p.purse, worth: worth + 1})
	}
	return list
}

// better gauges what is looked for in a share.
func (h *hunt) better(part *share) gauge {
	g := gauge{
		part.at, part.at,
		func(b *bound) int64 { return b.worthWithin(h.p.purse, b.root()) },
		func(b *bound) int64 {
			limit := int64(-never)
			for _, k := range h.corners(part) {
				limit = max(limit, b.costFor(k.price, k.worth))
			}
			return limit
		},
	}
	if part.most <= h.best.worth {
		g.from, g.to = 0, steepest
		g.measure = func(b *bound) int64 { return -b.priceFor(h.best.worth, b.root()) }
	}
	return g
}

// climb is a search of a share for what is looked for, and once that is found for what is better.
func (h *hunt) climb(part *share, b *bound, guards ...*bound) *search {
	s := newSearch(b, 0, guards...)
	s.seek(h.corners(part)...)
	s.found = func(s *search) {
		l := s.leaf()
		if h.p.betters(&l, h.best) {
			*h.best = l
			h.p.remember(&l)
			s.watch.found(&l)
			s.seek(h.corners(part)...)
		}
	}
	return s
}

// betters reports a choice within the budget that is worth more than another, or as much and costs less, or the same and comes first
// in tie order.
func (p *Problem) betters(l, than *leaf) bool {
	if l.worth != than.worth {
		return l.worth > than.worth && l.price-p.fixed <= p.purse
	}
	return p.cheaper(l, than)
}

// A share is first searched for what is worth nearly the most that it may be: a part in firstAim less. Where nothing is, it is aimed
// lower by aimLower times as much as before. A search that aims high leaves out much more. Once no more than a part in near lies between
// the best and the most, all that is better is looked for.
const (
	firstAim = 64
	aimLower = 3
	near     = 16
)

// next takes the share that may be worth most, and aims; nil where none may be worth as much as the best.
func (h *hunt) next() *share {
	var next *share
	for _, part := range h.shares {
		if part.most >= h.best.worth && (next == nil || part.most > next.most) {
			next = part
		}
	}
	if next == nil {
		return nil
	}
	next.step = max(next.most/firstAim, next.step*aimLower)
	if h.aim = h.best.worth; next.most-h.aim > max(next.most/near, 2*next.step) {
		h.aim = next.most - next.step
	}
	return next
}

// most is the most that a share may be worth that is searched, where what is unexplored costs no less than so much.
func (h *hunt) most(part *share, s *search, cost int64) int64 {
	return min(part.most, max(h.aim-1, s.worthWithin(h.p.purse, cost)))
}

// rest is what a search that was ended has left of a share: none of it is worth more, nor costs less and is worth as much as the best.
type rest struct{ most, price int64 }

// search raises the best to the choice of the most value within the budget, of several the cheapest, and of those the first in tie
// order. It returns what no choice is worth more than, and what none that serves as much as the best costs less than, which is price
// where it is not known that none is worth more.
func (h *hunt) search(price int64) (ceiling, floor int64) {
	watch := h.p.watch
	var left []rest
	for !watch.ended {
		part := h.next()
		if part == nil {
			break
		}
		s := part.focus(h.better(part), func(b *bound, guards ...*bound) *search {
			s := h.climb(part, b, guards...)
			watch.nearer = func() {
				most := max(h.best.worth, h.most(part, s, s.ahead()))
				for _, other := range h.shares {
					if other != part {
						most = max(most, other.most)
					}
				}
				watch.servesNoMore(most)
			}
			return s
		})
		watch.nearer = nil
		switch {
		case s != nil && s.open < never:
			r := rest{h.most(part, s, s.open), price}
			if h.aim <= h.best.worth {
				r.price = h.p.fixed + s.priceFor(h.best.worth, s.open)
			}
			left = append(left, r)
			fallthrough
		case h.aim <= h.best.worth:
			h.shares = slices.DeleteFunc(h.shares, func(other *share) bool { return other == part })
		default:
			part.most = h.aim - 1
		}
	}
	for _, part := range h.shares {
		left = append(left, rest{part.most, price})
	}
	ceiling, floor = h.best.worth, h.best.price
	for _, r := range left {
		ceiling = max(ceiling, r.most)
		if r.most >= h.best.worth {
			floor = min(floor, max(price, r.price))
		}
	}
	if ceiling > h.best.worth {
		floor = price
	}
	watch.servesNoMore(ceiling)
	return ceiling, floor
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
