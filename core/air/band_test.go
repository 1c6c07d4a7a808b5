package air_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
	"slipfit/core/air"
)

// The first-order band agrees with twice the standard deviation of sampled machines, whose inputs are drawn apart from
// the propagation code: normal, independent, same standard uncertainties.
func TestBandsAgreeWithSampling(t *testing.T) {
	for name, m := range map[string]air.Machine{"fixed speeds": workedMachine(), "all curves": controlledMachine()} {
		t.Run(name, func(t *testing.T) {
			tol := air.SuggestedTolerances()
			r, bands, err := air.SolveWithBands(m, tol)
			require.NoError(t, err)
			require.True(t, r.Converged)

			const samples = 8000
			var s air.Solver
			var out air.Result
			var sum, squares [4]float64
			rng := rand.New(rand.NewPCG(3, 9))
			for range samples {
				c := sampled(m, tol, rng)
				require.NoError(t, s.Solve(&c, &out))
				for i, y := range temperatures(&out) {
					y += tol.SensorK * rng.NormFloat64()
					sum[i] += y
					squares[i] += y * y
				}
			}
			for i, b := range []air.Band{bands.ConsumerC[processor], bands.ConsumerC[graphics], bands.ZoneAirC[0], bands.CoolantHotC[0]} {
				mean := sum[i] / samples
				u := 2 * math.Sqrt(squares[i]/samples-mean*mean)
				require.InEpsilon(t, u, b.High-b.Expected, 0.07, "output %d", i)
				require.InEpsilon(t, u, b.Expected-b.Low, 0.07, "output %d", i)
				require.InDelta(t, mean, b.Expected, 0.15*u, "output %d", i)
			}
		})
	}
}

func temperatures(r *air.Result) [4]float64 {
	return [4]float64{r.Consumers[processor].TempC, r.Consumers[graphics].TempC, r.Zones[0].AirC, r.Loops[0].HotC}
}

func sampled(m air.Machine, tol air.Tolerances, rng *rand.Rand) air.Machine {
	m = cloned(m)
	share := func(u float64) float64 { return 1 + u*rng.NormFloat64() }
	m.RoomC += tol.RoomK * rng.NormFloat64()
	m.Zones[0].HeatW *= share(tol.PowerShare)
	for i := range m.Paths {
		s := share(tol.FanFlowShare)
		m.Paths[i].Fans.Fan.FreeM3PerS *= s
		m.Paths[i].Fans.Fan.ShutoffPa *= s * s
		m.Paths[i].Radiator.UAWPerK /= share(tol.ResistanceShare)
	}
	for k := range m.Consumers {
		m.Consumers[k].PowerW *= share(tol.PowerShare)
		s := share(tol.ResistanceShare)
		m.Consumers[k].RFixKPerW *= s
		m.Consumers[k].RFlowKPerW *= s
	}
	return m
}

// Held power has no upward band where all of it is held, and a downward one where the limit is near.
func TestBandOfHeldPower(t *testing.T) {
	m := controlledMachine()
	m.Consumers[processor].LimitC = 63.5
	m.Consumers[processor].RFixKPerW = 0.25
	r, bands, err := air.SolveWithBands(m, air.SuggestedTolerances())
	require.NoError(t, err)
	require.False(t, r.Consumers[processor].Throttled)
	require.Equal(t, 125.0, bands.HeldW[processor].Expected)
	require.Less(t, bands.HeldW[processor].Low, 125.0)
}

func TestNoToleranceNoBand(t *testing.T) {
	_, bands, err := air.SolveWithBands(controlledMachine(), air.Tolerances{})
	require.NoError(t, err)
	require.Equal(t, bands.ConsumerC[graphics].Low, bands.ConsumerC[graphics].High)
}

func BenchmarkSolveWithBands(b *testing.B) {
	m := controlledMachine()
	for b.Loop() {
		if _, _, err := air.SolveWithBands(m, air.SuggestedTolerances()); err != nil {
			b.Fatal(err)
		}
	}
}
