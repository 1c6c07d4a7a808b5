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
// each column tells those it hangs on what it costs at least for each of their options. Whatever is decided, the sum of
// what the undecided columns tell, where those they hang on are decided, is a bound on all of them.
type bound struct {
	*frame
	weights
	p      *Problem
	tells  [][]int64 // by column: least cost of it and all that hangs on it, by the options of its scope
	low    [][]int64 // by column: least of what it tells by the options of the last of its scope alone
	reach  [][]int64 // by column and option: least cost of it and all that hangs on it with that option, whatever its scope
	ranked [][]int32 // by column: live options, least reach first
}

func (p *Problem) blankBound(f *frame, w weights) *bound {
	n := len(p.cols)
	return &bound{frame: f, weights: w, p: p, tells: make([][]int64, n), low: make([][]int64, n), reach: make([][]int64, n), ranked: make([][]int32, n)}
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
		for _, f := range b.last[c] {
			if f.most != nil {
				cost -= b.perPoint * f.most[o]
			}
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
				reach[o] = min(never, reach[o]+b.low[k][o])
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

// lowest takes from what column c tells the least by the options of the last of its scope.
func (b *bound) lowest(c int) {
	s := b.scope[c]
	if len(s) < 2 {
		b.low[c] = b.tells[c]
		return
	}
	n := len(b.p.cols[s[1]].options)
	b.low[c] = slices.Repeat([]int64{never}, n)
	for at, told := range b.tells[c] {
		b.low[c][at%n] = min(b.low[c][at%n], told)
	}
}

// send works out what a column tells its scope.
func (b *bound) send(c int) {
	switch s := b.scope[c]; len(s) {
	case 0:
		b.tells[c] = []int64{b.first(c)}
	case 1:
		b.tells[c] = make([]int64, len(b.p.cols[s[0]].options))
		for o := range b.tells[c] {
			b.tells[c][o] = never
			if b.p.cols[s[0]].live.has(o) {
				b.tells[c][o] = b.cheapest(c, s, b.sure[c], o, o)
			}
		}
	default:
		x, y := b.p.cols[s[0]], b.p.cols[s[1]]
		t := b.p.tables.get(s[0], s[1])
		n := len(y.options)
		b.tells[c] = make([]int64, len(x.options)*n)
		for i := range x.options {
			for j := range y.options {
				at := i*n + j
				b.tells[c][at] = never
				if x.live.has(i) && y.live.has(j) && (t == nil || t.row(i).has(j)) {
					b.tells[c][at] = b.cheapest(c, s, b.sure[c], i, j)
				}
			}
		}
	}
	b.lowest(c)
}

// first is the least reach of a column, never where it has no option.
func (b *bound) first(c int) int64 {
	if len(b.ranked[c]) == 0 {
		return never
	}
	return b.reach[c][b.ranked[c][0]]
}

// cheapest is the least cost of a column and all that hangs on it with options i and j decided in its scope (j alone
// where the scope is one column).
func (b *bound) cheapest(c int, scope []int, sure []*factor, i, j int) int64 {
	best := int64(never)
	for _, o := range b.ranked[c] {
		if b.reach[c][o] >= best {
			break
		}
		best = min(best, b.with(c, int(o), scope, sure, i, j, best))
	}
	return best
}

// with is the least cost of an option of a column and all that hangs on it with options i and j decided in its scope;
// never where they cannot stand together, and not worked out where it is no less than so much.
func (b *bound) with(c, o int, scope []int, sure []*factor, i, j int, than int64) int64 {
	p := b.p
	lastly := scope[len(scope)-1]
	if t := p.tables.get(lastly, c); t != nil && !t.row(j).has(o) {
		return never
	}
	if len(scope) == 2 {
		if t := p.tables.get(scope[0], c); t != nil && !t.row(i).has(o) {
			return never
		}
	}
	if !p.roomFor(c, o, scope, i, j) {
		return never
	}
	cost := b.reach[c][o]
	for _, k := range b.into[c] {
		if len(b.scope[k]) == 2 && slices.Contains(scope, b.scope[k][0]) {
			with := i
			if b.scope[k][0] == lastly {
				with = j
			}
			cost += b.tells[k][with*len(p.cols[c].options)+o] - b.low[k][o]
		}
	}
	if cost >= than {
		return never
	}
	for _, f := range sure {
		w := f.at(p, c, o, scope, i, j)
		if w == failed {
			return never
		}
		if f.most != nil && b.perPoint > 0 && f.lastly == c {
			cost += b.perPoint * (f.most[o] - w)
		}
	}
	return min(never, cost)
}

// gain is how much a scope raises on average what a column costs at least.
func (b *bound) gain(c int, scope []int) float64 {
	if len(b.ranked[c]) == 0 {
		return 0
	}
	least := b.first(c)
	most := b.reach[c][b.ranked[c][len(b.ranked[c])-1]]
	sure := b.p.covered(c, scope)
	lastly := b.p.cols[scope[len(scope)-1]]
	sum, n := 0.0, 0
	add := func(i, j int) {
		sum += float64(min(most, b.cheapest(c, scope, sure, i, j)) - least)
		n++
	}
	if len(scope) == 1 {
		for j := lastly.live.next(0); j >= 0; j = lastly.live.next(j + 1) {
			add(j, j)
		}
		return sum / float64(max(n, 1))
	}
	other := b.p.cols[scope[0]]
	t := b.p.tables.get(scope[0], scope[1])
	for i := other.live.next(0); i >= 0; i = other.live.next(i + 1) {
		for j := lastly.live.next(i % 3); j >= 0; j = lastly.live.next(j + 3) {
			if t == nil || t.row(i).has(j) {
				add(i, j)
			}
		}
	}
	return sum / float64(max(n, 1))
}

// root is the bound before anything is decided.
func (b *bound) root() int64 {
	sum := int64(0)
	for _, c := range b.order {
		if len(b.scope[c]) == 0 {
			sum = min(never, sum+b.tells[c][0])
		}
	}
	return sum
}

// told is what a column tells with its scope decided.
func (b *bound) told(c int, pick []int) int64 {
	switch s := b.scope[c]; len(s) {
	case 0:
		return b.tells[c][0]
	case 1:
		return b.tells[c][pick[s[0]]]
	default:
		return b.tells[c][pick[s[0]]*len(b.p.cols[s[1]].options)+pick[s[1]]]
	}
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
