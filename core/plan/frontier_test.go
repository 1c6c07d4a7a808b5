package plan

import (
	"cmp"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
)

// bruteFrontier tries everything: of every price at which more is served than for less the first choice in tie order.
func bruteFrontier(t *testing.T, stock *Problem, ask Ask) (points []*leaf, cols []*column) {
	t.Helper()
	var list []*leaf
	cols = all(t, stock.index.stock, ask, func(l *leaf, _ []*column) { list = append(list, l) })
	slices.SortFunc(list, func(a, b *leaf) int {
		if c := cmp.Or(cmp.Compare(a.price, b.price), cmp.Compare(b.worth, a.worth)); c != 0 {
			return c
		}
		if earlier(a, b, cols) {
			return -1
		}
		return 1
	})
	for _, l := range list {
		if len(points) == 0 || l.worth > points[len(points)-1].worth {
			points = append(points, l)
		}
	}
	return points, cols
}

// TestFrontierByBruteForce compares the frontier with trying everything: the same points, each with the first build in tie
// order, which proves.
func TestFrontierByBruteForce(t *testing.T) {
	stocks := generic(t)
	cores := anchors(t, stocks)
	points, most := 0, 0
	for seed := range uint64(240) {
		r := rand.New(rand.NewPCG(seed, 21))
		core := cores[r.IntN(len(cores))]
		stock := smallStock(r, stocks, core)
		stock.Memory = with(sample(r, stocks.Memory, 5), core.Memory)
		stock.Processors = with(sample(r, stocks.Processors, 5), core.Processor)
		ask := Ask{Needs: someNeeds(r, stock)}
		p, err := New(stock, ask)
		require.NoError(t, err)
		want, cols := bruteFrontier(t, p, ask)
		f := p.Frontier(t.Context())
		if len(want) == 0 {
			require.Equal(t, Infeasible, f.Status)
			require.Empty(t, f.Points)
			continue
		}
		require.Equal(t, Optimal, f.Status)
		require.Zero(t, f.Certificate.Gap)
		require.Len(t, f.Points, len(want), "seed %d", seed)
		for i, l := range want {
			agrees(t, Answer{Status: Optimal, Build: f.Points[i].Build, Price: f.Points[i].Price, Worth: f.Points[i].Worth}, l, cols, ask)
		}
		points += len(want)
		most = max(most, len(want))
	}
	require.Greater(t, points, 80)
	require.Greater(t, most, 3)
	t.Logf("%d points, at most %d in one frontier", points, most)
}

// TestFrontierIsAChainOfBests holds the frontier on the whole catalog to the other way of finding it: the best build within
// the budget, the best that is cheaper than that, and so on down to the cheapest.
func TestFrontierIsAChainOfBests(t *testing.T) {
	stock := generic(t)
	for _, tr := range briefed(t, stock) {
		if !slices.Contains([]string{"bird-sound", "game-maker"}, tr.name) {
			continue
		}
		p, err := New(stock, Ask{Needs: tr.needs})
		require.NoError(t, err)
		f := p.Frontier(t.Context())
		require.Equal(t, Optimal, f.Status)
		for i := len(f.Points) - 1; i >= 0; i-- {
			a := p.Best(t.Context())
			require.Equal(t, Optimal, a.Status)
			require.Equal(t, a.Price, f.Points[i].Price)
			require.Equal(t, a.Worth, f.Points[i].Worth)
			require.Equal(t, a.Build, f.Points[i].Build)
			p.purse = int64(a.Price) - p.fixed - 1
		}
		require.Equal(t, Infeasible, p.Best(t.Context()).Status)
	}
}

func BenchmarkFrontier(b *testing.B) {
	stock := generic(b)
	for _, t := range briefed(b, stock) {
		b.Run(t.name, func(b *testing.B) {
			var f Frontier
			for b.Loop() {
				f = problem(b, stock, Ask{Needs: t.needs}).Frontier(b.Context())
			}
			b.ReportMetric(float64(len(f.Points)), "points")
			b.ReportMetric(float64(f.Certificate.Nodes), "nodes")
			b.ReportMetric(float64(f.Certificate.Gap.Worth), "gap")
		})
	}
}
