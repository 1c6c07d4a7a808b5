package plan

import (
	"cmp"
	"context"
	"errors"
	"slices"

	"slipfit/core/unit"
)

// Repair is a smallest set of demands whose giving up lets a build stand.
type Repair struct {
	Drops  []Demand
	Answer Answer     // the cheapest build that meets all other demands
	Above  unit.Money // how far its price lies above the budget asked, nought where it does not
}

// Repairs lists every smallest set of at most so many demands whose giving up lets a build stand, fewest first, then by
// price. Giving up the budget is asking for more money: Above says how much. The sets are the hitting sets of the
// conflicts met on the way (Reiter, Artificial Intelligence 32, 1987). Where the context ends the search, complete is false and the
// list is of those found, whose builds may not be proven the cheapest. Told, which may be nil, hears how far it is: what is found is
// the repairs.
func (x *Index) Repairs(ctx context.Context, ask Ask, most int, told func(Course)) (list []Repair, complete bool, err error) {
	e := newExplainer(ctx, x, ask)
	e.listen(told, func() int { return len(list) })
	var done [][]int // sets that repair
	for open := [][]int{nil}; len(open) > 0; {
		var next [][]int
		for _, drop := range open {
			if slices.ContainsFunc(done, func(d []int) bool { return covers(drop, d) }) {
				continue
			}
			r, core, err := e.repair(drop, len(drop) < most)
			switch {
			case errors.Is(err, ErrStands), err != nil && !e.watch.ended:
				return nil, false, err
			case err != nil:
				return ranked(list), false, nil
			case r != nil:
				list, done = append(list, *r), append(done, drop)
				continue
			}
			for _, i := range core {
				more := append(slices.Clone(drop), i)
				slices.Sort(more)
				if !slices.ContainsFunc(next, func(n []int) bool { return slices.Equal(n, more) }) {
					next = append(next, more)
				}
			}
		}
		open = next
	}
	return ranked(list), true, nil
}

// ranked orders repairs: the fewest demands given up first, then the cheapest.
func ranked(list []Repair) []Repair {
	slices.SortStableFunc(list, func(a, b Repair) int {
		return cmp.Or(cmp.Compare(len(a.Drops), len(b.Drops)), cmp.Compare(a.Answer.Price, b.Answer.Price))
	})
	return list
}

// repair gives up some demands: the repair where a build then stands, else, where wanted, a smallest set of the others
// that still cannot be met.
func (x *explainer) repair(drop []int, explain bool) (*Repair, []int, error) {
	keep := x.keeping(drop)
	switch core := x.known(keep); {
	case core != nil && explain:
		return nil, core, nil
	case core != nil:
		return nil, nil, nil
	}
	p, err := x.pose(keep)
	if err != nil {
		return nil, nil, err
	}
	before := x.watch.course.Nodes
	a := p.leastBuild()
	a.Certificate.Nodes -= before
	switch {
	case a.Status == Unknown:
		return nil, nil, context.Cause(x.watch.ctx)
	case a.Build != nil && len(drop) == 0:
		return nil, nil, ErrStands
	case a.Build == nil && explain:
		core, err := x.core(keep)
		return nil, core, err
	case a.Build == nil:
		return nil, nil, nil
	}
	r := &Repair{Answer: a}
	for _, i := range drop {
		r.Drops = append(r.Drops, x.all[i])
	}
	if n := x.ask.Needs; n != nil && n.Budget > 0 {
		r.Above = max(0, a.Price-n.Budget)
	}
	return r, nil, nil
}

// covers reports that every member of part is in a list.
func covers(list, part []int) bool {
	return !slices.ContainsFunc(part, func(i int) bool { return !slices.Contains(list, i) })
}
