package predict

import (
	"testing"

	"slipfit/catalog"

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
