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
		r.match = p.match(c, q)
		if r.none = len(r.quick) == 0 || !p.rowed(q); r.none {
			return nil
		}
		r.by = make([]set, r.kind[0].count)
	}
	row := &r.by[r.kind[0].of[o]]
	if *row == nil {
		live := p.cols[q].live
		*row = make(set, len(live))
		for i := live.next(0); i >= 0; i = live.next(i + 1) {
			if r.together(p, o, i) {
				row.add(i)
			}
		}
	}
	return *row
}

// rows is what stands with each option of one column in another.
type rows struct {
	*match
	none bool
	by   []set // by kind; nil where it is not made yet
}
