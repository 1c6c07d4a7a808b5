package plan

import (
	"math/rand/v2"
	"testing"

	"slipfit/core/build"
	"slipfit/core/rule"
	"slipfit/core/unit"

	"github.com/stretchr/testify/require"
)

// TestWhatIsFoundChangesNoAnswer asks one index many questions, each like the one before but for a choice, a need or the budget, and
// every one of a new index too: the answers are the same, whatever builds the kept one begins with. Those it begins with stand.
func TestWhatIsFoundChangesNoAnswer(t *testing.T) {
	stocks := generic(t)
	cores := anchors(t, stocks)
	asked, begun, apart := 0, 0, 0
	for seed := range uint64(160) {
		r := rand.New(rand.NewPCG(seed, 77))
		stock := smallStock(r, stocks, cores[r.IntN(len(cores))])
		needs := someNeeds(r, stock)
		x := NewIndex(stock)
		for range 8 {
			ask := Ask{Needs: needs}
			if len(stock.Processors) > 0 && r.IntN(3) == 0 {
				ask.Keep = []Choice{{Seat: build.Processor, Part: stock.Processors[r.IntN(len(stock.Processors))].ID}}
			}
			if r.IntN(3) == 0 {
				ask.Lift = []string{rule.Budget.ID}
			}
			kept, err := x.Problem(ask)
			require.NoError(t, err)
			fresh, err := New(stock, ask)
			require.NoError(t, err)
			for _, before := range []func(l, than *leaf) bool{kept.cheaper, kept.betters, nil} {
				l := kept.known(before)
				if l == nil {
					continue
				}
				begun++
				proof := rule.Prove(kept.build(l), needs)
				if len(ask.Lift) == 0 {
					require.True(t, proof.Stands(), "seed %d", seed)
				}
				worth := int64(0)
				for i := range proof.Margins {
					worth += proof.Margins[i].Worth
				}
				require.Equal(t, worth, l.worth)
				require.Equal(t, int64(kept.build(l).Price()), l.price)
			}
			a, b := kept.bestBuild(), fresh.bestBuild()
			if r.IntN(2) == 0 {
				a, b = kept.leastBuild(), fresh.leastBuild()
			}
			asked++
			require.Equal(t, b.Status, a.Status, "seed %d", seed)
			require.Equal(t, b.Price, a.Price, "seed %d", seed)
			require.Equal(t, b.Worth, a.Worth, "seed %d", seed)
			if b.Build != nil {
				require.Equal(t, Choices(b.Build, 0), Choices(a.Build, 0), "seed %d", seed)
			}
			if seed%4 == 0 {
				require.Equal(t, states(fresh.Open(t.Context())), states(kept.Open(t.Context())), "seed %d", seed)
				f, g := kept.Frontier(t.Context()), fresh.Frontier(t.Context())
				require.Len(t, f.Points, len(g.Points))
				for i := range f.Points {
					require.Equal(t, g.Points[i].Price, f.Points[i].Price)
					require.Equal(t, g.Points[i].Worth, f.Points[i].Worth)
					require.Equal(t, Choices(g.Points[i].Build, 0), Choices(f.Points[i].Build, 0), "seed %d", seed)
				}
			}
			changed := *needs
			if needs = &changed; r.IntN(4) > 0 {
				needs.Budget += needs.Budget * unit.Money(r.IntN(3)-1) / 20
			} else {
				needs = someNeeds(r, stock)
				apart++
			}
		}
	}
	t.Logf("%d questions, %d builds begun with, %d other needs", asked, begun, apart)
	require.Greater(t, begun, 250)
}

// states is what is said of every part in every seat.
func states(ways []Way) (list []Way) {
	for _, w := range ways {
		w.found, w.of = nil, nil // several builds may cost the least
		list = append(list, w)
	}
	return list
}

// TestFindingsAreForgotten remembers more choices than an index keeps: those found last stay, each once.
func TestFindingsAreForgotten(t *testing.T) {
	stock := generic(t)
	p, err := New(stock, Ask{})
	require.NoError(t, err)
	pick := make([]int, len(p.cols))
	for i := range findings + 10 {
		pick := append([]int(nil), pick...)
		pick[0] = i
		p.remember(&leaf{pick: pick})
	}
	require.Len(t, p.index.found, findings)
	require.Equal(t, 10, p.index.found[0].pick[0])
	again := append([]int(nil), pick...)
	again[0] = 12
	p.remember(&leaf{pick: again})
	require.Len(t, p.index.found, findings)
	require.Equal(t, 12, p.index.found[findings-1].pick[0])
	require.Equal(t, 13, p.index.found[2].pick[0])
}
