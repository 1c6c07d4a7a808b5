package plan

import (
	"encoding/binary"
	"slices"

	"slipfit/core/rule"
)

// factor is a rule over several columns, checked when all of them are decided. It remembers what it found by the
// classes of its options, so that a rule is asked once for all choices it cannot tell apart.
type factor struct {
	rule *rule.Rule
	cols []int
	by   []*classes
	seen memory
	most []int64 // for the column home: the largest worth each of its options can reach; nil where it is never worth anything
	home int     // the column the bound charges the worth to
}

// unseen marks a choice not asked yet.
const unseen = -2

// memory holds what a factor found, by the classes of its options: in a table while that is small, else in a map.
type memory struct {
	table []int32
	large map[string]int32
	key   []byte
}

// tableTo is the largest table a factor keeps, mapTo the largest map: past it, it starts anew.
const (
	tableTo = 1 << 18
	mapTo   = 1 << 18
)

func (p *Problem) newFactor(r *rule.Rule) *factor {
	f := &factor{rule: r, cols: p.reads(r)}
	n := 1
	for _, c := range f.cols {
		k := p.classify(r, c)
		f.by = append(f.by, k)
		if n <= tableTo {
			n *= max(len(k.first), 1)
		}
	}
	if n <= tableTo {
		f.seen.table = make([]int32, n)
		for i := range f.seen.table {
			f.seen.table[i] = unseen
		}
	} else {
		f.seen.large = map[string]int32{}
		f.seen.key = make([]byte, 2*len(f.cols))
	}
	return f
}

// ask returns the worth of a choice of the factor's columns, or failed.
func (f *factor) ask(p *Problem, options []int) int64 {
	m := &f.seen
	if m.table != nil {
		at := 0
		for i, o := range options {
			at = at*len(f.by[i].first) + int(f.by[i].of[o])
		}
		if m.table[at] == unseen {
			m.table[at] = int32(f.check(p, options))
		}
		return int64(m.table[at])
	}
	for i, o := range options {
		binary.LittleEndian.PutUint16(m.key[2*i:], uint16(f.by[i].of[o]))
	}
	w, ok := m.large[string(m.key)]
	if !ok {
		if len(m.large) >= mapTo {
			clear(m.large)
		}
		w = int32(f.check(p, options))
		m.large[string(m.key)] = w
	}
	return int64(w)
}

func (f *factor) check(p *Problem, options []int) int64 {
	for i, o := range options {
		p.put(f.cols[i], o)
	}
	return p.run(f.rule)
}

// appraise finds the largest worth the factor reaches by the classes of each of its columns, and makes the column for
// which that is least in all its home. A factor too large to be looked through is taken to reach the given worth anywhere.
func (f *factor) appraise(p *Problem, otherwise int64) {
	if f.seen.table == nil {
		f.home = f.cols[0]
		f.most = slices.Repeat([]int64{otherwise}, len(p.cols[f.home].options))
		return
	}
	most := make([][]int64, len(f.cols))
	live := make([][]int, len(f.cols)) // by column: an option of each class that has a live one
	for i, c := range f.cols {
		most[i] = make([]int64, len(f.by[i].first))
		live[i] = f.by[i].living(p.cols[c])
	}
	options := make([]int, len(f.cols))
	valued := false
	var walk func(i int)
	walk = func(i int) {
		if i < len(f.cols) {
			for _, o := range live[i] {
				options[i] = o
				walk(i + 1)
			}
			return
		}
		if w := f.ask(p, options); w > 0 {
			valued = true
			for j, o := range options {
				k := f.by[j].of[o]
				most[j][k] = max(most[j][k], w)
			}
		}
	}
	walk(0)
	if !valued {
		return
	}
	best := -1.0
	for i, c := range f.cols {
		each := make([]int64, len(p.cols[c].options))
		sum := 0.0
		for o := p.cols[c].live.next(0); o >= 0; o = p.cols[c].live.next(o + 1) {
			each[o] = most[i][f.by[i].of[o]]
			sum += float64(each[o])
		}
		if mean := sum / float64(p.cols[c].live.count()); best < 0 || mean < best {
			best, f.home, f.most = mean, c, each
		}
	}
}

// living lists a live option of each class that has one.
func (k *classes) living(c *column) []int {
	var list []int
	seen := make([]bool, len(k.first))
	for o := c.live.next(0); o >= 0; o = c.live.next(o + 1) {
		if !seen[k.of[o]] {
			seen[k.of[o]] = true
			list = append(list, o)
		}
	}
	return list
}
