package plan

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/predict"
	"slipfit/core/rule"
	"slipfit/core/unit"

	"github.com/stretchr/testify/require"
)

// likes are so many parts like one, each by a name and a price of its own, up to so much dearer, and varied.
func likes[P any, T interface {
	*P
	Common() *part.Article
}](r *rand.Rand, n int, of T, dearer int, vary func(i int, x T)) []T {
	var list []T
	for i := range n {
		x := *of
		like := T(&x)
		like.Common().ID += fmt.Sprint("-", i)
		vary(i, like)
		like.Common().Price += unit.Money(r.IntN(dearer))
		list = append(list, like)
	}
	return list
}

// warmStock is a stock of supplies, memory, drives and boards that differ in what they bring into a case and in how loud they are, beside
// what else a build that stands holds: heat and noise decide what stands.
func warmStock(r *rand.Rand, all *part.Stock, b *build.Build) *part.Stock {
	s := &part.Stock{
		Shop: all.Shop, Services: all.Services, Processors: []*part.Processor{b.Processor}, Cases: []*part.Case{b.Case},
	}
	s.Graphics = with(s.Graphics, b.Graphics)
	s.Coolers = likes(r, 2, b.Cooler, 3000, func(_ int, x *part.Cooler) { x.Fan.Sound.Set(x.Fan.Sound.Or(0) * unit.Sound(90+r.IntN(15)) / 100) })
	s.Boards = likes(r, 2, b.Board, 3000, func(int, *part.Board) {})
	s.Supplies = likes(r, 6, b.Supply, 3000, func(_ int, x *part.Supply) {
		x.Fan.Flow.Set(x.Fan.Flow.Or(0) * unit.Flow(50+r.IntN(80)) / 100)
		x.Fan.Sound.Set(x.Fan.Sound.Or(0) * unit.Sound(85+r.IntN(25)) / 100)
		if r.IntN(2) == 0 {
			x.ZeroTo.Set(unit.Power(r.IntN(300_000)))
		}
	})
	s.Memory = likes(r, 3, b.Memory, 1000, func(i int, x *part.Memory) {
		x.Power.Set(unit.Power(1000 + 9000*i + r.IntN(2000)))
		x.Price += unit.Money(2000 * (3 - i))
	})
	drive := *b.Boot.Drive
	drive.Power.Set(unit.Power(2000 + r.IntN(9000)))
	s.Drives = append(s.Drives, &drive)
	if r.IntN(3) == 0 { // and one that is heard
		turns := drive
		turns.ID += "-turns"
		turns.Disk = true
		turns.Sound.Set(unit.Sound(15_000 + r.IntN(15_000)))
		turns.Price -= unit.Money(r.IntN(2000))
		s.Drives = append(s.Drives, &turns)
	}
	return s
}

// chambered are builds that stand, with a card in a chamber of its own, one in each case that has one.
func chambered(t *testing.T, all *part.Stock) []*build.Build {
	t.Helper()
	var list []*build.Build
	for _, c := range all.Cases {
		x := *c
		x.Layouts = slices.DeleteFunc(slices.Clone(x.Layouts), func(l part.Layout) bool { return !l.Chambers })
		if len(x.Layouts) == 0 {
			continue
		}
		some := *all
		some.Cases = []*part.Case{&x}
		p, err := New(&some, Ask{Needs: order(unit.Money(400_000), brief.AllWork, 1, 4000, 1, brief.DrawWork, 1, 400, 1)})
		require.NoError(t, err)
		if a := p.Least(t.Context()); a.Build != nil {
			list = append(list, a.Build)
		}
	}
	require.NotEmpty(t, list)
	return list
}

// TestHeatByBruteForce compares the planner with trying everything where heat and noise decide what stands.
func TestHeatByBruteForce(t *testing.T) {
	stocks := generic(t)
	cores := slices.Concat(anchors(t, stocks), chambered(t, stocks))
	var seen agreement
	for seed := range uint64(200) {
		r := rand.New(rand.NewPCG(seed, 22))
		b := cores[r.IntN(len(cores))]
		stock := warmStock(r, stocks, b)
		needs := order(unit.Money(400_000), brief.SingleWork, 1, 500+r.IntN(1500), 1+r.IntN(50), brief.AllWork, 1, 5000+r.IntN(40_000), 1+r.IntN(50))
		needs.Place.Hottest = unit.Known(unit.Temperature(22_000 + r.IntN(20_000)))
		some := limitBoards(r, stock, b, needs)
		if level, ok := Heard(some, needs); ok && r.IntN(2) > 0 {
			needs.Place.Noise.Set(level - 50 + unit.Sound(r.IntN(200)))
		}
		seen.see(t, seed, stock, Ask{Needs: needs})
	}
	t.Log(seen)
	require.Greater(t, seen.stand, 20)
	require.Greater(t, seen.possible, 200)
	require.Greater(t, seen.impossible, 200)
}

// TestBears holds what a search knows of heat to what parts bring and to the rules: what it counts of a choice is what the build brings, an
// option is unbearable where it would bring as much as the core bears, and no build that brings so much stands.
func TestBears(t *testing.T) {
	stocks := generic(t)
	cores := anchors(t, stocks)
	counted, past, bears := 0, 0, 0
	for seed := range uint64(40) {
		r := rand.New(rand.NewPCG(seed, 23))
		b := cores[r.IntN(len(cores))]
		stock := warmStock(r, stocks, b)
		needs := order(unit.Money(400_000), brief.SingleWork, 1, 500, 1)
		needs.Place.Hottest = unit.Known(unit.Temperature(22_000 + r.IntN(20_000)))
		limitBoards(r, stock, b, needs)
		p, err := New(stock, Ask{Needs: needs})
		require.NoError(t, err)
		if p.emptied() {
			continue
		}
		s := newSearch(p.frameFor(weights{perMinor: 1}, p.usual(-1), never), never)
		if s.heat == nil {
			continue
		}
		for range 40 {
			l := leaf{pick: make([]int, len(p.cols))}
			for d, c := range s.order {
				live := p.cols[c].live.list()
				o := live[r.IntN(len(live))]
				s.pick[c], l.pick[c] = o, o
				s.narrow(d, c, o)
				from, to := &s.levels[d], &s.levels[d+1]
				from.bears = slices.Repeat([]int64{math.MaxInt64}, len(to.heat))
				from.bears[0] = to.heat[0] + int64(r.IntN(2))
				require.Equal(t, to.heat[0] >= from.bears[0], s.unbearable(from, c, o), "%s in %v", p.cols[c].options[o].ID(), p.cols[c].seat)
			}
			whole := p.build(&l)
			warms := *whole
			warms.Board = nil
			brings := rule.NewView(&warms, needs).Brings()
			heat := s.levels[len(s.order)].heat
			require.InDelta(t, brings[0]*1000, float64(heat[0]), 10)
			counted++
			s.learn(len(s.order))
			if limit := s.heat.known[s.coreOf(s.heat)][0]; heat[0] >= limit {
				past++
				require.False(t, stands(&rule.BoardHeat, whole, needs) && stands(&rule.HeldPower, whole, needs) && stands(&rule.SupplySteady, whole, needs), "%v W past %v", heat[0], limit)
			} else if limit < never {
				bears++
			}
		}
	}
	t.Logf("%d builds: %d past what their core bears, %d not", counted, past, bears)
	require.Greater(t, counted, 400)
	require.Greater(t, past, 50)
	require.Greater(t, bears, 20)
}

// limitBoards has the converters of a stock's boards come to their limit about where a build with some of its parts does.
func limitBoards(r *rand.Rand, stock *part.Stock, b *build.Build, needs *brief.Needs) *build.Build {
	some := *b
	some.Board, some.Supply, some.Cooler, some.Memory = stock.Boards[r.IntN(2)], stock.Supplies[r.IntN(6)], stock.Coolers[r.IntN(2)], stock.Memory[r.IntN(3)]
	var predictor predict.Predictor
	f := predictor.Forecast(&some, needs)
	airC := f.Run(0, f.Day()).Zones[0].AirC.Expected
	for _, x := range stock.Boards {
		x.Sustained.Set(unit.Power(float64(b.Processor.Sustained.Or(0)) * 65 / (105 - airC + r.Float64()*5 - 3)))
	}
	return &some
}
