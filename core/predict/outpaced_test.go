package predict

import (
	"testing"

	"slipfit/catalog"
	"slipfit/core/brief"
	"slipfit/core/build"

	"github.com/stretchr/testify/require"
)

// A supply's fan turns faster by less than nine tenths of the share that its load grows by, from one load to any more.
func TestLoadOutpacesTheFan(t *testing.T) {
	s, err := catalog.Embedded()
	require.NoError(t, err)
	steepest := 0.0
	for _, p := range s.Supplies {
		var m model
		x := m.supplied(p)
		x.zeroToW = 0
		rating := float64(x.rating) / 1000
		for loadW := 0.01 * rating; loadW < 1.2*rating; loadW += 0.01 * rating {
			const step = 1e-6
			steepest = max(steepest, (x.rpm(loadW*(1+step))/x.rpm(loadW)-1)/step)
		}
	}
	require.Less(t, steepest, 0.9)
	require.Greater(t, steepest, 0.8)
}

// A cooler yet unknown may load the supply with as much as its fans draw.
func TestAnyCoolerIsLoad(t *testing.T) {
	s, err := catalog.Embedded()
	require.NoError(t, err)
	var p Predictor
	for _, c := range s.Cases {
		b := build.Build{Case: c, Layout: &c.Layouts[0], Supply: s.Supplies[0]}
		if b.Board, b.Processor, b.Cooler = within(s, b.Layout); b.Board == nil {
			continue
		}
		require.Zero(t, p.Core(&b, &brief.Needs{}, Besides{}).model.coolerMostW())
		b.Cooler = &anyCooler
		require.Equal(t, 4*3*12.0, p.Core(&b, &brief.Needs{}, Besides{}).model.coolerMostW())
	}
}
