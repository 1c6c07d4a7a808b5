package plan

import (
	"slices"

	"slipfit/core/build"
	"slipfit/core/rule"
)

// placing is all that an early query sees of its Places: one figure.
type placing struct {
	by     []*classes // by place: as the query sees its columns, but none of those apart; and last the figure
	placed []*classes // by place: what the figure goes by
	found  *memory
	failed int // how often the query has, in searches
}

// placing makes that of a factor.
func (p *Problem) placing(f *factor) *placing {
	x := &placing{}
	for i, c := range f.cols {
		by, col := f.by[i], p.cols[c]
		if slices.Contains(f.early.Places, col.seat) {
			by = col.alike()
		}
		x.by = append(x.by, by)
		if by = f.by[i]; col.seat != build.Board {
			by = col.classify(p.stepped(&rule.DriveSlots))
		}
		x.placed = append(x.placed, by)
	}
	figures := &classes{count: rule.MostPlaced + 1}
	for n := range figures.count {
		figures.of = append(figures.of, int32(n))
	}
	x.by = append(x.by, figures)
	x.found = p.index.placed(p, f.query, x.placed)
	return x
}

// of is the figure of a choice of the query's columns.
func (x *placing) of(p *Problem, q *query, options []int) int {
	return int(x.found.recall(x.placed, options, func() int64 {
		p.hold(q, options)
		return q.early.Placed(p.view)
	}))
}
