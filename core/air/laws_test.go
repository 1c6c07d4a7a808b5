package air_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"slipfit/core/air"
)

// Random machines of every kind come to rest, with heat and air balanced.
func TestEveryMachineComesToRest(t *testing.T) {
	var (
		s    air.Solver
		r    air.Result
		most int
	)
	fail := 0
	for seed := range uint64(20000) {
		m := newMaker(seed).machine(true)
		if err := s.Solve(&m, &r); err != nil {
			fail++
			continue
		}
		most = max(most, r.Evaluations)
		require.LessOrEqual(t, math.Abs(r.EnergyResidualW), 1e-6*math.Max(1, r.HeatInW), "seed %d", seed)
		require.LessOrEqual(t, r.MassResidualKgS, 1e-9, "seed %d", seed)
		require.LessOrEqual(t, r.ControlResidualK, 1e-6, "seed %d", seed)
		requireLimitsHeld(t, &m, &r, seed)
	}
	t.Logf("failed %d, most evaluations %d", fail, most)
}

// A part is at its limit when it has given up power, and below it otherwise.
func requireLimitsHeld(t *testing.T, m *air.Machine, r *air.Result, seed uint64) {
	t.Helper()
	for k, c := range r.Consumers {
		in := &m.Consumers[k]
		over := math.Inf(-1)
		if in.LimitC > 0 {
			over = c.TempC - in.LimitC
		}
		if in.HotspotLimitC > 0 {
			over = math.Max(over, c.HotspotC-in.HotspotLimitC)
		}
		require.True(t, c.HeldW <= in.PowerW && c.HeldW >= 0)
		if c.HeldW > 0 {
			require.LessOrEqual(t, over, 1e-5, "seed %d consumer %d", seed, k)
		}
		if c.Throttled {
			require.GreaterOrEqual(t, over, -1e-5, "seed %d consumer %d", seed, k)
			require.Equal(t, 1.0, c.CallShare, "seed %d consumer %d", seed, k)
		}
	}
}
