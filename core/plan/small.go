package plan

import (
	"context"
	"slices"

	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// Small finds the build in the case of the smallest outer volume that serves every floor within the budget, of several
// the cheapest, and of those the first in tie order. A case whose sheet does not state its volume cannot be called the
// smallest and is left out; where the case is settled already or no sheet states one, the build is the cheapest. Where ctx ends the search, the gap
// says how much smaller the case of another build might still be.
func (p *Problem) Small(ctx context.Context) Answer {
	return p.answer(ctx, smallest, p.smallestBuild)
}

func (p *Problem) smallestBuild() Answer {
	if p.emptied() {
		return p.infeasible(Answer{Certificate: Certificate{Combinations: p.combinations()}})
	}
	if p.colOf[build.Case] < 0 {
		return p.leastBuild()
	}
	volumes := p.volumes()
	if len(volumes) == 0 {
		return p.leastBuild()
	}
	r := rungs{
		watch: p.watch,
		under: func(low, high int) *Problem { return p.housed(volumes[low : high+1]) },
		on:    func(b *build.Build) int { return slices.Index(volumes, b.Case.Volume.Or(0)) },
		note:  func(c *Course, low, high int) { c.Best.Volume, c.Bound.Volume = volumes[high], volumes[low] },
	}
	a, low, high := r.lowest(len(volumes) - 1)
	c := &a.Certificate
	p.certify(c)
	if a.Status != Infeasible {
		c.Root.Volume, c.Final.Volume = volumes[0], volumes[low]
	}
	if a.Build != nil {
		c.Gap.Volume = volumes[high] - volumes[low]
	}
	return a
}

// volumes lists the volumes of the cases still open, the smallest first.
func (p *Problem) volumes() []unit.Millilitre {
	var list []unit.Millilitre
	c := p.cols[p.colOf[build.Case]]
	for o := c.live.next(0); o >= 0; o = c.live.next(o + 1) {
		if v, stated := volume(c.options[o]); stated {
			list = append(list, v)
		}
	}
	slices.Sort(list)
	return slices.Compact(list)
}

func volume(o build.Option) (unit.Millilitre, bool) {
	housing, ok := o.Part.(*part.Case)
	if !ok {
		return 0, false
	}
	return housing.Volume.Get()
}

// housed is the problem with cases of these volumes alone; nil where a seat is left without options.
func (p *Problem) housed(volumes []unit.Millilitre) *Problem {
	live := p.alive()
	c := p.colOf[build.Case]
	for o := live[c].next(0); o >= 0; o = live[c].next(o + 1) {
		if v, stated := volume(p.cols[c].options[o]); !stated || !slices.Contains(volumes, v) {
			live[c].drop(o)
		}
	}
	return p.within(live)
}
