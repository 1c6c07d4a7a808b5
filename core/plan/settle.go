package plan

import (
	"math/bits"
	"slices"

	"slipfit/core/build"
)

// settle finds the first option that passes in every column undecided at depth d, and returns the bound on what is
// undecided; false where a column has no option left. least is the bound on everything before. What is slow to ask is asked
// only where everything else leaves the choice standing.
func (s *search) settle(d int, least int64) (ahead int64, ok bool) {
	l := &s.levels[d]
	var told [build.Seats]int64
	var moved [build.Seats]bool
	// lead takes a column's first option from place k on that passes; tests are those not yet asked of the first one
	lead := func(q, k int, tests []due, slow bool) bool {
		rank := s.rank(q)
		known := s.decided(s.frame, q, d)
		least -= told[q]
		start, passed := k, k // passed is how many options, in order, have all among them that others took away and that are of use
		defer func() {
			if passed > start {
				s.blame.cut(q, l.cut[q], passed)
			}
		}()
		for ; k < len(rank); k++ {
			o := int(rank[k])
			if known && least+max(told[q], s.reach[q][o]) > s.limit {
				for passed > start && least+max(told[q], s.reach[q][rank[passed-1]]) > s.limit {
					passed--
				}
				return false
			}
			if !set(l.domain[q]).has(o) {
				k = s.onward(q, k+1, l.domain[q]) - 1
				passed = k + 1
			} else if !(slow && k == start) && !s.joins(q, o, d) {
				passed = k + 1
			} else if !s.guarded(q, o, d) && (slow && k == start || s.passes(q, o, d, tests) && s.upheld(q, o, d, k == start)) {
				if !slow || s.passes(q, o, d, s.slow.of(q, d, moved[q])) {
					break
				}
			}
			moved[q], tests = true, s.quick.ripe[q][d]
		}
		if k == len(rank) {
			return false
		}
		l.lead[q] = int32(k)
		if known {
			told[q] = max(told[q], s.reach[q][rank[k]])
		}
		least += told[q]
		return true
	}
	for _, q := range s.order[d:] {
		if s.decided(s.frame, q, d) {
			told[q] = s.told(q, s.pick)
			rank := s.rank(q)
			if before := s.reach[q][rank[l.lead[q]]]; !s.fresh(q, d) {
				told[q] = max(told[q], before)
			}
		}
		if !lead(q, int(l.lead[q]), s.quick.ready[q][d], false) {
			return 0, false
		}
	}
	if !s.within(d, least) || s.din != nil && !s.quietEnough(openings{d, least, &told}) {
		return 0, false
	}
	for _, q := range s.order[d:] {
		if (moved[q] || len(s.slow.ready[q][d]) > 0) && !lead(q, int(l.lead[q]), nil, true) {
			return 0, false
		}
		ahead += told[q]
	}
	return min(never, ahead), true
}

// strides is how many options in order are looked at one by one for one that is open.
const strides = 16

// onward is the first place from one on, in the order of a column's options, that holds one of those open; the end where none does.
func (s *search) onward(q, k int, open set) int {
	rank := s.rank(q)
	near := min(k+strides, len(rank))
	for ; k < near; k++ {
		if open.has(int(rank[k])) {
			return k
		}
	}
	if open.count() > (len(rank)-k)/4 {
		for k < len(rank) && !open.has(int(rank[k])) {
			k++
		}
		return k
	}
	first, placed := len(rank), s.places(q)
	for o := open.next(0); o >= 0; o = open.next(o + 1) {
		if at := int(placed[o]); at >= k && at < first && int(rank[at]) == o {
			first = at
		}
	}
	return first
}

// places is where options of a column stand in their order; of one that has no place there it is any.
func (s *search) places(q int) []int32 {
	if s.placed[q] == nil {
		s.placed[q] = make([]int32, len(s.reach[q]))
		for at, o := range s.rank(q) {
			s.placed[q][o] = int32(at)
		}
	}
	return s.placed[q]
}

// decided reports a column whose scope in a frame is decided at depth d.
func (s *search) decided(f *frame, q, d int) bool {
	w := f.scope[q]
	return w < 0 || f.place[w] < d
}

// fresh reports a column whose scope has just been decided, so that what it tells is all that the bound on everything knows.
func (s *search) fresh(q, d int) bool {
	w := s.scope[q]
	return d == 0 || w >= 0 && s.place[w] == d-1
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

// joins reports an option of an undecided column that stands with what is decided by the quick rules that hang on two columns. One that
// does not is no longer open from where the other column is decided.
func (s *search) joins(q, o, d int) bool {
	for w := s.levels[d].unsure[q]; w != 0; w &= w - 1 {
		c := bits.TrailingZeros32(w)
		if m := s.p.match(c, q); !m.joins(s.p, s.beside[c][q], s.pick[c], o) {
			s.drop(q, o, m.kind[1], s.place[c]+1, d)
			for at := s.place[c] + 1; at <= d; at++ {
				s.levels[at].cut[q] |= 1 << c
			}
			return false
		}
	}
	return true
}

// upheld reports an option of an undecided column that leaves every other column some option by the quick rules that hang on the two, of
// those columns that have lost some. One that was upheld before the last column was decided can only fail by what that has taken away.
func (s *search) upheld(q, o, d int, before bool) bool {
	l := &s.levels[d]
	for _, c := range s.order[d:] {
		if c == q || l.cut[c] == 0 || before && s.beside[s.order[d-1]][c] == nil {
			continue
		}
		m := s.p.match(q, c)
		with := m.company(s.p, o)
		if with == nil || m.meets(s.p, with, o, l.domain[c]) {
			continue
		}
		from := d
		for from > 0 && !m.meets(s.p, with, o, s.levels[from-1].domain[c]) {
			from--
		}
		s.drop(q, o, m.kind[0], from, d)
		s.blame.cut(c, s.levels[from].cut[c], len(s.rank(c)))
		s.bereave(q, c, from, d)
		return false
	}
	return true
}

// few is how many options of a column are gone through to find out what they leave of another.
const few = 32

// bereave takes what no option of column c at some depth stands with by the quick rules that hang on the two out of what is open of column
// q from that depth to another, where few of column c are left.
func (s *search) bereave(q, c, from, to int) {
	left := set(s.levels[from].domain[c])
	if left.count() > few {
		return
	}
	m, open := s.p.match(c, q), set(s.levels[from].domain[q])
	alone := slices.Clone(open)
	for o := left.next(0); o >= 0; o = left.next(o + 1) {
		with := m.company(s.p, o)
		for i, w := range alone {
			for fresh := w &^ with.looked[i]; fresh != 0; fresh &= fresh - 1 {
				m.joins(s.p, with, o, i<<6+bits.TrailingZeros64(fresh))
			}
			alone[i] &^= with.stand[i]
		}
	}
	for d := from; d <= to; d++ {
		set(s.levels[d].domain[q]).less(alone)
	}
}

// passes reports an option of an undecided column that stands with what is decided, as far as the factors given and the
// sums can tell. What excludes it excludes all that are alike; and a factor that does is asked before others the next time.
func (s *search) passes(q, o, d int, tests []due) bool {
	room := s.levels[d].room
	for _, i := range s.summed[q] {
		if t := s.p.sums[i]; room[i]+t.net[q][o]-t.most[q] < 0 {
			s.blame.sums |= 1 << i
			t.failures[s.order[0]]++
			set(s.levels[d].domain[q]).less(t.seen[q].under(o))
			return false
		}
	}
	if l := &s.levels[d]; l.bears != nil && s.unbearable(l, q, o) {
		s.blame.factor(s.hot.id)
		set(l.domain[q]).drop(o)
		return false
	}
	before := s.pick[q]
	s.pick[q] = o
	ok := true
	for i := range tests {
		f := tests[i]
		if !s.holds(&f, q, o) {
			s.blame.factor(f.id)
			s.dropAll(q, o, f.excluded(s.p, q, o), f.from, d) // whatever is decided after that
			if f.twins != nil && q == s.p.colOf[build.Supply] && !s.watch.ended {
				if alike := s.failAlike(&f, o); alike != nil {
					for at := f.from; at <= d; at++ {
						set(s.levels[at].domain[q]).less(alike)
					}
				}
			}
			if s.hot != nil && f.rule == s.hot.rule && f.early != nil && d >= s.warmFrom && !s.watch.ended {
				s.learn(d)
			}
			f.failures[s.order[0]]++
			if f.sight.place != nil {
				f.sight.place.failed++
			}
			first := i
			for first > 0 && s.asksBefore(f.factor, tests[first-1].factor) {
				first--
			}
			copy(tests[first+1:i+1], tests[first:i])
			tests[first] = f
			if f.cost > 0 {
				if s.slowly++; s.slowly%anewAfter == 0 {
					s.slow = s.schedule(true)
				}
			}
			ok = false
			break
		}
	}
	s.pick[q] = before
	return ok
}

// asksBefore reports that a factor is asked before another once it fails: before one as slow that hangs on as many columns; or one that
// hardly ever fails, where that is slow to ask.
func (s *search) asksBefore(f, g *factor) bool {
	head := s.order[0]
	return g.cost == f.cost && len(g.open) == len(f.open) || f.cost > 0 && f.failures[head] > 4*(g.failures[head]+1)
}

// anewAfter is how often factors slow to ask fail before they are asked in their first order again: what was put behind others may by
// now fail before they are asked.
const anewAfter = 256

// drop takes an option of an undecided column, and all of its class, out of what is open at some depths.
func (s *search) drop(q, o int, of *classes, from, to int) {
	s.dropAll(q, o, of.members(o), from, to)
}

// dropAll takes some options of an undecided column out of what is open at some depths; where they are not known, one.
func (s *search) dropAll(q, o int, alike set, from, to int) {
	for d := from; d <= to; d++ {
		if domain := set(s.levels[d].domain[q]); alike != nil {
			domain.less(alike)
		} else {
			domain.drop(o)
		}
	}
}

// holds asks a factor of an option and what is decided. A walk that ends lets it stand, for nothing counts any more; so does one of which
// nothing is to be gained.
func (s *search) holds(f *due, q, o int) bool {
	if s.watch.ended || f.anywhere != nil && !f.anywhere.worth() {
		return true
	}
	s.watch.poll(asking)
	s.tried++
	before, worth := s.p.index.checks, int64(0)
	if f.with >= 0 {
		worth = f.two(s.p, q, o, f.with, s.pick[f.with])
	} else {
		worth = f.ask(s.p, s.choice(f.factor))
	}
	if f.cost > 0 {
		s.weigh(before)
	}
	return worth != failed
}

// weigh counts a prediction, where one was made since so many rules had been asked: what is remembered costs no more than an option looked
// at.
func (s *search) weigh(before int64) {
	if s.p.index.checks > before {
		s.effort += slowEffort
		s.tried += slowTried
	}
}
