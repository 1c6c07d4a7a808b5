package plan

import (
	"slices"

	"slipfit/core/build"
)

// sequence is the order in which seats are decided, and the order in which ties are broken: the seats that most others
// must match first, those that take what is left last.
var sequence = [...]build.Seat{
	build.Processor, build.Board, build.Graphics, build.Case, build.Cards, build.Cooler, build.Memory, build.Boot,
	build.Cache, build.Archive, build.Screens, build.Fans, build.UPS, build.Supply,
}

// frame is what a bound is built on: the order of columns, and for each the earlier columns it hangs on, at most two.
// What a column costs at least is known once those are decided. Rules across other columns are left out of the bound,
// never of the search.
type frame struct {
	order []int       // columns in the order of search
	place []int       // place of a column in that order
	scope [][]int     // by column: the columns it hangs on, in order
	into  [][]int     // by column: the columns that hang on it last
	sure  [][]*factor // by column: factors that its scope and itself cover
	last  [][]*factor // by column: factors whose last column it is
}

// newFrame chooses for each column the one or two earlier ones that raise the bound most under the given costs.
// A column named is put first.
func (p *Problem) newFrame(w weights, head int) *frame {
	n := len(p.cols)
	f := &frame{place: make([]int, n), scope: make([][]int, n), into: make([][]int, n), sure: make([][]*factor, n), last: make([][]*factor, n)}
	if head >= 0 {
		f.order = append(f.order, head)
	}
	for _, s := range sequence {
		if c := p.colOf[s]; c >= 0 && c != head {
			f.place[c] = len(f.order)
			f.order = append(f.order, c)
		}
	}
	for _, x := range p.many {
		last := x.cols[0]
		for _, c := range x.cols {
			if f.place[c] > f.place[last] {
				last = c
			}
		}
		f.last[last] = append(f.last[last], x)
	}
	b := p.blankBound(f, w)
	for i := n - 1; i >= 0; i-- {
		c := f.order[i]
		b.rank(c)
		f.hang(p, c, b.choose(c, f.order[:i]))
		b.send(c)
	}
	return f
}

// choose finds the scope of a column: the earlier column that raises the bound most, then the one that does so beside
// it, or else the two that some factor ties to it.
func (b *bound) choose(c int, earlier []int) []int {
	gain := 0.0
	var scope []int
	try := func(s []int) bool {
		g := b.gain(c, s)
		if g <= gain+0.5 {
			return false
		}
		gain, scope = g, s
		return true
	}
	for range 2 {
		base := scope
		better := false
		for _, q := range earlier {
			if b.p.joined(q, c) && !slices.Contains(base, q) {
				better = try(b.sorted(base, q)) || better
			}
		}
		if !better {
			break
		}
	}
	for _, f := range b.last[c] {
		if f.open(b.p) == 3 && f.small() && f.has(c) && b.p.only(c) < 0 {
			others := slices.DeleteFunc(slices.Clone(f.cols), func(q int) bool { return q == c || b.p.only(q) >= 0 })
			try(b.sorted(others[:1], others[1]))
		}
	}
	return scope
}

// hang notes the scope of a column.
func (f *frame) hang(p *Problem, c int, scope []int) {
	f.scope[c] = scope
	f.sure[c] = p.covered(c, scope)
	if len(scope) > 0 {
		last := scope[len(scope)-1]
		f.into[last] = append(f.into[last], c)
	}
}

// sorted is a scope with one more column, in order.
func (f *frame) sorted(scope []int, q int) []int {
	switch {
	case len(scope) == 0:
		return []int{q}
	case f.place[scope[0]] < f.place[q]:
		return []int{scope[0], q}
	}
	return []int{q, scope[0]}
}

// joined reports two columns that a table, a small factor or a sum ties together.
func (p *Problem) joined(a, b int) bool {
	if p.tables.get(a, b) != nil {
		return true
	}
	for _, f := range p.many {
		if f.has(a) && f.has(b) && f.open(p) <= 3 && f.small() {
			return true
		}
	}
	for _, t := range p.sums {
		if t.binds(a) && t.binds(b) {
			return true
		}
	}
	return false
}

// covered lists the factors that read a column and otherwise only its scope and columns with one option left.
func (p *Problem) covered(c int, scope []int) []*factor {
	var list []*factor
	for _, f := range p.many {
		if !f.has(c) || !f.small() {
			continue
		}
		inside := true
		for _, q := range f.cols {
			inside = inside && (q == c || slices.Contains(scope, q) || p.only(q) >= 0)
		}
		if inside {
			list = append(list, f)
		}
	}
	return list
}

// only is the one option left in a column, −1 where there are several.
func (p *Problem) only(c int) int {
	live := p.cols[c].live
	o := live.next(0)
	if o >= 0 && live.next(o+1) >= 0 {
		return -1
	}
	return o
}
