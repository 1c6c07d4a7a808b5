package predict_test

import (
	"math"
	"testing"

	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/predict"
	"slipfit/core/sound"
	"slipfit/core/unit"

	"github.com/stretchr/testify/require"
)

// No core is called too loud whichever supply feeds it that is not with one of them and as much heat as there is or more; and most are where
// they may be a decibel quieter than they are.
func TestLouderFed(t *testing.T) {
	m := newMaker(t, 47)
	var p, q predict.Predictor
	type kind struct{ chambers, liquid bool }
	asked, said := map[kind]int{}, map[kind]int{}
	askedAny, saidAny := 0, 0
	for n := 0; n < 12000; {
		b, needs := m.build(), m.needs()
		needs.Loads = needs.Loads[:1]
		needs.Place.Room.Set(unit.Temperature(15_000 + m.IntN(30_000)))
		f := q.Forecast(b, needs)
		r := f.Run(0, predict.Ordinary)
		if r.Err != nil || len(r.Missing)+len(r.Unheard) > 0 || !carried(f, b.Supply) {
			continue
		}
		n++
		warms := *b
		for s := range build.Seat(build.Seats) {
			if !build.SetOf(predict.Warming...).Has(s) {
				warms.Clear(s)
			}
		}
		heatW := predict.Brings(&warms, &needs.Loads[0])
		leastW := heatW * m.Float64()
		if m.IntN(2) == 0 {
			leastW = heatW
		}
		fed := m.supplies(b)
		if m.IntN(2) == 0 {
			fed = predict.NewSupplies([]*part.Supply{b.Supply})
		}
		besides := predict.NewBesides([]int{int(leastW)}, []int{int(heatW) + 1}, []int{int(heatW) + 1}).Fed(fed)
		open := *b
		for _, s := range append([]build.Seat{build.Supply}, predict.Warming...) {
			open.Clear(s)
		}
		disks := sound.Silent()
		if d := predict.Disks(b); d > 0 {
			disks = d
		}
		over := func(dBA float64) bool {
			return p.LouderFed(&open, needs, besides, 0, unit.Sound(math.Ceil(1000*dBA)), disks)
		}
		require.False(t, over(r.ChairDBA.Expected), "%s %s: %s with %s on %s at %v", b.Case.ID, b.Layout.ID, b.Processor.ID, b.Cooler.ID, b.Face, needs.Loads[0])
		of := kind{b.Layout.Chambers, b.Cooler.Liquid != nil}
		asked[of]++
		if over(r.ChairDBA.Expected - 1) {
			said[of]++
		}
		if fans := m.anyFans(b); fans != nil {
			bare := open
			bare.Fans = nil
			whichever := func(dBA float64) bool {
				return p.LouderWithAnyFans(&bare, needs, besides.Aired(fans), 0, unit.Sound(math.Ceil(1000*dBA)), disks)
			}
			require.False(t, whichever(r.ChairDBA.Expected), "%s %s: %s with %s on %s at %v, and fans", b.Case.ID, b.Layout.ID, b.Processor.ID, b.Cooler.ID, b.Face, needs.Loads[0])
			askedAny++
			if whichever(r.ChairDBA.Expected - 2) {
				saidAny++
			}
		}
	}
	all, so := 0, 0
	for of, n := range asked {
		t.Logf("%+v: %d of %d", of, said[of], n)
		require.Positive(t, said[of], "%+v", of)
		all, so = all+n, so+said[of]
	}
	require.Len(t, asked, 4)
	require.Greater(t, 2*so, all)
	t.Logf("with any fans: %d of %d", saidAny, askedAny)
	require.Greater(t, 4*saidAny, askedAny)
}
