package plan

import (
	"context"
	"testing"

	"slipfit/core/grow"
	"slipfit/core/rule"

	"github.com/stretchr/testify/require"
)

// TestRoutes searches options of every seat of a grown stock by either route, the second decided by where the first has failed: both come
// to the same least price, and both need the less toil for some options. What a search says at one go of options that are vain after one
// explored, it says of each by itself.
func TestRoutes(t *testing.T) {
	stock, err := grow.Stock(generic(t), 500, 3)
	require.NoError(t, err)
	var lift []string
	for _, r := range rule.All {
		if r.Group == rule.Cool && r != &rule.CoolerRating {
			lift = append(lift, r.ID)
		}
	}
	searched, easier, harder, vain := 0, 0, 0, 0
	for _, b := range briefed(t, stock) {
		p, err := NewIndex(stock).Problem(Ask{Needs: b.needs, Lift: lift})
		require.NoError(t, err)
		p.begin(context.Background())
		for c, col := range p.cols {
			some := col.live.list()
			every := max(1, len(some)/16)
			prices := func(order []int) (list, toils []int64) {
				w := &opening{Problem: p, settled: make([][]bool, len(p.cols)), best: make([][]*leaf, len(p.cols))}
				for q, other := range p.cols {
					w.best[q] = make([]*leaf, len(other.options))
				}
				r := w.route(p.frameFor(weights{perMinor: 1}, order, p.purse))
				for i := 0; i < len(some); i += every {
					o := some[i]
					if list, toils = append(list, -1), append(toils, 0); r.bound.reach[c][o] >= never {
						continue // the bound knows
					}
					clear(w.best[c])
					before := r.toil()
					require.True(t, r.settle(w, c, o, never))
					toils[len(toils)-1] = r.toil() - before
					if l := w.best[c][o]; l != nil {
						list[len(list)-1] = l.price
					}
					for d := range r.levels {
						vain += r.sound(t, d)
					}
				}
				return list, toils
			}
			usual, most := prices(p.usual(c))
			order := p.hardFirst(c)
			require.Equal(t, c, order[0])
			require.ElementsMatch(t, p.usual(c), order)
			hard, toil := prices(order)
			require.Equal(t, usual, hard, "%s: %s", b.name, col.seat)
			searched += len(hard)
			for i := range toil {
				switch {
				case toil[i] < most[i]:
					easier++
				case toil[i] > most[i]:
					harder++
				}
			}
		}
	}
	t.Logf("%d options searched; %d of them with less toil by the second route, %d with more; %d vain at one go", searched, easier, harder, vain)
	require.Greater(t, searched, 500)
	require.Greater(t, easier, 50)
	require.Greater(t, harder, 50)
	require.Greater(t, vain, 1000)
}

// TestHardFirst has each column follow the ones that the rules have failed with it on, those counted half for each that is still to come.
func TestHardFirst(t *testing.T) {
	p := &Problem{}
	for s := range p.colOf {
		p.colOf[s] = -1
	}
	for c, s := range sequence[:5] {
		p.cols, p.colOf[s] = append(p.cols, &column{}), c
	}
	failed := func(times int32, cols ...int) {
		f := &factor{}
		for _, c := range cols {
			f.columns |= 1 << c
		}
		f.failures[0] = times
		p.many = append(p.many, f)
	}
	failed(5, 0, 3)
	failed(9, 3, 2)
	failed(4, 0, 1)
	failed(7, 0, 1, 4)
	require.Equal(t, []int{0, 1, 4, 3, 2}, p.hardFirst(0))
	require.Equal(t, []int{1, 0, 2, 3, 4}, p.hardFirst(1), "of searches that had another column first nothing counts")
}

// sound holds what a level says of options alike to what is said of each, and counts them.
func (s *search) sound(t *testing.T, d int) int {
	n := 0
	for i := range s.levels[d].spent {
		x := &s.levels[d].spent[i]
		if x.alike == nil {
			continue
		}
		c := s.order[d]
		for o := x.alike.next(0); o >= 0; o = x.alike.next(o + 1) {
			require.True(t, s.excludes(&x.by, c, o, x.option), "%s: option %d after %d", s.p.cols[c].seat, o, x.option)
			n++
		}
	}
	return n
}
