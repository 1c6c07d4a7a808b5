package air_test

import (
	"testing"

	"github.com/stretchr/testify/require"
	"slipfit/core/air"
)

// Incropera, Fundamentals of Heat and Mass Transfer, ch. 3 forms and examples.
func TestResistances(t *testing.T) {
	near(t, 0.05, air.ConductionKPerW(0.025, 0.5, 1), 1e-12)
	near(t, 0.0081633, air.InterfaceKPerW(50e-6, 5, 12.25e-4, 0), 1e-5)
	near(t, 0.0081633+0.1e-4/12.25e-4, air.InterfaceKPerW(50e-6, 5, 12.25e-4, 0.1e-4), 1e-5)
	near(t, 0.6, air.SeriesKPerW(0.1, 0.2, 0.3), 1e-12)
	near(t, 1.2, air.ParallelKPerW(2, 3), 1e-12)
	near(t, 3.08571, air.WallWPerK(0.9, 6, 8), 1e-5)

	eta := air.FinEfficiency(40, 200, 0.3e-3, 0.030)
	near(t, 0.72925, eta, 1e-5)
	near(t, 1, air.FinEfficiency(0, 200, 0.3e-3, 0.030), 1e-12)
	overall := air.FinArrayEfficiency(eta, 0.46, 0.5)
	near(t, 0.75091, overall, 1e-5)
	near(t, 0.066586, air.ConvectionKPerW(overall*40, 0.5), 1e-5)

	// a sink never does better than its air can carry, nor than its surface
	r := air.SinkToInletKPerW(15, 10)
	require.Greater(t, r, 1/10.0)
	require.Greater(t, r, 1/15.0)
	near(t, 1/15.0, air.SinkToInletKPerW(15, 1e9), 1e-6)
}

func TestFreeConvection(t *testing.T) {
	// Incropera Example 9.2: Pr 0.69, Gr 2.63e9, Nu 147
	near(t, 147.16, air.NusseltVerticalPlate(2.63e9*0.69, 0.69), 1e-4)
	// case side 0.45 m, 32 °C in a room of 22 °C, k after U.S. Standard Atmosphere 1976
	ra, pr := air.RayleighVertical(0.45, 32, 22, air.SeaLevelPa)
	near(t, 8.541e7, ra, 1e-3)
	near(t, 58.24, air.NusseltVerticalPlate(ra, pr), 1e-3)
	near(t, 3.399, air.FreeConvectionWPerM2K(0.45, 32, 22, air.SeaLevelPa), 1e-3)
	near(t, 5.521, air.RadiationWPerM2K(0.9, 32, 22), 1e-4)
}

// Water: ρ 995 kg/m³, cp 4179 J/(kg·K) (Çengel Table A-9, between 30 and 35 °C).
func TestCoolantCapacity(t *testing.T) {
	for litres, want := range map[float64]float64{1: 69.302, 1.5: 103.953, 2: 138.604} {
		near(t, want, air.CoolantCapacityWPerK(litres, 995, 4179), 1e-5)
	}
}
