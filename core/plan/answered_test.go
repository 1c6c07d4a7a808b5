package plan

import (
	"context"
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"slipfit/core/build"
	"slipfit/core/rule"
	"slipfit/core/unit"

	"github.com/stretchr/testify/require"
)

// TestAnsweredIsTakenOver clicks its way through small stocks on one index and asks for builds: every answer is that of a new index, to the
// last part, and many come without a search.
func TestAnsweredIsTakenOver(t *testing.T) {
	all := generic(t)
	cores := anchors(t, all)
	asked, known := 0, 0
	for seed := range uint64(120) {
		r := rand.New(rand.NewPCG(seed, 1202))
		stock := smallStock(r, all, cores[r.IntN(len(cores))])
		needs := someNeeds(r, stock)
		p, err := New(stock, Ask{Needs: needs, Lift: []string{rule.Budget.ID}})
		require.NoError(t, err)
		if a := p.Best(t.Context()); a.Build != nil {
			needs.Budget = a.Price * unit.Money(80+r.IntN(50)) / 100
		}
		x := NewIndex(stock)
		ask := Ask{Needs: needs}
		for range 10 {
			fresh, err := New(stock, ask)
			require.NoError(t, err)
			kept, err := x.Problem(ask)
			require.NoError(t, err)
			question := [...]func(*Problem, context.Context) Answer{(*Problem).Least, (*Problem).Best, (*Problem).Small, (*Problem).Quiet}[r.IntN(4)]
			want, got := question(fresh, t.Context()), question(kept, t.Context())
			require.Equal(t, want.Status, got.Status, "seed %d", seed)
			require.Equal(t, want.Build, got.Build, "seed %d", seed)
			require.Equal(t, want.Price, got.Price)
			require.Equal(t, want.Worth, got.Worth)
			if want.Cuts != nil {
				require.Equal(t, told(want.Cuts), told(got.Cuts), "seed %d", seed)
			}
			require.Equal(t, want.Certificate.Combinations, got.Certificate.Combinations)
			require.Equal(t, want.Certificate.Gap, got.Certificate.Gap)
			require.Equal(t, want.Certificate.Final, got.Certificate.Final)
			require.LessOrEqual(t, len(x.answered), answeredKept)
			if want.Certificate.Nodes > 0 {
				if asked++; got.Certificate.Nodes == 0 {
					known++
				}
			}
			ask = click(r, stock, ask, needs)
		}
	}
	require.Greater(t, known, asked/8)
	t.Logf("%d asked, %d known", asked, known)
}

// told writes down what the rules took away.
func told(cuts []Cut) (list []string) {
	for _, c := range cuts {
		list = append(list, fmt.Sprint(c.Rule.ID, c.Seats, c.Options, c.Empties))
	}
	return list
}

// TestAnsweredAgain asks for the best build again and again, each time with another part of it kept or with as much money as it costs:
// nothing is searched.
func TestAnsweredAgain(t *testing.T) {
	stock := generic(t)
	for _, b := range briefed(t, stock) {
		x := NewIndex(stock)
		best := func(ask Ask) Answer {
			p, err := x.Problem(ask)
			require.NoError(t, err)
			return p.Best(t.Context())
		}
		for status, looks := Unknown, 1; status == Unknown; looks += looks/8 + 1 {
			hasty, err := x.Problem(Ask{Needs: b.needs})
			require.NoError(t, err)
			hasty.watch.every = 20
			status = hasty.Best(endsAfter(t, looks)).Status
			require.NotEqual(t, Optimal, status)
		}
		first := best(Ask{Needs: b.needs})
		require.Equal(t, Optimal, first.Status)
		require.Positive(t, first.Certificate.Nodes)
		needs := *b.needs
		needs.Budget = first.Price
		for _, ask := range []Ask{{Needs: b.needs}, {Needs: &needs}, {Needs: &needs, Keep: Choices(first.Build, 0)[:3]}} {
			again := best(ask)
			require.Equal(t, Optimal, again.Status)
			require.Equal(t, first.Build, again.Build)
			require.Zero(t, again.Certificate.Nodes)
		}
		needs.Budget--
		less := best(Ask{Needs: &needs})
		require.NotEqual(t, first.Build, less.Build)
		require.Positive(t, less.Certificate.Nodes)
	}
}

// TestAnsweredElsewhere takes the answer that nothing stands for that of the very same space alone: the smallest build is looked for among
// cases of which the volume is stated, and with fewer cases that may be no condition any more.
func TestAnsweredElsewhere(t *testing.T) {
	stock := generic(t)
	x := NewIndex(stock)
	needs := briefed(t, stock)[0].needs
	p, err := x.Problem(Ask{Needs: needs})
	require.NoError(t, err)
	none := &answered{p.space(), smallest, Answer{Status: Infeasible}}
	for _, c := range []struct {
		keep []Choice
		same bool
	}{
		{nil, true},
		{[]Choice{{Seat: build.Case, Part: stock.Cases[0].ID}}, false},
	} {
		q, err := x.Problem(Ask{Needs: needs, Keep: c.keep})
		require.NoError(t, err)
		in := q.space()
		_, inside := none.holds(&in)
		require.True(t, inside)
		require.Equal(t, c.same, q.again(none, &in) != nil)
	}
}

// TestAnsweredInOrder keeps memory of which there are one piece or two, from a shelf of its own: where several of it are left, what comes
// first in tie order is looked for anew.
func TestAnsweredInOrder(t *testing.T) {
	stock := generic(t)
	x := NewIndex(stock)
	needs := briefed(t, stock)[0].needs
	p, err := x.Problem(Ask{Needs: needs})
	require.NoError(t, err)
	a := p.Least(t.Context())
	require.Equal(t, Optimal, a.Status)
	known := &answered{p.space(), cheapest, a}
	q, err := x.Problem(Ask{Needs: needs, Keep: []Choice{{Seat: build.Memory, Part: a.Build.Memory.ID, Count: a.Build.Kits}}})
	require.NoError(t, err)
	in := q.space()
	again := q.again(known, &in)
	require.NotNil(t, again)
	require.Equal(t, a.Build, again.Build)
	c := q.colOf[build.Memory]
	other := (q.cols[c].live.next(0) + 1) % len(q.cols[c].options)
	q.cols[c].live.add(other)
	known.live[c].add(slices.Index(p.cols[p.colOf[build.Memory]].options, q.cols[c].options[other]))
	require.Nil(t, q.again(known, &in))
}

// TestQuietestFromElsewhere lifts the rule of noise and asks for the quietest build from two places: how loud it is there is told of each.
func TestQuietestFromElsewhere(t *testing.T) {
	stock := generic(t)
	x := NewIndex(stock)
	needs := *briefed(t, stock)[0].needs
	var heard []unit.Sound
	for _, chair := range []unit.Length{500 * unit.Millimetre, 2000 * unit.Millimetre} {
		at := needs
		at.Place.Chair.Set(chair)
		ask := Ask{Needs: &at, Lift: []string{rule.Noise.ID}}
		kept, err := x.Problem(ask)
		require.NoError(t, err)
		fresh, err := New(stock, ask)
		require.NoError(t, err)
		got, want := kept.Quiet(t.Context()), fresh.Quiet(t.Context())
		require.Equal(t, Optimal, want.Status)
		require.Equal(t, want.Certificate.Final, got.Certificate.Final)
		require.Equal(t, want.Build, got.Build)
		heard = append(heard, got.Certificate.Final.Noise)
	}
	require.Greater(t, heard[0], heard[1])
}
