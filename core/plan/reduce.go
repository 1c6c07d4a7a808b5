package plan

import "slices"

// within is the problem with fewer options live, what it has learned of the rules kept. It returns nil where a column is
// left without options.
func (p *Problem) within(live []set) *Problem {
	p.watch.look()
	q := *p
	q.of = p
	q.priced = nil
	q.cut = nil
	q.appraised = false
	q.cols = make([]*column, len(p.cols))
	for c, col := range p.cols {
		copied := *col
		copied.live = live[c]
		copied.shared = true
		q.cols[c] = &copied
	}
	if q.emptied() {
		return nil
	}
	var list []*factor
	for _, f := range slices.Concat(slices.Concat(p.alone...), p.many) {
		again := *f
		list = append(list, &again)
	}
	if q.arrange(list); q.emptied() {
		return nil
	}
	q.fit = make([]set, len(p.cols))
	q.sums = make([]*total, len(p.sums))
	for i, t := range p.sums {
		q.sums[i] = t.within(&q)
	}
	return &q
}

// posed is the problem that this one is a part of, or itself.
func (p *Problem) posed() *Problem {
	for p.of != nil {
		p = p.of
	}
	return p
}

// within is the sum over the options live in a problem.
func (t *total) within(p *Problem) *total {
	s := *t
	s.survey(p, t)
	return &s
}

// alive is the live options of every column, to be changed.
func (p *Problem) alive() []set {
	live := make([]set, len(p.cols))
	for c, col := range p.cols {
		live[c] = slices.Clone(col.live)
	}
	return live
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
	m := b.marginals(limit)
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
// below, and what the rest costs at least, handed down from the first column to the last. Past the limit it is never. Where the
// context has ended it is no more than that.
func (b *bound) marginals(limit int64) [][]int64 {
	n := len(b.order)
	m := make([][]int64, n)
	root := b.root()
	watch := b.p.watch
	for _, c := range b.order {
		m[c] = slices.Repeat([]int64{never}, len(b.reach[c]))
		q := b.scope[c]
		if q < 0 {
			for o, reach := range b.reach[c] {
				m[c][o] = min(never, root-b.tells[c][0]+reach)
			}
			continue
		}
		rest := make([]int64, len(m[q])) // by option of the scope: what all else costs at least
		for j, all := range m[q] {
			if rest[j] = never; all <= limit {
				rest[j] = all - b.tells[c][j]
			}
		}
		match := b.p.match(c, q)
		near, far := match.grade[0], match.grade[1].heads(rest)
		b.p.index.order(far, rest)
		more := make([]int64, near.count) // by grade: what all else costs at least beside it
		for _, o := range near.heads(b.reach[c]) {
			reach := b.reach[c][o]
			least := int64(never)
			steps := 0
			for i, j := range far {
				if rest[j]+reach >= min(least, limit+1) {
					break
				}
				if watch.ended {
					least = rest[j] + reach // what follows costs no less
					break
				}
				least = min(least, rest[j]+b.with(match, int(o), int(j), never))
				steps = i
			}
			watch.poll(steps + 1)
			more[near.of[o]] = least - reach
		}
		for o, reach := range b.reach[c] {
			if reach < never {
				m[c][o] = min(never, reach+more[near.of[o]])
			}
		}
	}
	return m
}
