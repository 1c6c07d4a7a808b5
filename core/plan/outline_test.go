package plan

import (
	"cmp"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
)

// TestEdge holds the options that cost least at some price of value to all there are, at many prices.
func TestEdge(t *testing.T) {
	left, all := 0, 0
	for seed := range uint64(400) {
		r := rand.New(rand.NewPCG(seed, 9))
		n := 1 + r.IntN(40)
		price, worth := make([]int64, n), make([]int64, n)
		var list []int32
		of := make(set, words(n))
		for o := range n {
			price[o], worth[o] = r.Int64N(60), r.Int64N(60)
			list = append(list, int32(o))
			if r.IntN(4) > 0 {
				of.add(o)
			}
		}
		slices.SortFunc(list, func(a, b int32) int { return cmp.Compare(price[a], price[b]) })
		edge := edge(list, of, price, worth)
		left, all = left+len(edge), all+of.count()
		for _, o := range edge {
			require.True(t, of.has(int(o)))
		}
		for range 60 {
			perMinor := r.Int64N(1 << 14)
			least, least2 := int64(never), int64(never)
			for o := of.next(0); o >= 0; o = of.next(o + 1) {
				least = min(least, perMinor*price[o]-1000*worth[o])
			}
			for _, o := range edge {
				least2 = min(least2, perMinor*price[o]-1000*worth[o])
			}
			require.Equal(t, least, least2, "seed %d", seed)
		}
	}
	require.Less(t, left*3, all, "most options are on no edge")
}

// TestBoundsLeaveOutWhatCostsTooMuch makes bounds with a limit: they say no more than each build costs that costs no more than that,
// and leave out none of its options.
func TestBoundsLeaveOutWhatCostsTooMuch(t *testing.T) {
	stocks := generic(t)
	cores := anchors(t, stocks)
	builds, gone := 0, 0
	for seed := range uint64(60) {
		r := rand.New(rand.NewPCG(seed, 45))
		stock := smallStock(r, stocks, cores[r.IntN(len(cores))])
		ask := Ask{Needs: someNeeds(r, stock)}
		p, err := New(stock, ask)
		require.NoError(t, err)
		if p.emptied() {
			continue
		}
		var stand []*leaf
		all(t, stock, ask, func(l *leaf, _ []*column) { stand = append(stand, l) })
		w, head := weights{perMinor: 1 << r.IntN(20), perPoint: scale}, -1
		if seed%2 == 0 {
			w.perPoint, head = 0, r.IntN(len(p.cols))
		} else {
			p.appraise()
		}
		cost := func(l *leaf) int64 { return w.perMinor*(l.price-p.fixed) - w.perPoint*(l.worth-p.settled) }
		for range min(len(stand), 8) {
			limit := cost(stand[r.IntN(len(stand))])
			b := p.frameFor(w, p.usual(head), limit)
			again := p.newBound(b.frame, w, limit)
			for _, b := range []*bound{b, again} {
				for _, reach := range b.reach {
					for _, x := range reach {
						if x >= never {
							gone++
						}
					}
				}
				require.LessOrEqual(t, b.root(), limit)
				for _, l := range stand {
					if cost(l) > limit {
						continue
					}
					builds++
					first := b.order[0]
					require.LessOrEqual(t, b.starting(first, l.pick[first]), cost(l))
					for c, o := range l.pick {
						require.Less(t, b.reach[c][o], int64(never))
					}
				}
			}
		}
	}
	t.Logf("%d builds, %d options left out", builds, gone)
	require.Greater(t, builds, 10_000)
	require.Greater(t, gone, 1000)
}
