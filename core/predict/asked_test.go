package predict_test

import (
	"testing"

	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/predict"
	"slipfit/core/unit"

	"github.com/stretchr/testify/require"
)

// A predictor that was asked before says what one says that never was: of a core with other disks, with other fans, with another supply, at
// another level, and of parts in the open beside others and on another day.
func TestAskedBefore(t *testing.T) {
	m := newMaker(t, 22)
	var p predict.Predictor
	louder, not, with, fed, louderBetween := 0, 0, 0, 0, 0
	for range 400 {
		b, n := m.build(), m.needs()
		carded, fanned, supplied := *b, *b, *b
		carded.Graphics = pick(m, m.stock.Graphics)
		fanned.Fans = []build.FanSet{{Fan: pick(m, m.stock.Fans), Face: part.Rear, Count: 1 + m.IntN(2)}}
		supplied.Supply = pick(m, m.stock.Supplies)
		heard := (&predict.Predictor{}).Forecast(b, n).Run(0, predict.Ordinary).ChairDBA.Expected
		besides := m.besides(b, n, 0)
		for range 12 {
			x := b
			switch m.IntN(5) {
			case 0:
				x = &carded
				with++
			case 1:
				x = &fanned
				with++
			case 2:
				x = &supplied
				with++
			}
			wish := unit.Sound(heard*1000) + unit.Sound(m.IntN(4)-2)*1500
			disksDBA := float64(20 + m.IntN(25))
			between := p.LouderBetween(x, n, 0, besides, 0, wish, disksDBA)
			require.Equal(t, (&predict.Predictor{}).LouderBetween(x, n, 0, besides, 0, wish, disksDBA), between, "%s, disks of %v dB(A)", b.Case.ID, disksDBA)
			if x.Layout.Chambers && between {
				louderBetween++
			}
			said := p.Louder(x, n, besides, 0, wish, disksDBA)
			require.Equal(t, (&predict.Predictor{}).Louder(x, n, besides, 0, wish, disksDBA), said, "%s with %v, disks of %v dB(A)", b.Case.ID, x.Fans, disksDBA)
			if said {
				louder++
			} else {
				not++
			}
			for _, day := range []predict.Day{predict.Ordinary, predict.Hottest} {
				fresh, again := (&predict.Predictor{}).Core(x, n, besides).Run(0, day), p.Core(x, n, besides).Run(0, day)
				require.Equal(t, fresh.Parts, again.Parts)
				require.Equal(t, fresh.Cooling, again.Cooling, "%s in %s", x.Supply.ID, b.Case.ID)
				require.Equal(t, fresh.WallW, again.WallW)
				require.Equal(t, fresh.HeatInW, again.HeatInW)
				if b.Layout.Supply.OwnAir.Or(false) && x == &supplied {
					fed++
				}
				require.Equal(t, (&predict.Predictor{}).Open(x, n, n.Loads[0], day), p.Open(x, n, n.Loads[0], day))
			}
		}
	}
	t.Logf("%d louder, %d not, %d of other builds", louder, not, with)
	require.Greater(t, louder, 500)
	require.Greater(t, not, 500)
	require.Greater(t, with, 500)
	require.Greater(t, fed, 200)
	require.Greater(t, louderBetween, 100)
}

// Parts in the open are those that have air of their own, each in the room of the day that is asked of.
func TestOpenHoldsItsParts(t *testing.T) {
	m := newMaker(t, 23)
	var p predict.Predictor
	cards, hotter := 0, 0
	for range 300 {
		b, n := m.build(), m.needs()
		var want []build.Seat
		if b.Cooler.Air != nil {
			want = append(want, build.Processor)
		}
		if b.Graphics != nil {
			want = append(want, build.Graphics)
			cards++
		}
		day, hot := p.Open(b, n, n.Loads[0], predict.Ordinary), p.Open(b, n, n.Loads[0], predict.Hottest)
		rise := max(0, float64(n.Place.Hottest.Or(0)-n.Place.Room.Or(0))/1000)
		var seats []build.Seat
		for i, q := range day.Parts {
			seats = append(seats, q.Seat)
			require.InDelta(t, rise, hot.Parts[i].InletC.Expected-q.InletC.Expected, 0.01, "%s in a room %v K warmer", q.Name, rise)
			if rise > 1 {
				hotter++
			}
		}
		require.Equal(t, want, seats)
	}
	require.Greater(t, cards, 100)
	require.Greater(t, hotter, 100)
}
