package plan

// due is a factor and how many columns are decided when it becomes ready.
type due struct {
	*factor
	from int
	with int // the other of its two open columns, −1 where it has none or several
}

// schedule says when factors can be checked.
type schedule struct {
	ready [][][]due // by column and depth: factors that become ready for a column when that many are decided
	ripe  [][][]due // the same, all up to that depth
}

// schedule works out when each factor can be checked: for its last column, as soon as all its others are decided.
func (s *search) schedule(slow bool) schedule {
	n := len(s.order)
	t := schedule{make([][][]due, n), make([][][]due, n)}
	for c := range n {
		t.ready[c] = make([][]due, n+1)
		t.ripe[c] = make([][]due, n+1)
		for _, f := range s.last[c] {
			before, with := -1, -1
			for _, q := range f.open {
				if q != c {
					before, with = max(before, s.place[q]), q
				}
			}
			if len(f.open) > 2 {
				with = -1
			}
			if with >= 0 && f.cost == 0 {
				continue // narrow has taken away what fails it
			}
			if (f.cost > 0 || len(f.cols) >= apartFrom) == slow {
				t.ready[c][before+1] = append(t.ready[c][before+1], due{f, before + 1, with})
			}
		}
		for d := range n + 1 {
			if d > 0 {
				t.ripe[c][d] = append(t.ripe[c][d], t.ripe[c][d-1]...)
			}
			t.ripe[c][d] = append(t.ripe[c][d], t.ready[c][d]...)
		}
	}
	return t
}

// of lists the tests of an option: all that are ripe, or those just ready where it has passed the others.
func (t *schedule) of(q, d int, all bool) []due {
	if all {
		return t.ripe[q][d]
	}
	return t.ready[q][d]
}
