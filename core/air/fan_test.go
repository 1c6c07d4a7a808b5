package air_test

import (
	"testing"

	"github.com/stretchr/testify/require"
	"slipfit/core/air"
)

var referenceFan = air.Fan{ShutoffPa: 24, FreeM3PerS: 0.032, RatedRPM: 1800, RatedPowerW: 2}

// Published fan-law samples.
func TestFanLaws(t *testing.T) {
	near(t, 1117.647, air.FlowAtSpeed(1000, 950.0/850), 1e-6, "1000 CFM at 850 rpm to 950 rpm")
	near(t, 7.6785, air.PowerAtSpeed(5.5, 950.0/850, 1), 1e-4, "5.5 A, cube of speed")
	near(t, 1.25*1.25*0.8, air.PressureAtSpeed(1, 1.25, 0.8), 1e-12)
	near(t, 150, air.BladePassHz(9, 1000), 1e-12)
	near(t, 9.80665, air.PaPerMMH2O, 1e-12)
	near(t, 249.089, air.PaPerInH2O, 1e-12)

	// D³, D², D⁵ at equal speed (ASHRAE Handbook)
	big := referenceFan.Similar(2)
	near(t, 8*referenceFan.FreeM3PerS, big.FreeM3PerS, 1e-12)
	near(t, 4*referenceFan.ShutoffPa, big.ShutoffPa, 1e-12)
	near(t, 32*referenceFan.RatedPowerW, big.RatedPowerW, 1e-12)
}

// The quadratic fan obeys the fan laws exactly: flow ∝ N, pressure ∝ N², power ∝ N³ at any system.
func TestQuadraticFanObeysFanLaws(t *testing.T) {
	for _, k := range []float64{0, 500, 5000, 40000, 1e6} {
		a, b := referenceFan.Operate(1800, k), referenceFan.Operate(900, k)
		near(t, a.FlowM3PerS/2, b.FlowM3PerS, 1e-14)
		near(t, a.PressurePa/4, b.PressurePa, 1e-14)
		near(t, referenceFan.PressurePa(900, b.FlowM3PerS), b.PressurePa, 1e-9, "the point lies on the fan's curve")
	}
	near(t, 2.0/8, referenceFan.PowerW(900, 1), 1e-14)
	near(t, 2.0/8*0.8, referenceFan.PowerW(900, 0.8), 1e-14)
}

// Operating points of one fan, two in parallel and two in series. Computed from the closed forms.
func TestOperatingPoints(t *testing.T) {
	near(t, 23437.5, referenceFan.Impedance(), 1e-12)
	type point = [2]float64
	for _, c := range []struct {
		k                        float64
		single, parallel, series point
	}{
		{5000, point{0.029051, 4.2198}, point{0.047011, 11.0504}, point{0.030419, 4.6265}},
		{40000, point{0.019451, 15.1330}, point{0.022877, 20.9336}, point{0.023506, 22.1007}},
	} {
		for _, p := range []struct {
			want point
			got  air.OperatingPoint
		}{
			{c.single, referenceFan.Operate(1800, c.k)},
			{c.parallel, referenceFan.OperateParallel(2, 1800, c.k)},
			{c.series, referenceFan.OperateSeries(2, 1800, c.k)},
		} {
			near(t, p.want[0], p.got.FlowM3PerS, 5e-5, c.k)
			near(t, p.want[1], p.got.PressurePa, 5e-5, c.k)
		}
	}
}

func TestFanTable(t *testing.T) {
	table := air.FanTable{RatedRPM: 1800, Points: []air.FanPoint{{0, 24}, {0.008, 22.5}, {0.016, 18}, {0.024, 10.5}, {0.032, 0}}}
	require.NoError(t, table.Check())
	p := table.Operate(1800, 40000)
	near(t, 0.0193027, p.FlowM3PerS, 1e-5, "linear between points")
	near(t, 14.9037, p.PressurePa, 1e-5)
	near(t, p.PressurePa, table.PressurePa(1800, p.FlowM3PerS), 1e-9, "the point lies on the curve")

	fit := table.Fit(2) // the points lie on the quadratic
	near(t, 24, fit.ShutoffPa, 1e-9)
	near(t, 0.032, fit.FreeM3PerS, 1e-9)
	near(t, 0.0194506, fit.Operate(1800, 40000).FlowM3PerS, 1e-5)

	near(t, 0.5*0.0193027, table.Operate(900, 40000).FlowM3PerS, 1e-5, "fan laws")
	near(t, 0.032, table.Operate(1800, 0).FlowM3PerS, 1e-12, "free flow")
	near(t, 0, table.Operate(1800, 1e12).FlowM3PerS, 1e-5, "shut off")

	for name, bad := range map[string]air.FanTable{
		"no speed":        {Points: table.Points},
		"one point":       {RatedRPM: 1, Points: table.Points[:1]},
		"starts late":     {RatedRPM: 1, Points: table.Points[1:]},
		"no free flow":    {RatedRPM: 1, Points: table.Points[:3]},
		"rising pressure": {RatedRPM: 1, Points: []air.FanPoint{{0, 10}, {0.01, 12}, {0.02, 0}}},
	} {
		require.Error(t, bad.Check(), name)
	}
}

func TestImpedances(t *testing.T) {
	near(t, 2000, air.ImpedanceFromPoint(0.05, 5), 1e-12)
	near(t, 3500, air.ImpedanceSeries(1000, 2500), 1e-12)
	near(t, 2500, air.ImpedanceParallel(10000, 10000), 1e-12, "two equal openings: a quarter")
	near(t, 1/(0.1+0.05)/(0.1+0.05), air.ImpedanceParallel(100, 400), 1e-12)
}
