package plan

import (
	"cmp"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
)

// TestOrder holds the order of options to a plain sort, with costs close together, equal, and so far apart that they fill a word.
func TestOrder(t *testing.T) {
	x := &Index{}
	lost := 0
	for seed := range uint64(400) {
		r := rand.New(rand.NewPCG(seed, 8))
		spread := int64(1) << r.IntN(62)
		cost := make([]int64, r.IntN(300))
		var list []int32
		for o := range cost {
			cost[o] = r.Int64N(spread) - spread/2
			if o > 0 && r.IntN(4) == 0 {
				cost[o] = cost[o-1] - int64(r.IntN(3))
			}
			if r.IntN(3) > 0 {
				list = append(list, int32(o))
			}
		}
		r.Shuffle(len(list), func(i, j int) { list[i], list[j] = list[j], list[i] })
		if spread > 1<<57 && len(list) > 128 {
			lost++
		}
		sorted := slices.Clone(list)
		slices.SortFunc(sorted, func(a, b int32) int { return cmp.Or(cmp.Compare(cost[a], cost[b]), cmp.Compare(a, b)) })
		x.order(list, cost)
		require.Equal(t, sorted, list, "seed %d", seed)
	}
	require.Greater(t, lost, 5)
}
