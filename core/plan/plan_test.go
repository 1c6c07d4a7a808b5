package plan

import (
	"context"
	"math/rand/v2"
	"testing"

	"slipfit/core/build"
	"slipfit/core/part"
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
		if bruteAgrees(t, stock, ask) {
			stand++
		}
		if t.Failed() {
			t.Fatalf("seed %d", seed)
		}
	}
	require.Greater(t, stand, 40, "too few stocks with a build that stands")
	t.Logf("%d of %d stocks have a build that stands", stand, stocks)
}

// bruteAgrees compares the cheapest build and the best with those that trying everything finds, and reports whether there are any.
func bruteAgrees(t *testing.T, stock *part.Stock, ask Ask) bool {
	t.Helper()
	p, err := New(stock, ask)
	require.NoError(t, err)
	want, cols := brute(t, stock, ask, cheaper)
	agrees(t, p.Least(t.Context()), want, cols, ask)
	want, cols = brute(t, stock, ask, worthier)
	agrees(t, p.Best(t.Context()), want, cols, ask)
	return want != nil
}

// TestRootBeyondTheBudget asks for less money than any build costs: the certificate still tells a price that no build costs less than.
func TestRootBeyondTheBudget(t *testing.T) {
	stock := generic(t)
	for _, b := range briefed(t, stock) {
		needs := *b.needs
		needs.Budget = 0
		p, err := New(stock, Ask{Needs: &needs})
		require.NoError(t, err)
		least := p.Least(t.Context()).Price
		needs.Budget = least - least/10
		p, err = New(stock, Ask{Needs: &needs})
		require.NoError(t, err)
		a := p.Least(t.Context())
		require.Equal(t, Infeasible, a.Status, b.name)
		require.Positive(t, a.Certificate.Root.Price, b.name)
		require.LessOrEqual(t, a.Certificate.Root.Price, least, b.name)
	}
}

// TestOpenIsComplete compares the ways left open with trying everything.
func TestOpenIsComplete(t *testing.T) {
	stocks := generic(t)
	cores := anchors(t, stocks)
	possible, impossible := 0, 0
	for seed := range uint64(150) {
		r := rand.New(rand.NewPCG(seed, 2))
		stock := smallStock(r, stocks, cores[r.IntN(len(cores))])
		can, cannot := openAgrees(t, stock, Ask{Needs: someNeeds(r, stock)})
		if possible, impossible = possible+can, impossible+cannot; t.Failed() {
			t.Fatalf("seed %d", seed)
		}
	}
	require.Greater(t, possible, 200)
	require.Greater(t, impossible, 200)
}

// openAgrees compares the ways left open with trying everything: the same parts possible, at the same least price, each with a build
// that proves. It counts them, and those impossible.
func openAgrees(t *testing.T, stock *part.Stock, ask Ask) (possible, impossible int) {
	t.Helper()
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
			require.Equal(t, Infeasible, w.State, "%s in %s", id, w.Seat)
			impossible++
			continue
		}
		require.Equal(t, Optimal, w.State, "%s in %s", id, w.Seat)
		require.Equal(t, price, int64(w.Price), "%s in %s", id, w.Seat)
		proof := rule.Prove(w.Build(), ask.Needs)
		require.True(t, proof.Stands())
		possible++
	}
	return possible, impossible
}

// TestOrderOfStock holds answers to the stock, not to the order it lists its parts in.
func TestOrderOfStock(t *testing.T) {
	stock := generic(t)
	needs := trades[1].needs
	p, err := New(stock, Ask{Needs: needs})
	require.NoError(t, err)
	least, best := p.Least(t.Context()), p.Best(t.Context())
	require.Equal(t, Optimal, least.Status)
	require.Equal(t, Optimal, best.Status)
	r := rand.New(rand.NewPCG(5, 5))
	for range 3 {
		mixed := *stock
		mixed.Cases, mixed.Boards = sample(r, stock.Cases, 1000), sample(r, stock.Boards, 1000)
		mixed.Processors, mixed.Coolers = sample(r, stock.Processors, 1000), sample(r, stock.Coolers, 1000)
		mixed.Memory, mixed.Graphics = sample(r, stock.Memory, 1000), sample(r, stock.Graphics, 1000)
		mixed.Supplies, mixed.Drives = sample(r, stock.Supplies, 1000), sample(r, stock.Drives, 1000)
		mixed.Cards, mixed.Monitors = sample(r, stock.Cards, 1000), sample(r, stock.Monitors, 1000)
		q, err := New(&mixed, Ask{Needs: needs})
		require.NoError(t, err)
		require.Equal(t, least.Build, q.Least(t.Context()).Build)
		require.Equal(t, best.Build, q.Best(t.Context()).Build)
	}
}

// TestCancelled asks with a context that has ended already.
func TestCancelled(t *testing.T) {
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	p, err := New(generic(t), Ask{Needs: trades[3].needs})
	require.NoError(t, err)
	a := p.Best(ctx)
	require.Contains(t, []Status{Unknown, Feasible}, a.Status)
	require.NotEqual(t, Optimal, a.Status)
}

// TestAskIsHeard keeps and leaves out parts and makers, and counts owned parts as free.
func TestAskIsHeard(t *testing.T) {
	stock := generic(t)
	needs := trades[1].needs
	p, err := New(stock, Ask{Needs: needs})
	require.NoError(t, err)
	free := p.Least(t.Context())
	require.Equal(t, Optimal, free.Status)

	keep := Choices(free.Build, build.SetOf(build.Services))
	p, err = New(stock, Ask{Needs: needs, Keep: keep})
	require.NoError(t, err)
	same := p.Least(t.Context())
	require.Equal(t, Optimal, same.Status)
	require.Equal(t, free.Price, same.Price)

	owned := keep[1]
	owned.Owned = true
	p, err = New(stock, Ask{Needs: needs, Keep: []Choice{owned}})
	require.NoError(t, err)
	mine := p.Least(t.Context())
	require.Equal(t, Optimal, mine.Status)
	require.LessOrEqual(t, mine.Price, free.Price-free.Build.Board.Price)
	require.Equal(t, free.Build.Board.ID, mine.Build.Board.ID)
	require.True(t, mine.Build.Owned.Has(build.Board))

	p, err = New(stock, Ask{Needs: needs, Without: []string{free.Build.Case.ID}, Avoid: []string{free.Build.Supply.Maker}})
	require.NoError(t, err)
	other := p.Least(t.Context())
	require.Equal(t, Optimal, other.Status)
	require.NotEqual(t, free.Build.Case.ID, other.Build.Case.ID)
	for _, l := range other.Build.Lines() {
		require.NotEqual(t, free.Build.Supply.Maker, l.Article.Maker)
	}
	require.GreaterOrEqual(t, other.Price, free.Price)

	_, err = New(stock, Ask{Without: []string{"no-such-part"}})
	require.ErrorContains(t, err, "no-such-part")
	_, err = New(stock, Ask{Keep: []Choice{{Seat: build.Board, Part: "no-such-part"}}})
	require.ErrorContains(t, err, "no-such-part")
}

// TestOneProblemSeveralQuestions asks of one problem, whose best build differs from others in no seat that may be empty, what is best and
// then what is open: it says what a fresh one says.
func TestOneProblemSeveralQuestions(t *testing.T) {
	stock := generic(t)
	asked := 0
	for _, b := range briefed(t, stock) {
		ask := Ask{Needs: b.needs, Lift: predictions()}
		p, err := NewIndex(stock).Problem(ask)
		require.NoError(t, err)
		best := p.Best(context.Background()).Build
		if best == nil {
			continue
		}
		for _, s := range splitting {
			kept := Choice{Seat: s}
			for _, l := range best.Lines() {
				if l.Seat == s {
					kept.Part, kept.Count = l.Article.ID, l.Count
				}
			}
			ask.Keep = append(ask.Keep, kept)
		}
		p, err = NewIndex(stock).Problem(ask)
		require.NoError(t, err)
		require.Equal(t, Optimal, p.Best(context.Background()).Status)
		ways := p.Open(context.Background())
		fresh, err := NewIndex(stock).Problem(ask)
		require.NoError(t, err)
		require.Equal(t, states(fresh.Open(context.Background())), states(ways), b.name)
		asked++
	}
	require.Greater(t, asked, 5)
}
