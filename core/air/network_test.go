package air_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"slipfit/core/air"
)

// closedCase has no fan: its warmth leaves by the draught through its vents and by its walls.
func closedCase() air.Machine {
	return air.Machine{
		RoomC: 22,
		Zones: []air.Zone{{Name: "case", HeatW: 20, WallWPerK: 1.5, LeakImpedance: 5000, LeakHeightM: 0.3}},
		Consumers: []air.Consumer{{
			Name: "processor", PowerW: 35, Beta: 1, RFixKPerW: 0.5, RFlowKPerW: 0.6, FlowExponent: 0.6, LimitC: 95,
		}},
	}
}

// A closed case without fans comes to rest, and its draught obeys ρ·g·H·ΔT/T over the two halves of its vents.
func TestClosedCaseDraught(t *testing.T) {
	m := closedCase()
	r, err := air.Solve(m)
	require.NoError(t, err)
	z := r.Zones[0]
	rise := z.AirC - m.RoomC
	require.Greater(t, rise, 5.0)
	require.InDelta(t, 0, z.LeakM3PerS, 1e-9, "as much in as out")
	draughtPa := r.DensityKgPerM3 * air.GravityMPerS2 * 0.3 * rise / (z.AirC + air.ZeroCelsiusK)
	q := math.Sqrt(draughtPa / 2 / (4 * 5000 * r.DensityRatio))
	near(t, q, z.OutM3PerS, 1e-3)
	near(t, 55, r.CarriedW+r.WallW, 1e-6)

	// common figure: about 0.14 Pa for 0.45 m and 8 K
	near(t, 0.14, 1.2*air.GravityMPerS2*0.45*8/300, 1e-2)

	// more heat, more draught; tight, only the walls are left
	m.Zones[0].HeatW = 40
	hot, err := air.Solve(m)
	require.NoError(t, err)
	require.Greater(t, hot.Zones[0].OutM3PerS, z.OutM3PerS)
	m.Zones[0].LeakImpedance, m.Consumers[processor].LimitC = 0, 0
	tight, err := air.Solve(m)
	require.NoError(t, err)
	near(t, m.RoomC+75/1.5, tight.Zones[0].AirC, 1e-9)
}

func TestHeatWithoutAWayOutIsAnError(t *testing.T) {
	m := closedCase()
	m.Zones[0].LeakImpedance, m.Zones[0].WallWPerK = 0, 0
	r, err := air.Solve(m)
	require.Error(t, err)
	require.False(t, r.Converged)
}

// A balanced case has no gauge pressure, where a leak's slope is infinite.
func TestBalancedCase(t *testing.T) {
	m := workedMachine()
	m.Paths[top] = m.Paths[front]
	m.Paths[top].Direction = air.Exhaust
	m.Loops, m.Consumers[processor] = nil, air.Consumer{Name: "processor", PowerW: 125, Beta: 1, RFixKPerW: 0.2}
	r, err := air.Solve(m)
	require.NoError(t, err)
	require.InDelta(t, 0, r.Zones[0].GaugePa, 1e-9)
	near(t, r.Paths[front].FlowM3PerS, r.Paths[top].FlowM3PerS, 1e-7)
	one := m.Paths[front].Fans.Fan.Operate(1200, 2000*4)
	near(t, one.FlowM3PerS, r.Paths[front].EachM3PerS, 1e-5, "each pair against its own filter")
}

// One fan in a box with one opening is the textbook operating point, either way round.
func TestNetworkOperatingPoint(t *testing.T) {
	for _, direction := range []air.Direction{air.Intake, air.Exhaust} {
		m := air.Machine{
			RoomC: 20, RefDensityKgPerM3: air.DensityKgPerM3(20, air.SeaLevelPa),
			Zones: []air.Zone{{WallWPerK: 1, LeakImpedance: 40000}},
			Paths: []air.Path{{Direction: direction, Fans: air.Fans{Count: 1, Fan: referenceFan, Speed: air.Speed{FixedRPM: 1800}}}},
		}
		r, err := air.Solve(m)
		require.NoError(t, err)
		near(t, 0.0194506, r.Paths[0].FlowM3PerS, 1e-5)
		near(t, 15.1330, math.Abs(r.Zones[0].GaugePa), 1e-4)
		near(t, 15.1330, r.Paths[0].FanRisePa, 1e-4)
	}
}

// Chambers with nothing in common solve as if each stood alone.
func TestSandwichChambersStandAlone(t *testing.T) {
	m := sandwichMachine()
	m.Partitions = nil
	both, err := air.Solve(m)
	require.NoError(t, err)

	quiet := cloned(m) // no heat in the other chamber
	quiet.Consumers[graphics].PowerW = 0
	quiet.Paths[front].Fans.Speed = air.Speed{FixedRPM: both.Paths[front].RPM}
	alone, err := air.Solve(quiet)
	require.NoError(t, err)
	near(t, both.Zones[0].AirC, alone.Zones[0].AirC, 1e-9)
	near(t, both.Consumers[processor].TempC, alone.Consumers[processor].TempC, 1e-8)
	require.Greater(t, both.Zones[1].AirC, alone.Zones[1].AirC)

	// an opening between them lets the chambers share
	m.Partitions = []air.Partition{{A: 0, B: 1, ExchangeM3PerS: 0.005}}
	shared, err := air.Solve(m)
	require.NoError(t, err)
	require.Greater(t, shared.Zones[0].AirC, both.Zones[0].AirC)
}

// Recirculation in closed form: the inlet of a lone stream rises by φ/(1−φ)·P/C.
func TestNetworkRecirculation(t *testing.T) {
	m := air.Machine{
		RoomC: 22,
		Zones: []air.Zone{{HeatW: 300, Recirculation: 0.10}},
		Paths: []air.Path{
			{Direction: air.Intake, Fans: air.Fans{Count: 1, Fan: referenceFan, Speed: air.Speed{FixedRPM: 1800}}},
			{Direction: air.Exhaust, SharedImpedance: 500},
		},
	}
	r, err := air.Solve(m)
	require.NoError(t, err)
	near(t, air.RecirculationRiseK(0.10, 300, r.Paths[0].CapacityWPerK)+22, r.Zones[0].IntakeC, 1e-3)
}

// Two equal radiators in series on one loop: the coolant passes them in order, and together they give off its heat.
func TestRadiatorsInSeries(t *testing.T) {
	m := workedMachine()
	m.Paths = append(m.Paths, m.Paths[top])
	r, err := air.Solve(m)
	require.NoError(t, err)
	near(t, 128, r.Paths[top].RadiatorW+r.Paths[2].RadiatorW, 1e-9)
	require.Greater(t, r.Paths[top].RadiatorW, r.Paths[2].RadiatorW)
	near(t, r.Paths[top].CoolantOutC, r.Paths[2].CoolantInC, 1e-12)
	near(t, r.Loops[0].HotC, r.Paths[top].CoolantInC, 1e-12)
	near(t, r.Loops[0].ColdC, r.Paths[2].CoolantOutC, 1e-12)
	one, err := air.Solve(workedMachine())
	require.NoError(t, err)
	require.Less(t, r.Loops[0].HotC, one.Loops[0].HotC)
}

// Held power at fixed speeds in closed form: P = (limit − coolant without it)/(what a watt adds).
func TestHeldPower(t *testing.T) {
	m := workedMachine()
	m.Consumers[processor].PowerW, m.Consumers[processor].LimitC = 400, 90
	r, err := air.Solve(m)
	require.NoError(t, err)
	p := r.Consumers[processor]
	require.InDelta(t, 90, p.TempC, 1e-6)
	require.True(t, p.Throttled)
	near(t, p.HeldW/400, p.HeldShare, 1e-12)

	m.Consumers[processor].LimitC = 0
	m.Consumers[processor].PowerW = p.HeldW
	free, err := air.Solve(m)
	require.NoError(t, err)
	require.InDelta(t, 90, free.Consumers[processor].TempC, 1e-6, "asked for just that, it stands at the limit by itself")

	// under control the same limit is first met by speed
	m = controlledMachine()
	m.Consumers[graphics].LimitC, m.Consumers[graphics].HotspotLimitC = 66, 0
	r, err = air.Solve(m)
	require.NoError(t, err)
	require.InDelta(t, 66, r.Consumers[graphics].TempC, 1e-6)
	require.False(t, r.Consumers[graphics].Throttled)
	require.Equal(t, 1.0, r.Consumers[graphics].HeldShare)
	require.Greater(t, r.Consumers[graphics].CallShare, 0.0)
	require.Less(t, r.Consumers[graphics].CallShare, 1.0)

	// air already over the limit: nothing can be held, and that is what it says
	m.Consumers[storage].LimitC = 25
	m.Consumers[storage].PowerW = 6
	r, err = air.Solve(m)
	require.NoError(t, err)
	require.Zero(t, r.Consumers[storage].HeldW)
	require.Greater(t, r.Consumers[storage].TempC, 25.0)
}

// A solver's answer does not depend on what it solved before.
func TestSolverHasNoMemory(t *testing.T) {
	var (
		s air.Solver
		r air.Result
	)
	for seed := range uint64(200) {
		m := newMaker(seed).machine(true)
		fresh, freshErr := air.Solve(m)
		err := s.Solve(&m, &r)
		require.Equal(t, freshErr == nil, err == nil)
		if err == nil {
			require.Equal(t, fresh.Consumers, r.Consumers, "seed %d", seed)
			require.Equal(t, fresh.Zones, r.Zones, "seed %d", seed)
		}
	}
}

func TestSolveAllocatesNothingWhenReused(t *testing.T) {
	var (
		s air.Solver
		r air.Result
	)
	m := controlledMachine()
	require.NoError(t, s.Solve(&m, &r))
	require.Zero(t, testing.AllocsPerRun(20, func() {
		if err := s.Solve(&m, &r); err != nil {
			panic(err)
		}
	}))
}
