package plan

// rowedTo is the most options a column may have for the rows of what stands with it to be kept.
const rowedTo = 512

// rowed reports a column of so few options that narrow takes away what fails by two.
func (p *Problem) rowed(q int) bool { return p.cols[q].live.count() <= rowedTo }

// row is the options of a column that stand with an option of another by every rule quick to ask that hangs on those two; nil
// where there is no such rule, or where the column is too large. Rows are kept once they are made.
func (p *Problem) row(c, o, q int) set {
	at := c*len(p.cols) + q
	if p.rows[at].none {
		return nil
	}
	r := &p.rows[at]
	if r.by == nil {
		quick := false
		for _, f := range p.joining(c, q) {
			quick = quick || f.cost == 0
		}
		if r.none = !quick || !p.rowed(q); r.none {
			return nil
		}
		r.by = make([]set, len(p.cols[c].options))
	}
	if r.by[o] == nil {
		live := p.cols[q].live
		row := make(set, len(live))
		for i := live.next(0); i >= 0; i = live.next(i + 1) {
			if p.together(c, o, q, i) {
				row.add(i)
			}
		}
		r.by[o] = row
	}
	return r.by[o]
}

// together reports that two options stand together by every rule quick to ask that hangs on their two columns.
func (p *Problem) together(c, o, q, i int) bool {
	for _, f := range p.joining(c, q) {
		if f.cost > 0 {
			break // and so are the others
		}
		if f.two(p, c, o, q, i) == failed {
			return false
		}
	}
	return true
}

// rows is what stands with each option of one column in another.
type rows struct {
	none bool
	by   []set // by option; nil where it is not made yet
}

// company is what is known so far of the options of one column beside an option of another.
type company struct {
	known [mostCompany]known
	n     int
}

// known is what a rule that serves nothing has said so far of the options of a column, everything else decided.
type known struct {
	stood    []int8
	of       []int32 // by option: its class
	at, pace int     // where class nought stands in the memory, and how far apart two classes lie
}

// mostCompany is how many rules are held in a company.
const mostCompany = 8

// company is the company in column q of option o of column c.
func (p *Problem) company(c, o, q int) (k company) {
	for _, f := range p.joining(c, q) {
		if k.n == mostCompany {
			break
		}
		s := f.look(p)
		if s.seen.stood == nil {
			continue
		}
		at := 0
		for i, other := range f.others {
			switch f.cols[i] {
			case q:
			case c:
				at += int(s.by[i].of[o]) * s.seen.pace[i]
			default:
				at += int(s.by[i].of[other]) * s.seen.pace[i]
			}
		}
		i := f.at[q]
		k.known[k.n] = known{s.seen.stood, s.by[i].of, at, s.seen.pace[i]}
		k.n++
	}
	return k
}

// excludes reports an option that a rule is known to fail.
func (k *company) excludes(o int) bool {
	for i := range k.known[:k.n] {
		r := &k.known[i]
		if r.stood[r.at+int(r.of[o])*r.pace] == failed+asked {
			return true
		}
	}
	return false
}
