package plan

import (
	"encoding/binary"

	"slipfit/core/rule"
)

// factor is a rule over several columns, checked when all of them are decided. It remembers what it found, so that a
// rule is asked once for every choice of its columns however often the search comes by.
type factor struct {
	rule      *rule.Rule
	cols      []int
	seen      memory
	most      []int64 // for the column home: the largest worth each of its options can reach
	home      int     // the column the bound charges the worth to
	appraised bool
}

// unseen marks a choice not asked yet.
const unseen = -2

// memory holds what a factor found, by its columns' options: in a table while that is small, else in a map.
type memory struct {
	size  []int
	table []int32
	large map[string]int32
	key   []byte
}

// tableTo is the largest table a factor keeps.
const tableTo = 1 << 20

func (p *Problem) newFactor(r *rule.Rule) *factor {
	f := &factor{rule: r, cols: p.reads(r)}
	n := 1
	for _, c := range f.cols {
		size := len(p.cols[c].options)
		f.seen.size = append(f.seen.size, size)
		if n <= tableTo {
			n *= max(size, 1)
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
func (f *factor) ask(p *Problem, options ...int) int64 {
	m := &f.seen
	if m.table != nil {
		at := 0
		for i, o := range options {
			at = at*m.size[i] + o
		}
		if m.table[at] == unseen {
			m.table[at] = int32(f.check(p, options))
		}
		return int64(m.table[at])
	}
	for i, o := range options {
		binary.LittleEndian.PutUint16(m.key[2*i:], uint16(o))
	}
	w, ok := m.large[string(m.key)]
	if !ok {
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

// appraise finds the largest worth the factor reaches by the options of each of its columns, and makes the column for
// which that is least in all its home.
func (f *factor) appraise(p *Problem) {
	most := make([][]int64, len(f.cols))
	for i, c := range f.cols {
		most[i] = make([]int64, len(p.cols[c].options))
	}
	options := make([]int, len(f.cols))
	valued := false
	var walk func(i int)
	walk = func(i int) {
		if i == len(f.cols) {
			if w := f.ask(p, options...); w > 0 {
				valued = true
				for j, o := range options {
					most[j][o] = max(most[j][o], w)
				}
			}
			return
		}
		live := p.cols[f.cols[i]].live
		for o := live.next(0); o >= 0; o = live.next(o + 1) {
			if i == 0 || p.together(f.cols[:i], options[:i], f.cols[i], o) {
				options[i] = o
				walk(i + 1)
			}
		}
	}
	walk(0)
	if !valued {
		return
	}
	best := -1.0
	for i, c := range f.cols {
		sum := 0.0
		for _, w := range most[i] {
			sum += float64(w)
		}
		if mean := sum / float64(p.cols[c].live.count()); best < 0 || mean < best {
			best, f.home, f.most = mean, c, most[i]
		}
	}
}

// together reports an option that the tables let stand with those decided.
func (p *Problem) together(cols, options []int, c, o int) bool {
	for i, q := range cols {
		if t := p.tables.get(q, c); t != nil && !t.row(options[i]).has(o) {
			return false
		}
	}
	return true
}
