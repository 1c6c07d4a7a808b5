package plan

import (
	"math"
	"slices"
)

// gauge is what bounds are judged by in a search for value: a measure that is to be as low as can be, convex in the price of
// value, and the most that a choice of use costs by a bound.
type gauge struct {
	measure func(b *bound) int64
	limit   func(b *bound) int64
}

// focus makes the tightest bound by a gauge, leaves out the options that no choice of use has by it, and begins again
// with what is left, as long as that is much less and the context has not ended. It returns what is left, and the bound on it; nil
// where nothing is. With the first bound it takes a short look for a choice that makes the bounds leave out more.
func (p *Problem) focus(g gauge, look func(b *bound, guards ...*bound) *search) (*Problem, *bound) {
	p, at := p.roughly(g)
	for wide := 0.0; p != nil; { // the first look is at one price alone
		p.appraise()
		b := p.frameFor(weights{perMinor: int64(math.Exp2(at)), perPoint: scale}, -1)
		if p.watch.ended {
			return p, b
		}
		if frame := b.frame; wide == 0 {
			blank := p.blankFrame(-1)
			s := look(b, p.rough(blank, weights{perPoint: scale}), p.rough(blank, weights{perMinor: 1}))
			s.cap = firstTry
			s.run()
		} else {
			b, at = tightest(g, max(0, at-wide), at+wide, func(w weights) *bound { return p.newBound(frame, w) })
		}
		q := p.useful(g, b)
		if q == nil {
			return nil, nil
		}
		if q.count()*10 > p.count()*9 && wide > 0 || p.watch.ended {
			return p, b
		}
		p, wide = q, looksWide
	}
	return nil, nil
}

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
	frame := p.blankFrame(-1)
	b, at := tightest(g, 0, 26, func(w weights) *bound { return p.rough(frame, w) })
	return p.useful(g, b, p.rough(frame, weights{perPoint: scale}), p.rough(frame, weights{perMinor: 1})), at
}

// rough is a bound on a frame in which no column hangs on another. It ranks nothing.
func (p *Problem) rough(f *frame, w weights) *bound {
	b := p.blankBound(f, w)
	for c, col := range p.cols {
		p.watch.poll(len(col.options))
		b.reach[c] = slices.Repeat([]int64{never}, len(col.options))
		least := int64(never)
		for o := col.live.next(0); o >= 0; o = col.live.next(o + 1) {
			b.reach[c][o] = b.own(c, o)
			least = min(least, b.reach[c][o])
		}
		b.tells[c] = []int64{least}
	}
	return b
}

// valueBound is a bound that weighs price against value as the budget roughly does, on a frame of its own.
func (p *Problem) valueBound() *bound {
	return p.frameFor(weights{perMinor: max(1, scale*(p.enough()+1)/max(p.purse, 1)), perPoint: scale}, -1)
}

// tightest looks for the price of value whose bound is lowest by a gauge, between two powers of two, and says where it found it; once
// the context has ended it is content with the lowest it has.
func tightest(g gauge, lo, hi float64, made func(w weights) *bound) (*bound, float64) {
	type trial struct {
		at    float64
		bound *bound
		value int64
	}
	try := func(x float64) trial {
		b := made(weights{perMinor: int64(math.Exp2(x)), perPoint: scale})
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
