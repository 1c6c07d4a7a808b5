package plan

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"slipfit/core/rule"

	"github.com/stretchr/testify/require"
)

// bruteStands tries everything to find a build that meets an ask.
func bruteStands(t *testing.T, x *explainer, keep []int) bool {
	t.Helper()
	l, _ := brute(t, x.index.stock, x.only(keep), cheaper)
	return l != nil
}

// TestConflictsAndRepairs holds conflicts to trying everything: the demands told cannot be met together, and can once any
// one of them is given up; every repair leads to a build that proves, and gives up nothing that could be kept.
func TestConflictsAndRepairs(t *testing.T) {
	all := generic(t)
	cores := anchors(t, all)
	conflicts, repairs := 0, 0
	for seed := range uint64(60) {
		r := rand.New(rand.NewPCG(seed, 3))
		stock := smallStock(r, all, cores[r.IntN(len(cores))])
		ask := Ask{Needs: someNeeds(r, stock)}
		c, err := NewIndex(stock).WhyNot(t.Context(), ask, nil)
		if err == ErrStands {
			l, _ := brute(t, stock, ask, cheaper)
			require.NotNil(t, l, "seed %d", seed)
			continue
		}
		require.NoError(t, err)
		x := newExplainer(t.Context(), NewIndex(stock), ask)
		core, err := x.core(x.keeping(nil))
		require.NoError(t, err)
		require.Len(t, c.Demands, len(core))
		require.False(t, bruteStands(t, x, core), "seed %d", seed)
		if len(core) == 0 {
			continue
		}
		conflicts++
		for i := range core {
			less := append(append([]int(nil), core[:i]...), core[i+1:]...)
			require.True(t, bruteStands(t, x, less), "seed %d: %s is not needed", seed, x.all[core[i]].Text)
		}
		list, complete, err := NewIndex(stock).Repairs(t.Context(), ask, 2, nil)
		require.NoError(t, err)
		require.True(t, complete)
		for _, fix := range list {
			repairs++
			require.LessOrEqual(t, len(fix.Drops), 2)
			mended := ask.dropping(fix.Drops)
			proof := rule.Prove(fix.Answer.Build, mended.Needs)
			require.True(t, proof.Stands())
			for i := range fix.Drops {
				less := append(append([]Demand(nil), fix.Drops[:i]...), fix.Drops[i+1:]...)
				l, _ := brute(t, stock, ask.dropping(less), cheaper)
				require.Nil(t, l, "seed %d: %s need not be given up", seed, fix.Drops[i].Text)
			}
		}
	}
	require.Greater(t, conflicts, 15)
	require.Greater(t, repairs, 15)
}

// TestRepairsGiveUpNoMoreThanAsked asks of a brief with many ways out of three demands for those of one, and of two: the same as of
// those of three, without what gives up more.
func TestRepairsGiveUpNoMoreThanAsked(t *testing.T) {
	stock := generic(t)
	orders := briefed(t, stock)
	i := slices.IndexFunc(orders, func(o trade) bool { return o.name == "family" })
	needs := *orders[i].needs
	needs.Budget = 57_851
	ways := func(most int) (list []string) {
		repairs, complete, err := NewIndex(stock).Repairs(t.Context(), Ask{Needs: &needs}, most, nil)
		require.NoError(t, err)
		require.True(t, complete)
		for _, fix := range repairs {
			require.LessOrEqual(t, len(fix.Drops), most)
			list = append(list, fmt.Sprint(len(fix.Drops), fix.Answer.Price, fix.Drops[0].Text))
		}
		return list
	}
	all := ways(3)
	for most := 1; most < 3; most++ {
		few := slices.DeleteFunc(slices.Clone(all), func(way string) bool { return int(way[0]-'0') > most })
		require.NotEmpty(t, few)
		require.Less(t, len(few), len(all))
		require.Equal(t, few, ways(most))
	}
}
