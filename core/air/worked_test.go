package air_test

import (
	"testing"

	"github.com/stretchr/testify/require"
	"slipfit/core/air"
)

// supplyEfficiency is the worked example's supply: 0.90, 0.92, 0.89 at 20, 50, 100 % of 850 W, straight between.
func supplyEfficiency(load float64) float64 {
	if load < 0.5 {
		return 0.90 + (load-0.2)/0.3*0.02
	}
	return 0.92 - (load-0.5)/0.5*0.03
}

// readings gives every quantity of the worked example's tables from a solved machine.
func readings(m air.Machine, r air.Result) map[string]float64 {
	z, f, rad, loop := r.Zones[0], r.Paths[front], r.Paths[top], r.Loops[0]
	gpu, ssd := r.Consumers[graphics], r.Consumers[storage]
	ratio := func(p int) float64 { return r.Paths[p].RPM / m.Paths[p].Fans.Fan.RatedRPM }
	dc := r.HeatInW - r.DuctW
	load := dc / 850
	wall := dc / supplyEfficiency(load)
	capFront := r.Paths[front].CapacityWPerK
	return map[string]float64{
		"rho_room":                r.DensityKgPerM3,
		"a_front":                 m.Paths[front].Fans.Fan.Impedance(),
		"a_radiator":              m.Paths[top].Fans.Fan.Impedance(),
		"shutoff_front":           ratio(front) * ratio(front) * m.Paths[front].Fans.Fan.ShutoffPa,
		"shutoff_radiator":        ratio(top) * ratio(top) * m.Paths[top].Fans.Fan.ShutoffPa,
		"p_case":                  z.GaugePa,
		"q_front_each":            f.EachM3PerS,
		"q_front":                 f.FlowM3PerS,
		"q_radiator_each":         rad.EachM3PerS,
		"q_radiator":              rad.FlowM3PerS,
		"q_leak":                  z.LeakM3PerS,
		"front_rise":              f.FanRisePa,
		"filter_loss":             f.SharedLossPa,
		"radiator_fan_rise":       rad.FanRisePa,
		"radiator_loss":           rad.EachLossPa,
		"front_fan_power":         f.FanPowerW,
		"radiator_fan_power":      rad.FanPowerW,
		"c_front":                 capFront,
		"c_radiator":              rad.CapacityWPerK,
		"c_leak":                  air.CapacityWPerK(r.DensityKgPerM3, z.LeakM3PerS),
		"c_coolant":               m.Loops[0].CapacityWPerK,
		"ua_wall":                 m.Zones[0].WallWPerK,
		"ua_radiator":             rad.RadiatorUAWPerK,
		"capacity_ratio":          rad.Exchange.CapacityRatio,
		"ntu":                     rad.Exchange.NTU,
		"effectiveness_approx":    rad.Exchange.Effectiveness,
		"effectiveness_exact":     air.CrossflowUnmixedExact.Effectiveness(rad.Exchange.NTU, rad.Exchange.CapacityRatio),
		"radiator_heat":           rad.RadiatorW,
		"t_in":                    z.IntakeC,
		"t_case":                  z.AirC,
		"wall_loss":               z.WallLossW,
		"radiator_air_out":        rad.AirOutC,
		"t_out":                   z.OutletC,
		"coolant_in":              loop.HotC,
		"coolant_out":             loop.ColdC,
		"r_paste":                 air.InterfaceKPerW(50e-6, 5, 12.25e-4, 0),
		"t_processor":             r.Consumers[processor].TempC,
		"graphics_inlet":          gpu.InletC,
		"r_graphics":              gpu.ResistanceKPerW,
		"graphics_core":           gpu.TempC,
		"graphics_hotspot":        gpu.HotspotC,
		"storage_inlet":           ssd.InletC,
		"storage":                 ssd.TempC,
		"p_dc":                    dc,
		"load_fraction":           load,
		"supply_efficiency":       supplyEfficiency(load),
		"wall_power":              wall,
		"supply_loss":             wall - dc,
		"q_front_cfm":             f.FlowM3PerS * air.CFMPerM3PerS,
		"q_front_m3h":             f.FlowM3PerS * air.M3PerHPerM3PerS,
		"case_rise_without_walls": air.RiseK(300+35+6+f.FanPowerW, f.FlowM3PerS, r.DensityKgPerM3),
		"case_rise_with_walls":    z.AirC - z.IntakeC,
	}
}

// Every result of the worked example, by the general solver. Tolerance 0.01 % (the figures are printed to five or six
// digits and use R = 287.05 J/(kg·K)).
func TestWorkedExample(t *testing.T) {
	m := workedMachine()
	r, err := air.Solve(m)
	require.NoError(t, err)
	require.True(t, r.Converged)
	got := readings(m, r)
	rows := readVectors(t, "worked-example.csv")
	require.Len(t, got, len(rows))
	for _, row := range rows {
		near(t, number(t, row["value"]), got[row["quantity"]], 1e-4, row["quantity"])
	}
	last := readVectors(t, "worked-fixed-point.csv")[0]
	for _, q := range []string{"t_in", "t_case", "t_out"} {
		require.InDelta(t, number(t, last[q]), got[q], 1e-4, q)
	}
	require.InDelta(t, 0, r.EnergyResidualW, 1e-9)
}

func TestWorkedVariants(t *testing.T) {
	variants := map[string]func(*air.Machine){
		"base":            func(*air.Machine) {},
		"radiator_intake": asIntake,
		"altitude_2000":   func(m *air.Machine) { m.AltitudeM = 2000 },
		"room_30":         func(m *air.Machine) { m.RoomC = 30 },
		"coolant_curve":   onCoolantCurve,
	}
	rows := readVectors(t, "worked-variants.csv")
	for name, change := range variants {
		t.Run(name, func(t *testing.T) {
			m := workedMachine()
			change(&m)
			r, err := air.Solve(m)
			require.NoError(t, err)
			got := readings(m, r)
			for _, row := range rows {
				near(t, number(t, row[name]), got[row["quantity"]], 1e-4, row["quantity"])
			}
			require.InDelta(t, 0, r.EnergyResidualW, 1e-6)
		})
	}
}

func TestWorkedVariantDetails(t *testing.T) {
	m := workedMachine()
	asIntake(&m)
	r, err := air.Solve(m)
	require.NoError(t, err)
	near(t, 25.0262, r.Paths[top].AirOutC, 1e-4, "air after the radiator")
	near(t, 24.6401, r.Zones[0].FreshC, 1e-4, "mixed with the inward leak")

	m = workedMachine()
	m.AltitudeM = 2000
	r, err = air.Solve(m)
	require.NoError(t, err)
	near(t, 0.93830, r.DensityKgPerM3, 1e-4, "density at 2000 m")
	near(t, 0.155794, r.Consumers[graphics].ResistanceKPerW, 1e-4, "graphics sink at 2000 m")

	m = workedMachine()
	onCoolantCurve(&m)
	r, err = air.Solve(m)
	require.NoError(t, err)
	near(t, 1139.62, r.Paths[top].RPM, 1e-5, "radiator fans at rest")
}

func TestWorkedSensitivities(t *testing.T) {
	speed := func(path int, f float64) func(*air.Machine) {
		return func(m *air.Machine) { m.Paths[path].Fans.Speed.FixedRPM *= f }
	}
	power := func(consumer int, f float64) func(*air.Machine) {
		return func(m *air.Machine) { m.Consumers[consumer].PowerW *= f }
	}
	recirculation := func(phi float64) func(*air.Machine) {
		return func(m *air.Machine) { m.Zones[0].Recirculation = phi }
	}
	changes := map[string]func(*air.Machine){
		"radiator fans +5 %":    speed(top, 1.05),
		"radiator fans -5 %":    speed(top, 0.95),
		"front fans +5 %":       speed(front, 1.05),
		"front fans -5 %":       speed(front, 0.95),
		"graphics power +10 %":  power(graphics, 1.1),
		"processor power +10 %": power(processor, 1.1),
		"recirculation 0":       recirculation(0),
		"recirculation 0.10":    recirculation(0.10),
		"recirculation 0.20":    recirculation(0.20),
	}
	base := workedMachine()
	r, err := air.Solve(base)
	require.NoError(t, err)
	before := readings(base, r)
	rows := readVectors(t, "worked-sensitivities.csv")
	require.Len(t, rows, len(changes))
	for _, row := range rows {
		m := workedMachine()
		changes[row["change"]](&m)
		r, err := air.Solve(m)
		require.NoError(t, err)
		after := readings(m, r)
		for _, q := range []string{"t_case", "t_processor", "graphics_core", "storage"} {
			require.InDelta(t, number(t, row[q]), after[q]-before[q], 6e-4, "%s: %s", row["change"], q)
		}
	}
}
