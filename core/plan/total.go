package plan

import (
	"math/bits"
	"slices"
	"strconv"

	"slipfit/core/build"
	"slipfit/core/rule"
)

// total is a sum that a rule declares: the build can only stand where what all its columns give less what they take is not
// negative. It bounds before every column is decided; the rule's own check has the last word.
type total struct {
	rule  *rule.Rule
	sum   *rule.Sum // nil of prices against a purse
	nth   int       // which of the rule's bounds it is, theRule where it is the rule itself, sufficient or less where it suffices for it
	net   [][]int64 // by column and option: gives − takes; nil where the column is not in the sum
	seen  []*memory // by column: what holds it
	most  []int64   // by column: the largest net of its live options
	least []int64   // by column: the smallest
	ends  [][2]int  // by column: an option of the largest net and one of the smallest
	base  int64     // net of the settled seats
	room  int64     // what all columns can give at best

	failures [build.Seats]int32 // by column: how often it has failed in searches that decide that first
}

// What a sum is to its rule where it is not one of its bounds.
const (
	theRule    = -1
	sufficient = -2
)

// lavish stands for the net of an option whose sheet lacks a figure: nothing is concluded from it.
const lavish = 1 << 50

// totals lists the sums that a rule declares.
func (p *Problem) totals(r *rule.Rule) (list []*total) {
	cols := p.columnsOf(build.SetOf(r.Reads...))
	if len(cols) < 2 {
		return nil
	}
	if r.Sum != nil {
		list = append(list, p.newTotal(r, r.Sum, theRule, cols))
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
	t.survey(p, nil)
	return t
}

// left is what a rule that limits what everything bought may cost leaves the open seats; false where it sets no limit, or is no such rule.
func (p *Problem) left(r *rule.Rule) (room int64, limited bool) {
	if r.Purse == nil {
		return 0, false
	}
	most, limited := r.Purse(p.ask.Needs)
	return int64(most) - p.fixed, limited
}

// newPrices is the sum of a rule that limits what everything bought may cost: every option takes its price. Where it sets
// no limit there is more than all can cost.
func (p *Problem) newPrices(r *rule.Rule) *total {
	t := &total{rule: r, net: make([][]int64, len(p.cols)), base: lavish / 4}
	if left, limited := p.left(r); limited {
		t.base = left
	}
	for c, col := range p.cols {
		t.net[c] = make([]int64, len(col.options))
		for o := range t.net[c] {
			t.net[c][o] = -col.price[o]
		}
	}
	return t
}

// survey finds out what the live options of a problem give. Where the one that gives most, or least, of all or of a larger problem is
// live, it still does.
func (t *total) survey(p *Problem, larger *total) {
	n := len(p.cols)
	t.most, t.least, t.ends = make([]int64, n), make([]int64, n), make([][2]int, n)
	t.room = t.base
	for c, col := range p.cols {
		net := t.net[c]
		if net == nil {
			continue
		}
		known := t.seen[c].ends
		if larger != nil {
			known = larger.ends[c]
		}
		if t.ends[c] = known; known[0] < 0 || !col.live.has(known[0]) || !col.live.has(known[1]) {
			t.ends[c] = ends(col.live, net)
		}
		t.most[c], t.least[c] = -lavish, lavish
		if at := t.ends[c]; at[0] >= 0 {
			t.most[c], t.least[c] = net[at[0]], net[at[1]]
		}
		t.room += t.most[c]
	}
}

// ends is the member of a set that has the most of something and the one that has the least, −1 where it is empty.
func ends(s set, of []int64) [2]int {
	most := s.next(0)
	least := most
	for i, w := range s {
		for ; w != 0; w &= w - 1 {
			o := i<<6 + bits.TrailingZeros64(w)
			if of[o] > of[most] {
				most = o
			}
			if of[o] < of[least] {
				least = o
			}
		}
	}
	return [2]int{most, least}
}

// nets remembers what the options of a column give less what they take.
func (x *Index) nets(p *Problem, t *total, col *column) *memory {
	key := append(x.key[:0], t.rule.ID...)
	key = append(strconv.AppendInt(append(key, " net "...), int64(t.nth), 10), ' ')
	key = append(append(strconv.AppendInt(key, int64(p.base.Owned), 10), ' '), col.key...)
	m := x.recall(p, t.rule, key, func() *memory {
		return &memory{net: make([]int64, 0, len(col.options))}
	})
	if len(m.net) == 0 {
		k := col.apart()
		if !slices.Contains(t.rule.Filled, col.seat) {
			k = col.classify(stepped{Rule: t.rule, key: t.rule.ID})
		}
		net, known := make([]int64, k.count), make([]bool, k.count)
		for o, class := range k.of {
			if !known[class] {
				p.scratch.Set(col.options[o])
				net[class], known[class] = p.net(t, col.seat), true
			}
			m.net = append(m.net, net[class])
		}
		p.scratch = p.base
		if m.ends = [2]int{-1, -1}; len(m.net) > 0 {
			m.ends = [2]int{slices.Index(m.net, slices.Max(m.net)), slices.Index(m.net, slices.Min(m.net))}
		}
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

// add keeps a sum that can exclude something.
func (p *Problem) add(t *total) {
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
		for i := len(c.rising) - 1; i >= 0; i-- {
			if o := int(c.rising[i]); c.live.has(o) {
				sum += c.price[o]
				break
			}
		}
	}
	return sum
}

// binds reports a column whose options differ in the sum.
func (t *total) binds(c int) bool {
	return t.net[c] != nil && t.least[c] < t.most[c]
}

// able is the live options of a column that no sum excludes whatever the others give.
func (p *Problem) able(c int) set {
	if p.fit[c] == nil {
		able := slices.Clone(p.cols[c].live)
		for _, t := range p.sums {
			if t.net[c] == nil || t.room+t.least[c]-t.most[c] >= 0 {
				continue
			}
			for o := able.next(0); o >= 0; o = able.next(o + 1) {
				if t.room+t.lack(c, o) < 0 {
					able.drop(o)
				}
			}
		}
		p.fit[c] = able
	}
	return p.fit[c]
}

// lack is how much less an option gives than the best of its column.
func (t *total) lack(c, o int) int64 {
	if t.net[c] == nil {
		return 0
	}
	return t.net[c][o] - t.most[c]
}

// columns is the columns that a sum binds, a bit to each.
func (t *total) columns() uint32 {
	columns := uint32(0)
	for c := range t.net {
		if t.binds(c) {
			columns |= 1 << c
		}
	}
	return columns
}
