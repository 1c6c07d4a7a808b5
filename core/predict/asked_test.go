package predict_test

import (
	"testing"

	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/predict"
	"slipfit/core/unit"

	"github.com/stretchr/testify/require"
)

// A predictor that was asked before says what one says that never was: of a core with other disks, with other fans, at another level, and of
// parts in the open beside others and on another day.
func TestAskedBefore(t *testing.T) {
	m := newMaker(t, 22)
	var p predict.Predictor
	louder, not, with := 0, 0, 0
	for range 400 {
		b, n := m.build(), m.needs()
		carded, fanned := *b, *b
		carded.Graphics = pick(m, m.stock.Graphics)
		fanned.Fans = []build.FanSet{{Fan: pick(m, m.stock.Fans), Face: part.Rear, Count: 1 + m.IntN(2)}}
		heard := (&predict.Predictor{}).Forecast(b, n).Run(0, predict.Ordinary).ChairDBA.Expected
		besides := m.besides(b, n, 0)
		for range 12 {
			x := b
			switch m.IntN(4) {
			case 0:
				x = &carded
				with++
			case 1:
				x = &fanned
				with++
			}
			wish := unit.Sound(heard*1000) + unit.Sound(m.IntN(4)-2)*1500
			disksDBA := float64(20 + m.IntN(25))
			said := p.Louder(x, n, besides, 0, wish, disksDBA)
			require.Equal(t, (&predict.Predictor{}).Louder(x, n, besides, 0, wish, disksDBA), said, "%s with %v, disks of %v dB(A)", b.Case.ID, x.Fans, disksDBA)
			if said {
				louder++
			} else {
				not++
			}
			for _, day := range []predict.Day{predict.Ordinary, predict.Hottest} {
				require.Equal(t, (&predict.Predictor{}).Open(x, n, n.Loads[0], day), p.Open(x, n, n.Loads[0], day))
			}
		}
	}
	t.Logf("%d louder, %d not, %d of other builds", louder, not, with)
	require.Greater(t, louder, 500)
	require.Greater(t, not, 500)
	require.Greater(t, with, 500)
}
