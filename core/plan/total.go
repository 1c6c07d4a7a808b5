package plan

import (
	"fmt"
	"slices"

	"slipfit/core/build"
	"slipfit/core/rule"
)

// total is a sum that a rule declares: the build can only stand where what all its columns give less what they take is not
// negative. It bounds before every column is decided; the rule's own check has the last word.
type total struct {
	rule  *rule.Rule
	sum   *rule.Sum
	nth   int       // which of the rule's bounds it is, −1 where it is the rule itself
	net   [][]int64 // by column and option: gives − takes; nil where the column is not in the sum
	seen  []*memory // by column: what holds it
	most  []int64   // by column: the largest net of its live options
	least []int64   // by column: the smallest
	base  int64     // net of the settled seats
	room  int64     // what all columns can give at best
}

// lavish stands for the net of an option whose sheet lacks a figure: nothing is concluded from it.
const lavish = 1 << 50

// totals lists the sums that a rule declares.
func (p *Problem) totals(r *rule.Rule) (list []*total) {
	cols := p.columnsOf(r.Reads)
	if len(cols) < 2 {
		return nil
	}
	if r.Sum != nil {
		list = append(list, p.newTotal(r, r.Sum, -1, cols))
	}
	for i := range r.Bounds {
		list = append(list, p.newTotal(r, &r.Bounds[i], i, cols))
	}
	return list
}

func (p *Problem) newTotal(r *rule.Rule, sum *rule.Sum, nth int, cols []int) *total {
	t := &total{rule: r, sum: sum, nth: nth, net: make([][]int64, len(p.cols)), seen: make([]*memory, len(p.cols))}
	p.scratch = p.base
	p.view.Build = &p.scratch
	for _, s := range r.Reads {
		if p.colOf[s] < 0 {
			t.base += p.net(t, s)
		}
	}
	for _, c := range cols {
		t.seen[c] = p.index.nets(p, t, p.cols[c])
		t.net[c] = t.seen[c].net
	}
	t.survey(p)
	return t
}

// survey finds out what the live options of a problem give.
func (t *total) survey(p *Problem) {
	t.most, t.least = make([]int64, len(p.cols)), make([]int64, len(p.cols))
	t.room = t.base
	for c, col := range p.cols {
		net := t.net[c]
		if net == nil {
			continue
		}
		t.most[c], t.least[c] = -lavish, lavish
		for o := col.live.next(0); o >= 0; o = col.live.next(o + 1) {
			t.most[c], t.least[c] = max(t.most[c], net[o]), min(t.least[c], net[o])
		}
		t.room += t.most[c]
	}
}

// nets remembers what the options of a column give less what they take.
func (x *Index) nets(p *Problem, t *total, col *column) *memory {
	m := x.recall(p, t.rule, fmt.Sprint(t.rule.ID, " net ", t.nth, p.base.Owned, col.key), func() *memory {
		return &memory{net: make([]int64, 0, len(col.options))}
	})
	if len(m.net) == 0 {
		for _, o := range col.options {
			p.scratch.Set(o)
			m.net = append(m.net, p.net(t, col.seat))
		}
		p.scratch = p.base
	}
	return m
}

// net is what the part in a seat of the scratch build gives less what it takes.
func (p *Problem) net(t *total, s build.Seat) int64 {
	gives, takes, known := p.view.Term(t.rule, t.sum, s)
	if !known {
		return lavish
	}
	return gives - takes
}

// pays reports a sum that takes from every column just what its option costs, as a budget does, and how much the open
// seats may cost under it.
func (t *total) pays(p *Problem) (room int64, ok bool) {
	room = t.base
	for c, col := range p.cols {
		if t.net[c] == nil {
			return 0, false
		}
		gives, first := int64(0), true
		for o := col.live.next(0); o >= 0; o = col.live.next(o + 1) {
			g := t.net[c][o] + col.price[o]
			if !first && g != gives {
				return 0, false
			}
			gives, first = g, false
		}
		room += gives
	}
	return room, true
}

// add keeps a sum that can exclude something. One that is nothing but prices against a budget sets the purse.
func (p *Problem) add(t *total) {
	if room, ok := t.pays(p); ok {
		p.purse = min(p.purse, room)
		return
	}
	for c := range p.cols {
		if t.binds(c) {
			p.sums = append(p.sums, t)
			return
		}
	}
}

// dearest is what the dearest options cost together.
func (p *Problem) dearest() int64 {
	sum := int64(0)
	for _, c := range p.cols {
		most := int64(0)
		for o := c.live.next(0); o >= 0; o = c.live.next(o + 1) {
			most = max(most, c.price[o])
		}
		sum += most
	}
	return sum
}

// binds reports a column whose options differ in the sum.
func (t *total) binds(c int) bool {
	return t.net[c] != nil && t.least[c] < t.most[c]
}

// roomFor reports that no sum excludes option o of column c whatever the others give.
func (p *Problem) roomFor(c, o int) bool {
	return !slices.ContainsFunc(p.sums, func(t *total) bool { return t.room+t.lack(c, o) < 0 })
}

// lack is how much less an option gives than the best of its column.
func (t *total) lack(c, o int) int64 {
	if t.net[c] == nil {
		return 0
	}
	return t.net[c][o] - t.most[c]
}
