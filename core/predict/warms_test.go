package predict_test

import (
	"testing"

	"slipfit/core/part"
	"slipfit/core/predict"

	"github.com/stretchr/testify/require"
)

// TestWarmsFrom solves cores whose radiator warms what comes in with a little more heat: what is breathed with no less mixed air than is said
// grows no cooler.
func TestWarmsFrom(t *testing.T) {
	m := newMaker(t, 91)
	said, cooler := 0, 0
	for n := 0; n < 12000; {
		b, needs := m.build(), m.needs()
		if b.Cooler.Liquid == nil || b.Layout.Chambers || b.Face != part.Front && b.Face != part.Bottom && b.Face != part.Side {
			continue
		}
		var p predict.Predictor
		f := p.Core(b, needs, predict.Besides{})
		if f == nil {
			continue
		}
		n++
		heatW := float64(m.IntN(60))
		less, from, turned, known := f.Breathes(heatW)
		more, _, turns, rests := f.Breathes(heatW + 4)
		if !known || !rests || turns != turned {
			continue
		}
		for _, beta := range [...]float64{0.2, 0.35, 0.5, 0.6, 0.8, 1} {
			if from <= beta {
				said++
				require.GreaterOrEqual(t, more(beta), less(beta)-1e-3, "%s: %v of mixed air, from %v on", b.Case.ID, beta, from)
			} else if more(beta) < less(beta)-1e-3 {
				cooler++
			}
		}
	}
	t.Logf("%d times no cooler as said; %d times cooler where nothing is said", said, cooler)
	require.Greater(t, said, 10_000)
	require.Greater(t, cooler, 10)
}
