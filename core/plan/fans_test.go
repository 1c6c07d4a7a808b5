package plan

import (
	"math/rand/v2"
	"slices"
	"testing"

	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/unit"

	"github.com/stretchr/testify/require"
)

// airy is a stock with the case of a build that stands, with some of the fans it brings, two fans to buy for it, and a few processors,
// coolers and supplies.
func airy(r *rand.Rand, all *part.Stock, b *build.Build) *part.Stock {
	s := &part.Stock{
		Shop: all.Shop, Services: all.Services, Memory: []*part.Memory{b.Memory},
		Boards: []*part.Board{b.Board}, Drives: []*part.Drive{b.Boot.Drive},
	}
	s.Cases = likes(r, 1, b.Case, 1, func(_ int, x *part.Case) { x.Fans = x.Fans[:r.IntN(len(x.Fans)+1)] })
	s.Processors = likes(r, 2, b.Processor, 3000, func(_ int, x *part.Processor) { x.Sustained.Set(x.Sustained.Or(0) * unit.Power(70+r.IntN(40)) / 100) })
	s.Graphics = with(s.Graphics, b.Graphics)
	s.Coolers = likes(r, 2, b.Cooler, 3000, func(_ int, x *part.Cooler) { x.Fan.Sound.Set(x.Fan.Sound.Or(0) * unit.Sound(90+r.IntN(15)) / 100) })
	s.Supplies = likes(r, 3, b.Supply, 3000, func(_ int, x *part.Supply) { x.Fan.Flow.Set(x.Fan.Flow.Or(0) * unit.Flow(50+r.IntN(80)) / 100) })
	s.Fans = sample(r, fansFor(all, b.Layout), 2)
	return s
}

// fansFor lists the fans of a stock that some place of a layout takes.
func fansFor(all *part.Stock, l *part.Layout) []*part.Fan {
	return slices.DeleteFunc(slices.Clone(all.Fans), func(f *part.Fan) bool {
		return !slices.ContainsFunc(l.FanPlaces, func(p part.FanPlace) bool { return p.Takes(f.Holes.Or(0)) })
	})
}

// TestFansByBruteForce compares the planner with trying everything where fans bought for the case decide what stands.
func TestFansByBruteForce(t *testing.T) {
	stocks := generic(t)
	cores := slices.DeleteFunc(slices.Concat(anchors(t, stocks), chambered(t, stocks)), func(b *build.Build) bool { return len(b.Layout.FanPlaces) == 0 })
	require.NotEmpty(t, cores)
	var seen agreement
	fanned := 0
	for seed := range uint64(60) {
		r := rand.New(rand.NewPCG(seed, 33))
		b := cores[r.IntN(len(cores))]
		stock := airy(r, stocks, b)
		needs := order(unit.Money(400_000), brief.SingleWork, 1, 500+r.IntN(1500), 1+r.IntN(50), brief.AllWork, 1, 5000+r.IntN(40_000), 1+r.IntN(50))
		needs.Place.Hottest = unit.Known(unit.Temperature(22_000 + r.IntN(20_000)))
		some := *b
		some.Case = stock.Cases[0]
		some.Layout = &some.Case.Layouts[slices.IndexFunc(some.Case.Layouts, func(l part.Layout) bool { return l.ID == b.Layout.ID })]
		some.Fans = []build.FanSet{{Fan: stock.Fans[0], Count: 1, Face: some.Layout.FanPlaces[0].Face}}
		some.Processor, some.Cooler, some.Supply = stock.Processors[r.IntN(2)], stock.Coolers[r.IntN(2)], stock.Supplies[r.IntN(3)]
		if level, ok := Heard(&some, needs); ok && r.IntN(4) > 0 {
			needs.Place.Noise.Set(level - 600 + unit.Sound(r.IntN(800)))
		}
		ask := Ask{Needs: needs}
		seen.see(t, seed, stock, ask)
		p, err := New(stock, ask)
		require.NoError(t, err)
		if a := p.Least(t.Context()); a.Build != nil && len(a.Build.Fans) > 0 {
			fanned++
		}
	}
	t.Log(seen, fanned, "with fans bought")
	require.Greater(t, seen.stand, 40)
	require.Greater(t, fanned, 3)
	require.Greater(t, seen.impossible, 200)
}
