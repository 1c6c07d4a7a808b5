package plan

import (
	"math/bits"
	"slices"

	"slipfit/core/build"
)

// sequence is the order in which seats are decided, and the order in which ties are broken: the seats that most others
// must match first, those that take what is left last.
var sequence = [...]build.Seat{
	build.Processor, build.Board, build.Graphics, build.Case, build.Fans, build.Cards, build.Cooler, build.Memory, build.Boot,
	build.Cache, build.Archive, build.Screens, build.UPS, build.Supply,
}

// frame is what a bound is built on: the order of columns, and for each the earlier one it hangs on. What a column costs at
// least is known once that is decided. Rules across other columns are left out of the bound, never of the search.
type frame struct {
	order []int       // columns in the order of search
	place []int       // place of a column in that order
	scope []int       // by column: the column it hangs on, −1 where it hangs on none
	into  [][]int     // by column: the columns that hang on it
	last  [][]*factor // by column: factors whose last open column it is
	worth [][]*factor // by column: those of them that are worth something; in another order than the usual one, where price alone counts, not all
	top   [][]int64   // by column and option: the most it is worth by itself and by those
}

// usual is the order in which columns are decided. A column named is put first, and after fans the case, for few cases have room for them.
func (p *Problem) usual(head int) []int {
	order := make([]int, 0, len(p.cols))
	put := func(c int) {
		if c >= 0 && !slices.Contains(order, c) {
			order = append(order, c)
		}
	}
	put(head)
	if head >= 0 && head == p.colOf[build.Fans] {
		put(p.colOf[build.Case])
	}
	for _, s := range sequence {
		put(p.colOf[s])
	}
	return order
}

// hardFirst is an order in which each column that follows the first is the one on which the rules have failed most, in searches that had
// that first, that read it and one decided before. A rule or sum counts half as much for each column of it that is still to be decided.
func (p *Problem) hardFirst(head int) []int {
	order := p.usual(head)
	decided := uint32(1) << head
	for at := 1; at < len(order); at++ {
		next, most := at, -1
		for i := at; i < len(order); i++ {
			hard := 0
			count := func(columns uint32, times int32) {
				if with := columns &^ (1 << order[i]); with != columns && with&decided != 0 {
					hard += int(times) >> bits.OnesCount32(with&^decided)
				}
			}
			for _, f := range p.many {
				count(f.columns, f.failures[head])
			}
			for _, t := range p.sums {
				count(t.columns(), t.failures[head])
			}
			if hard > most {
				next, most = i, hard
			}
		}
		c := order[next]
		copy(order[at+1:next+1], order[at:next])
		order[at] = c
		decided |= 1 << c
	}
	return order
}

// blankFrame is an order of columns, none hanging on another.
func (p *Problem) blankFrame(order []int) *frame {
	n := len(p.cols)
	f := &frame{order: order, place: make([]int, n), scope: slices.Repeat([]int{-1}, n), into: make([][]int, n), last: make([][]*factor, n), worth: make([][]*factor, n), top: make([][]int64, n)}
	for at, c := range order {
		f.place[c] = at
	}
	for _, x := range p.many {
		last := x.open[0]
		for _, c := range x.open {
			if f.place[c] > f.place[last] {
				last = c
			}
		}
		f.last[last] = append(f.last[last], x)
		if x.most != nil && x.lastly == last {
			f.worth[last] = append(f.worth[last], x)
		}
	}
	for c, list := range p.alone {
		f.last[c] = append(f.last[c], list...)
	}
	for c, col := range p.cols {
		f.top[c] = col.worth
		for i, x := range f.worth[c] {
			if i == 0 {
				f.top[c] = slices.Clone(col.worth)
			}
			for o, most := range x.most {
				f.top[c][o] += most
			}
		}
	}
	return f
}

// frameFor makes a bound on a frame of its own: each column hangs on the earlier one that raises the bound most under the
// given costs. Columns that are still to be hung when the context ends hang on none.
func (p *Problem) frameFor(w weights, order []int, limit int64) *bound {
	return p.rough(p.blankFrame(order), w).hang(limit)
}

// hang hangs each column of a bound that takes them by themselves on the earlier one that raises the bound most.
func (b *bound) hang(limit int64) *bound {
	b.limit = limit
	for i := len(b.order) - 1; i >= 0; i-- {
		c := b.order[i]
		b.prune(c)
		b.rank(c) // the search needs it too
		to, known := b.likewise(c)
		if !known {
			to = b.choose(c, b.order[:i])
		}
		if to != nil {
			b.scope[c] = to.q
			b.into[to.q] = append(b.into[to.q], c)
		}
		b.send(c, to)
	}
	return b
}

// likewise finds the quote of a column to the one that its seat hangs on in the frame of a problem much like this one, nil where it hangs on
// none; false where that is not known.
func (b *bound) likewise(c int) (to *quote, known bool) {
	like, seat := b.p.like, b.p.cols[c].seat
	if like == nil || like.p.colOf[seat] < 0 {
		return nil, false
	}
	on := like.scope[like.p.colOf[seat]]
	if on < 0 {
		return nil, true
	}
	q := b.p.colOf[like.p.cols[on].seat]
	if q < 0 || b.place[q] > b.place[c] || !b.p.match(c, q).joined {
		return nil, false
	}
	return b.quote(c, q), true
}

// choose finds the quote of a column to the earlier one that raises the bound most, nil where none does.
func (b *bound) choose(c int, earlier []int) *quote {
	var best *quote
	most := 0.5
	for _, q := range earlier {
		if b.p.watch.ended {
			return nil
		}
		if !b.p.match(c, q).joined {
			continue
		}
		to := b.quote(c, q)
		if g := to.gain(); g > most {
			best, most = to, g
		}
	}
	return best
}
