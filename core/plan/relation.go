package plan

import (
	"cmp"
	"encoding/binary"
	"fmt"
	"slices"

	"slipfit/core/build"
	"slipfit/core/rule"
)

// asksTo is how many choices of its classes a factor may be asked of to be looked through, slowTo one that predicts heat or
// noise; cellsTo is how many there may be with those that no two seats let stand.
const (
	asksTo  = 400_000
	slowTo  = 20_000
	cellsTo = 1 << 23
)

// relation is a factor asked of every choice of its classes that every two seats let stand, those that it treats alike put
// together.
type relation struct {
	*factor
	groups [][]set // by open column of the factor: groups of live options
	worth  []int32 // by choice of groups, the last column's running fastest; failed where it does not stand
}

// vain is the worth of a choice that two seats do not let stand: it may as well be anything.
const vain = -3

// relate looks a factor through; nil where it is too large.
func (m *Model) relate(p *Problem, f *factor) *relation {
	r := &relation{factor: f}
	n := 1
	for _, c := range f.open {
		groups := f.look(p).by[f.at[c]].groups(m.live[c])
		r.groups = append(r.groups, groups)
		if n *= len(groups); n > cellsTo {
			return nil
		}
	}
	most, asks := asksTo, 0
	if f.cost > 0 {
		most = slowTo
	}
	if !r.each(m, func(int, []int) bool { asks++; return asks <= most }) {
		return nil
	}
	r.worth = slices.Repeat([]int32{vain}, n)
	options := slices.Clone(f.others)
	r.each(m, func(at int, chosen []int) bool {
		for i, c := range f.open {
			options[f.at[c]] = chosen[i]
		}
		r.worth[at] = int32(f.ask(p, options))
		return !p.watch.ended
	})
	p.scratch = p.base
	for i := range r.groups {
		r.merge(i)
	}
	return r
}

// groups lists the live options of every class that has some.
func (k *classes) groups(live set) []set {
	list := make([]set, k.count)
	for o := live.next(0); o >= 0; o = live.next(o + 1) {
		if list[k.of[o]] == nil {
			list[k.of[o]] = make(set, len(live))
		}
		list[k.of[o]].add(o)
	}
	return slices.DeleteFunc(list, func(s set) bool { return s == nil })
}

// each goes through the choices of groups that every two seats let stand, as long as see says so: it is given the choice's place
// and an option of every group.
func (r *relation) each(m *Model, see func(at int, options []int) bool) bool {
	joins := make([][]func(g, h int) bool, len(r.open)) // by two columns
	for i := range r.open {
		for j := range i {
			joins[i] = append(joins[i], r.joins(m, i, j))
		}
	}
	options, pick := make([]int, len(r.open)), make([]int, len(r.open))
	var walk func(i, at int) bool
	walk = func(i, at int) bool {
		if i == len(r.open) {
			return see(at, options)
		}
		for g, group := range r.groups[i] {
			fits := true
			for j := 0; j < i && fits; j++ {
				fits = joins[i][j](g, pick[j])
			}
			if !fits {
				continue
			}
			options[i], pick[i] = group.next(0), g
			if !walk(i+1, at*len(r.groups[i])+g) {
				return false
			}
		}
		return true
	}
	return walk(0, 0)
}

// joins tells which groups of two columns hold options that stand together.
func (r *relation) joins(m *Model, i, j int) func(g, h int) bool {
	if m.joined.get(r.open[i], r.open[j]) == nil {
		return func(g, h int) bool { return true }
	}
	n := len(r.groups[j])
	can := make([]bool, len(r.groups[i])*n)
	for g, group := range r.groups[i] {
		for h, other := range r.groups[j] {
			can[g*n+h] = m.joined.together(r.open[i], r.open[j], group, other)
		}
	}
	return func(g, h int) bool { return can[g*n+h] }
}

// stride is how far apart two neighbours of a column lie.
func (r *relation) stride(i int) int {
	n := 1
	for _, g := range r.groups[i+1:] {
		n *= len(g)
	}
	return n
}

// merge puts groups of a column together that come out alike whatever the other columns hold.
func (r *relation) merge(i int) {
	stride, n := r.stride(i), len(r.groups[i])
	var kept []int
	for g := range n {
		same := slices.IndexFunc(kept, func(k int) bool { return r.alike(k, g, stride, n) })
		if same < 0 {
			kept = append(kept, g)
			continue
		}
		r.groups[i][kept[same]].join(r.groups[i][g])
		r.cells(kept[same], g, stride, n, func(a, b *int32) bool {
			*a = max(*a, *b)
			return true
		})
	}
	var worth []int32
	for at, w := range r.worth {
		if slices.Contains(kept, at/stride%n) {
			worth = append(worth, w)
		}
	}
	groups := make([]set, len(kept))
	for k, g := range kept {
		groups[k] = r.groups[i][g]
	}
	r.groups[i], r.worth = groups, worth
}

// alike reports two groups of a column that come out alike wherever both may stand.
func (r *relation) alike(g, h, stride, n int) bool {
	return r.cells(g, h, stride, n, func(a, b *int32) bool { return *a == *b || *a == vain || *b == vain })
}

// cells goes through what becomes of two of a column's n groups, side by side, as long as see says so.
func (r *relation) cells(g, h, stride, n int, see func(a, b *int32) bool) bool {
	for from := 0; from < len(r.worth); from += n * stride {
		for at := from; at < from+stride; at++ {
			if !see(&r.worth[at+g*stride], &r.worth[at+h*stride]) {
				return false
			}
		}
	}
	return true
}

// join takes in what is in t.
func (s set) join(t set) {
	for i := range s {
		s[i] |= t[i]
	}
}

// factor says what a rule over several columns asks, and what it is worth, or notes that it is left out.
func (m *Model) factor(p *Problem, f *factor) {
	t, known := traits[f.rule.ID]
	serves := f.early == nil && (!known || t.serves)
	if f.rule.Purse != nil && !serves {
		return // the purse says it all
	}
	if f.rule.Sum != nil && !serves {
		if !m.stated(p, f.rule) {
			m.leave(f)
		}
		return // its sum says it all
	}
	if len(f.open) == 2 && f.cost == 0 && !(m.valued && serves) {
		return // what the two seats let stand says it all
	}
	r := m.relate(p, f)
	if r == nil {
		m.leave(f)
		if serves {
			m.settled += p.enough() // more than it can be worth
		}
		return
	}
	if m.valued && r.tells() {
		m.ways(r)
		return
	}
	m.settled += int64(max(0, slices.Max(r.worth)))
	if slices.Contains(r.worth, failed) {
		m.exclude(r)
	}
}

// lone says which options of a column a rule fails that is slow to ask.
func (m *Model) lone(p *Problem, c int, f *factor) {
	fails := make(set, len(m.live[c]))
	for _, group := range f.look(p).by[f.at[c]].groups(m.live[c]) {
		if f.one(p, c, group.next(0)) == failed {
			fails.join(group)
		}
	}
	p.scratch = p.base
	if fails.next(0) >= 0 {
		m.notAll(symbol(f.rule.ID), []int{c}, []set{fails})
	}
}

// enough is the value of everything asked, served in full.
func (p *Problem) enough() int64 {
	n := int64(0)
	for i := range p.ask.Needs.By {
		n += int64(p.ask.Needs.By[i].Weight) * 1000
	}
	return n
}

// leave notes a rule that the rows do not hold. What an early query says, the whole rule says too.
func (m *Model) leave(f *factor) {
	if f.early == nil && !slices.Contains(m.left, f.rule) {
		m.left = append(m.left, f.rule)
	}
}

// stated reports a sum whose terms are known for every live option.
func (m *Model) stated(p *Problem, r *rule.Rule) bool {
	t := p.newTotal(r, r.Sum, theRule, p.columnsOf(build.SetOf(r.Reads...)))
	for c, live := range m.live {
		if t.net[c] == nil {
			continue
		}
		for o := live.next(0); o >= 0; o = live.next(o + 1) {
			if t.net[c][o] >= lavish {
				return false
			}
		}
	}
	return t.base < lavish
}

// tells reports a factor whose worth depends on what is chosen.
func (r *relation) tells() bool {
	most := slices.Max(r.worth)
	return slices.ContainsFunc(r.worth, func(w int32) bool { return w >= 0 && w != most })
}

// exclude says which choices fail, as few and as large boxes of them as come of putting equals together.
func (m *Model) exclude(r *relation) {
	for _, b := range r.boxes() {
		m.notAll(symbol(r.rule.ID), r.open, b)
	}
}

// boxes covers the choices that fail: in every box a choice of one option from each set fails.
func (r *relation) boxes() [][]set {
	k := len(r.groups)
	order := make([]int, k) // columns of few groups first
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(len(r.groups[a]), len(r.groups[b])) })
	a, b := order[k-2], order[k-1]
	var boxes [][]set
	pick := make([]int, k)
	var walk func(i int)
	walk = func(i int) {
		if i == k-2 {
			boxes = append(boxes, r.faces(pick, a, b)...)
			return
		}
		for g := range r.groups[order[i]] {
			pick[order[i]] = g
			walk(i + 1)
		}
	}
	walk(0)
	for _, i := range order[:k-2] {
		boxes = mergeBoxes(boxes, i)
	}
	return boxes
}

// faces covers what fails in two columns with the others decided: for each set of the second that some group of the first
// excludes, all groups of the first that exclude it.
func (r *relation) faces(pick []int, a, b int) [][]set {
	base := 0
	for i, g := range pick {
		if i != a && i != b {
			base += g * r.stride(i)
		}
	}
	sa, sb := r.stride(a), r.stride(b)
	excluded := make([]set, len(r.groups[a])) // by group: what fails with it or need not be said of it
	var distinct []set
	for i := range excluded {
		x := make(set, words(len(r.groups[b])))
		excluded[i] = make(set, len(x))
		for j := range r.groups[b] {
			w := r.worth[base+i*sa+j*sb]
			if w == failed {
				x.add(j)
			}
			if w < 0 {
				excluded[i].add(j)
			}
		}
		if x.next(0) >= 0 && !slices.ContainsFunc(distinct, func(d set) bool { return slices.Equal(d, x) }) {
			distinct = append(distinct, x)
		}
	}
	var list [][]set
	for _, x := range distinct {
		box := make([]set, len(pick))
		for i, g := range pick {
			box[i] = slices.Clone(r.groups[i][g])
		}
		clear(box[a])
		clear(box[b])
		for i := range excluded {
			if x.inside(excluded[i]) {
				box[a].join(r.groups[a][i])
			}
		}
		for j := x.next(0); j >= 0; j = x.next(j + 1) {
			box[b].join(r.groups[b][j])
		}
		list = append(list, box)
	}
	return list
}

// mergeBoxes puts boxes together that differ in one column alone.
func mergeBoxes(boxes [][]set, column int) [][]set {
	var list [][]set
	seen := map[string]int{}
	for _, b := range boxes {
		var key []byte
		for i, s := range b {
			for _, w := range s {
				if i != column {
					key = binary.LittleEndian.AppendUint64(key, w)
				}
			}
		}
		if at, ok := seen[string(key)]; ok {
			list[at][column].join(b[column])
			continue
		}
		seen[string(key)] = len(list)
		list = append(list, b)
	}
	return list
}

// ways says what a factor is worth: a variable for every choice of groups that stands, exactly one of them 1, and a group's
// ways come out as often as its options. Where but one column makes a difference the worth goes to its options.
func (m *Model) ways(r *relation) {
	var several []int
	for i, g := range r.groups {
		if len(g) > 1 {
			several = append(several, i)
		}
	}
	if len(several) == 1 {
		m.alone(r, several[0])
		return
	}
	name := symbol(r.rule.ID)
	s := span{from: len(m.vars), name: name}
	rows := make([][]row, len(r.groups))
	for _, i := range several {
		rows[i] = make([]row, len(r.groups[i]))
		for g, group := range r.groups[i] {
			rows[i][g] = row{name: name, exactly: true}
			for o := group.next(0); o >= 0; o = group.next(o + 1) {
				rows[i][g].terms = append(rows[i][g].terms, term{m.at[r.open[i]][o], -1})
			}
		}
	}
	for at, w := range r.worth {
		if w < 0 {
			continue
		}
		v := len(m.vars)
		m.vars = append(m.vars, variable{name: fmt.Sprintf("%s_%d", name, at), worth: int64(w)})
		for _, i := range several {
			g := at / r.stride(i) % len(r.groups[i])
			rows[i][g].terms = append(rows[i][g].terms, term{v, 1})
		}
	}
	s.to = len(m.vars)
	m.sets = append(m.sets, s)
	for _, i := range several {
		m.rows = append(m.rows, rows[i]...)
	}
}

// alone gives the worth of a factor to the options of the one column that decides it; those that fail are excluded.
func (m *Model) alone(r *relation, i int) {
	for g, group := range r.groups[i] {
		w := r.worth[g]
		if w < 0 {
			m.notAll(symbol(r.rule.ID), r.open[i:i+1], []set{group})
			continue
		}
		for o := group.next(0); o >= 0; o = group.next(o + 1) {
			m.vars[m.at[r.open[i]][o]].worth += int64(w)
		}
	}
}
