package plan

import "math"

// focus makes the tightest bound by a measure, leaves out the options that no choice of use has by it, and begins again
// with what is left, as long as that is much less. It returns what is left, and the bound on it; nil where nothing is.
func (p *Problem) focus(f *frame, measure, limit func(b *bound) int64) (*Problem, *bound) {
	lo, hi := 0.0, 26.0
	for {
		b, at := p.tightest(f, measure, lo, hi)
		if b.root() > limit(b) {
			return nil, nil
		}
		q := p.within(b.useful(limit(b)))
		if q == nil {
			return nil, nil
		}
		if q.count()*10 > p.count()*9 {
			return p, b
		}
		q.appraise()
		p, f, lo, hi = q, q.valueBound().frame, max(0, at-3), at+3
	}
}

// valueBound is a bound that weighs price against value as the budget roughly does, on a frame of its own.
func (p *Problem) valueBound() *bound {
	worth := int64(1)
	for i := range p.ask.Needs.By {
		worth += int64(p.ask.Needs.By[i].Weight) * 1000
	}
	return p.frameFor(weights{perMinor: max(1, scale*worth/max(p.purse, 1)), perPoint: scale}, -1)
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
