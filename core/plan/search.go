package plan

import "context"

// search is one walk through the options, depth first, cheapest first. It meets every choice of options that no rule
// and no bound excludes, and calls found for each.
type search struct {
	*bound
	p     *Problem
	done  <-chan struct{}
	limit int64 // choices that cost more than this are of no use; found lowers it
	found func(s *search)

	pick   []int // by column: the option decided
	levels []level
	ready  [][][]*factor // by column and depth: factors that become ready for a column when that many are decided
	ripe   [][][]*factor // the same, all up to that depth
	charge [][]*factor   // by column: factors whose worth is settled when it is decided, being their last in order

	nodes    int64
	stopped  bool
	perPoint int64 // what a value point takes off the cost
	open     int64 // least bound among what a stop left unexplored
	stop     bool  // set by found to end the walk
	asked    []int
}

// level is the state with so many columns decided: the options still open to the others and the first of each that
// passes.
type level struct {
	domain [][]uint64 // by column
	lead   []int32    // by column: place in ranked
	room   []int64    // by sum: what all columns can give at best
}

// pollEvery is how many nodes pass between two looks at the context.
const pollEvery = 256

func (p *Problem) newSearch(ctx context.Context, b *bound, limit int64) *search {
	n := len(p.cols)
	s := &search{bound: b, p: p, done: ctx.Done(), limit: limit, pick: make([]int, n), levels: make([]level, n+1), open: never}
	for d := range s.levels {
		l := &s.levels[d]
		l.lead = make([]int32, n)
		l.room = make([]int64, len(p.sums))
		for _, c := range p.cols {
			l.domain = append(l.domain, make([]uint64, words(len(c.options))))
		}
	}
	for c, col := range p.cols {
		copy(s.levels[0].domain[c], col.live)
	}
	for i, t := range p.sums {
		s.levels[0].room[i] = t.room()
	}
	s.schedule()
	return s
}

// schedule works out when each factor can be checked: for a column, as soon as all its other columns are decided.
func (s *search) schedule() {
	n := len(s.order)
	s.ready = make([][][]*factor, n)
	s.ripe = make([][][]*factor, n)
	s.charge = make([][]*factor, n)
	for c := range n {
		s.ready[c] = make([][]*factor, n+1)
		s.ripe[c] = make([][]*factor, n+1)
	}
	for _, f := range s.p.many {
		last, before := -1, -1
		for _, c := range f.cols {
			switch at := s.place[c]; {
			case at > last:
				last, before = at, last
			case at > before:
				before = at
			}
		}
		c := s.order[last]
		if len(f.cols) > 2 {
			s.ready[c][before+1] = append(s.ready[c][before+1], f)
		}
		s.charge[c] = append(s.charge[c], f)
	}
	for c := range n {
		for d := range n + 1 {
			if d > 0 {
				s.ripe[c][d] = append(s.ripe[c][d], s.ripe[c][d-1]...)
			}
			s.ripe[c][d] = append(s.ripe[c][d], s.ready[c][d]...)
		}
	}
}

// run walks from the start. Afterwards open is the least bound of what was left unexplored, never where all was seen.
func (s *search) run() {
	bound, ok := s.settle(0, -1)
	if ok {
		s.descend(0, 0, bound)
	}
}

// descend decides the column at depth d. paid is the cost of what is decided, ahead the bound on the rest.
func (s *search) descend(d int, paid, ahead int64) {
	if d == len(s.order) {
		s.found(s)
		return
	}
	s.nodes++
	if s.nodes%pollEvery == 0 {
		select {
		case <-s.done:
			s.stopped = true
		default:
		}
	}
	c := s.order[d]
	l := &s.levels[d]
	rank := s.ranked[c]
	rest := ahead - s.reach[c][rank[l.lead[c]]]
	for k := int(l.lead[c]); k < len(rank); k++ {
		o := int(rank[k])
		if !set(l.domain[c]).has(o) {
			continue
		}
		reach := paid + rest + s.reach[c][o]
		if reach > s.limit {
			return
		}
		if s.stopped || s.stop {
			s.open = min(s.open, reach)
			return
		}
		if k > int(l.lead[c]) && !s.passes(c, o, d, s.ripe[c][d]) {
			continue
		}
		s.pick[c] = o
		cost := paid + s.cost[c][o]
		for _, f := range s.charge[c] {
			cost += s.due(f)
		}
		s.narrow(d, c, o)
		if ahead, ok := s.settle(d+1, c); ok && cost+ahead <= s.limit {
			s.descend(d+1, cost, ahead)
		}
	}
}

// due is what a factor's worth, now known, costs over what the bound took it to be.
func (s *search) due(f *factor) int64 {
	if f.most == nil || s.perPoint == 0 {
		return 0
	}
	return s.perPoint * (f.most[s.pick[f.home]] - f.ask(s.p, s.choice(f)))
}

// choice lists what is decided of a factor's columns.
func (s *search) choice(f *factor) []int {
	s.asked = s.asked[:0]
	for _, c := range f.cols {
		s.asked = append(s.asked, s.pick[c])
	}
	return s.asked
}

// narrow carries the state over to the next depth, with option o of column c decided.
func (s *search) narrow(d, c, o int) {
	from, to := &s.levels[d], &s.levels[d+1]
	copy(to.lead, from.lead)
	for i, t := range s.p.sums {
		to.room[i] = from.room[i]
		if t.net[c] != nil {
			to.room[i] += t.net[c][o] - t.most[c]
		}
	}
	for _, q := range s.order[d+1:] {
		copy(to.domain[q], from.domain[q])
		if t := s.p.tables.get(c, q); t != nil {
			set(to.domain[q]).keep(t.row(o))
		}
	}
}

// settle finds the first option that passes in every column undecided at depth d, column c having been decided last,
// and returns the bound on what is undecided; false where a column has no option left.
func (s *search) settle(d, c int) (ahead int64, ok bool) {
	l := &s.levels[d]
	for _, q := range s.order[d:] {
		rank := s.ranked[q]
		k := int(l.lead[q])
		tests := s.ready[q][d]
		for ; k < len(rank); k++ {
			o := int(rank[k])
			if set(l.domain[q]).has(o) {
				if s.passes(q, o, d, tests) {
					break
				}
				set(l.domain[q]).drop(o)
			}
			tests = s.ripe[q][d]
		}
		if k == len(rank) {
			return 0, false
		}
		l.lead[q] = int32(k)
		if p := s.parent[q]; p < 0 || s.place[p] < d {
			ahead += s.reach[q][rank[k]]
		}
	}
	return ahead, true
}

// passes reports an option of an undecided column that stands with what is decided, as far as the factors given and the
// sums can tell.
func (s *search) passes(q, o, d int, tests []*factor) bool {
	for i, t := range s.p.sums {
		if t.net[q] != nil && s.levels[d].room[i]+t.net[q][o]-t.most[q] < 0 {
			return false
		}
	}
	for _, f := range tests {
		s.asked = s.asked[:0]
		for _, c := range f.cols {
			if c == q {
				s.asked = append(s.asked, o)
			} else {
				s.asked = append(s.asked, s.pick[c])
			}
		}
		if f.ask(s.p, s.asked) == failed {
			return false
		}
	}
	return true
}
