// Package grow makes a large stock out of a small one, for measuring: new parts are variations of those it grows from, with
// figures that hang together as theirs do. A longer card is heavier, a faster one draws more and costs more, with noise; what
// a standard fixes (board sizes, hole patterns, plugs, module lengths, memory sizes) stays as it is, and what two figures owe
// each other is kept. The same stock, size and seed give the same bytes on every machine: all sums are in integers.
package grow

import (
	"fmt"
	"math/rand/v2"
	"slices"

	"slipfit/core/part"
	"slipfit/core/unit"
)

// Most is the largest stock that is grown, in parts of all kinds.
const Most = 20_000

// Stock grows a stock to a number of parts of all kinds, between what it has and Most. The parts it has come first and stay
// as they are; shop, calibration and services are kept. Every kind grows in proportion, and within a kind every part has as
// many variations as any other, give or take one, so that sockets, chipsets, memory types and forms keep their shares. A
// stock grown further from the same seed begins with the smaller one. Lists of figures that no part varies are shared with the part it
// was varied from.
func Stock(from *part.Stock, parts int, seed uint64) (*part.Stock, error) {
	have := len(from.Articles())
	if parts < have || parts > Most {
		return nil, fmt.Errorf("parts: got %d, want between %d, as many as there are, and %d", parts, have, Most)
	}
	s := *from
	g := &grower{draw: draw{rand.New(rand.NewPCG(seed, 0))}, from: from, taken: map[string]bool{}}
	for _, a := range from.Articles() {
		g.taken[a.ID] = true
	}
	kinds := g.kinds(&s)
	if len(kinds) == 0 && parts > have {
		return nil, fmt.Errorf("parts: got %d, want %d: there is no part to vary", parts, have)
	}
	for range parts - have {
		kinds[hungriest(kinds)].add()
	}
	s.Shop.Revision = fmt.Sprintf("%s, grown to %d parts from seed %d", from.Shop.Revision, parts, seed)
	return &s, nil
}

// kind is one kind of part on its way: how many there were, how many there are, and how one more is made.
type kind struct {
	base, have int
	more       func()
}

func (k *kind) add() {
	k.more()
	k.have++
}

// hungriest is the kind furthest behind its share; of equals the first.
func hungriest(kinds []*kind) int {
	least := 0
	for i, k := range kinds {
		if k.have*kinds[least].base < kinds[least].have*k.base {
			least = i
		}
	}
	return least
}

// grower is a growth in progress.
type grower struct {
	draw
	from  *part.Stock
	taken map[string]bool // ids
}

func (g *grower) kinds(s *part.Stock) []*kind {
	all := []*kind{
		growing(g, &s.Cases, g.enclosure), growing(g, &s.Boards, g.board), growing(g, &s.Processors, g.processor),
		growing(g, &s.Coolers, g.cooler), growing(g, &s.Memory, g.memory), growing(g, &s.Graphics, g.graphics),
		growing(g, &s.Supplies, g.supply), growing(g, &s.Drives, g.drive), growing(g, &s.Fans, g.caseFan),
		growing(g, &s.Monitors, g.monitor), growing(g, &s.Cards, g.card), growing(g, &s.UPS, g.ups),
	}
	return slices.DeleteFunc(all, func(k *kind) bool { return k.base == 0 })
}

// growing makes a kind of a list. The variation changes a copy of a part of the list, its price included, and returns the
// figure its name ends on, which may be none. Every round strides over the list from a start of its own, so that one broken off has taken parts from all
// over it: catalogs list cheap before dear.
func growing[P any, A interface {
	*P
	Common() *part.Article
}](g *grower, list *[]A, vary func(A) string) *kind {
	base := slices.Clone(*list)
	*list = slices.Clone(base)
	stride, at, left := stride(len(base)), 0, 0
	return &kind{base: len(base), have: len(base), more: func() {
		if left == 0 {
			at, left = g.IntN(len(base)), len(base)
		}
		p := *base[at]
		at, left = (at+stride)%len(base), left-1
		mark := vary(&p)
		a := A(&p).Common()
		other := func() *part.Article { return base[g.IntN(len(base))].Common() }
		a.Stock, a.Lead, a.Supplier = other().Stock, other().Lead, other().Supplier
		a.Shelf = shelf(a.Shelf, len(*list))
		g.name(a, mark)
		*list = append(*list, &p)
	}}
}

// stride is a step that visits every one of n places once and leaves no wide gap on the way: the nearest to the golden section
// of n that shares no divisor with it.
func stride(n int) int {
	for s := n * 618 / 1000; s > 1; s-- {
		if coprime(s, n) {
			return s
		}
	}
	return 1
}

func coprime(a, b int) bool {
	for b != 0 {
		a, b = b, a%b
	}
	return a == 1
}

// shelf is the place of the n-th part of a kind: the letter of the kind, the bay and the board, eight to a bay.
func shelf(like string, n int) string {
	letter := "X"
	if like != "" {
		letter = like[:1]
	}
	return fmt.Sprintf("%s-%02d-%d", letter, n/8+1, n%8+1)
}

// like draws one of the parts that are as this one in what the caller names; the part itself where none is.
func like[P any](g *grower, list []*P, this *P, same func(*P) bool) *P {
	var fits []*P
	for _, p := range list {
		if same(p) {
			fits = append(fits, p)
		}
	}
	if len(fits) == 0 {
		return this
	}
	return fits[g.IntN(len(fits))]
}

// price makes a part dearer or cheaper, to ten minor units.
func price(a *part.Article, by ...factor) {
	a.Price = min(max(step(scaled(a.Price, by...), 10), min(a.Price, 100)), 100_000*100)
}

// mass makes a part heavier or lighter, to the gram.
func mass(a *part.Article, by ...factor) {
	vary(&a.Mass, 1, 1, 60_000, by...)
}

const mm = unit.Millimetre
const w = unit.Watts
