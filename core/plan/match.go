package plan

import (
	"encoding/binary"
	"math/bits"
	"slices"
)

// match is how the options of one column go with those of another: what joins the two, and what that cannot tell apart.
type match struct {
	*mates
	c, q   int
	slow   []*factor   // rules slow to ask that hang on the two
	sums   []*total    // those that two of their options can break by themselves
	joined bool        // whether there is any rule between them
	grade  [2]*classes // options of either that no rule can tell apart that joins the two or hangs on the first alone
}

// mates is what the rules quick to ask that hang on two columns let stand together.
type mates struct {
	*couple
	quick []*factor   // those rules
	kind  [2]*classes // options of either that they cannot tell apart
}

// couple is what an Index knows of which options of two columns the quick rules let stand together.
type couple struct {
	said    [][]int8      // by kind of the earlier column's options and of the later one's: what they have said
	company [2][]*company // by kind of the earlier column's options, and of the later one's; nil where nothing is known
	outcast [2][][]set    // by side, rule and what that sees of an option: whom it does not let stand beside it; nil until it is asked
}

// company is the options of one column that stand with an option of another, of those that were looked at.
type company struct{ looked, stand set }

// match finds out how the options of column c go with those of column q.
func (p *Problem) match(c, q int) *match {
	at := c*len(p.cols) + q
	if p.matches[at] == nil {
		p.matches[at] = p.newMatch(c, q)
	}
	return p.matches[at]
}

func (p *Problem) newMatch(c, q int) *match {
	m := &match{mates: p.mates(c, q), c: c, q: q}
	for _, f := range p.joining(c, q) {
		if f.cost > 0 {
			m.slow = append(m.slow, f)
		}
	}
	for _, t := range p.sums {
		if t.net[c] != nil && t.net[q] != nil && t.room+t.least[c]-t.most[c]+t.least[q]-t.most[q] < 0 {
			m.sums = append(m.sums, t)
		}
	}
	if m.joined = len(m.quick)+len(m.slow)+len(m.sums) > 0; !m.joined {
		return m
	}
	for i, at := range [...]int{c, q} {
		col := p.cols[at]
		k := m.kind[i]
		for _, f := range m.slow {
			k = col.both(k, f.look(p).by[f.at[at]])
		}
		for _, t := range m.sums {
			k = col.both(k, t.seen[at].kinds())
		}
		m.grade[i] = k
	}
	for _, f := range p.alone[c] {
		m.grade[0] = p.cols[c].both(m.grade[0], f.look(p).by[f.at[c]])
	}
	return m
}

// mates finds out what the rules quick to ask say of two columns. Where a problem is a part of another, and the same rules hang on
// the two, they say the same.
func (p *Problem) mates(c, q int) *mates {
	m := &mates{}
	for _, f := range p.joining(c, q) {
		if f.cost == 0 {
			m.quick = append(m.quick, f)
		}
	}
	for of := p.of; of != nil; of = of.of {
		if known := of.matches[c*len(p.cols)+q]; known != nil && slices.EqualFunc(known.quick, m.quick, func(f, g *factor) bool { return f.query == g.query }) {
			return known.mates
		}
	}
	for i, at := range [...]int{c, q} {
		m.kind[i] = p.cols[at].alike()
		for _, f := range m.quick {
			m.kind[i] = p.cols[at].both(m.kind[i], f.look(p).by[f.at[at]])
		}
	}
	if len(m.quick) > 0 {
		early, late := place(c, q, 0), place(c, q, 1)
		m.couple = p.index.couple(m.key(p, min(c, q), max(c, q)), m.kind[early].count, m.kind[late].count)
	}
	return m
}

// place is which of two columns is the earlier one, or with 1 the later one.
func place(c, q, nth int) int {
	if c > q {
		return 1 - nth
	}
	return nth
}

// key names what the quick rules are asked of two columns.
func (m *mates) key(p *Problem, early, late int) string {
	key := []byte{byte(p.cols[early].seat), byte(p.cols[late].seat)}
	for _, f := range m.quick {
		key = binary.AppendUvarint(key, uint64(f.seen.id))
		for i, c := range f.cols {
			if c != early && c != late {
				key = binary.AppendUvarint(key, uint64(f.by[i].of[f.others[i]]))
			}
		}
	}
	return string(key)
}

// together reports that option o of the first column stands with option j of the second by every rule quick to ask that hangs on
// the two.
func (m *match) together(p *Problem, o, j int) bool {
	apart, _ := m.apart(p, o, j)
	return !apart
}

// apart reports that option o of the first column does not stand with option j of the second, and the rule that says so where that is only
// found out now.
func (m *match) apart(p *Problem, o, j int) (apart bool, by *factor) {
	if len(m.quick) == 0 {
		return false, nil
	}
	early, late := m.kind[0].of[o], m.kind[1].of[j]
	if m.c > m.q {
		early, late = late, early
	}
	row := m.said[early]
	if row == nil {
		row = p.index.unknown(m.kind[place(m.c, m.q, 1)].count)
		m.said[early] = row
	}
	said := &row[late]
	if *said == 0 {
		*said = asked
		if at := slices.IndexFunc(m.quick, func(f *factor) bool { return f.two(p, m.c, o, m.q, j) == failed }); at >= 0 {
			*said += failed
			by = m.quick[at]
		}
	}
	return *said == asked+failed, by
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

// company is what is known of the options of the second column beside an option of the first; nil where no quick rule joins the two.
func (m *match) company(p *Problem, o int) *company {
	if len(m.quick) == 0 {
		return nil
	}
	of := &m.couple.company[place(m.c, m.q, 0)][m.kind[0].of[o]]
	if *of == nil {
		n := len(p.cols[m.q].live)
		p.index.acquaint(2 * 8 * n)
		*of = &company{make(set, n), make(set, n)}
		m.cast(p, o, (*of).looked)
	}
	return *of
}

// castTo is how many pairs of kinds a rule may see to be asked of all of them at once.
const castTo = 1 << 9

// cast notes whom the rules that see few kinds of options do not let stand beside option o of the first column.
func (m *match) cast(p *Problem, o int, out set) {
	side := place(m.c, m.q, 0)
	if m.outcast[side] == nil {
		m.outcast[side] = make([][]set, len(m.quick))
	}
	for i, f := range m.quick {
		f.look(p)
		k, l := f.by[f.at[m.c]], f.by[f.at[m.q]]
		if l.count > fewClasses || k.count*l.count > castTo {
			continue
		}
		if m.outcast[side][i] == nil {
			m.outcast[side][i] = make([]set, k.count)
		}
		of := &m.outcast[side][i][k.of[o]]
		if *of == nil {
			*of = make(set, len(out))
			p.index.acquaint(8 * len(out))
			asked := make([]bool, l.count)
			for j, class := range l.of {
				if !asked[class] {
					asked[class] = true
					if f.two(p, m.c, o, m.q, j) == failed {
						(*of).join(l.members(j))
					}
				}
			}
		}
		out.join(*of)
	}
}

// joins reports that option j of the second column stands with option o of the first, whose company it is.
func (m *match) joins(p *Problem, with *company, o, j int) bool {
	if !with.looked.has(j) {
		with.looked.add(j)
		if apart, by := m.apart(p, o, j); !apart {
			with.stand.add(j)
		} else if by != nil {
			if alike := by.excluded(p, m.q, j); alike != nil {
				with.looked.join(alike) // they fail by the same rule
			}
		}
	}
	return with.stand.has(j)
}

// meets reports that some of a set of options of the second column stands with option o of the first, whose company it is.
func (m *match) meets(p *Problem, with *company, o int, some set) bool {
	if with.stand.meets(some) {
		return true
	}
	for i, w := range some {
		for fresh := w &^ with.looked[i]; fresh != 0; fresh &= fresh - 1 {
			if m.joins(p, with, o, i<<6+bits.TrailingZeros64(fresh)) {
				return true
			}
		}
	}
	return false
}

// acquainted is how many bytes an Index keeps of which options of two columns stand together; past it, it begins anew;
// blankKind is what a kind takes of which nothing is known.
const (
	acquainted = 1 << 26
	blankKind  = 32
)

// couple finds what is known of two columns of so many kinds by its key.
func (x *Index) couple(key string, early, late int) *couple {
	known := x.couples[key]
	if known == nil {
		known = &couple{said: make([][]int8, early), company: [2][]*company{make([]*company, early), make([]*company, late)}}
		x.acquaint((early + late) * blankKind)
		x.couples[key] = known
	}
	return known
}

// unknown is what has been said of one kind beside so many of another column before anything was.
func (x *Index) unknown(kinds int) []int8 {
	x.acquaint(kinds)
	return make([]int8, kinds)
}

// acquaint makes room for so many bytes more.
func (x *Index) acquaint(more int) {
	if x.acquainted += more; x.acquainted > acquainted {
		clear(x.couples)
		x.acquainted = more
	}
}
