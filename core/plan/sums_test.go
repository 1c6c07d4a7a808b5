package plan

import (
	"math/rand/v2"
	"slices"
	"testing"

	"slipfit/core/part"

	"github.com/stretchr/testify/require"
)

// TestSumsThatSuffice holds what sums say of whole choices to the rules they suffice for: where they balance, the rule lets the choice
// stand, and where a figure is missing they never do.
func TestSumsThatSuffice(t *testing.T) {
	stock := *generic(t)
	stock.Supplies = slices.Clone(stock.Supplies)
	for _, s := range stock.Supplies[:10] {
		weak := *s
		weak.ID += "-weak"
		weak.Rating.Set(weak.Rating.Or(0) / 3)
		mute := *s
		mute.ID += "-mute"
		mute.Rail33 = part.Supply{}.Rail33
		stock.Supplies = append(stock.Supplies, &weak, &mute)
	}
	r := rand.New(rand.NewPCG(31, 7))
	balanced, failing := map[string]int{}, map[string]int{}
	for _, b := range briefed(t, &stock) {
		p, err := New(&stock, Ask{Needs: b.needs})
		require.NoError(t, err)
		for _, f := range p.many {
			if f.sums = p.sufficing(f.query); f.sums == nil {
				continue
			}
			options := make([]int, len(f.cols))
			for n := range 400 {
				for i, c := range f.cols {
					options[i] = r.IntN(len(p.cols[c].options))
				}
				stands := p.run(f.query, options) != failed
				if n < 20 { // which the rule is asked the same of while they are laid out
					f.asks = often - 1
					require.Equal(t, stands, p.run(f.query, options) != failed, "%s: %s", b.name, f.rule.ID)
				}
				if f.balances(options) {
					require.True(t, stands, "%s: %s", b.name, f.rule.ID)
					balanced[f.rule.ID]++
				} else if !stands {
					failing[f.rule.ID]++
				}
			}
		}
	}
	for _, id := range []string{"budget", "supply-steady", "supply-rails", "supply-excursion", "activity-load"} {
		require.Greater(t, balanced[id], 100, id)
		require.Greater(t, failing[id], 100, id)
	}
}

// TestOnward compares the next option that is open, in order, with looking at one after the other.
func TestOnward(t *testing.T) {
	p, err := New(generic(t), Ask{Needs: trades[1].needs})
	require.NoError(t, err)
	s := newSearch(p.priceBound(), p.purse)
	r := rand.New(rand.NewPCG(5, 19))
	far := 0
	for c := range p.cols {
		rank := s.rank(c)
		for range 300 {
			open := make(set, words(len(p.cols[c].options)))
			for range r.IntN(4) {
				open.add(r.IntN(len(p.cols[c].options)))
			}
			k := r.IntN(len(rank) + 1)
			want := k
			for want < len(rank) && !open.has(int(rank[want])) {
				want++
			}
			require.Equal(t, want, s.onward(c, k, open))
			if want-k > strides {
				far++
			}
		}
	}
	require.Greater(t, far, 100)
}
