package plan

// within is the problem with fewer options live, what it has learned of the rules kept. It returns nil where a column is
// left without options.
func (p *Problem) within(live []set) *Problem {
	q := *p
	q.priced = nil
	q.cut = nil
	q.cols = make([]*column, len(p.cols))
	for c, col := range p.cols {
		copied := *col
		copied.live = live[c]
		q.cols[c] = &copied
	}
	q.close()
	if q.emptied() {
		return nil
	}
	q.sums = make([]*total, len(p.sums))
	for i, t := range p.sums {
		q.sums[i] = t.within(&q)
	}
	return &q
}

// within is the sum over the options live in a problem.
func (t *total) within(p *Problem) *total {
	s := *t
	s.most = make([]int64, len(t.most))
	s.room = t.base
	for c, col := range p.cols {
		if t.net[c] == nil {
			continue
		}
		s.most[c] = -lavish
		for o := col.live.next(0); o >= 0; o = col.live.next(o + 1) {
			s.most[c] = max(s.most[c], t.net[c][o])
		}
		s.room += s.most[c]
	}
	return &s
}

// count is how many options are live.
func (p *Problem) count() int {
	n := 0
	for _, c := range p.cols {
		n += c.live.count()
	}
	return n
}

// useful lists the options that some choice costing no more than the limit may use, as far as the bound can tell.
func (b *bound) useful(limit int64) []set {
	m := b.marginals()
	live := make([]set, len(m))
	for c, col := range b.p.cols {
		live[c] = make(set, len(col.live))
		for o := col.live.next(0); o >= 0; o = col.live.next(o + 1) {
			if m[c][o] <= limit {
				live[c].add(o)
			}
		}
	}
	return live
}

// marginals is, by column and option, the bound with that option decided and everything else open: what is told from
// below, and what the rest costs at least, handed down from the first column to the last.
func (b *bound) marginals() [][]int64 {
	n := len(b.order)
	m := make([][]int64, n)
	rest := make([][]int64, n) // by column: least cost of all that is neither it nor hangs on it, by the options of its scope
	root := b.root()
	for c := range m {
		m[c] = make([]int64, len(b.reach[c]))
		for o := range m[c] {
			m[c][o] = never
		}
		rest[c] = make([]int64, len(b.tells[c]))
		for i := range rest[c] {
			rest[c][i] = never
		}
		if len(b.scope[c]) == 0 {
			rest[c][0] = root - b.tells[c][0]
		}
	}
	for _, c := range b.order {
		b.each(c, func(at, i, j, o int, cost int64) {
			all := rest[c][at] + cost
			if rest[c][at] >= never || all >= never {
				return
			}
			m[c][o] = min(m[c][o], all)
			for _, k := range b.into[c] {
				b.hand(c, k, i, j, o, all, rest)
			}
		})
	}
	return m
}

// each calls see for every option of a column with every choice in its scope that it can stand with: at is the choice's
// place in what is told, i and j its options, cost the least cost of the column and all that hangs on it.
func (b *bound) each(c int, see func(at, i, j, o int, cost int64)) {
	s := b.scope[c]
	if len(s) == 0 {
		for _, o := range b.ranked[c] {
			see(0, -1, -1, int(o), b.reach[c][o])
		}
		return
	}
	y := b.p.cols[s[len(s)-1]]
	n := len(y.options)
	for at := range b.tells[c] {
		if b.tells[c][at] >= never {
			continue
		}
		i, j := at/n, at%n
		for _, o := range b.ranked[c] {
			if cost := b.with(c, int(o), s, b.sure[c], i, j, never); cost < never {
				see(at, i, j, int(o), cost)
			}
		}
	}
}

// hand tells column k, which hangs on c last, what all but it costs with options i and j in the scope of c and o in c.
func (b *bound) hand(c, k, i, j, o int, all int64, rest [][]int64) {
	lower := func(at int, told int64) {
		if told < never {
			rest[k][at] = min(rest[k][at], all-told)
		}
	}
	if len(b.scope[k]) == 1 {
		lower(o, b.tells[k][o])
		return
	}
	n := len(b.p.cols[c].options)
	s := b.scope[c]
	switch q := b.scope[k][0]; {
	case len(s) > 0 && q == s[len(s)-1]:
		lower(j*n+o, b.tells[k][j*n+o])
	case len(s) == 2 && q == s[0]:
		lower(i*n+o, b.tells[k][i*n+o])
	default:
		told := b.low[k][o]
		live := b.p.cols[q].live
		for x := live.next(0); x >= 0; x = live.next(x + 1) {
			lower(x*n+o, told)
		}
	}
}
