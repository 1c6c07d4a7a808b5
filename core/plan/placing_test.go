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

// crowded is a stock like the parts of a build, with boards of two sockets for modules, one of them without a heat-sink, and modules of two
// lengths that one socket or both take: which is left bare hangs on both. A bare one comes to about its limit in the air of a case, where the
// room is so warm.
func crowded(r *rand.Rand, all *part.Stock, b *build.Build, room unit.Temperature) *part.Stock {
	s := &part.Stock{
		Shop: all.Shop, Services: all.Services, Processors: []*part.Processor{b.Processor}, Memory: []*part.Memory{b.Memory}, Cases: []*part.Case{b.Case},
	}
	s.Graphics = with(s.Graphics, b.Graphics)
	s.Boards = likes(r, 2, b.Board, 1000, func(i int, x *part.Board) {
		socket := x.M2[0]
		socket.Shares = nil
		bare := socket
		socket.ID, bare.ID = "m2a", "m2b"
		socket.Lengths, bare.Lengths = []unit.Whole{80}, []unit.Whole{60, 80}
		if i == 1 {
			socket.Lengths, bare.Lengths = bare.Lengths, socket.Lengths
		}
		socket.Sink.Set(true)
		bare.Sink.Set(false)
		x.M2 = []part.M2Slot{socket, bare}
	})
	if r.IntN(4) == 0 {
		s.Fans = sample(r, fansFor(all, b.Layout), 1)
	}
	s.Coolers = likes(r, 2, b.Cooler, 1000, func(int, *part.Cooler) {})
	s.Supplies = likes(r, 3, b.Supply, 1000, func(_ int, x *part.Supply) { x.Fan.Flow.Set(x.Fan.Flow.Or(0) * unit.Flow(50+r.IntN(80)) / 100) })
	s.Drives = likes(r, 4, b.Boot.Drive, 2000, func(i int, x *part.Drive) {
		x.Module.Set([]unit.Whole{60, 80}[i%2])
		x.Sink.Set(false)
		x.SinkAir.Set(unit.Resistance(7000 + r.IntN(3000)))
		x.Idle.Set(unit.Power(500))
		x.Power.Set(unit.Power(2500 + r.IntN(2000)))
		x.Limit.Set(room + 20*unit.Temperature(x.Power.Or(0)+x.Idle.Or(0))/2 + unit.Temperature(1000+r.IntN(7_000)))
	})
	return s
}

// TestPlacingByBruteForce compares the planner with trying everything where it hangs on the modules beside it whether a module grows too hot.
func TestPlacingByBruteForce(t *testing.T) {
	stocks := generic(t)
	cores := slices.DeleteFunc(anchors(t, stocks), func(b *build.Build) bool { return b.Boot.Drive.Form != part.FormM2 })
	require.NotEmpty(t, cores)
	stand, decided, placed, everywhere := 0, 0, 0, 0
	for seed := range uint64(120) {
		r := rand.New(rand.NewPCG(seed, 32))
		b := cores[r.IntN(len(cores))]
		room := unit.Temperature(22_000 + r.IntN(12_000))
		stock := crowded(r, stocks, b, room)
		needs := order(unit.Money(400_000), brief.AllWork, 1, 5000, 1, brief.CacheSize, 100_000, 100_000, 1)
		needs.Place.Hottest = unit.Known(room)
		ask := Ask{Needs: needs}
		var cheapest *leaf
		cols := all(t, stock, ask, func(l *leaf, cols []*column) {
			if cheapest == nil || cheaper(l, cheapest) || !cheaper(cheapest, l) && earlier(l, cheapest, cols) {
				cheapest = l
			}
		})
		p, err := New(stock, ask)
		require.NoError(t, err)
		agrees(t, p.Least(t.Context()), cheapest, cols, ask)
		for _, f := range p.many {
			if f.early == nil || f.early.Placed == nil {
				continue
			}
			for range 60 {
				options := picked(r, p, f.cols)
				if a := f.anywhere; a != nil {
					if anywhereFails(t, r, p, a, options) {
						everywhere++
					}
					continue
				}
				found := f.ask(p, options)
				require.Equal(t, p.run(f.query, options), found, "early query %d, of %v", f.nth, options)
				if found == failed {
					placed++
				}
			}
		}
		if cheapest == nil {
			continue
		}
		stand++
		p, err = New(stock, Ask{Needs: needs, Lift: []string{rule.DriveHeat.ID}})
		require.NoError(t, err)
		if any := p.Least(t.Context()); int64(any.Price) < cheapest.price {
			decided++
		}
	}
	t.Logf("%d stocks hold a build, in %d it costs more for heat; by %d choices a module fails in its place, by %d wherever it sits", stand, decided, placed, everywhere)
	require.Greater(t, stand, 30)
	require.Greater(t, decided, 10)
	require.Greater(t, placed, 200)
	require.Greater(t, everywhere, 200)
}

// picked is a live option of each of some columns.
func picked(r *rand.Rand, p *Problem, cols []int) []int {
	options := make([]int, len(cols))
	for i, c := range cols {
		live := p.cols[c].live.list()
		options[i] = live[r.IntN(len(live))]
	}
	return options
}

// anywhereFails reports options that fail wherever modules sit, and holds that to some ways to take the places that the sockets allow.
func anywhereFails(t *testing.T, r *rand.Rand, p *Problem, a *anywhere, options []int) bool {
	t.Helper()
	if a.ask(p, options) != failed {
		return false
	}
	slots := p.slots()
	for range 20 {
		some := picked(r, p, a.of.cols)
		for i, at := range a.taken {
			if at >= 0 {
				some[i] = options[at]
			}
		}
		if slots == nil || slots.beside(p, a.of, some) != failed {
			require.EqualValues(t, failed, p.run(a.of.query, some), "early query %d, of %v", a.of.nth, some)
		}
	}
	return true
}
