package plan

import (
	"slipfit/core/build"
	"slipfit/core/rule"
)

// total is a rule declared as a sum: the build can only stand where what all its columns give less what they take is not
// negative. It bounds before every column is decided; the rule's own check has the last word.
type total struct {
	rule *rule.Rule
	net  [][]int64 // by column and option: gives − takes; nil where the column is not in the sum
	most []int64   // by column: the largest net of its live options
	base int64     // net of the settled seats
}

// lavish stands for the net of an option whose sheet lacks a figure: nothing is concluded from it.
const lavish = 1 << 50

func (p *Problem) newTotal(r *rule.Rule, cols []int) *total {
	t := &total{rule: r, net: make([][]int64, len(p.cols)), most: make([]int64, len(p.cols))}
	p.scratch = p.base
	for _, s := range r.Reads {
		if p.colOf[s] < 0 {
			t.base += p.net(r, s)
		}
	}
	for _, c := range cols {
		col := p.cols[c]
		t.net[c] = make([]int64, len(col.options))
		t.most[c] = -lavish
		for o := range col.options {
			p.put(c, o)
			t.net[c][o] = p.net(r, col.seat)
			if col.live.has(o) {
				t.most[c] = max(t.most[c], t.net[c][o])
			}
		}
	}
	p.scratch = p.base
	return t
}

// net is what the part in a seat of the scratch build gives less what it takes.
func (p *Problem) net(r *rule.Rule, s build.Seat) int64 {
	gives, takes, known := p.view.Term(r, s)
	if !known {
		return lavish
	}
	return gives - takes
}

// room is what all columns of the sum can give at best.
func (t *total) room() int64 {
	sum := t.base
	for _, m := range t.most {
		sum += m
	}
	return sum
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
