package predict_test

import (
	"math"
	"testing"

	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/predict"
	"slipfit/core/sound"
	"slipfit/core/unit"

	"github.com/stretchr/testify/require"
)

// No build is called too loud with just what it holds that is not, in one chamber or in two, least of all where something turns between
// the amounts of heat that are solved: which chamber is the warmer one, or whether the supply's fan is at rest. What is heard is rounded up to the least wish that it meets.
func TestLouderJustSo(t *testing.T) {
	m := newMaker(t, 21)
	var p, q predict.Predictor
	asked, said := 0, 0
	for asked < 4000 {
		b, n := m.build(), m.needs()
		if b.Layout.Chambers == (asked < 2000) {
			continue
		}
		n.Loads = n.Loads[:1]
		run := func() *predict.Run { return q.Forecast(b, n).Run(0, predict.Ordinary) }
		if b.Layout.Chambers && m.IntN(2) == 0 {
			b.Board = evenly(b, n)
		}
		if m.IntN(2) == 0 {
			supply := *b.Supply
			supply.ZeroTo.Set(unit.Power(max(0, run().DCW.Expected*1000) + float64(m.IntN(4000)-2000)))
			b.Supply = &supply
		}
		heard := run().ChairDBA.Expected
		asked++
		require.False(t, p.LouderSo(b, n, predict.Besides{}, 0, unit.Sound(math.Ceil(heard*1000))), "%s %s: %s with %s, %s on %s at %v", b.Case.ID, b.Layout.ID, b.Processor.ID, b.Cooler.ID, b.Supply.ID, b.Face, n.Loads[0])
		if p.LouderSo(b, n, predict.Besides{}, 0, unit.Sound(heard*1000)-50) {
			said++
		}
	}
	t.Logf("%d of %d said that are 0.05 dB too loud", said, asked)
	require.Greater(t, said, asked/2)
}

// TestBetweenSteps holds every width of step to its slack: with no heat in it is a core heard by more than that less than in all of it, in two
// chambers or in one, though the supply's fan starts or the other chamber becomes the warmer one there.
func TestBetweenSteps(t *testing.T) {
	m := newMaker(t, 405)
	var p, q predict.Predictor
	var said [predict.Steps]int
	var less [predict.Steps]float64
	for range 3000 {
		b, n := m.build(), m.needs()
		n.Loads = n.Loads[:1]
		if b.Layout.Chambers && m.IntN(2) == 0 {
			b.Board = evenly(b, n)
		}
		if m.IntN(2) == 0 {
			supply := *b.Supply
			supply.ZeroTo.Set(unit.Power(max(0, q.Forecast(b, n).Run(0, predict.Ordinary).DCW.Expected*1000) + float64(m.IntN(2)*m.IntN(40000)+m.IntN(4000)-2000)))
			b.Supply = &supply
		}
		f := p.Core(b, n, predict.Besides{})
		for nth := range said {
			fromW, wideW, dBA, slack, known := f.Between(nth, float64(m.IntN(60)))
			if !known {
				continue
			}
			said[nth]++
			for range 4 {
				heard := f.HeardAt(fromW + m.Float64()*wideW)
				require.Less(t, dBA-heard, slack, "%s %s: %s on %s and %s, from %v W to %v W more", b.Case.ID, b.Layout.ID, b.Cooler.ID, b.Face, b.Supply.ID, fromW, wideW)
				less[nth] = max(less[nth], dBA-heard)
			}
		}
	}
	t.Logf("%v steps, by so much at most: %v dB", said, less)
	for nth := range said {
		require.Greater(t, said[nth], 2000)
	}
}

// A build of two chambers is too loud with any heat between two amounts of which that is said, with its supply or with any of several.
func TestLouderBetween(t *testing.T) {
	m := newMaker(t, 24)
	var p, q predict.Predictor
	said, fed, inside := 0, 0, 0
	for range 3000 {
		b, n := m.build(), m.needs()
		if !b.Layout.Chambers {
			continue
		}
		n.Loads = n.Loads[:1]
		for _, s := range []build.Seat{build.Boot, build.Cache, build.Archive, build.Cards} {
			b.Clear(s)
		}
		fromW, wideW := float64(m.IntN(40)), 1+m.IntN(60)
		warm := func(w float64) float64 {
			memory, hot := *b.Memory, *b
			n.Loads[0].Memory = 100_000
			memory.Power.Set(unit.Power(1000 * w / float64(memory.Modules.Or(1)) / float64(b.Kits)))
			hot.Memory = &memory
			b.Memory = &memory
			return q.Forecast(&hot, n).Run(0, predict.Ordinary).ChairDBA.Expected
		}
		least := warm(fromW)
		besides := predict.NewBesides([]int{0}, []int{wideW}, []int{wideW + 100})
		wish := unit.Sound(least*1000) - unit.Sound(m.IntN(100))
		one := p.LouderBetween(b, n, build.SetOf(build.Memory), besides, 0, wish, sound.Silent())
		open := *b
		open.Supply = nil
		any := p.LouderBetween(&open, n, build.SetOf(build.Memory), besides.Fed(m.supplies(b)), 0, wish, sound.Silent()) && carried(q.Forecast(b, n), b.Supply)
		if one {
			said++
		}
		if any {
			fed++
		}
		for range 6 {
			heard := warm(fromW + m.Float64()*float64(wideW))
			require.True(t, !one && (!any || !carried(q.Forecast(b, n), b.Supply)) || heard*1000 > float64(wish), "%s %s: %s with %s, %s on %s", b.Case.ID, b.Layout.ID, b.Processor.ID, b.Cooler.ID, b.Supply.ID, b.Face)
			if heard < least {
				inside++
			}
		}
	}
	t.Logf("%d said, %d with any supply; %d warmer ones are quieter", said, fed, inside)
	require.Greater(t, said, 100)
	require.Greater(t, fed, 50)
	require.Greater(t, inside, 50)
}

// No converters and no drive are called over their limit with just what a build holds that are not, whether one chamber has them or two, and
// whatever comes in through a radiator. The board's figure and the drive's limit have them come near it.
func TestOverJustSo(t *testing.T) {
	m := newMaker(t, 25)
	var p, q predict.Predictor
	type count struct{ over, said, only int } // by 0.1 K; of which it is said; of which it is not said of more heat
	var boards, drives count
	for asked := 0; asked < 4000; asked++ {
		b, n := m.build(), m.needs()
		for b.Layout.Chambers == (asked < 2000) {
			b, n = m.build(), m.needs()
		}
		n.Loads = n.Loads[:1]
		if b.Layout.Chambers && m.IntN(2) == 0 {
			b.Board = evenly(b, n)
		}
		run := func() *predict.Run {
			f := q.Forecast(b, n)
			return f.Run(0, f.Day())
		}
		if m.IntN(2) == 0 {
			supply := *b.Supply
			supply.ZeroTo.Set(unit.Power(max(0, run().DCW.Expected*1000) + float64(m.IntN(4000)-2000)))
			b.Supply = &supply
		}
		r := run()
		board, drive := *b.Board, *b.Boot.Drive
		board.Sustained.Set(unit.Power(math.Ceil(65_000 * r.Parts[0].HeldW.Expected / (105 - r.Zones[0].AirC.Expected + m.Float64()*0.3 - 0.1))))
		drive.Limit.Set(unit.Temperature(r.Drives[0].TempC.Expected*1000) + unit.Temperature(m.IntN(300)-200))
		b.Board, b.Boot.Drive = &board, &drive
		w := p.Warmth(b, n, build.SetOf(predict.Warming...), predict.NewBesides(nil, nil, []int{100}))
		if w == nil {
			continue
		}
		see := func(c *count, part *predict.Part, limitC float64, said, more bool) {
			if len(part.Missing) > 0 {
				return
			}
			if part.TempC.Expected > limitC+0.1 {
				c.over++
			}
			if said {
				c.said++
				require.Greater(t, part.TempC.Expected, limitC, "%s in %s %s: %s with %s, %s on %s at %v", part.Name, b.Case.ID, b.Layout.ID, b.Processor.ID, b.Cooler.ID, b.Supply.ID, b.Face, n.Loads[0])
				if !more {
					c.only++
				}
			}
		}
		r = run()
		see(&boards, &r.Board, 105, w.BoardOverSo(0), w.BoardOver(0, 0.97))
		if len(r.Drives) == 1 {
			see(&drives, &r.Drives[0], r.Drives[0].LimitC, w.DriveOverSo(0), w.DriveOver(0, build.Boot))
		}
	}
	t.Logf("boards %v, drives %v", boards, drives)
	for _, c := range []count{boards, drives} {
		require.Greater(t, c.said, c.over/3)
		require.Greater(t, c.only, 30)
	}
}

// evenly is the build's board with as much power of its own as leaves its chamber about as warm as the card's.
func evenly(b *build.Build, n *brief.Needs) *part.Board {
	var p predict.Predictor
	least, most := 0, 150_000
	board := *b.Board
	for most-least > 100 {
		some := *b
		board.Own.Set(unit.Power((least + most) / 2))
		some.Board = &board
		if z := p.Forecast(&some, n).Run(0, predict.Ordinary).Zones; z[0].AirC.Expected < z[1].AirC.Expected {
			least = (least + most) / 2
		} else {
			most = (least + most) / 2
		}
		p = predict.Predictor{}
	}
	return &board
}
