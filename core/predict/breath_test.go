package predict_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/predict"
	"slipfit/core/unit"

	"github.com/stretchr/testify/require"
)

// No drive is called too hot whichever supply feeds a build that is not with one of them; and most are where it may be half as much warmer
// than the room as it is.
func TestDriveOverFed(t *testing.T) {
	m := newMaker(t, 41)
	var p, q predict.Predictor
	type kind struct{ chambers, ownAir, liquid bool }
	asked, said := map[kind]int{}, map[kind]int{}
	askedAny, saidAny, askedKind, saidKind, kindOpen := 0, 0, 0, 0, 0
	type question struct {
		b     *build.Build
		needs *brief.Needs
		fed   *predict.Supplies
	}
	var last question
	for n := 0; n < 12000; {
		b, needs := m.build(), m.needs()
		needs.Loads = needs.Loads[:1]
		fed := m.supplies(b)
		if m.IntN(2) == 0 { // nothing but what is in it, and so warm that fans of the case turn at full speed
			needs.Place.Hottest.Set(unit.Temperature(46_000 + m.IntN(4000)))
			fed = predict.NewSupplies([]*part.Supply{b.Supply})
		}
		if last.b != nil && m.IntN(2) == 0 { // the last question, but for one part
			like := *last.b
			switch m.IntN(4) {
			case 0:
				like.Cooler, like.Face = b.Cooler, b.Face
			case 1:
				like.Board = b.Board
			case 2:
				like.Graphics = b.Graphics
			default:
				like.Fans = b.Fans
			}
			b, needs, fed = &like, last.needs, last.fed
		}
		f := q.Forecast(b, needs)
		if f == nil {
			continue
		}
		r := f.Run(0, predict.Hottest)
		if r.Err != nil || len(r.Missing) > 0 || len(r.Drives[0].Missing) > 0 || !carried(f, b.Supply) {
			continue
		}
		n++
		last = question{b, needs, fed}
		d := &r.Drives[0]
		counted := build.SetOf(build.Boot)
		if m.IntN(2) == 0 {
			counted = build.SetOf(predict.Warming...)
		}
		others, all := *b, *b
		all.Board = nil
		for s := range build.Seat(build.Seats) {
			if counted.Has(s) || !slices.Contains(predict.Warming, s) {
				others.Clear(s)
			}
		}
		leastW := predict.Brings(&others, &needs.Loads[0])
		mostW := predict.Brings(&all, &needs.Loads[0])
		besides := predict.NewBesides([]int{int(leastW)}, []int{int(leastW) + 1}, []int{int(mostW) + 1}).Fed(fed)
		hot := *b.Boot.Drive
		open := *b
		open.Supply, open.Boot.Drive = nil, &hot
		over := func(limitC float64) bool {
			hot.Limit.Set(unit.Temperature(math.Ceil(1000 * limitC)))
			return p.DriveOverFed(&open, needs, counted, besides, 0, build.Boot)
		}
		require.False(t, over(d.TempC.Expected), "%s %s: %s with %s on %s at %v", b.Case.ID, b.Layout.ID, b.Processor.ID, b.Cooler.ID, b.Face, needs.Loads[0])
		of := kind{b.Layout.Chambers, b.Layout.Supply.OwnAir.Or(false), b.Cooler.Liquid != nil}
		asked[of]++
		halfway := over(d.TempC.Expected - (d.InletC.Expected-r.RoomC)/2)
		if halfway {
			said[of]++
		}
		if fans := m.anyFans(b); fans != nil {
			bare := open
			bare.Fans = nil
			whichever := func(limitC float64) bool {
				hot.Limit.Set(unit.Temperature(math.Ceil(1000 * limitC)))
				return p.DriveOverWithAnyFans(&bare, needs, counted, besides.Aired(fans), 0, build.Boot)
			}
			require.False(t, whichever(d.TempC.Expected), "%s %s: %s with %s on %s at %v, and fans", b.Case.ID, b.Layout.ID, b.Processor.ID, b.Cooler.ID, b.Face, needs.Loads[0])
			halfway, fresh := whichever(d.TempC.Expected-(d.InletC.Expected-r.RoomC)/2), predict.Predictor{}
			require.Equal(t, halfway, fresh.DriveOverWithAnyFans(&bare, needs, counted, besides.Aired(fans), 0, build.Boot), "%s", b.Cooler.ID)
			if askedAny++; halfway {
				saidAny++
			}
			hot.Limit.Set(unit.Temperature(math.Ceil(1000 * (d.TempC.Expected - (d.InletC.Expected-r.RoomC)/2))))
		}
		if _, known := predict.KindOf(b); known {
			whichever := func(limitC float64) bool {
				hot.Limit.Set(unit.Temperature(math.Ceil(1000 * limitC)))
				return p.DriveOverWithAnyCooler(&open, needs, counted, besides, 0, build.Boot)
			}
			require.False(t, whichever(d.TempC.Expected), "%s %s: %s with %s at %v", b.Case.ID, b.Layout.ID, b.Processor.ID, b.Cooler.ID, needs.Loads[0])
			if askedKind++; whichever(d.TempC.Expected - (d.InletC.Expected-r.RoomC)/2) {
				saidKind++
				require.True(t, halfway, "%s %s: no more is said of a kind than of one cooler of it", b.Case.ID, b.Cooler.ID)
			} else if halfway {
				kindOpen++
			}
		}
		var alone predict.Predictor // that has not seen others
		require.Equal(t, halfway, alone.DriveOverFed(&open, needs, counted, besides, 0, build.Boot), "%s", b.Cooler.ID)
	}
	all, so := 0, 0
	for of, n := range asked {
		t.Logf("%+v: %d of %d", of, said[of], n)
		require.Positive(t, said[of], "%+v", of)
		all, so = all+n, so+said[of]
	}
	require.Len(t, asked, 8)
	require.Greater(t, 2*so, all)
	t.Logf("with any cooler of a kind: %d of %d, open where with its own it is said: %d", saidKind, askedKind, kindOpen)
	require.Less(t, 20*kindOpen, saidKind)
	t.Logf("with any fans: %d of %d", saidAny, askedAny)
	require.Greater(t, 4*saidAny, askedAny)
}

// anyFans is the fans bought for a build's case and a few others, or others alone where it has none; nil where they do not fit.
func (m maker) anyFans(b *build.Build) *predict.AnyFans {
	list := []*part.Fan{pick(m, m.stock.Fans), pick(m, m.stock.Fans)}
	for _, set := range b.Fans {
		fits := func(p part.FanPlace) bool {
			return p.Face == set.Face && p.Takes(set.Fan.Holes.Or(0)) && set.Count <= int(p.Fans.Or(0))
		}
		if !slices.ContainsFunc(b.Layout.FanPlaces, fits) {
			return nil
		}
		list = slices.Insert(list, m.IntN(3), set.Fan)
	}
	for i, f := range list {
		if len(b.Fans) == 0 || f != b.Fans[0].Fan { // others may be lit: what they draw for that is no heat that there must be
			lit := *f
			lit.Lights = []part.Lead{{Kind: part.HeaderRGB, Current: unit.Known(unit.Current(m.IntN(3000)))}}
			list[i] = &lit
		}
	}
	return predict.NewAnyFans(list)
}

// A chamber takes in no more air than what it may breathe, through the plate as well as from the room.
func TestBreath(t *testing.T) {
	m := newMaker(t, 43)
	var p, q, other predict.Predictor
	chambers, near := 0, 0
	for n := 0; n < 6000; {
		b, needs := m.build(), m.needs()
		needs.Loads = needs.Loads[:1]
		needs.Place.Hottest.Set(unit.Temperature(25_000 + m.IntN(25_000)))
		r := q.Forecast(b, needs).Run(0, predict.Hottest)
		if r.Err != nil || len(r.Missing) > 0 || !carried(other.Forecast(b, needs), b.Supply) {
			continue
		}
		n++
		all := *b
		all.Board = nil
		mostW := int(predict.Brings(&all, &needs.Loads[0])) + 1
		besides := predict.NewBesides([]int{0}, []int{mostW}, []int{mostW}).Fed(predict.NewSupplies([]*part.Supply{b.Supply}))
		for z, c := range p.Breathed(r, b, besides) {
			name := fmt.Sprintf("%s %s, chamber %d: %s with %s on %s at %v", b.Case.ID, b.Layout.ID, z, b.Processor.ID, b.Cooler.ID, b.Face, needs.Loads[0])
			require.False(t, c.Less(1-1e-6), "%s: %g m³/s", name, c.M3PerS)
			require.LessOrEqual(t, c.HeatW, c.GoneW*(1+1e-6), name)
			require.False(t, c.Calm && !r.Free() && !b.Layout.Chambers, name)
			for i := range c.Turned {
				require.LessOrEqual(t, c.Turned[i], c.Fastest[i]+1e-9, name)
			}
			if b.Layout.Chambers && c.GivesAir {
				require.LessOrEqual(t, c.GaugePa, c.MostPa, name)
			} else if b.Layout.Chambers {
				require.GreaterOrEqual(t, c.GaugePa, c.LeastPa, name)
			}
			chambers++
			if c.Less(1.1) {
				near++
			}
		}
	}
	t.Logf("%d of %d take in nine tenths or more", near, chambers)
	require.Greater(t, 2*near, chambers)
}
