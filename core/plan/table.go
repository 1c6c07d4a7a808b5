package plan

import (
	"slipfit/core/build"
)

// tables holds, for every two columns that some rule joins, which options may stand together.
type tables struct {
	n  int
	at []*table // at[a*n+b] joins option of a to options of b; nil where no rule joins them
}

// table has a row for each option of one column: the options of the other that may stand with it.
type table struct {
	words int
	rows  []uint64
}

func newTables(cols []*column) tables {
	return tables{len(cols), make([]*table, len(cols)*len(cols))}
}

func (t *tables) get(a, b int) *table { return t.at[a*t.n+b] }

func (t *table) row(i int) set { return t.rows[i*t.words : (i+1)*t.words] }

// join returns the two tables of a pair of columns, all allowed when they are new.
func (t *tables) join(a, b int, cols []*column) (ab, ba *table) {
	if t.get(a, b) == nil {
		t.at[a*t.n+b] = allowAll(len(cols[a].options), len(cols[b].options))
		t.at[b*t.n+a] = allowAll(len(cols[b].options), len(cols[a].options))
	}
	return t.get(a, b), t.get(b, a)
}

func allowAll(from, to int) *table {
	t := &table{words: words(to), rows: make([]uint64, from*words(to))}
	all := full(to)
	for i := range from {
		copy(t.row(i), all)
	}
	return t
}

// tabulate runs a rule that reads two columns on every pair of their classes. Worth that depends on the pair makes it a
// factor besides.
func (p *Problem) tabulate(q *query) {
	f := p.newFactor(q)
	a, b := f.cols[0], f.cols[1]
	ca, cb := p.cols[a], p.cols[b]
	ka, kb := f.by[0], f.by[1]
	with := allowAll(len(ka.first), len(cb.options))
	back := allowAll(len(kb.first), len(ca.options))
	members, others := ka.members(ca), kb.members(cb)
	valued, dropped := false, 0
	joined := p.tables.get(a, b)
	for _, i := range ka.living(ca) {
		for _, j := range kb.living(cb) {
			if joined != nil && !joined.joins(members[ka.of[i]], others[kb.of[j]]) {
				continue // no two of these classes stand together as it is
			}
			switch w := f.ask(p, []int{i, j}); {
			case w == failed:
				x, y := ka.of[i], kb.of[j]
				with.row(int(x)).less(others[y])
				back.row(int(y)).less(members[x])
				dropped += members[x].count() * others[y].count()
			case w > 0:
				valued = true
			}
		}
	}
	p.scratch = p.base
	if dropped > 0 {
		ab, ba := p.tables.join(a, b, p.cols)
		for o := range ca.options {
			ab.row(o).keep(with.row(int(ka.of[o])))
		}
		for o := range cb.options {
			ba.row(o).keep(back.row(int(kb.of[o])))
		}
		p.cut = append(p.cut, Cut{Rule: q.rule, Seats: build.SetOf(ca.seat, cb.seat), Options: dropped})
	}
	if valued {
		p.many = append(p.many, f)
	}
}

// joins reports that some row of the one set allows one of the other.
func (t *table) joins(rows, columns set) bool {
	for i := rows.next(0); i >= 0; i = rows.next(i + 1) {
		if t.row(i).meets(columns) {
			return true
		}
	}
	return false
}

// members lists the live options of each class.
func (k *classes) members(c *column) []set {
	list := make([]set, len(k.first))
	for i := range list {
		list[i] = make(set, words(len(c.options)))
	}
	for o := c.live.next(0); o >= 0; o = c.live.next(o + 1) {
		list[k.of[o]].add(o)
	}
	return list
}

// close takes out options that no option of some joined column can stand with, until nothing changes.
func (p *Problem) close() {
	for changed := true; changed; {
		changed = false
		for a, ca := range p.cols {
			for b, cb := range p.cols {
				t := p.tables.get(a, b)
				if t == nil {
					continue
				}
				dropped := 0
				for i := ca.live.next(0); i >= 0; i = ca.live.next(i + 1) {
					if !t.row(i).meets(cb.live) {
						ca.live.drop(i)
						dropped++
					}
				}
				if dropped > 0 {
					changed = true
					p.cut = append(p.cut, Cut{Seats: build.SetOf(ca.seat, cb.seat), Options: dropped, Empties: ca.live.next(0) < 0})
				}
			}
		}
	}
}
