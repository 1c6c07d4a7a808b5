package plan

import (
	"math/rand/v2"
	"reflect"
	"slices"
	"testing"

	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/unit"

	"github.com/stretchr/testify/require"
)

// humming is a stock of cases, cards, coolers, supplies and drives like those of a build that stands in one chamber under an air cooler, of
// which the quieter ones mostly cost more.
func humming(r *rand.Rand, all *part.Stock, b *build.Build) *part.Stock {
	s := &part.Stock{
		Shop: all.Shop, Services: all.Services, Processors: []*part.Processor{b.Processor}, Memory: []*part.Memory{b.Memory},
	}
	s.Boards = likes(r, 2, b.Board, 400, func(i int, x *part.Board) { // the cheaper one takes no more than the drives that are heard
		x.Price += unit.Money(i * 500)
		x.M2 = slices.Clone(x.M2)
		for j := range x.M2 {
			x.M2[j].Lengths = []unit.Whole{60, 80}[:1+i]
		}
	})
	louder := func(fan *part.FanFigures, price *unit.Money) {
		percent := 80 + r.IntN(40)
		fan.Sound.Set(fan.Sound.Or(0) * unit.Sound(percent) / 100)
		*price += unit.Money(max(0, 120-percent) * 60)
	}
	s.Cases = likes(r, 2, b.Case, 3000, func(_ int, x *part.Case) {
		x.Fans = slices.Clone(x.Fans)
		for j := range x.Fans {
			louder(&x.Fans[j].FanFigures, &x.Price)
		}
	})
	if b.Graphics != nil {
		s.Graphics = likes(r, 2, b.Graphics, 4000, func(_ int, x *part.Graphics) { x.Sound.Set(x.Sound.Or(0) * unit.Sound(90+r.IntN(20)) / 100) })
	}
	s.Coolers = likes(r, 3, b.Cooler, 1500, func(_ int, x *part.Cooler) { louder(&x.Fan, &x.Price) })
	s.Supplies = likes(r, 4, b.Supply, 1500, func(_ int, x *part.Supply) {
		x.Fan.Flow.Set(x.Fan.Flow.Or(0) * unit.Flow(50+r.IntN(80)) / 100)
		if r.IntN(2) == 0 {
			x.ZeroTo.Set(unit.Power(r.IntN(400_000)))
		}
		louder(&x.Fan, &x.Price)
	})
	s.Drives = likes(r, 3, b.Boot.Drive, 500, func(i int, x *part.Drive) {
		if x.Module.Set(80); i < 2 {
			x.Disk = true
			x.Module.Set(60)
			x.Sound.Set(unit.Sound(14_000 + r.IntN(14_000)))
			x.Price -= unit.Money(r.IntN(3000))
		}
	})
	return s
}

// TestDinByBruteForce compares the planner with trying everything where what stands is decided by how loud case, card, cooler, supply and
// drives are together, and the quieter ones cost more.
func TestDinByBruteForce(t *testing.T) {
	stocks := generic(t)
	cores := slices.DeleteFunc(anchors(t, stocks), func(b *build.Build) bool {
		return b.Layout.Chambers || b.Cooler.Air == nil || b.Boot.Drive.Form != part.FormM2
	})
	require.NotEmpty(t, cores)
	stand, none, listened := 0, 0, 0
	for seed := range uint64(60) {
		r := rand.New(rand.NewPCG(seed, 31))
		b := cores[r.IntN(len(cores))]
		stock := humming(r, stocks, b)
		needs := order(unit.Money(400_000), brief.AllWork, 1, 5000+r.IntN(40_000), 1+r.IntN(50), brief.DrawWork, 0, 2000, 1+r.IntN(50))
		some := *b
		some.Case, some.Cooler, some.Supply, some.Boot.Drive = stock.Cases[r.IntN(2)], stock.Coolers[r.IntN(3)], stock.Supplies[r.IntN(4)], stock.Drives[r.IntN(3)]
		some.Layout = &some.Case.Layouts[slices.IndexFunc(some.Case.Layouts, func(l part.Layout) bool { return l.ID == b.Layout.ID })]
		level, known := Heard(&some, needs)
		require.True(t, known)
		needs.Place.Noise.Set(level - 2600 + unit.Sound(r.IntN(2500)))
		ask := Ask{Needs: needs}
		var cheapest, best *leaf
		cols := all(t, stock, ask, func(l *leaf, cols []*column) {
			if cheapest == nil || cheaper(l, cheapest) || !cheaper(cheapest, l) && earlier(l, cheapest, cols) {
				cheapest = l
			}
			if best == nil || worthier(l, best) || !worthier(best, l) && earlier(l, best, cols) {
				best = l
			}
		})
		p, err := New(stock, ask)
		require.NoError(t, err)
		agrees(t, p.Least(t.Context()), cheapest, cols, ask)
		if p.posed().din != nil && len(p.posed().din.choirs) > 0 {
			listened++
		}
		p, err = New(stock, ask)
		require.NoError(t, err)
		agrees(t, p.Best(t.Context()), best, cols, ask)
		if best != nil {
			stand++
		} else {
			none++
		}
	}
	t.Logf("%d stocks hold a build, %d none, of %d the sum was looked at", stand, none, listened)
	require.Greater(t, stand, 20)
	require.Greater(t, none, 5)
	require.Greater(t, listened, 50)
}

// What searches find out of cores is kept for problems that say the same of what is asked, and for no others.
func TestCoresAreLearntOnce(t *testing.T) {
	stock := generic(t)
	x := NewIndex(stock)
	held := 0
	for _, tr := range briefed(t, stock) {
		if _, asks := tr.needs.Place.Noise.Get(); !asks {
			continue
		}
		least := func(needs *brief.Needs, keep ...Choice) (*Problem, Answer) {
			p, err := x.Problem(Ask{Needs: needs, Keep: keep})
			require.NoError(t, err)
			return p, p.leastBuild()
		}
		p, a := least(tr.needs)
		if a.Build == nil || p.din == nil {
			continue
		}
		choirs := len(p.din.choirs)
		require.Positive(t, choirs, tr.name)

		richer := *tr.needs
		richer.Budget += 10_000
		q, b := least(&richer)
		require.Same(t, p.din.learnt, q.din.learnt, tr.name)
		require.Equal(t, a.Price, b.Price, tr.name)
		require.Len(t, q.din.choirs, choirs, "%s: asked again", tr.name)
		require.Equal(t, reflect.ValueOf(p.bearing.known).Pointer(), reflect.ValueOf(q.bearing.known).Pointer(), tr.name)

		louder := *tr.needs
		louder.Place.Noise.Set(louder.Place.Noise.Or(0) + 1000)
		nearer := *tr.needs
		nearer.Place.Chair.Set(500 * unit.Millimetre)
		for _, needs := range []*brief.Needs{&louder, &nearer} {
			q, _ = least(needs)
			require.NotSame(t, p.din.learnt, q.din.learnt, tr.name)
		}
		q, _ = least(tr.needs, Choice{Seat: build.Processor, Part: a.Build.Processor.ID})
		require.NotSame(t, p.din.learnt, q.din.learnt, tr.name)

		alone, err := New(stock, Ask{Needs: &louder})
		require.NoError(t, err)
		again, err := x.Problem(Ask{Needs: &louder})
		require.NoError(t, err)
		require.Equal(t, alone.leastBuild().Price, again.leastBuild().Price, tr.name)
		held++
	}
	require.Greater(t, held, 2)
}
