package plan

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"slipfit/core/build"
	"slipfit/core/rule"
	"slipfit/core/unit"
)

// Model is a problem written down for solvers that know nothing of parts: a variable of 0 or 1 for every option that the
// tables leave standing, exactly one of a seat's, and rows of integers for everything else that can be said so. A choice of
// options that stands satisfies every row. Where rules are left out the reverse does not hold: the model is a relaxation, whose
// optimum no build betters, and which is the optimum of the problem where a build that stands reaches it.
type Model struct {
	cols    []*column
	live    []set // by column: the options that have a variable
	joined  joints
	at      [][]int // by column and option: its variable, −1 where it has none
	vars    []variable
	sets    []span // variables of which exactly one is 1: the columns, then the ways of each valued factor
	rows    []row
	left    []*rule.Rule
	fixed   int64 // price of what is settled, minor units
	settled int64 // value points of what is settled
	valued  bool
}

// variable is an option of a column, or a way in which a valued factor comes out.
type variable struct {
	name  string
	says  string // which option it stands for; empty for a way
	price int64  // minor units
	worth int64  // value points
}

// span is a run of variables.
type span struct {
	from, to int
	name     string
}

// row holds where the sum of its terms is at least so much, or exactly.
type row struct {
	name    string // of the rule or the seats that ask it
	terms   []term
	least   int64
	exactly bool
}

// term is a variable times a coefficient.
type term struct {
	v int
	k int64
}

// Objective is what a solver is asked to seek in a model.
type Objective struct {
	Worth   bool  // the greatest value, in value points; otherwise the least price
	AtLeast int64 // the least value a choice must serve; 0 asks none
}

// Model writes the problem down. A valued model tells the value of every choice too; one that is not can only be asked for the
// least price. Best is two questions: the greatest value, then the least price of at least that value. A model of which some is missing
// says nothing, so the error is the context's where that ends. Done of the course told is the share of the rules that is written.
func (p *Problem) Model(ctx context.Context, valued bool) (*Model, error) {
	p.begin(ctx)
	m := &Model{cols: p.cols, fixed: p.fixed, settled: p.settled, valued: valued}
	m.joined = p.joints()
	m.live = m.joined.close(p)
	if p.watch.look() {
		return nil, context.Cause(ctx)
	}
	for c := range p.cols {
		m.column(c)
	}
	if slices.ContainsFunc(m.live, func(live set) bool { return live.next(0) < 0 }) {
		return m, nil // a seat without an option says it all
	}
	for a := range p.cols {
		for b := range a {
			if rows := m.joined.get(b, a); rows != nil {
				m.pairs(b, a, rows)
			}
		}
	}
	for _, t := range p.sums {
		m.total(t)
	}
	m.purse(p)
	for c, list := range p.alone {
		for _, f := range list {
			m.lone(p, c, f)
		}
	}
	for i, f := range p.many {
		m.factor(p, f)
		p.watch.course.Done = float64(i+1) / float64(len(p.many))
		if p.watch.look() {
			return nil, context.Cause(ctx)
		}
	}
	return m, nil
}

// Left lists the rules that the rows do not hold, in the order of the schedule: none where the model is exact.
func (m *Model) Left() []*rule.Rule {
	var list []*rule.Rule
	for _, r := range rule.All {
		if slices.Contains(m.left, r) {
			list = append(list, r)
		}
	}
	return list
}

// Fixed is the price of what is settled, which no variable carries.
func (m *Model) Fixed() unit.Money { return unit.Money(m.fixed) }

// Settled is the value that no variable carries.
func (m *Model) Settled() int64 { return m.settled }

// column gives a seat its variables, and says that it has one option.
func (m *Model) column(c int) {
	col := m.cols[c]
	at := slices.Repeat([]int{-1}, len(col.options))
	s := span{from: len(m.vars), name: col.seat.String()}
	for o := m.live[c].next(0); o >= 0; o = m.live[c].next(o + 1) {
		at[o] = len(m.vars)
		m.vars = append(m.vars, variable{fmt.Sprintf("%s_%d", symbol(s.name), o), spoken(col.options[o]), col.price[o], col.worth[o]})
	}
	s.to = len(m.vars)
	m.at = append(m.at, at)
	m.one(s)
}

// one says that exactly one of a span is 1.
func (m *Model) one(s span) {
	m.sets = append(m.sets, s)
	r := row{name: s.name, least: 1, exactly: true}
	for v := s.from; v < s.to; v++ {
		r.terms = append(r.terms, term{v, 1})
	}
	m.rows = append(m.rows, r)
}

// spoken tells an option in words.
func spoken(o build.Option) string {
	if o.Part == nil {
		return "none"
	}
	text := o.ID()
	if o.Count > 1 {
		text = fmt.Sprintf("%d × %s", o.Count, text)
	}
	if o.Layout != nil {
		text += fmt.Sprintf(", layout %s, plate on step %d", o.Layout.ID, o.Plate)
	}
	if o.Face != "" {
		text += ", face " + string(o.Face)
	}
	return text
}

// symbol is a name as solvers read it.
func symbol(name string) string { return strings.ReplaceAll(name, "-", "_") }

// pairs says which options of two columns stand together. For every set of options of the second that some option of the
// first excludes: of that set, and of the options of the first that exclude it all, one at most.
func (m *Model) pairs(a, b int, allowed []set) {
	excluded := make([]set, len(allowed))
	var distinct []set
	for o := m.live[a].next(0); o >= 0; o = m.live[a].next(o + 1) {
		x := slices.Clone(m.live[b])
		x.less(allowed[o])
		excluded[o] = x
		if x.next(0) >= 0 && !slices.ContainsFunc(distinct, func(d set) bool { return slices.Equal(d, x) }) {
			distinct = append(distinct, x)
		}
	}
	for _, x := range distinct {
		by := make(set, len(m.live[a]))
		for o := m.live[a].next(0); o >= 0; o = m.live[a].next(o + 1) {
			if x.inside(excluded[o]) {
				by.add(o)
			}
		}
		m.notAll(m.cols[a].seat.String()+"_"+m.cols[b].seat.String(), []int{a, b}, []set{by, x})
	}
}

// notAll says that not every one of the columns has its option in its set. A set is written as itself or as what is not in
// it, whichever is shorter.
func (m *Model) notAll(name string, cols []int, in []set) {
	r := row{name: name, least: 1 - int64(len(cols))}
	for i, c := range cols {
		live := m.live[c]
		if 2*in[i].count() <= live.count() {
			for o := in[i].next(0); o >= 0; o = in[i].next(o + 1) {
				r.terms = append(r.terms, term{m.at[c][o], -1})
			}
			continue
		}
		r.least++
		for o := live.next(0); o >= 0; o = live.next(o + 1) {
			if !in[i].has(o) {
				r.terms = append(r.terms, term{m.at[c][o], 1})
			}
		}
	}
	m.rows = append(m.rows, r)
}

// total says that a sum is not negative. What a column gives at least is taken out, and nothing gives more than is lacking,
// which is also how an option counts whose sheet lacks the figure.
func (m *Model) total(t *total) {
	r := row{name: t.rule.ID, least: -t.base}
	for c, live := range m.live {
		if t.net[c] == nil {
			continue
		}
		low := int64(lavish)
		for o := live.next(0); o >= 0; o = live.next(o + 1) {
			low = min(low, t.net[c][o])
		}
		r.least -= low
		for o := live.next(0); o >= 0; o = live.next(o + 1) {
			if k := t.net[c][o] - low; k > 0 {
				r.terms = append(r.terms, term{m.at[c][o], k})
			}
		}
	}
	if r.least <= 0 {
		return
	}
	for i := range r.terms {
		r.terms[i].k = min(r.terms[i].k, r.least)
	}
	m.rows = append(m.rows, r)
}

// purse says what the open seats may cost.
func (m *Model) purse(p *Problem) {
	if p.purse >= p.dearest() {
		return
	}
	r := row{name: "purse", least: -p.purse}
	for v := range m.vars {
		if k := m.vars[v].price; k != 0 {
			r.terms = append(r.terms, term{v, -k})
		}
	}
	m.rows = append(m.rows, r)
}

// asked is the rows under an objective: those of the problem, and the value it must serve.
func (m *Model) asked(o Objective) []row {
	if o.AtLeast == 0 {
		return m.rows
	}
	r := row{name: "worth", least: o.AtLeast - m.settled}
	for v := range m.vars {
		if k := m.vars[v].worth; k != 0 {
			r.terms = append(r.terms, term{v, k})
		}
	}
	return append(slices.Clone(m.rows), r)
}

// weight is what a variable counts for in an objective.
func (m *Model) weight(v int, o Objective) int64 {
	if o.Worth {
		return m.vars[v].worth
	}
	return m.vars[v].price
}

// aim is an objective's name.
func aim(o Objective) string {
	if o.Worth {
		return "worth"
	}
	return "price"
}
