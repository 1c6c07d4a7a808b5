package plan

import "slices"

// search is one walk through the options, depth first, cheapest first. It meets every choice of options that no rule and
// no bound excludes, and calls found for each.
type search struct {
	*bound          // the bound that orders the options
	guards  []guard // other bounds that exclude too
	limit   int64   // choices that cost more than this are of no use; found lowers it
	found   func(s *search)
	corners []corner                 // what is looked for, where that is more than what costs no more than the limit
	left    func(d int, least int64) // told what an end leaves unexplored; nil where the least of it is all that matters

	watch  *watch
	pick   []int        // by column: the option decided
	beside [][]*company // by column decided and other column: what is known of that one's options beside the option decided
	placed [][]int32    // by column and option: its place in the order of them; nil until it is asked for
	levels []level
	quick  schedule
	slow   schedule // of factors that read many seats, or predict heat or noise, asked last
	slowly int      // how often those slow to ask have failed

	din      *listening // how loud cores are; nil where no rule tells
	heat     *bearing   // how much heat cores bear; nil where no rule tells
	hot      *factor    // the rule that fails past that
	warmFrom int        // how many columns are decided when a core is

	effort int64       // nodes, and what was slow to ask
	stop   bool        // set by found to end the walk, or past the cap
	blame  blame       // what has excluded options since it was last blank
	summed [][]int     // by column: the sums it is in
	plain  []bool      // by column: whether its options differ in no more than price
	later  [][]*factor // by column: factors that read it and are worth something settled by a later one
	tried  int64       // options looked at, and questions to rules
	weary  int64       // toil after which the walk is given up for now; nought for none
	cap    int64       // effort after which the walk is given up for now; nought for none
	open   int64       // least bound among what an end left unexplored
	depth  int         // how many columns were decided when one was last to be decided
	asked  []int
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
	cut    []uint32   // by column: those whose options have taken some of its options away
	unsure []uint32   // by column: those decided beside whose options some of its options were not looked at
	lead   []int32    // by column: place in ranked
	room   []int64    // by sum: what all columns can give at best
	heat   []int64    // what memory, drives and cards bring at least, mW by activity asked
	bears  []int64    // what the core bears of that; nil where that is not known
	vain   set        // options of its column that are vain, of one whose options differ in no more than price
	sifted []uint64   // room for the sets of those explored
	spent  []spent    // options explored, with what excluded all that holds them
	least  int64      // the bound on everything when its column was to be decided
	next   int64      // the bound on what is to be tried after the option that is explored
}

// costs is what an option costs by each bound of a search, its own first.
type costs [1 + mostGuards]int64

// mostGuards is how many bounds a search may have beside its own.
const mostGuards = 10

// slowEffort is how many nodes a prediction counts for where a search is given so much effort and no more.
const slowEffort = 4

// slowTried is how many options looked at a prediction takes as long as, by measurement, beside that.
const slowTried = 100

func newSearch(b *bound, limit int64, guards ...*bound) *search {
	p := b.p
	n := len(p.cols)
	s := &search{bound: b, watch: p.watch, limit: limit, pick: make([]int, n), levels: make([]level, n+1), placed: make([][]int32, n), open: never}
	for d := range s.levels {
		l := &s.levels[d]
		l.lead = make([]int32, n)
		l.cut, l.unsure = make([]uint32, n), make([]uint32, n)
		l.room = make([]int64, len(p.sums))
		for _, c := range p.cols {
			l.domain = append(l.domain, make([]uint64, words(len(c.options))))
		}
		if d < n {
			l.vain = make(set, len(l.domain[b.order[d]]))
		}
	}
	s.beside = make([][]*company, n)
	for c, col := range p.cols {
		s.beside[c] = make([]*company, n)
		copy(s.levels[0].domain[c], col.live)
		s.pick[c] = max(0, col.live.next(0)) // for factors that cannot tell the live ones apart
	}
	s.levels[0].least = b.root()
	s.summed = make([][]int, n)
	for i, t := range p.sums {
		s.levels[0].room[i] = t.room
		for c := range p.cols {
			if t.binds(c) {
				s.summed[c] = append(s.summed[c], i)
			}
		}
	}
	for _, g := range guards {
		value := make([]int64, n+1)
		value[0] = g.root()
		s.guards = append(s.guards, guard{bound: g, limit: never, value: value})
	}
	s.quick, s.slow = s.schedule(false), s.schedule(true)
	s.watchHeat()
	s.listen()
	s.later = make([][]*factor, n)
	for _, f := range p.many {
		for _, c := range f.open {
			if f.most != nil && !slices.Contains(s.worth[c], f) {
				s.later[c] = append(s.later[c], f)
			}
		}
	}
	s.plain = s.plainColumns()
	return s
}

// run walks from the start. Afterwards open is the least bound of what was left unexplored, never where all was seen.
func (s *search) run() {
	if !s.within(0, s.root()) {
		return
	}
	if ahead, ok := s.settle(0, s.root()); ok {
		s.descend(0, 0, ahead)
	}
}

// descend decides the column at depth d. paid is the cost of what is decided, ahead the bound on the rest.
func (s *search) descend(d int, paid, ahead int64) {
	if d == len(s.order) {
		if s.watch.ended {
			s.leave(d, paid) // not all of its rules were asked
			return
		}
		s.found(s)
		return
	}
	s.watch.course.Nodes++
	s.effort++
	s.depth = d
	s.levels[d].least = paid + ahead
	s.stop = s.stop || s.cap > 0 && s.effort > s.cap
	s.watch.poll(asking)
	c := s.order[d]
	l := &s.levels[d]
	rank, lead := s.rank(c), int(l.lead[c])
	rest := paid + ahead - max(s.told(c, s.pick), s.reach[c][rank[lead]])
	l.spent = l.spent[:0]
	clear(l.vain)
	for k := lead; k < len(rank); k++ {
		o := int(rank[k])
		if open := set(l.domain[c]); !open.has(o) {
			k = s.onward(c, k+1, open) - 1
			s.blame.cut(c, l.cut[c], k+1)
			continue
		}
		if s.plain[c] && l.vain.has(o) {
			continue
		}
		if k > lead && !s.joins(c, o, d) {
			s.blame.cut(c, l.cut[c], k+1)
			continue
		}
		if !s.within(d, rest+s.reach[c][o]) {
			return
		}
		if s.stop = s.stop || s.weary > 0 && s.toil() > s.weary; s.watch.ended || s.stop {
			s.leave(d, rest+s.reach[c][o])
			return
		}
		s.tried++
		own, least, ok := s.take(d, c, o, rest)
		if !ok || !s.within(d+1, least) || s.vain(l, c, o, own) || k > lead && !(s.passes(c, o, d, s.quick.ripe[c][d]) && s.upheld(c, o, d, false) && s.passes(c, o, d, s.slow.ripe[c][d])) {
			continue
		}
		outer := s.blame
		s.blame = blame{}
		s.pick[c] = o
		s.narrow(d, c, o)
		if ahead, ok := s.settle(d+1, least); ok && s.within(d+1, paid+own[0]+ahead) {
			if l.next = never; k+1 < len(rank) {
				l.next = rest + s.reach[c][rank[k+1]]
			}
			s.descend(d+1, paid+own[0], ahead)
		}
		alike := s.plain[c] && !s.stop && !s.watch.ended && !s.blames(&s.blame, c)
		s.spend(l, c, o, own)
		s.blame.join(&outer)
		if alike {
			return // all that follow cost no less, and would fail alike
		}
	}
}

// within reports that what costs so much at least at depth d is of use.
func (s *search) within(d int, least int64) bool {
	if s.corners != nil {
		return s.nearest(d, least)
	}
	return least <= s.limit
}

// leave notes what an end leaves unexplored.
func (s *search) leave(d int, least int64) {
	s.open = min(s.open, least)
	if s.left != nil {
		s.left(d, least)
	}
}

// ahead is the bound on all that the walk has still before it.
func (s *search) ahead() int64 {
	least := s.levels[s.depth].least
	for d := range s.depth {
		least = min(least, s.levels[d].next)
	}
	return least
}

// take decides an option: what it costs by itself by each bound, the bound on everything, and whether no bound excludes it.
func (s *search) take(d, c, o int, rest int64) (own costs, least int64, ok bool) {
	s.pick[c] = o
	worth := int64(0)
	for _, f := range s.worth[c] {
		worth += f.ask(s.p, s.choice(f))
	}
	cost, waiting := s.step(c, s.pick)
	own[0] = cost - s.perPoint*worth
	least = rest + own[0] + waiting
	if least > s.limit {
		return own, 0, false
	}
	for i := range s.guards {
		g := &s.guards[i]
		cost, waits := g.step(c, s.pick)
		own[i+1] = cost - g.perPoint*worth
		g.value[d+1] = g.value[d] - g.told(c, s.pick) + own[i+1] + waits
		if g.value[d+1] > g.limit {
			return own, 0, false
		}
	}
	return own, least, true
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
	if s.heat != nil {
		s.warm(d, c, o)
	}
	for i, t := range s.p.sums {
		to.room[i] = from.room[i] + t.lack(c, o)
	}
	for _, q := range s.order[d+1:] {
		to.cut[q], to.unsure[q] = from.cut[q], from.unsure[q]
		with := s.p.match(c, q).company(s.p, o)
		s.beside[c][q] = with
		if with == nil {
			copy(to.domain[q], from.domain[q])
			continue
		}
		var gone, fresh uint64
		for i, w := range from.domain[q] {
			looked, stand := with.looked[i], with.stand[i]
			to.domain[q][i] = w &^ (looked &^ stand)
			gone |= w & (looked &^ stand)
			fresh |= w &^ looked
		}
		if gone != 0 {
			to.cut[q] |= 1 << c
		}
		if fresh != 0 {
			to.unsure[q] |= 1 << c
		}
	}
}

// toil is how much work a search has had: options looked at and questions to rules, a node counting for as many as it costs.
func (s *search) toil() int64 { return nodeToil*s.effort + s.tried }

// nodeToil is how many options looked at a node takes as long as, by measurement.
const nodeToil = 24
