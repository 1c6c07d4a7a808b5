package plan

import (
	"slices"

	"slipfit/core/build"
	"slipfit/core/rule"
)

// anywhere is an early query with Places asked before those are decided: it fails where it does whatever comes to take them.
type anywhere struct {
	of    *factor // asks it with all decided
	taken []int   // by column of that: its place among those asked, −1 of one that is a place
	known map[manyClasses][][]int

	asked, hits int // how often it was asked, and failed
}

// worth reports that it is likely to save more than it costs: it fails often, or the query does where the places are decided.
func (a *anywhere) worth() bool {
	return a.asked < 4*a.hits || a.of.place != nil && a.asked < a.of.place.failed/8
}

// takings is the most ways to take places that are looked through.
const takings = 1 << 12

// anywhere makes of a factor one that leaves its Places open but the one it is about; nil where there are none.
func (p *Problem) anywhere(of *factor) *factor {
	q := *of.query
	a := &anywhere{of: of, taken: slices.Repeat([]int{-1}, len(of.cols)), known: map[manyClasses][][]int{}}
	q.cols = nil
	for i, c := range of.cols {
		if s := p.cols[c].seat; !slices.Contains(q.early.Places, s) {
			a.taken[i] = len(q.cols)
			q.cols = append(q.cols, c)
		} else {
			q.seats &^= build.SetOf(s)
		}
	}
	if len(q.cols) == len(of.cols) {
		return nil
	}
	f := &factor{query: &q, cost: of.cost, sight: &sight{}, anywhere: a}
	for i, c := range f.cols {
		f.at[c] = i
	}
	return f
}

// ask is failed where the query fails with every taking of its places that what is live allows.
func (a *anywhere) ask(p *Problem, options []int) int64 {
	full := make([]int, len(a.taken))
	for i, at := range a.taken {
		if at >= 0 {
			full[i] = options[at]
		}
	}
	a.asked++
	takings := a.takings(p.posed(), full)
	if takings == nil {
		return 0
	}
	for _, taking := range takings {
		for i, at := range a.taken {
			if at < 0 {
				full[i] = taking[i]
			}
		}
		if a.of.ask(p, full) != failed {
			return 0
		}
	}
	a.hits++
	return failed
}

// takings lists, for each figure that Placed may tell beside what is decided, options that make it; nil where there are too many ways.
func (a *anywhere) takings(p *Problem, full []int) [][]int {
	a.of.look(p)
	x := a.of.place
	var key manyClasses
	for i, at := range a.taken {
		if at >= 0 {
			key[i>>2] = key[i>>2]<<16 | uint64(uint16(x.placed[i].of[full[i]]))
		}
	}
	if list, known := a.known[key]; known {
		return list
	}
	n := 1
	var open []int
	var living [][]int // by place that is open: an option of each class that has a live one
	for i, at := range a.taken {
		if at < 0 {
			some := x.placed[i].living(p.cols[a.of.cols[i]])
			open, living, n = append(open, i), append(living, some), n*len(some)
		}
	}
	if p.watch.poll(min(n, takings)); n > takings {
		a.known[key] = nil
		return nil
	}
	list := [][]int{}
	slots := p.slots()
	seen := map[int]bool{}
	some := slices.Clone(full)
	var walk func(k int)
	walk = func(k int) {
		if k < len(open) {
			for _, o := range living[k] {
				some[open[k]] = o
				walk(k + 1)
			}
			return
		}
		if slots != nil && slots.beside(p, a.of, some) == failed {
			return
		}
		if figure := x.of(p, a.of.query, some); !seen[figure] {
			seen[figure] = true
			list = append(list, slices.Clone(some))
		}
	}
	walk(0)
	a.known[key] = list
	return list
}

// slots is the rule that keeps drives within a board's sockets; nil where it is not asked of several columns.
func (p *Problem) slots() *factor {
	at := slices.IndexFunc(p.many, func(f *factor) bool { return f.early == nil && f.rule == &rule.DriveSlots })
	if at < 0 {
		return nil
	}
	return p.many[at]
}

// beside asks a factor of options of another's columns.
func (f *factor) beside(p *Problem, of *factor, options []int) int64 {
	some := slices.Clone(f.others)
	for i, c := range f.cols {
		if slices.Contains(of.cols, c) {
			some[i] = options[of.at[c]]
		}
	}
	return f.ask(p, some)
}
