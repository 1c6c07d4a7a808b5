package plan

import (
	"context"
	"fmt"
	"slices"

	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/rule"
	"slipfit/core/unit"
)

// Noise is told in tenths of a dB(A); no machine is as loud as the loudest of these.
const (
	tenth   = 100
	loudest = 150_000 / tenth
)

// Quiet finds the build that is heard least at the chair, to a tenth of a dB(A), among those that serve every floor within
// the budget; of several the cheapest, and of those the first in tie order. What counts is the figure the noise rule
// predicts, of the loudest activity. Where ctx ends the search, the gap says how much less another build might be heard.
func (p *Problem) Quiet(ctx context.Context) Answer {
	return p.answer(ctx, quietest, p.quietestBuild)
}

func (p *Problem) quietestBuild() Answer {
	limit := unit.Sound(loudest * tenth)
	if wish, asked := p.ask.Needs.Place.Noise.Get(); asked && !slices.Contains(p.ask.Lift, rule.Noise.ID) {
		limit = min(limit, max(0, wish))
	}
	rung := func(level unit.Sound) int { return int(level+tenth-1) / tenth }
	r := rungs{
		watch: p.watch,
		under: func(_, high int) *Problem { return p.hushed(min(limit, unit.Sound(high)*tenth)) },
		on: func(b *build.Build) int {
			level, _ := Heard(b, p.ask.Needs)
			return rung(level)
		},
		note: func(c *Course, low, high int) {
			c.Best.Noise, c.Bound.Noise = unit.Sound(high)*tenth, unit.Sound(low)*tenth
		},
	}
	a, low, high := r.lowest(rung(limit))
	c := &a.Certificate
	p.certify(c)
	if a.Status != Infeasible {
		c.Final.Noise = unit.Sound(low) * tenth
	}
	if a.Build != nil {
		c.Gap.Noise = unit.Sound(high-low) * tenth
	}
	return a
}

// hushed is the problem with no build heard at more than a limit.
func (p *Problem) hushed(limit unit.Sound) *Problem {
	ask := p.ask
	needs := *p.ask.Needs
	needs.Place.Noise.Set(limit)
	ask.Needs = &needs
	ask.Lift = slices.DeleteFunc(slices.Clone(ask.Lift), func(id string) bool { return id == rule.Noise.ID })
	q, err := p.index.Problem(ask)
	if err != nil {
		panic(fmt.Sprintf("plan: an ask that was answered to is refused: %v", err))
	}
	q.watch = p.watch
	return q
}

// Heard is how loud a build is at the chair by the noise rule's own figure for the loudest activity, nought where nothing in it
// makes a sound; known is false where a figure is missing.
func Heard(b *build.Build, n *brief.Needs) (level unit.Sound, known bool) {
	asking := brief.Needs{}
	if n != nil {
		asking = *n
	}
	asking.Place.Noise.Set(loudest * tenth)
	known = true
	for _, m := range rule.NewView(b, &asking).Run(&rule.Noise) {
		level = max(level, unit.Sound(m.Need.N))
		known = known && m.Verdict != rule.Unknown
	}
	return level, known
}
