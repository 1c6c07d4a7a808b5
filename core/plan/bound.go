package plan

import (
	"math"
	"slices"
)

// never is the cost of what cannot be.
const never = math.MaxInt64 / 4

// weights say what a bound counts: so much for a minor unit of price, so much off for a value point.
type weights struct{ perMinor, perPoint int64 }

// bound is an admissible bound on the cost of a choice of options that costs no more than a limit, by elimination: from the last
// column to the first, each column tells the one it hangs on what it costs at least for each of its options. Whatever is decided,
// the sum of what the undecided columns tell, where the one they hang on is decided, is a bound on all of them.
type bound struct {
	*frame
	weights
	p      *Problem
	limit  int64     // choices that cost more are left out
	sum    int64     // what all columns cost at least, as far as they have told
	tells  [][]int64 // by column: least cost of it and all that hangs on it, by the options of its scope
	reach  [][]int64 // by column and option: least cost of it and all that hangs on it with that option, whatever its scope; never where that is left out
	least  []int64   // by column: the least of these
	ranked [][]int32 // by column: live options, least reach first; nil until they are asked for
}

func (p *Problem) blankBound(f *frame, w weights) *bound {
	n := len(p.cols)
	return &bound{frame: f, weights: w, p: p, limit: never, tells: make([][]int64, n), reach: make([][]int64, n), least: make([]int64, n), ranked: make([][]int32, n)}
}

// newBound makes a bound on a frame that is known.
func (p *Problem) newBound(f *frame, w weights, limit int64) *bound {
	b := p.rough(f, w)
	b.limit = limit
	for i := len(f.order) - 1; i >= 0; i-- {
		c := f.order[i]
		b.prune(c)
		if q := f.scope[c]; q >= 0 {
			b.send(c, b.quote(c, q))
		} else {
			b.send(c, nil)
		}
	}
	return b
}

// rough is a bound on a frame whose columns are taken each by itself.
func (p *Problem) rough(f *frame, w weights) *bound {
	b := p.blankBound(f, w)
	for c, col := range p.cols {
		p.watch.poll(len(col.options))
		reach, able := make([]int64, len(col.options)), p.able(c)
		least := int64(never)
		for o := range reach {
			if reach[o] = never; able.has(o) {
				reach[o] = b.own(c, o)
				least = min(least, reach[o])
			}
		}
		b.reach[c], b.least[c], b.tells[c] = reach, least, []int64{least}
		b.sum = min(never, b.sum+least)
	}
	return b
}

// own is what an option costs by itself, were every factor settled by it worth the most it can be.
func (b *bound) own(c, o int) int64 {
	return b.perMinor*b.p.cols[c].price[o] - b.perPoint*b.top[c][o]
}

// room is what a column may cost where all others cost the least they can.
func (b *bound) room(c int) int64 { return b.limit - b.sum + b.least[c] }

// prune leaves out the options of a column that cost too much.
func (b *bound) prune(c int) {
	room := b.room(c)
	for o, x := range b.reach[c] {
		if x > room {
			b.reach[c][o] = never
		}
	}
}

// rank sorts the live options of a column by reach, then in tie order.
func (b *bound) rank(c int) []int32 {
	if b.ranked[c] == nil {
		reach := b.reach[c]
		list := make([]int32, 0, len(reach))
		for _, o := range b.p.cols[c].rising {
			if reach[o] < never {
				list = append(list, o)
			}
		}
		if b.perPoint > 0 || len(b.into[c]) > 0 { // else it costs its price
			b.p.index.order(list, reach)
		}
		b.ranked[c] = list
	}
	return b.ranked[c]
}

// send works out what a column tells its scope, by its quote to that.
func (b *bound) send(c int, to *quote) {
	if to == nil {
		first := b.first(c)
		b.tells[c] = []int64{first}
		b.sum = min(never, b.sum-b.least[c]+first)
		return
	}
	q := to.q
	reach, room, least := b.reach[q], b.room(q), int64(never)
	tells := slices.Repeat([]int64{never}, len(reach))
	for j, x := range reach {
		if x > room || x >= never || b.sum >= never {
			reach[j] = never
			continue
		}
		tells[j] = to.least(j)
		if reach[j] = min(never, x+tells[j]); reach[j]-b.least[c] > room {
			reach[j] = never
		}
		least = min(least, reach[j])
	}
	b.tells[c] = tells
	b.sum = min(never, b.sum-b.least[c]-b.least[q]+least)
	b.least[q] = least
}

// first is the least reach of a column, never where it has no option; no more than that where the context has ended.
func (b *bound) first(c int) int64 {
	if len(b.p.alone[c]) == 0 {
		return slices.Min(b.reach[c])
	}
	for _, o := range b.rank(c) {
		if b.p.watch.ended || b.p.stands(c, int(o)) {
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

// quote is what a column costs at least, with all that hangs on it, beside each option of another.
type quote struct {
	*match
	b     *bound
	other *match  // the same from the other side
	heads []int32 // of each grade of the column's options the one of least reach, those of least reach first
	told  []int64 // by grade of the other's options
}

// unasked stands for what a quote has not worked out yet.
const unasked = math.MinInt64

func (b *bound) quote(c, q int) *quote {
	m := b.p.match(c, q)
	k := m.grade[0]
	var heads []int32
	if b.ranked[c] != nil {
		heads = k.firsts(b.ranked[c])
	} else {
		heads = k.heads(b.reach[c])
		b.p.index.order(heads, b.reach[c])
	}
	return &quote{m, b, b.p.match(q, c), heads, slices.Repeat([]int64{unasked}, m.grade[1].count)}
}

// firsts lists the first of each class of options that are in some order.
func (k *classes) firsts(order []int32) []int32 {
	seen := make(set, words(k.count))
	var list []int32
	for _, o := range order {
		if class := int(k.of[o]); !seen.has(class) {
			seen.add(class)
			list = append(list, o)
		}
	}
	return list
}

// heads lists of each class of options the one of the least cost, by class.
func (k *classes) heads(cost []int64) []int32 {
	first := make([]int32, k.count) // by class: its option of the least cost, and one
	for o, x := range cost {
		if at := &first[k.of[o]]; x < never && (*at == 0 || x < cost[*at-1]) {
			*at = int32(o) + 1
		}
	}
	list := first[:0]
	for _, at := range first {
		if at > 0 {
			list = append(list, at-1)
		}
	}
	return list
}

// least is what the column costs at least beside option j of the other; no more than that where the context has ended.
func (t *quote) least(j int) int64 {
	told := &t.told[t.grade[1].of[j]]
	if *told == unasked {
		*told = never
		with := t.other.company(t.b.p, j)
		watch, steps := t.b.p.watch, 0
		for i, o := range t.heads {
			reach := t.b.reach[t.c][o]
			if reach >= *told {
				break
			}
			if watch.ended {
				*told = reach // what follows reaches no lower
				break
			}
			steps = i
			if with == nil || t.other.joins(t.b.p, with, j, int(o)) {
				*told = min(*told, t.b.with(t.match, int(o), j, *told))
			}
		}
		watch.poll(steps + 1)
	}
	return *told
}

// with is the least cost of an option of a column and all that hangs on it with option j of another decided; never where
// they cannot stand together, or where it is no less than so much.
func (b *bound) with(m *match, o, j int, than int64) int64 {
	cost := b.reach[m.c][o]
	if !m.together(b.p, o, j) {
		return never
	}
	if b.perPoint > 0 {
		for _, f := range b.worth[m.c] {
			if f.columns == 1<<m.c|1<<m.q {
				cost += b.perPoint * (f.most[o] - f.two(b.p, m.c, o, m.q, j))
			}
		}
		if cost >= than {
			return never
		}
	}
	if !m.stands(b.p, o, j) {
		return never
	}
	return min(never, cost)
}

// looksFor is how many options of a column are looked at to find out what another gains by hanging on it.
const looksFor = 24

// gain is how much a quote raises on average what its column costs at least.
func (t *quote) gain() float64 {
	if len(t.heads) == 0 {
		return 0
	}
	reach := t.b.reach[t.c]
	least, most := t.b.first(t.c), reach[t.heads[len(t.heads)-1]]
	list := t.b.telling(t.q)
	sum := 0.0
	for _, j := range list {
		sum += float64(min(most, t.least(j)) - least)
	}
	return sum / float64(max(len(list), 1))
}

// telling lists the options of a column that say most of what it is to hang on it. Of price alone these are the cheapest, for a cheapest
// choice holds one of them; where value counts too, some of all.
func (b *bound) telling(q int) []int {
	col := b.p.cols[q]
	list := make([]int, 0, looksFor+1)
	if b.perPoint == 0 {
		for _, j := range col.rising {
			if b.reach[q][j] < never {
				if list = append(list, int(j)); len(list) == looksFor {
					break
				}
			}
		}
		return list
	}
	every := max(1, col.live.count()/looksFor)
	for j, at := col.live.next(0), 0; j >= 0; j, at = col.live.next(j+1), at+1 {
		if at%every == 0 {
			list = append(list, j)
		}
	}
	return list
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

// starting is the bound with an option of the first column decided.
func (b *bound) starting(c, o int) int64 { return b.root() - b.tells[c][0] + b.reach[c][o] }

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
