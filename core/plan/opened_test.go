package plan

import (
	"math/rand/v2"
	"slices"
	"testing"

	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/rule"
	"slipfit/core/unit"

	"github.com/stretchr/testify/require"
)

// click changes an ask as a customer would: one choice more or one less, other money, a part or a maker that may not be used, another
// need, a rule lifted.
func click(r *rand.Rand, stock *part.Stock, ask Ask, needs *brief.Needs) Ask {
	ask.Keep, ask.Without = slices.Clone(ask.Keep), slices.Clone(ask.Without)
	changed := *ask.Needs
	ask.Needs = &changed
	articles := stock.Articles()
	switch r.IntN(12) {
	case 0, 1, 2, 3:
		s := build.Seat(r.IntN(build.Seats))
		options := offer(stock, s, []int{1, 2})
		if s == build.Services || len(options) == 0 || slices.ContainsFunc(ask.Keep, func(c Choice) bool { return c.Seat == s }) {
			return ask
		}
		o := options[r.IntN(len(options))]
		c := Choice{Seat: s, Part: o.ID()}
		if c.Part != "" && r.IntN(2) == 0 {
			c.Count, c.Face = o.Count, o.Face
		}
		c.Owned = c.Part != "" && r.IntN(8) == 0
		ask.Keep = append(ask.Keep, c)
	case 4, 5:
		if n := len(ask.Keep); n > 0 {
			ask.Keep = slices.Delete(ask.Keep, n-1, n)
		}
	case 6:
		changed.Budget = changed.Budget * unit.Money(80+r.IntN(15)) / 100
	case 7:
		changed.Budget = needs.Budget * unit.Money(100+r.IntN(30)) / 100
	case 8:
		ask.Without = append(ask.Without, articles[r.IntN(len(articles))].ID)
	case 9:
		ask.Without = nil
	case 10:
		some := r.IntN(len(changed.By))
		for i := range changed.By {
			if changed.By[i] = needs.By[i]; i%4 == some%4 {
				changed.By[i] = brief.Need{}
			}
		}
	case 11:
		if ask.Lift = nil; r.IntN(2) == 0 {
			ask.Lift = []string{rule.All[r.IntN(len(rule.All))].ID}
		}
	}
	return ask
}

// TestOpenedIsTakenOver clicks its way through small stocks on one index, now and then asking of some seats alone or ending the question
// early: what is said of every option is what a new index says. It takes far less searching.
func TestOpenedIsTakenOver(t *testing.T) {
	all := generic(t)
	cores := anchors(t, all)
	asked, ended, resumed, at := 0, 0, 0, [2]int64{}
	for seed := range uint64(160) {
		r := rand.New(rand.NewPCG(seed, 1201))
		stock := smallStock(r, all, cores[r.IntN(len(cores))])
		needs := someNeeds(r, stock)
		x := NewIndex(stock)
		p, err := New(stock, Ask{Needs: needs, Lift: []string{rule.Budget.ID}})
		require.NoError(t, err)
		if a := p.Least(t.Context()); a.Build != nil {
			needs.Budget = a.Price * unit.Money(100+r.IntN(30)) / 100
		}
		ask := Ask{Needs: needs}
		for range 14 {
			fresh, err := New(stock, ask)
			require.NoError(t, err)
			kept, err := x.Problem(ask)
			require.NoError(t, err)
			var seats []build.Seat
			if r.IntN(4) == 0 {
				seats = append(seats, kept.cols[r.IntN(len(kept.cols))].seat, build.Memory)
			}
			want := fresh.Open(t.Context(), seats...)
			if r.IntN(6) == 0 {
				kept.watch.every = 20
				for i, w := range kept.Open(endsAfter(t, 1+r.IntN(40)), seats...) {
					if w.State == Optimal || w.State == Infeasible {
						require.Equal(t, want[i].State, w.State, "seed %d", seed)
						require.Equal(t, want[i].Price, w.Price, "seed %d", seed)
					} else {
						ended++
					}
				}
				kept, err = x.Problem(ask)
				require.NoError(t, err)
			}
			had := len(x.opened)
			got := kept.Open(t.Context(), seats...)
			require.Equal(t, states(want), states(got), "seed %d", seed)
			require.LessOrEqual(t, len(x.opened), openedKept)
			for i := range got {
				if b := got[i].Build(); b != nil && len(ask.Lift) == 0 {
					proof := rule.Prove(b, ask.Needs)
					require.True(t, proof.Stands(), "seed %d", seed)
					require.Equal(t, got[i].Price, b.Price())
				}
			}
			if had > 0 {
				asked++
				at[0], at[1] = at[0]+fresh.watch.course.Nodes, at[1]+kept.watch.course.Nodes
				if kept.watch.course.Nodes < fresh.watch.course.Nodes {
					resumed++
				}
			}
			ask = click(r, stock, ask, needs)
		}
	}
	require.Greater(t, resumed, asked/5)
	require.Greater(t, ended, 100)
	require.Less(t, 2*at[1], at[0])
	t.Logf("%d asked, %d with fewer nodes, %d left by questions ended; nodes %d and %d", asked, resumed, ended, at[0], at[1])
}

// TestOpenedAgain asks what is open a second time, and then with what the cheapest build holds kept, a seat more each time: nothing is left
// to be searched where the least prices are those of builds that hold it.
func TestOpenedAgain(t *testing.T) {
	stock := generic(t)
	x := NewIndex(stock)
	ask := Ask{Needs: briefed(t, stock)[0].needs}
	open := func() ([]Way, *Problem) {
		p, err := x.Problem(ask)
		require.NoError(t, err)
		return p.Open(t.Context()), p
	}
	first, p := open()
	require.Positive(t, p.watch.course.Nodes)
	again, q := open()
	require.Equal(t, states(first), states(again))
	require.Zero(t, q.watch.course.Nodes)
	require.Len(t, x.opened, 1)
	least := slices.MinFunc(first, func(a, b Way) int {
		if a.State != Optimal || b.State != Optimal {
			return int(b.State) - int(a.State)
		}
		return int(a.Price - b.Price)
	})
	for _, c := range Choices(least.Build(), 0)[:3] {
		ask.Keep = append(ask.Keep, c)
		_, narrowed := open()
		require.Less(t, 2*narrowed.watch.course.Nodes, p.watch.course.Nodes)
	}
	require.Len(t, x.opened, openedKept)
}

// TestOpenedAdmitsMore asks what is open without a part, and then with so many of that part kept: what is known says nothing of it.
func TestOpenedAdmitsMore(t *testing.T) {
	stock := generic(t)
	x := NewIndex(stock)
	needs := briefed(t, stock)[0].needs
	whole, err := New(stock, Ask{Needs: needs})
	require.NoError(t, err)
	var can []*part.Article
	for _, w := range whole.Open(t.Context(), build.Memory) {
		if w.State == Optimal && w.Build().Kits == 1 {
			can = append(can, w.Part)
		}
	}
	part, other := can[0].ID, can[1].ID
	p, err := x.Problem(Ask{Needs: needs, Without: []string{part}})
	require.NoError(t, err)
	p.Open(t.Context(), build.Memory)
	require.Len(t, x.opened, 1)
	for _, c := range []struct {
		ask    Ask
		inside bool
	}{
		{Ask{Needs: needs, Without: []string{part}}, true},
		{Ask{Needs: needs}, false},
		{Ask{Needs: needs, Keep: []Choice{{Seat: build.Memory, Part: part}}}, false},
		{Ask{Needs: needs, Keep: []Choice{{Seat: build.Memory, Part: part, Count: 1}}}, false},
		{Ask{Needs: needs, Keep: []Choice{{Seat: build.Memory, Part: other}}}, true},
		{Ask{Needs: needs, Keep: []Choice{{Seat: build.Memory, Part: other, Count: 2}}}, true},
		{Ask{Needs: needs, Keep: []Choice{{Seat: build.Memory, Part: other, Count: 3}}}, false},
	} {
		q, err := x.Problem(c.ask)
		require.NoError(t, err)
		in := q.space()
		_, inside := x.opened[0].holds(&in)
		require.Equal(t, c.inside, inside, "%+v", c.ask.Keep)
	}
}
