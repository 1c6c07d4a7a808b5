package plan

import (
	"cmp"
	"math"
	"slices"
)

// never is the cost of what cannot be.
const never = math.MaxInt64 / 4

// weights say what a bound counts: so much for a minor unit of price, so much off for a value point.
type weights struct{ perMinor, perPoint int64 }

// bound is an admissible bound on the cost of a choice of options, by elimination: from the last column to the first,
// each column tells the one it hangs on what it costs at least for each of its options. Whatever is decided, the sum of
// what the undecided columns tell, where the one they hang on is decided, is a bound on all of them.
type bound struct {
	*frame
	weights
	p      *Problem
	tells  [][]int64 // by column: least cost of it and all that hangs on it, by the options of its scope
	reach  [][]int64 // by column and option: least cost of it and all that hangs on it with that option, whatever its scope
	ranked [][]int32 // by column: live options, least reach first
}

func (p *Problem) blankBound(f *frame, w weights) *bound {
	n := len(p.cols)
	return &bound{frame: f, weights: w, p: p, tells: make([][]int64, n), reach: make([][]int64, n), ranked: make([][]int32, n)}
}

func (p *Problem) newBound(f *frame, w weights) *bound {
	b := p.blankBound(f, w)
	for i := len(f.order) - 1; i >= 0; i-- {
		b.rank(f.order[i])
		b.send(f.order[i])
	}
	return b
}

// own is what an option costs by itself, were every factor settled by it worth the most it can be.
func (b *bound) own(c, o int) int64 {
	col := b.p.cols[c]
	cost := b.perMinor*col.price[o] - b.perPoint*col.worth[o]
	if b.perPoint > 0 {
		for _, f := range b.worth[c] {
			cost -= b.perPoint * f.most[o]
		}
	}
	return cost
}

// rank sorts the live options of a column by reach, then in tie order.
func (b *bound) rank(c int) {
	col := b.p.cols[c]
	reach := make([]int64, len(col.options))
	list := make([]int32, 0, len(col.options))
	for o := range reach {
		reach[o] = never
		if col.live.has(o) {
			reach[o] = b.own(c, o)
			for _, k := range b.into[c] {
				reach[o] = min(never, reach[o]+b.tells[k][o])
			}
		}
		if reach[o] < never {
			list = append(list, int32(o))
		}
	}
	slices.SortFunc(list, func(x, y int32) int {
		return cmp.Or(cmp.Compare(reach[x], reach[y]), cmp.Compare(x, y))
	})
	b.reach[c], b.ranked[c] = reach, list
}

// send works out what a column tells its scope.
func (b *bound) send(c int) {
	q := b.scope[c]
	if q < 0 {
		b.tells[c] = []int64{b.first(c)}
		return
	}
	b.tells[c] = make([]int64, len(b.p.cols[q].options))
	for j := range b.tells[c] {
		b.tells[c][j] = never
		if b.p.cols[q].live.has(j) {
			b.tells[c][j] = b.cheapest(c, q, j)
		}
	}
}

// first is the least reach of a column, never where it has no option.
func (b *bound) first(c int) int64 {
	for _, o := range b.ranked[c] {
		if b.p.stands(c, int(o)) {
			return b.reach[c][o]
		}
	}
	return never
}

// stands reports an option that the rules which hang on its column alone let stand.
func (p *Problem) stands(c, o int) bool {
	for _, f := range p.alone[c] {
		if f.one(p, c, o) == failed {
			return false
		}
	}
	return true
}

// cheapest is the least cost of a column and all that hangs on it with option j of column q decided.
func (b *bound) cheapest(c, q, j int) int64 {
	best := int64(never)
	company := b.p.company(q, j, c)
	for _, o := range b.ranked[c] {
		if b.reach[c][o] >= best {
			break
		}
		if !company.excludes(int(o)) {
			best = min(best, b.with(c, int(o), q, j, best))
		}
	}
	return best
}

// with is the least cost of an option of a column and all that hangs on it with option j of column q decided; never where
// they cannot stand together, or where it is no less than so much.
func (b *bound) with(c, o, q, j int, than int64) int64 {
	p := b.p
	cost := b.reach[c][o]
	if !p.roomFor(c, o, q, j) {
		return never
	}
	for _, f := range p.joining(q, c) {
		w := f.two(p, c, o, q, j)
		if w == failed {
			return never
		}
		if f.most != nil && b.perPoint > 0 {
			cost += b.perPoint * (f.most[o] - w)
			if cost >= than {
				return never
			}
		}
	}
	if !p.stands(c, o) {
		return never
	}
	return min(never, cost)
}

// looksFor is how many options of a column are looked at to find out what another gains by hanging on it.
const looksFor = 64

// gain is how much hanging on column q raises on average what column c costs at least.
func (b *bound) gain(c, q int) float64 {
	if len(b.ranked[c]) == 0 {
		return 0
	}
	least := b.first(c)
	most := b.reach[c][b.ranked[c][len(b.ranked[c])-1]]
	live := b.p.cols[q].live
	every := max(1, live.count()/looksFor)
	sum, n := 0.0, 0
	for j, at := live.next(0), 0; j >= 0; j, at = live.next(j+1), at+1 {
		if at%every == 0 {
			sum += float64(min(most, b.cheapest(c, q, j)) - least)
			n++
		}
	}
	return sum / float64(max(n, 1))
}

// root is the bound before anything is decided.
func (b *bound) root() int64 {
	sum := int64(0)
	for _, c := range b.order {
		if b.scope[c] < 0 {
			sum = min(never, sum+b.tells[c][0])
		}
	}
	return sum
}

// told is what a column tells with its scope decided.
func (b *bound) told(c int, pick []int) int64 {
	if q := b.scope[c]; q >= 0 {
		return b.tells[c][pick[q]]
	}
	return b.tells[c][0]
}

// step is what deciding a column costs by itself, and what is told by the columns that wait for it.
func (b *bound) step(c int, pick []int) (cost, waiting int64) {
	o := pick[c]
	col := b.p.cols[c]
	cost = b.perMinor*col.price[o] - b.perPoint*col.worth[o]
	for _, k := range b.into[c] {
		waiting += b.told(k, pick)
	}
	return cost, min(never, waiting)
}
