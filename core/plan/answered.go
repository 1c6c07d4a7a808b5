package plan

import (
	"context"
	"slices"
)

// answered is an answer that was proven for a space.
type answered struct {
	space
	sought sought
	answer Answer
}

// sought is what a build is looked for by.
type sought uint8

const (
	cheapest sought = iota
	worthiest
	smallest
	quietest
)

// answeredKept is how many of these an Index keeps, those given last.
const answeredKept = 32

// answer answers a question: by what is known of a space that holds all that the problem admits, where what was found there is still
// admitted, or where nothing stands in the very same; else by a search.
func (p *Problem) answer(ctx context.Context, by sought, search func() Answer) Answer {
	p.begin(ctx)
	if p.of != nil || p.emptied() {
		return search()
	}
	x, in := p.index, p.space()
	for _, k := range slices.Backward(x.answered) {
		if k.sought == by {
			if a := p.again(k, &in); a != nil {
				return *a
			}
		}
	}
	a := search()
	if a.Status == Optimal && a.found != nil || a.Status == Infeasible {
		if len(x.answered) == answeredKept {
			x.answered = slices.Delete(x.answered, 0, 1)
		}
		x.answered = append(x.answered, &answered{in, by, a})
	}
	return a
}

// again is an answer as it holds of a problem; nil where it says nothing of that. Options of a seat stand in the same order wherever there
// are several, so what came first in tie order still does.
func (p *Problem) again(k *answered, in *space) *Answer {
	at, inside := k.holds(in)
	if !inside {
		return nil
	}
	a := k.answer
	switch {
	case a.found == nil && !k.same(in):
		return nil
	case a.found == nil:
		a = p.infeasible(a)
	default:
		for c, col := range p.cols {
			if at[c] != nil && col.live.count() > 1 {
				return nil
			}
		}
		if a.found = p.own(a.found, at); a.found == nil {
			return nil
		}
		a.Build = p.build(a.found)
		p.watch.found(a.found)
	}
	p.certify(&a.Certificate)
	return &a
}
