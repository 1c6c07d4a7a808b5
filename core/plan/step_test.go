package plan

import (
	"math/rand/v2"
	"testing"

	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/rule"
	"slipfit/core/unit"

	"github.com/stretchr/testify/require"
)

// spends is what a build pays for a seat.
func spends(b *build.Build, s build.Seat) unit.Money {
	sum := unit.Money(0)
	for _, l := range b.Lines() {
		if l.Seat == s {
			sum += l.Price()
		}
	}
	return sum
}

// TestStepsByBruteForce compares the steps up and down from the cheapest build or the best with trying everything.
func TestStepsByBruteForce(t *testing.T) {
	stocks := generic(t)
	cores := anchors(t, stocks)
	ups, downs, none := 0, 0, 0
	for seed := range uint64(220) {
		r := rand.New(rand.NewPCG(seed, 31))
		stock := smallStock(r, stocks, cores[r.IntN(len(cores))])
		ask := Ask{Needs: someNeeds(r, stock)}
		x := NewIndex(stock)
		p, err := x.Problem(ask)
		require.NoError(t, err)
		a := p.Least(t.Context())
		if seed%3 == 0 {
			a = p.Best(t.Context())
		}
		b := a.Build
		if b == nil {
			continue
		}
		free := *ask.Needs
		free.Budget = 0
		var every []build.Build
		all(t, stock, Ask{Needs: &free}, func(l *leaf, cols []*column) { every = append(every, *p.build(l)) })
		have := Serving(b, ask.Needs)
		stands := func(e *build.Build, n *brief.Needs) bool {
			proof := rule.Prove(e, n)
			return proof.Stands()
		}
		for q := range brief.Resource(brief.Resources) {
			if have[q] < 0 {
				continue
			}
			least := unit.Money(-1)
			n := holding(ask.Needs, b, have)
			n.By[q].Floor = have[q] + 1
			for i := range every {
				if e := &every[i]; have[q] < ask.Needs.By[q].Enough && (least < 0 || e.Price() < least) && stands(e, n) {
					least = e.Price()
				}
			}
			a, err := x.Further(t.Context(), ask, b, q, build.Processor)
			require.NoError(t, err)
			if least < 0 {
				none++
				require.Equal(t, Infeasible, a.Status, "seed %d, %s", seed, q)
				continue
			}
			ups++
			require.Equal(t, Optimal, a.Status)
			require.Equal(t, least, a.Price, "seed %d, %s", seed, q)
			require.Greater(t, Serving(a.Build, ask.Needs)[q], have[q])
		}
		for s, own := range map[build.Seat][]brief.Resource{build.Processor: {brief.SingleWork, brief.AllWork, brief.Threads}, build.Graphics: {brief.DrawWork, brief.GraphicsMemory}, build.Supply: nil} {
			dearest, least := unit.Money(-1), unit.Money(0)
			held := have
			for _, q := range own {
				held[q] = -1
			}
			n := holding(ask.Needs, b, held)
			for i := range every {
				e := &every[i]
				at := spends(e, s)
				if at >= spends(b, s) || e.Price() >= b.Price() || at < dearest || at == dearest && e.Price() >= least || !stands(e, n) {
					continue
				}
				dearest, least = at, e.Price()
			}
			a, err := x.Cheaper(t.Context(), ask, b, s, own, false)
			require.NoError(t, err)
			if dearest < 0 {
				none++
				require.Equal(t, Infeasible, a.Status, "seed %d, %s", seed, s)
				continue
			}
			downs++
			require.Equal(t, Optimal, a.Status)
			require.Equal(t, dearest, spends(a.Build, s), "seed %d, %s", seed, s)
			require.Equal(t, least, a.Price)
		}
	}
	require.Greater(t, ups, 10)
	require.Greater(t, downs, 2)
	require.Greater(t, none, 40)
	t.Logf("%d steps up, %d down, %d with nothing further", ups, downs, none)
}
