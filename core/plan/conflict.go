package plan

import (
	"cmp"
	"slices"
)

// infeasible says what the rules took away, heaviest first: what fails on what is settled, what left a seat empty, then
// by the number of options taken.
func (p *Problem) infeasible(a Answer) Answer {
	a.Status = Infeasible
	a.Certificate.Checks = p.index.checks - p.asked
	a.Cuts = slices.Clone(p.cut)
	rank := func(c Cut) int {
		switch {
		case c.Options == 0:
			return 0
		case c.Empties:
			return 1
		}
		return 2
	}
	slices.SortStableFunc(a.Cuts, func(x, y Cut) int {
		return cmp.Or(cmp.Compare(rank(x), rank(y)), cmp.Compare(y.Options, x.Options))
	})
	return a
}
