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

// TestIdleMoney takes every planned build, which has no idle money, and replaces one part by a dearer one that keeps every
// verdict, the next dearer and the dearest of every seat: idle money rises by exactly what that part wastes, and the part is
// named with what would do in its place.
func TestIdleMoney(t *testing.T) {
	tried := map[build.Seat]int{}
	for _, j := range jobs(t) {
		t.Run(j.name, func(t *testing.T) {
			idle, err := IdleOf(t.Context(), j.build, j.needs, plan.NewIndex(j.stock), nil)
			require.NoError(t, err)
			require.True(t, idle.Proven)
			require.Zero(t, idle.Total, "the cheapest build has no idle money")
			require.Empty(t, idle.Parts, "and no part of it could be cheaper")
			require.Zero(t, idle.Together)

			proof := rule.Prove(j.build, j.needs)
			before := verdictsOf(&proof)
			for s := range build.Services {
				if !j.build.Filled(s) && s != build.Fans {
					continue
				}
				for _, dearer := range dearerBy(&j, s, before) {
					wastes := dearer.Price() - j.build.Price()
					idle, err := IdleOf(t.Context(), dearer, j.needs, plan.NewIndex(j.stock), nil)
					require.NoError(t, err)
					require.Equal(t, wastes, idle.Total, "%s in seat %s", title(dearer, s), s)
					named := false
					for _, w := range idle.Parts {
						if w.Seat == s {
							named = true
							require.Equal(t, title(dearer, s), w.Part)
							require.GreaterOrEqual(t, w.Saves, wastes, "%s in seat %s", w.Part, s)
							require.Less(t, w.Instead.Price(), w.Price)
						}
					}
					require.True(t, named, "%s in seat %s wastes %s and is not named", title(dearer, s), s, wastes)
					require.LessOrEqual(t, idle.Together, idle.Total, "swaps cannot save more than the cheapest build")
					require.GreaterOrEqual(t, idle.Together, idle.Parts[0].Saves)
					tried[s]++
				}
			}
		})
	}
	for s := range build.Services {
		if s != build.Cards && s != build.UPS { // seats that no swap of one part for another fills
			require.Positive(t, tried[s], "nothing dearer was tried in seat %s", s)
		}
	}
}

// dearerBy is a planned build with the next dearer and with the dearest filling of a seat that keeps every verdict.
func dearerBy(j *job, s build.Seat, before verdicts) []*build.Build {
	var list []*build.Build
	for _, o := range cheapestFirst(options(j.stock, j.build, s)) {
		dearer := with(j.build, o)
		if dearer.Price() <= j.build.Price() {
			continue
		}
		if p := rule.Prove(dearer, j.needs); !before.keep(&p) {
			continue
		}
		if len(list) < 2 {
			list = append(list, dearer)
		} else {
			list[1] = dearer
		}
	}
	return list
}

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
		was, err := IdleOf(t.Context(), a.Build, &free, plan.NewIndex(j.stock), nil)
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
				idle, err := IdleOf(t.Context(), dearer, &free, plan.NewIndex(j.stock), nil)
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
