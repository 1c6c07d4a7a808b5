package plan

import (
	"encoding/binary"
	"slices"
)

// match is how the options of one column go with those of another: what joins the two, and the kinds of options that it cannot
// tell apart.
type match struct {
	c, q   int
	quick  []*factor // rules quick to ask that hang on the two
	slow   []*factor // the others
	sums   []*total  // those that two of their options can break by themselves
	kind   [2]*classes
	pace   [2]int
	cells  []int8      // by kind of both: whether they stand together by the quick rules, nought where it is not known; nil where there are too many
	grade  [2]*classes // options that the slow rules, the sums and what hangs on the first column alone cannot tell apart either
	joined bool        // whether there is anything of all that
}

// matchedTo is how many cells of two columns' kinds are kept.
const matchedTo = 1 << 22

// match finds out how the options of column c go with those of column q.
func (p *Problem) match(c, q int) *match {
	at := c*len(p.cols) + q
	if p.matches[at] == nil {
		p.matches[at] = p.newMatch(c, q)
	}
	return p.matches[at]
}

func (p *Problem) newMatch(c, q int) *match {
	m := &match{c: c, q: q}
	for _, f := range p.joining(c, q) {
		if f.cost == 0 {
			m.quick = append(m.quick, f)
		} else {
			m.slow = append(m.slow, f)
		}
	}
	for _, t := range p.sums {
		if t.net[c] != nil && t.net[q] != nil && t.room+t.least[c]-t.most[c]+t.least[q]-t.most[q] < 0 {
			m.sums = append(m.sums, t)
		}
	}
	m.joined = len(m.quick)+len(m.slow)+len(m.sums) > 0
	for i, at := range [...]int{c, q} {
		col := p.cols[at]
		m.kind[i] = col.alike()
		for _, f := range m.quick {
			m.kind[i] = col.both(m.kind[i], f.look(p).by[f.at[at]])
		}
		m.grade[i] = m.kind[i]
		for _, f := range m.slow {
			m.grade[i] = col.both(m.grade[i], f.look(p).by[f.at[at]])
		}
		for _, t := range m.sums {
			m.grade[i] = col.both(m.grade[i], t.seen[at].kinds())
		}
	}
	for _, f := range p.alone[c] {
		m.grade[0] = p.cols[c].both(m.grade[0], f.look(p).by[f.at[c]])
	}
	m.pace = [2]int{m.kind[1].count, 1}
	if c > q {
		m.pace = [2]int{1, m.kind[0].count}
	}
	if n := m.kind[0].count * m.kind[1].count; len(m.quick) > 0 && n <= matchedTo {
		m.cells = p.index.cells(m.key(p), n)
	}
	return m
}

// key names what the cells of a match hold.
func (m *match) key(p *Problem) string {
	key := []byte{byte(p.cols[min(m.c, m.q)].seat), byte(p.cols[max(m.c, m.q)].seat)}
	for _, f := range m.quick {
		key = binary.AppendUvarint(key, uint64(f.seen.id))
		for i, c := range f.cols {
			if c != m.c && c != m.q {
				key = binary.AppendUvarint(key, uint64(f.by[i].of[f.others[i]]))
			}
		}
	}
	return string(key)
}

// cells finds what is known of two columns' kinds by its key.
func (x *Index) cells(key string, n int) []int8 {
	cells := x.matched[key]
	if cells == nil {
		if len(x.matched) == remembered {
			clear(x.matched)
		}
		cells = make([]int8, n)
		x.matched[key] = cells
	}
	return cells
}

// together reports that option o of the first column stands with option j of the second by every rule quick to ask that hangs on
// the two.
func (m *match) together(p *Problem, o, j int) bool {
	if len(m.quick) == 0 {
		return true
	}
	if m.cells == nil {
		return m.ask(p, o, j) != failed
	}
	cell := &m.cells[int(m.kind[0].of[o])*m.pace[0]+int(m.kind[1].of[j])*m.pace[1]]
	if *cell == 0 {
		*cell = int8(m.ask(p, o, j)) + asked
	}
	return *cell != failed+asked
}

// ask is nought where two options stand together by the rules quick to ask, or failed.
func (m *match) ask(p *Problem, o, j int) int64 {
	if slices.ContainsFunc(m.quick, func(f *factor) bool { return f.two(p, m.c, o, m.q, j) == failed }) {
		return failed
	}
	return 0
}

// stands reports that two options stand together by everything that joins the two columns.
func (m *match) stands(p *Problem, o, j int) bool {
	if !m.together(p, o, j) {
		return false
	}
	for _, t := range m.sums {
		if t.room+t.lack(m.c, o)+t.lack(m.q, j) < 0 {
			return false
		}
	}
	return !slices.ContainsFunc(m.slow, func(f *factor) bool { return f.two(p, m.c, o, m.q, j) == failed }) && p.stands(m.c, o)
}
