package balance

import (
	"context"
	"testing"
	"time"

	"slipfit/core/build"
	"slipfit/core/plan"
	"slipfit/core/rule"

	"github.com/stretchr/testify/require"
)

// TestIdleMoneyOfTheBest takes the build of every brief that serves most within its budget and replaces one part of each seat by a
// dearer one that serves no need further and changes no outcome: idle money rises by exactly the difference, and that part is named
// with at least so much to save. The budget is left aside, since it ends such a choice before the money is idle.
func TestIdleMoneyOfTheBest(t *testing.T) {
	tried := map[build.Seat]int{}
	for _, j := range jobs(t) {
		problem, err := plan.New(j.stock, plan.Ask{Needs: j.needs})
		require.NoError(t, err)
		ctx, cancel := context.WithTimeout(t.Context(), time.Minute)
		a := problem.Best(ctx)
		cancel()
		require.Equal(t, plan.Optimal, a.Status, j.name)
		free := *j.needs
		free.Budget = 0
		was, err := IdleOf(t.Context(), a.Build, &free, j.stock)
		require.NoError(t, err)
		require.True(t, was.Proven)
		require.Equal(t, a.Price-was.Least, was.Total)
		proof := rule.Prove(a.Build, &free)
		before := verdictsOf(&proof)
		for s := range build.Services {
			if !a.Build.Filled(s) {
				continue
			}
			for _, o := range cheapestFirst(options(j.stock, a.Build, s)) {
				dearer := with(a.Build, o)
				wastes := dearer.Price() - a.Price
				if wastes <= 0 {
					continue
				}
				if p := rule.Prove(dearer, &free); !before.keep(&p) || p.Worth != proof.Worth || len(changes(a.Build, dearer, &free, j.stock)) > 0 {
					continue
				}
				idle, err := IdleOf(t.Context(), dearer, &free, j.stock)
				require.NoError(t, err)
				require.Equal(t, was.Total+wastes, idle.Total, "%s: %s", j.name, o.ID())
				saves := -wastes
				for _, w := range idle.Parts {
					if w.Seat == s {
						saves = w.Saves
					}
				}
				require.GreaterOrEqual(t, saves, wastes, "%s: %s in seat %s wastes %s and is not named with it", j.name, o.ID(), s, wastes)
				tried[s]++
				break
			}
		}
	}
	// no dearer processor leaves every outcome as it was
	for _, s := range []build.Seat{build.Case, build.Board, build.Cooler, build.Memory, build.Graphics, build.Supply} {
		require.Positive(t, tried[s], "nothing dearer was tried in seat %s", s)
	}
}
