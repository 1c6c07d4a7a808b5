package plan

import (
	"context"
	"slices"
)

// search is one walk through the options, depth first, cheapest first. It meets every choice of options that no rule and
// no bound excludes, and calls found for each.
type search struct {
	*bound         // the bound that orders the options
	guards []guard // other bounds that exclude too
	limit  int64   // choices that cost more than this are of no use; found lowers it
	found  func(s *search)
	tidy   bool // whether to try options in tie order, not cheapest first

	ctx    context.Context
	pick   []int // by column: the option decided
	levels []level
	ready  [][][]due // by column and depth: factors that become ready for a column when that many are decided
	ripe   [][][]due // the same, all up to that depth, with the depth

	nodes   int64
	work    int   // since the last look at the context
	stopped bool  // ended by the context
	stop    bool  // set by found to end the walk, or past the cap
	cap     int64 // nodes after which the walk is given up for now; nought for none
	open    int64 // least bound among what an end left unexplored
	asked   []int
}

// due is a factor and how many columns are decided when it becomes ready.
type due struct {
	*factor
	from int
}

// guard is a bound beside the one that orders the options.
type guard struct {
	*bound
	limit int64
	value []int64 // by depth: cost of what is decided and the bound on the rest
}

// level is the state with so many columns decided: the options still open to the others and the first of each that
// passes.
type level struct {
	domain [][]uint64 // by column
	lead   []int32    // by column: place in ranked
	room   []int64    // by sum: what all columns can give at best
	tried  []int32    // options in tie order
}

// pollEvery is how much work passes between two looks at the context: a node counts for one, a prediction for slowAsk.
const (
	pollEvery = 256
	slowAsk   = 32
)

func newSearch(ctx context.Context, b *bound, limit int64, guards ...*bound) *search {
	p := b.p
	n := len(p.cols)
	s := &search{bound: b, ctx: ctx, limit: limit, pick: make([]int, n), levels: make([]level, n+1), open: never}
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
		s.levels[0].room[i] = t.room
	}
	for _, g := range guards {
		value := make([]int64, n+1)
		value[0] = g.root()
		s.guards = append(s.guards, guard{bound: g, limit: never, value: value})
	}
	s.schedule()
	return s
}

// schedule works out when each factor can be checked: for its last column, as soon as all its others are decided.
func (s *search) schedule() {
	n := len(s.order)
	s.ready = make([][][]due, n)
	s.ripe = make([][][]due, n)
	for c := range n {
		s.ready[c] = make([][]due, n+1)
		s.ripe[c] = make([][]due, n+1)
		for _, f := range s.last[c] {
			before := -1
			for _, q := range f.cols {
				if q != c {
					before = max(before, s.place[q])
				}
			}
			if len(f.cols) > 2 {
				s.ready[c][before+1] = append(s.ready[c][before+1], due{f, before + 1})
			}
		}
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
	if ahead, ok := s.settle(0, s.root()); ok {
		s.descend(0, 0, ahead)
	}
}

// descend decides the column at depth d. paid is the cost of what is decided, ahead the bound on the rest.
func (s *search) descend(d int, paid, ahead int64) {
	if d == len(s.order) {
		if s.stopped {
			s.open = min(s.open, paid) // not all of its rules were asked
			return
		}
		s.found(s)
		return
	}
	s.nodes++
	s.stop = s.stop || s.cap > 0 && s.nodes > s.cap
	s.poll(1)
	c := s.order[d]
	l := &s.levels[d]
	lead := l.lead[c]
	rank := s.ranked[c][lead:]
	rest := paid + ahead - max(s.told(c, s.pick), s.reach[c][rank[0]])
	if s.tidy {
		rank = s.tieOrder(l, rank, c, rest)
	}
	for k, x := range rank {
		o := int(x)
		if !set(l.domain[c]).has(o) {
			continue
		}
		if rest+s.reach[c][o] > s.limit {
			if s.tidy {
				continue
			}
			return
		}
		if s.stopped || s.stop {
			s.open = min(s.open, rest+s.reach[c][o])
			return
		}
		cost, least, ok := s.take(d, c, o, paid, rest)
		if !ok || (k > 0 || s.tidy) && !s.passes(c, o, d, s.ripe[c][d]) {
			continue
		}
		s.pick[c] = o
		s.narrow(d, c, o)
		if ahead, ok := s.settle(d+1, least); ok && cost+ahead <= s.limit {
			s.descend(d+1, cost, ahead)
		}
	}
}

// poll looks at the context now and then.
func (s *search) poll(work int) {
	s.work += work
	if s.work < pollEvery {
		return
	}
	s.work = 0
	select {
	case <-s.ctx.Done():
		s.stopped = true
	default:
	}
}

// take decides an option: the cost of what is decided with it, the bound on everything, and whether no bound excludes it.
func (s *search) take(d, c, o int, paid, rest int64) (cost, least int64, ok bool) {
	s.pick[c] = o
	worth := int64(0)
	for _, f := range s.last[c] {
		if f.most != nil {
			worth += f.ask(s.p, s.choice(f))
		}
	}
	cost, waiting := s.step(c, s.pick)
	cost -= s.perPoint * worth
	least = rest + cost + waiting
	if least > s.limit {
		return 0, 0, false
	}
	for i := range s.guards {
		g := &s.guards[i]
		own, waits := g.step(c, s.pick)
		g.value[d+1] = g.value[d] - g.told(c, s.pick) + own + waits - g.perPoint*worth
		if g.value[d+1] > g.limit {
			return 0, 0, false
		}
	}
	return paid + cost, least, true
}

// tieOrder lists the options of a column that the bound leaves, in tie order.
func (s *search) tieOrder(l *level, rank []int32, c int, rest int64) []int32 {
	l.tried = l.tried[:0]
	for _, x := range rank {
		if set(l.domain[c]).has(int(x)) && rest+s.reach[c][x] <= s.limit {
			l.tried = append(l.tried, x)
		}
	}
	slices.Sort(l.tried)
	return l.tried
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
		to.room[i] = from.room[i] + t.lack(c, o)
	}
	for _, q := range s.order[d+1:] {
		copy(to.domain[q], from.domain[q])
		if t := s.p.tables.get(c, q); t != nil {
			set(to.domain[q]).keep(t.row(o))
		}
	}
}

// settle finds the first option that passes in every column undecided at depth d, and returns the bound on what is
// undecided; false where a column has no option left. least is the bound on everything before.
func (s *search) settle(d int, least int64) (ahead int64, ok bool) {
	l := &s.levels[d]
	for _, q := range s.order[d:] {
		rank := s.ranked[q]
		k := int(l.lead[q])
		tests := s.ready[q][d]
		known := s.decided(s.frame, q, d)
		told := int64(0)
		if known {
			told = s.told(q, s.pick)
			if !s.fresh(q, d) {
				told = max(told, s.reach[q][rank[k]])
			}
			least -= told
		}
		for ; k < len(rank); k++ {
			o := int(rank[k])
			if known && least+max(told, s.reach[q][o]) > s.limit {
				return 0, false
			}
			if set(l.domain[q]).has(o) && !s.guarded(q, o, d) {
				if s.passes(q, o, d, tests) {
					break
				}
			}
			tests = s.ripe[q][d]
		}
		if k == len(rank) {
			return 0, false
		}
		l.lead[q] = int32(k)
		if known {
			told = max(told, s.reach[q][rank[k]])
			least += told
			ahead += told
		}
	}
	return min(never, ahead), true
}

// decided reports a column whose scope in a frame is decided at depth d.
func (s *search) decided(f *frame, q, d int) bool {
	w := f.scope[q]
	return len(w) == 0 || f.place[w[len(w)-1]] < d
}

// fresh reports a column whose scope has just been decided, so that what it tells is all that the bound on everything knows.
func (s *search) fresh(q, d int) bool {
	w := s.scope[q]
	return d == 0 || len(w) > 0 && s.place[w[len(w)-1]] == d-1
}

// guarded reports an option of an undecided column that a guard excludes.
func (s *search) guarded(q, o, d int) bool {
	for i := range s.guards {
		g := &s.guards[i]
		if s.decided(g.frame, q, d) && g.value[d]-g.told(q, s.pick)+g.reach[q][o] > g.limit {
			return true
		}
	}
	return false
}

// passes reports an option of an undecided column that stands with what is decided, as far as the factors given and the
// sums can tell.
func (s *search) passes(q, o, d int, tests []due) bool {
	for i, t := range s.p.sums {
		if t.net[q] != nil && s.levels[d].room[i]+t.lack(q, o) < 0 {
			return false
		}
	}
	before := s.pick[q]
	s.pick[q] = o
	defer func() { s.pick[q] = before }()
	for _, f := range tests {
		if s.stopped {
			return true // the walk ends before this counts
		}
		if slow(f.factor) > 0 {
			s.poll(slowAsk)
		}
		if f.ask(s.p, s.choice(f.factor)) == failed {
			for at := f.from; at <= d; at++ { // whatever is decided after that
				set(s.levels[at].domain[q]).drop(o)
			}
			return false
		}
	}
	return true
}
