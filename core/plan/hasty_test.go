package plan

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
)

// hasten gives a problem a watch that ends after so many looks, one at every step.
func hasten(t *testing.T, p *Problem, looks int) {
	p.watch = newWatch(endsAfter(t, looks), nil)
	p.watch.every = 1
}

// TestHastyBounds makes bounds that are ended at many places: none says more than the whole one, and no build that stands costs
// less than any.
func TestHastyBounds(t *testing.T) {
	stocks := generic(t)
	cores := anchors(t, stocks)
	hasty, builds, weaker, lower := 0, 0, 0, 0
	for seed := range uint64(40) {
		r := rand.New(rand.NewPCG(seed, 44))
		stock := smallStock(r, stocks, cores[r.IntN(len(cores))])
		ask := Ask{Needs: someNeeds(r, stock)}
		whole, err := New(stock, ask)
		require.NoError(t, err)
		if whole.emptied() {
			continue
		}
		whole.appraise()
		w := weights{perMinor: 1 << r.IntN(20), perPoint: scale}
		b := whole.frameFor(w, whole.usual(-1), never)
		limit := b.root() + int64(1)<<34
		m := b.marginals(limit)
		var stand []*leaf
		all(t, stock, ask, func(l *leaf, _ []*column) { stand = append(stand, l) })
		for range 40 {
			hasten(t, whole, 1+r.IntN(200))
			for c, least := range b.marginals(limit) {
				for o := range least {
					require.LessOrEqual(t, least[o], m[c][o])
					if least[o] < m[c][o] {
						lower++
					}
				}
			}
			p, err := New(stock, ask)
			require.NoError(t, err)
			hasten(t, p, 1+r.IntN(500))
			p.appraise()
			for i, f := range p.many {
				for o := range f.most {
					most := int64(0)
					if whole.many[i].most != nil {
						most = whole.many[i].most[o]
					}
					require.GreaterOrEqual(t, f.most[o], most)
					if f.most[o] > most {
						weaker++
					}
				}
			}
			made := p.frameFor(w, p.usual(-1), never)
			hasty++
			for _, l := range stand {
				builds++
				cost := w.perMinor*(l.price-p.fixed) - w.perPoint*(l.worth-p.settled)
				require.LessOrEqual(t, made.root(), cost)
			}
		}
	}
	t.Logf("%d bounds made in haste against %d builds; %d marginals lower, %d worths greater", hasty, builds, lower, weaker)
	require.Greater(t, builds, 1000)
	require.Greater(t, lower, 50)
	require.Greater(t, weaker, 200)
}
