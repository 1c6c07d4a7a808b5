package plan

import (
	"encoding/binary"
	"slices"

	"slipfit/core/build"
)

// factor is a rule over several columns, checked when all of them are decided. It remembers what it found by the
// classes of its options, so that a rule is asked once for all choices it cannot tell apart.
type factor struct {
	*query
	by     []*classes
	seen   memory
	lastly int     // its last column in the order of search, which settles its worth
	most   []int64 // the largest worth each option of that column can reach; nil where it is never worth anything
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

func (p *Problem) newFactor(q *query) *factor {
	f := &factor{query: q}
	n := 1
	for _, c := range f.cols {
		k := p.classify(q.rule, c)
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
			m.table[at] = int32(p.run(f.query, options))
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
		w = int32(p.run(f.query, options))
		m.large[string(m.key)] = w
	}
	return int64(w)
}

// appraise finds the largest worth the factor reaches by the options of its last column. A factor too large to be looked
// through is taken to reach the given worth anywhere.
func (f *factor) appraise(p *Problem, otherwise int64) {
	if t, known := traits[f.rule.ID]; f.early != nil || known && !t.serves {
		return
	}
	col := p.cols[f.lastly]
	if f.seen.table == nil {
		f.most = slices.Repeat([]int64{otherwise}, len(col.options))
		return
	}
	at := slices.Index(f.cols, f.lastly)
	most := make([]int64, len(f.by[at].first))
	live := make([][]int, len(f.cols)) // by column: an option of each class that has a live one
	for i, c := range f.cols {
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
			k := f.by[at].of[options[at]]
			most[k] = max(most[k], w)
		}
	}
	walk(0)
	if !valued {
		return
	}
	f.most = make([]int64, len(col.options))
	for o := range f.most {
		f.most[o] = most[f.by[at].of[o]]
	}
}

// has reports a column the factor reads.
func (f *factor) has(c int) bool { return slices.Contains(f.cols, c) }

// small reports a factor that a bound can look through: quick to ask, and of few classes.
func (f *factor) small() bool {
	n := 1
	for _, k := range f.by {
		n *= len(k.first)
		if n > 1<<15 {
			return false
		}
	}
	return slow(f) == 0
}

// open is how many of its columns have several options left.
func (f *factor) open(p *Problem) int {
	n := 0
	for _, c := range f.cols {
		if p.only(c) < 0 {
			n++
		}
	}
	return n
}

// at asks the factor with option o of column c, options i and j of its scope, and the only option of any other column.
func (f *factor) at(p *Problem, c, o int, scope []int, i, j int) int64 {
	var room [build.Seats]int
	list := room[:len(f.cols)]
	for n, q := range f.cols {
		switch {
		case q == c:
			list[n] = o
		case q == scope[len(scope)-1]:
			list[n] = j
		case q == scope[0]:
			list[n] = i
		default:
			list[n] = p.only(q)
		}
	}
	return f.ask(p, list)
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
