package plan

import (
	"context"
	"math/rand/v2"
	"testing"

	"slipfit/core/build"
	"slipfit/core/rule"

	"github.com/stretchr/testify/require"
)

// agrees checks an answer against brute force: the same price and worth, the same build, and a build that proves.
func agrees(t *testing.T, a Answer, want *leaf, cols []*column, ask Ask) {
	t.Helper()
	if want == nil {
		require.Equal(t, Infeasible, a.Status)
		require.Nil(t, a.Build)
		return
	}
	require.Equal(t, Optimal, a.Status)
	require.Equal(t, want.price, int64(a.Price))
	require.Equal(t, want.worth, a.Worth)
	require.Equal(t, want.price, int64(a.Build.Price()))
	proof := rule.Prove(a.Build, ask.Needs)
	require.True(t, proof.Stands(), "%v", proof.Margins)
	require.Equal(t, want.worth, proof.Worth)
	for i, c := range cols {
		b := build.Build{}
		b.Set(c.options[want.pick[i]])
		got := *a.Build
		for s := range build.Seat(build.Seats) {
			if s != c.seat {
				got.Clear(s)
			}
		}
		got.Owned = 0
		require.Equal(t, b, got, "seat %s", c.seat)
	}
}

// TestBruteForce compares the planner with trying everything, on small stocks drawn from the generic catalog.
func TestBruteForce(t *testing.T) {
	all := generic(t)
	cores := anchors(t, all)
	const stocks = 300
	stand := 0
	for seed := range uint64(stocks) {
		r := rand.New(rand.NewPCG(seed, 1))
		stock := smallStock(r, all, cores[r.IntN(len(cores))])
		ask := Ask{Needs: someNeeds(r, stock)}
		p, err := New(stock, ask)
		require.NoError(t, err)
		want, cols := brute(t, stock, ask, cheaper)
		agrees(t, p.Least(context.Background()), want, cols, ask)
		if want != nil {
			stand++
		}
		want, cols = brute(t, stock, ask, worthier)
		agrees(t, p.Best(context.Background()), want, cols, ask)
		if t.Failed() {
			t.Fatalf("seed %d", seed)
		}
	}
	require.Greater(t, stand, 40, "too few stocks with a build that stands")
	t.Logf("%d of %d stocks have a build that stands", stand, stocks)
}
