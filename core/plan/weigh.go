package plan

import "math"

// gauge is what bounds are judged by in a search for value: a measure that is to be as low as can be, convex in the price of
// value, which is looked for between two powers of two, and the most that a choice of use costs by a bound.
type gauge struct {
	from, to float64
	measure  func(b *bound) int64
	limit    func(b *bound) int64
}

// most is the most that a choice of use costs by weights.
func (g *gauge) most(p *Problem, w weights) int64 { return g.limit(&bound{weights: w, p: p}) }

// focus searches a problem by a gauge, and returns the search at its end; nil where bounds alone leave nothing to search. It makes
// a bound and searches a while; where that does not come to an end it leaves out the options that no choice of use has, and
// begins again with the tightest bound on what is left, as long as that is much less.
func (p *Problem) focus(g gauge, search func(b *bound, guards ...*bound) *search) *search {
	p, at := p.roughly(g)
	for round, last := 0, false; p != nil; round++ {
		p.appraise()
		b := p.frameFor(valuing(at), p.usual(-1), g.most(p, valuing(at)))
		if frame := b.frame; round > 0 {
			b, at = tightest(g, max(0, at-looksWide), at+looksWide, func(w weights) *bound { return p.newBound(frame, w, g.most(p, w)) })
		}
		if b.root() > g.limit(b) {
			return nil
		}
		worth, price := weights{perPoint: scale}, weights{perMinor: 1}
		s := search(b, p.newBound(b.frame, worth, g.most(p, worth)), p.newBound(b.frame, price, g.most(p, price)))
		if last = last || p.watch.ended; !last {
			s.cap = int64(p.count() / optionsPerNode)
		}
		if s.run(); last || s.open == never {
			return s
		}
		q := p.useful(g, b)
		if last = q != nil && q.count()*10 > p.count()*9 && round > 0; !last {
			p = q
		}
	}
	return nil
}

// optionsPerNode is how many options a bound is made over in about the time that a search takes for a node.
const optionsPerNode = 8

// steepest is the highest price of value that is looked at, as a power of two.
const steepest = 26

// looksWide is how far, in powers of two, the price of value is looked for on either side of where it was tightest before.
const looksWide = 3

// useful is the problem without the options that no choice of use has by some bounds; nil where none is left.
func (p *Problem) useful(g gauge, bounds ...*bound) *Problem {
	var live []set
	for _, b := range bounds {
		limit := g.limit(b)
		if b.root() > limit {
			return nil
		}
		useful := b.useful(limit)
		for c := range live {
			useful[c].keep(live[c])
		}
		live = useful
	}
	return p.within(live)
}

// roughly is what is left of the problem by bounds that take each column by itself, and the price of value, as a power of two, at
// which they are tightest.
func (p *Problem) roughly(g gauge) (*Problem, float64) {
	p.appraise()
	l := p.outline()
	_, at := l.tightest(g)
	return p.useful(g, p.rough(l.frame, valuing(at)), p.rough(l.frame, weights{perPoint: scale}), p.rough(l.frame, weights{perMinor: 1})), at
}

// valueBound is a bound that weighs price against value as the budget roughly does, on a frame of its own.
func (p *Problem) valueBound() *bound {
	return p.frameFor(weights{perMinor: max(1, scale*(p.enough()+1)/max(p.purse, 1)), perPoint: scale}, p.usual(-1), never)
}

// valuing weighs price against value at a price of value, as a power of two.
func valuing(at float64) weights { return weights{perMinor: int64(math.Exp2(at)), perPoint: scale} }

// tightest looks for the price of value whose bound is lowest by a gauge, between two powers of two, and says where it found it; once
// the context has ended it is content with the lowest it has.
func tightest(g gauge, lo, hi float64, made func(w weights) *bound) (*bound, float64) {
	type trial struct {
		at    float64
		bound *bound
		value int64
	}
	try := func(x float64) trial {
		b := made(valuing(x))
		return trial{x, b, g.measure(b)}
	}
	const golden = 0.381966
	a, b := try(lo+(hi-lo)*golden), try(hi-(hi-lo)*golden)
	for hi-lo > 1 && !a.bound.p.watch.ended {
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
