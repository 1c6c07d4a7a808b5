package plan

import (
	"context"
	"math/rand/v2"
	"slices"
	"testing"

	"slipfit/core/part"
	"slipfit/core/unit"

	"github.com/stretchr/testify/require"
)

// TestSmallByBruteForce compares the smallest build with trying everything: the same volume, and the cheapest build there.
func TestSmallByBruteForce(t *testing.T) {
	stocks := generic(t)
	cores := anchors(t, stocks)
	stand := 0
	for seed := range uint64(150) {
		r := rand.New(rand.NewPCG(seed, 11))
		stock := smallStock(r, stocks, cores[r.IntN(len(cores))])
		stock.Cases = sample(r, with(sample(r, stocks.Cases, 2), cores[r.IntN(len(cores))].Case), 3)
		ask := Ask{Needs: someNeeds(r, stock)}
		p, err := New(stock, ask)
		require.NoError(t, err)
		size := func(l *leaf, cols []*column) unit.Millilitre {
			b := p.base
			for c, o := range l.pick {
				b.Set(cols[c].options[o])
			}
			return b.Case.Volume.Or(0)
		}
		var best *leaf
		cols := all(t, stock, ask, func(l *leaf, cols []*column) {
			if best == nil {
				best = l
				return
			}
			if v, was := size(l, cols), size(best, cols); v < was || v == was && (l.price < best.price || l.price == best.price && earlier(l, best, cols)) {
				best = l
			}
		})
		a := p.Small(t.Context())
		agrees(t, a, best, cols, ask)
		if best != nil {
			stand++
			require.Equal(t, size(best, cols), a.Certificate.Final.Volume)
			require.Zero(t, a.Certificate.Gap)
		}
	}
	require.Greater(t, stand, 20)
}

// TestQuietByBruteForce compares the quietest build with trying everything: the same tenth of a dB(A), and the cheapest build
// there.
func TestQuietByBruteForce(t *testing.T) {
	stocks := generic(t)
	cores := anchors(t, stocks)
	stand := 0
	for seed := range uint64(100) {
		r := rand.New(rand.NewPCG(seed, 12))
		stock := smallStock(r, stocks, cores[r.IntN(len(cores))])
		ask := Ask{Needs: someNeeds(r, stock)}
		ask.Needs.Place.Noise.Set(unit.Sound(30_000 + r.IntN(40_000)))
		p, err := New(stock, ask)
		require.NoError(t, err)
		heard := map[*leaf]unit.Sound{}
		var best *leaf
		cols := all(t, stock, ask, func(l *leaf, cols []*column) {
			b := p.base
			for c, o := range l.pick {
				b.Set(cols[c].options[o])
			}
			level, known := Heard(&b, ask.Needs)
			require.True(t, known)
			heard[l] = (level + tenth - 1) / tenth * tenth
			if best == nil || heard[l] < heard[best] || heard[l] == heard[best] && (l.price < best.price || l.price == best.price && earlier(l, best, cols)) {
				best = l
			}
		})
		a := p.Quiet(t.Context())
		agrees(t, a, best, cols, ask)
		if best != nil {
			stand++
			require.Equal(t, heard[best], a.Certificate.Final.Noise)
			require.Zero(t, a.Certificate.Gap)
		}
	}
	require.Greater(t, stand, 10)
}

// TestLikedMakersBreakTies gives the catalog a twin of each part of the cheapest build, last in the order of ids, and makes its
// maker liked: of builds equal in price and value the one with the liked part is first.
func TestLikedMakersBreakTies(t *testing.T) {
	stock := generic(t)
	needs := *briefed(t, stock)[0].needs
	p, err := New(stock, Ask{Needs: &needs})
	require.NoError(t, err)
	was := p.Least(t.Context()).Build
	twin := func(a part.Article) part.Article {
		a.ID, a.Maker = "zz-twin-"+a.ID, "Twin"
		return a
	}
	mixed := *stock
	processor, memory, supply := *was.Processor, *was.Memory, *was.Supply
	processor.Article, memory.Article, supply.Article = twin(processor.Article), twin(memory.Article), twin(supply.Article)
	mixed.Processors = append(slices.Clone(stock.Processors), &processor)
	mixed.Memory = append(slices.Clone(stock.Memory), &memory)
	mixed.Supplies = append(slices.Clone(stock.Supplies), &supply)
	for _, liked := range []bool{false, true} {
		if liked {
			needs.Wish.Prefer = []string{"Twin"}
		}
		p, err := New(&mixed, Ask{Needs: &needs})
		require.NoError(t, err)
		answers := []Answer{p.Least(t.Context()), p.Small(t.Context())}
		for _, point := range p.Frontier(t.Context()).Points[:1] {
			answers = append(answers, Answer{Build: point.Build, Price: point.Price})
		}
		for i, a := range answers {
			require.Equal(t, was.Price(), a.Build.Price(), "answer %d", i)
			require.Equal(t, liked, a.Build.Processor.Maker == "Twin", "answer %d", i)
			require.Equal(t, liked, a.Build.Memory.Maker == "Twin", "answer %d", i)
			require.Equal(t, liked, a.Build.Supply.Maker == "Twin", "answer %d", i)
		}
	}
}

func BenchmarkAims(b *testing.B) {
	stock := generic(b)
	for _, t := range briefed(b, stock) {
		ask := Ask{Needs: t.needs}
		for _, aim := range []struct {
			name string
			of   func(*Problem, context.Context) Answer
		}{{"small", (*Problem).Small}, {"quiet", (*Problem).Quiet}} {
			b.Run(aim.name+"/"+t.name, func(b *testing.B) { answer(b, stock, ask, aim.of) })
		}
	}
}
