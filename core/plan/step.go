package plan

import (
	"cmp"
	"context"
	"slices"

	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/rule"
	"slipfit/core/unit"
)

// Serving is how far a build serves each resource that needs ask, in the unit of the need, less what else is asked of the same
// part, such as an archive that lies on the boot drive; −1 where it is not asked of a part of its own.
func Serving(b *build.Build, n *brief.Needs) (have [brief.Resources]int64) {
	for r := range have {
		have[r] = -1
	}
	p := rule.Prove(b, n)
	for _, m := range p.Margins {
		for r := range brief.Resource(brief.Resources) {
			if m.Capped && m.Subject == r.Title() {
				have[r] = n.By[r].Floor + m.Have.N - m.Need.N
			}
		}
	}
	return have
}

// Further finds the cheapest build that serves one resource further than a build does on its way to enough, and every other at
// least as far, whatever the budget says. Where changing one seat alone costs no more, it changes no other. It is infeasible
// where nothing more can be had or used.
func (x *Index) Further(ctx context.Context, ask Ask, b *build.Build, r brief.Resource, s build.Seat) (Answer, error) {
	have := Serving(b, ask.Needs)
	if need := ask.Needs.By[r]; have[r] < 0 || have[r] >= need.Enough {
		return Answer{Status: Infeasible}, nil
	}
	ask.Needs = holding(ask.Needs, b, have)
	ask.Needs.By[r].Floor = have[r] + 1
	p, err := x.Problem(ask)
	if err != nil {
		return Answer{}, err
	}
	a := p.Least(ctx)
	if a.Status != Optimal {
		return a, nil
	}
	ask.Keep = Choices(b, build.SetOf(s, build.Services))
	if p, err = x.Problem(ask); err != nil {
		return Answer{}, err
	}
	if alone := p.Least(ctx); alone.Status == Optimal && alone.Price <= a.Price {
		alone.Certificate = a.Certificate // what it is held against
		return alone, nil
	}
	return a, nil
}

// holding is needs with every floor raised to what a build serves of the way to enough, save those with which another rule would
// turn the build itself down, such as a link that carries less than the drive behind it reads.
func holding(n *brief.Needs, b *build.Build, have [brief.Resources]int64) *brief.Needs {
	raised := *n
	raised.Budget = 0
	for r := range have {
		need := &raised.By[r]
		if floor := min(have[r], need.Enough); floor > need.Floor {
			was := need.Floor
			need.Floor = floor
			if p := rule.Prove(b, &raised); !p.Stands() {
				need.Floor = was
			}
		}
	}
	return &raised
}

// Cheaper finds a whole build for less than a build costs with the next cheaper filling of a seat: of all that cost less in
// that seat the dearest with which one stands. Every resource but those of the seat is served at least as far as now; those are
// served to their floors, or not asked for where they are to be given up. Of builds with that filling it is the cheapest.
func (x *Index) Cheaper(ctx context.Context, ask Ask, b *build.Build, s build.Seat, own []brief.Resource, giving bool) (Answer, error) {
	have := Serving(b, ask.Needs)
	for _, r := range own {
		have[r] = -1
	}
	ask.Needs = holding(ask.Needs, b, have)
	if giving {
		for _, r := range own {
			ask.Needs.By[r].Floor = 0
		}
	}
	p, err := x.Problem(ask)
	if err != nil {
		return Answer{}, err
	}
	c, now := p.colOf[s], unit.Money(0)
	for _, l := range b.Lines() {
		if l.Seat == s {
			now += l.Price()
		}
	}
	total := Answer{Status: Infeasible, Certificate: Certificate{Combinations: p.combinations()}}
	if c < 0 {
		return total, nil
	}
	for _, price := range p.below(c, int64(now)) {
		q := p.within(p.costing(c, price))
		if q == nil {
			continue
		}
		q.purse = min(q.purse, int64(b.Price())-q.fixed-1)
		a := q.Least(ctx)
		total.Certificate.Nodes += a.Certificate.Nodes
		total.Certificate.Checks = a.Certificate.Checks
		if a.Status != Infeasible {
			a.Certificate.Nodes = total.Certificate.Nodes
			a.Certificate.Combinations = total.Certificate.Combinations
			return a, nil
		}
	}
	return total, nil
}

// below lists what the live options of a column cost that cost less than so much, the dearest first.
func (p *Problem) below(c int, than int64) []int64 {
	var list []int64
	col := p.cols[c]
	for o := col.live.next(0); o >= 0; o = col.live.next(o + 1) {
		if col.price[o] < than {
			list = append(list, col.price[o])
		}
	}
	slices.SortFunc(list, func(a, b int64) int { return cmp.Compare(b, a) })
	return slices.Compact(list)
}

// costing is what is live, but of one column only the options that cost so much.
func (p *Problem) costing(c int, price int64) []set {
	live := p.alive()
	for o := live[c].next(0); o >= 0; o = live[c].next(o + 1) {
		if p.cols[c].price[o] != price {
			live[c].drop(o)
		}
	}
	return live
}
