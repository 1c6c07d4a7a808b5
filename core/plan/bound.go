package plan

import (
	"cmp"
	"math"
	"slices"
)

// never is the cost of what cannot be.
const never = math.MaxInt64 / 4

// bound is an admissible bound on a sum of costs, one cost an option. Every column hangs on one column decided earlier,
// its parent, through their table of allowed pairs; reach is what an option costs with the cheapest filling of
// everything that hangs on it. Rules that are not on the tree of parents are left out of the bound, never of the search.
type bound struct {
	order  []int     // columns in the order of search
	place  []int     // place of a column in that order
	parent []int     // by column, −1 for one that hangs on none
	cost   [][]int64 // by column and option
	reach  [][]int64
	ranked [][]int32 // by column: its live options, least reach first
}

// newBound hangs every column on the earlier one whose options narrow it most.
func (p *Problem) newBound(order []int, cost [][]int64) *bound {
	n := len(p.cols)
	b := &bound{order: order, place: make([]int, n), parent: make([]int, n), cost: cost, reach: make([][]int64, n), ranked: make([][]int32, n)}
	for i, c := range order {
		b.place[c] = i
		b.reach[c] = slices.Clone(cost[c])
	}
	message := make([]int64, 0, 64)
	for i := n - 1; i >= 0; i-- {
		c := order[i]
		b.rank(p, c)
		b.parent[c] = -1
		best, least, most := -1.0, b.least(c), b.most(c)
		var chosen []int64
		for _, q := range order[:i] {
			t := p.tables.get(q, c)
			if t == nil {
				continue
			}
			message = message[:0]
			sum, live := 0.0, 0
			for o := range p.cols[q].options {
				m := int64(never)
				if p.cols[q].live.has(o) {
					m = b.cheapest(c, t.row(o))
					sum += float64(min(m, most) - least)
					live++
				}
				message = append(message, m)
			}
			if gain := sum / float64(max(live, 1)); gain > best {
				best, b.parent[c] = gain, q
				chosen = append(chosen[:0], message...)
			}
		}
		if q := b.parent[c]; q >= 0 {
			for o, m := range chosen {
				b.reach[q][o] = min(never, b.reach[q][o]+m)
			}
		}
	}
	return b
}

// rank sorts the live options of a column by reach, then by tie order.
func (b *bound) rank(p *Problem, c int) {
	list := make([]int32, 0, len(b.reach[c]))
	for o := p.cols[c].live.next(0); o >= 0; o = p.cols[c].live.next(o + 1) {
		if b.reach[c][o] < never {
			list = append(list, int32(o))
		}
	}
	slices.SortFunc(list, func(x, y int32) int {
		return cmp.Or(cmp.Compare(b.reach[c][x], b.reach[c][y]), cmp.Compare(x, y))
	})
	b.ranked[c] = list
}

// least is the least reach of a column.
func (b *bound) least(c int) int64 {
	if len(b.ranked[c]) == 0 {
		return never
	}
	return b.reach[c][b.ranked[c][0]]
}

// most is the largest reach of a column.
func (b *bound) most(c int) int64 {
	if n := len(b.ranked[c]); n > 0 {
		return b.reach[c][b.ranked[c][n-1]]
	}
	return never
}

// cheapest is the least reach of a column's options among those allowed.
func (b *bound) cheapest(c int, allowed set) int64 {
	for _, o := range b.ranked[c] {
		if allowed.has(int(o)) {
			return b.reach[c][o]
		}
	}
	return never
}

// root is the bound before anything is decided.
func (b *bound) root() int64 {
	sum := int64(0)
	for _, c := range b.order {
		if b.parent[c] < 0 {
			sum += b.least(c)
		}
	}
	return min(sum, never)
}
