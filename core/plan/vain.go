package plan

import (
	"math/bits"

	"slipfit/core/build"
)

// spent is an option explored: what it costs by itself, by the bounds of the search, and what excluded choices that hold it.
type spent struct {
	option int
	own    costs
	by     blame
	alike  set // options that whatever excluded those choices excludes too, as far as shows from what of a kind they are; nil where that is not known
}

// mostSpent is how many explored options of a column others are held against.
const mostSpent = 48

// blame is what has excluded options, other than bounds.
type blame struct {
	factors [4]uint64           // by number, the last two standing for how loud a core is and for all past them
	sums    uint64              // by place among the problem's
	cuts    [build.Seats]uint32 // by column: those of whose options its option has left fewer
	upTo    [build.Seats]int32  // by column: how many of its options, in their order, have those that count among them that others took away
}

// blamesDin is the number of how loud a core is, blamesAll that of a factor that may be any.
const (
	blamesDin = 254
	blamesAll = 255
)

func (b *blame) factor(id int) {
	switch {
	case id < 0: // it reads its own column alone
	case id < blamesDin:
		b.mark(id)
	default:
		b.mark(blamesAll)
	}
}

func (b *blame) mark(id int) { b.factors[id>>6] |= 1 << (id & 63) }

// blamed is a factor by its number; for how loud a core is one that reads what is decided of it.
func (s *search) blamed(id int) *factor {
	if id == blamesDin {
		return s.din.core
	}
	return s.p.many[id]
}

// cut blames the columns that have taken away some of the first options of a column.
func (b *blame) cut(q int, by uint32, first int) {
	b.upTo[q] = max(b.upTo[q], int32(first))
	for ; by != 0; by &= by - 1 {
		b.cuts[bits.TrailingZeros32(by)] |= 1 << q
	}
}

func (b *blame) join(c *blame) {
	for i := range b.factors {
		b.factors[i] |= c.factors[i]
	}
	b.sums |= c.sums
	for i := range b.cuts {
		b.cuts[i] |= c.cuts[i]
		b.upTo[i] = max(b.upTo[i], c.upTo[i])
	}
}

// vain reports an option that can do no better than one explored: every choice that holds it is matched by one that held the
// other, which costs less or else comes first in tie order, and which what excluded it would exclude with this option too.
func (s *search) vain(l *level, c, o int, own costs) bool {
	for i := range l.spent {
		if s.matched(&l.spent[i], c, o, &own) {
			return true
		}
	}
	return false
}

// plainColumns tells of every column whether its options differ in no more than price, as far as the bounds of a search can tell. They come
// cheapest first, and what fails beside one, without its doing, fails beside all that follow.
func (s *search) plainColumns() []bool {
	plain := make([]bool, len(s.order))
	for c, col := range s.p.cols {
		plain[c] = len(s.worth[c]) == 0 && len(s.later[c]) == 0 && len(s.into[c]) == 0
		for i := range s.guards {
			plain[c] = plain[c] && len(s.guards[i].into[c]) == 0
		}
		for o := col.live.next(0); o >= 0 && plain[c]; o = col.live.next(o + 1) {
			plain[c] = col.worth[o] == 0
		}
	}
	return plain
}

// blames reports that a column may have had a part in what was excluded.
func (s *search) blames(by *blame, c int) bool {
	if by.factors[3]>>63 != 0 || by.cuts[c] != 0 {
		return true
	}
	for i, w := range by.factors {
		for ; w != 0; w &= w - 1 {
			if s.blamed(i<<6+bits.TrailingZeros64(w)).columns>>c&1 != 0 {
				return true
			}
		}
	}
	for w := by.sums; w != 0; w &= w - 1 {
		if s.p.sums[bits.TrailingZeros64(w)].binds(c) {
			return true
		}
	}
	return false
}

// matched reports that of an option explored.
func (s *search) matched(t *spent, c, o int, own *costs) bool {
	same := true
	for i := range len(s.guards) + 1 {
		if own[i] < t.own[i] {
			return false
		}
		same = same && own[i] == t.own[i]
	}
	if same && o < t.option {
		return false // it comes first in tie order
	}
	if !s.tellsMore(c, o, t.option) {
		return false
	}
	for i := range s.guards {
		if !s.guards[i].tellsMore(c, o, t.option) {
			return false
		}
	}
	for _, f := range s.later[c] {
		if !f.alike(s.p, c, o, t.option) {
			return false
		}
	}
	return t.alike != nil && t.alike.has(o) || s.excludes(&t.by, c, o, t.option)
}

// excludes reports that whatever is to blame excludes with option o of a column all that it excluded with another: a rule
// cannot tell the two apart, a sum is left no more, a column no more options of those that count.
func (s *search) excludes(by *blame, c, o, than int) bool {
	if by.factors[3]>>63 != 0 {
		return false
	}
	for i, w := range by.factors {
		for ; w != 0; w &= w - 1 {
			id := i<<6 + bits.TrailingZeros64(w)
			if f := s.blamed(id); f.columns>>c&1 != 0 && !f.noEasier(s.p, c, o, than) && !(id == blamesDin && s.louder(c, o, than)) {
				return false
			}
		}
	}
	for w := by.sums; w != 0; w &= w - 1 {
		if t := s.p.sums[bits.TrailingZeros64(w)]; t.lack(c, o) > t.lack(c, than) {
			return false
		}
	}
	for w := by.cuts[c]; w != 0; w &= w - 1 {
		q := bits.TrailingZeros32(w)
		if !s.leavesNoMore(c, q, o, than, int(by.upTo[q])) {
			return false
		}
	}
	return true
}

// spend notes an option explored, and of a column whose options differ in no more than price which others are vain after it: they come
// later and cost no less.
func (s *search) spend(l *level, c, o int, own costs) {
	if s.stop || s.watch.ended || len(l.spent) == mostSpent {
		return
	}
	n := len(l.vain)
	if l.sifted == nil {
		l.sifted = make([]uint64, mostSpent*n)
	}
	t := spent{option: o, own: own, by: s.blame}
	if alike := l.sifted[len(l.spent)*n:][:n]; s.sift(alike, c, o, &s.blame) {
		t.alike = alike
		if s.plain[c] {
			l.vain.join(alike)
		}
	}
	l.spent = append(l.spent, t)
}

// sift finds which options of a column the rules, sums and other columns to blame for what one came to cannot tell from it, or leave no
// more; false where there are too many kinds of options for that.
func (s *search) sift(alike set, c, o int, by *blame) bool {
	if by.factors[3]>>63 != 0 {
		return false
	}
	copy(alike, s.p.cols[c].live)
	for i, w := range by.factors {
		for ; w != 0; w &= w - 1 {
			if f := s.blamed(i<<6 + bits.TrailingZeros64(w)); f.columns>>c&1 != 0 {
				of := f.excluded(s.p, c, o)
				if of == nil {
					return false
				}
				alike.keep(of)
			}
		}
	}
	for w := by.sums; w != 0; w &= w - 1 {
		if t := s.p.sums[bits.TrailingZeros64(w)]; t.binds(c) {
			alike.keep(t.seen[c].under(o))
		}
	}
	for w := by.cuts[c]; w != 0; w &= w - 1 {
		of := s.p.match(c, bits.TrailingZeros32(w)).kind[0].members(o)
		if of == nil {
			return false
		}
		alike.keep(of)
	}
	return true
}

// alike reports two options of a column that a factor cannot tell apart.
func (f *factor) alike(p *Problem, c, o, than int) bool {
	of := f.look(p).by[f.at[c]].of
	return of[o] == of[than]
}

// tellsMore reports that what hangs on a column costs no less with one option than with another.
func (b *bound) tellsMore(c, o, than int) bool {
	for _, k := range b.into[c] {
		if b.tells[k][o] < b.tells[k][than] {
			return false
		}
	}
	return true
}

// leavesNoMore reports that none of the first options of column q that are known not to stand with one option of column c stands with
// another.
func (s *search) leavesNoMore(c, q, o, than, first int) bool {
	m := s.p.match(c, q)
	if m.kind[0].of[o] == m.kind[0].of[than] {
		return true
	}
	rank, placed := s.rank(q), s.places(q)
	counts := func(j int) bool {
		at := int(placed[j])
		return at < first && int(rank[at]) == j
	}
	of, with := m.company(s.p, than), m.company(s.p, o)
	for i, live := range s.p.cols[q].live {
		gone := live & of.looked[i] &^ of.stand[i]
		for both := gone & with.stand[i]; both != 0; both &= both - 1 {
			if counts(i<<6 + bits.TrailingZeros64(both)) {
				return false
			}
		}
		for fresh := gone &^ with.looked[i]; fresh != 0; fresh &= fresh - 1 {
			if j := i<<6 + bits.TrailingZeros64(fresh); counts(j) && m.joins(s.p, with, o, j) {
				return false
			}
		}
	}
	return true
}
