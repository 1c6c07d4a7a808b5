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

// TestOpenIsComplete compares the ways left open with trying everything: the same parts possible, at the same least
// price, each with a build that proves.
func TestOpenIsComplete(t *testing.T) {
	stocks := generic(t)
	cores := anchors(t, stocks)
	possible, impossible := 0, 0
	for seed := range uint64(150) {
		r := rand.New(rand.NewPCG(seed, 2))
		stock := smallStock(r, stocks, cores[r.IntN(len(cores))])
		ask := Ask{Needs: someNeeds(r, stock)}
		p, err := New(stock, ask)
		require.NoError(t, err)
		least := map[build.Seat]map[string]int64{}
		all(t, stock, ask, func(l *leaf, cols []*column) {
			for c, col := range cols {
				id := col.options[l.pick[c]].ID()
				if least[col.seat] == nil {
					least[col.seat] = map[string]int64{}
				}
				if old, known := least[col.seat][id]; !known || l.price < old {
					least[col.seat][id] = l.price
				}
			}
		})
		for _, w := range p.Open(t.Context()) {
			id := ""
			if w.Part != nil {
				id = w.Part.ID
			}
			price, can := least[w.Seat][id]
			if !can {
				require.Equal(t, Infeasible, w.State, "seed %d, %s in %s", seed, id, w.Seat)
				impossible++
				continue
			}
			require.Equal(t, Optimal, w.State, "seed %d, %s in %s", seed, id, w.Seat)
			require.Equal(t, price, int64(w.Price), "seed %d, %s in %s", seed, id, w.Seat)
			proof := rule.Prove(w.Build, ask.Needs)
			require.True(t, proof.Stands())
			possible++
		}
	}
	require.Greater(t, possible, 200)
	require.Greater(t, impossible, 200)
}
