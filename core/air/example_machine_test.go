package air_test

import "slipfit/core/air"

// Places in the worked machine.
const (
	front, top = 0, 1 // paths

	processor, graphics, storage, supply = 0, 1, 2, 3 // consumers
)

// workedMachine is the machine of testdata/reference/air/worked-example.csv: a mid-tower with a radiator of three
// sections as top exhaust and two larger fans in front behind one filter.
func workedMachine() air.Machine {
	pasteKPerW := air.InterfaceKPerW(50e-6, 5, 12.25e-4, 0)
	return air.Machine{
		RoomC:             22,
		RefDensityKgPerM3: air.DensityKgPerM3(22, air.SeaLevelPa),
		Zones: []air.Zone{{
			Name: "case", HeatW: 35, WallWPerK: air.WallWPerK(0.9, 6, 8), LeakImpedance: 20000, Recirculation: 0.04,
		}},
		Paths: []air.Path{
			{
				Name: "front", Direction: air.Intake, SharedImpedance: 2000,
				Fans: air.Fans{
					Count: 2,
					Fan:   air.Fan{ShutoffPa: 18, FreeM3PerS: 0.038, RatedRPM: 1500, RatedPowerW: 2.4},
					Speed: air.Speed{FixedRPM: 1200},
				},
			},
			{
				Name: "top", Direction: air.Exhaust, EachImpedance: 40000,
				Fans: air.Fans{
					Count: 3,
					Fan:   air.Fan{ShutoffPa: 24, FreeM3PerS: 0.032, RatedRPM: 1800, RatedPowerW: 2.2},
					Speed: air.Speed{FixedRPM: 1200},
				},
				Radiator: air.Radiator{
					Sections: 3, UAWPerK: 20, FlowM3PerS: 0.015, Exponent: 0.5, Arrangement: air.CrossflowUnmixedApprox,
				},
			},
		},
		Loops: []air.Loop{{Name: "processor", CapacityWPerK: air.CoolantCapacityWPerK(1.5, 995, 4179), PumpW: 3}},
		Consumers: []air.Consumer{
			{Name: "processor", PowerW: 125, Medium: air.ToCoolant, RFixKPerW: air.SeriesKPerW(0.05, pasteKPerW, 0.20)},
			{
				Name: "graphics", PowerW: 300, Beta: 0.6, RFixKPerW: 0.05, RFlowKPerW: 0.08, FlowExponent: 0.6,
				HotspotKPerW: 0.045,
				Fans: air.Fans{
					Count: 2,
					Fan:   air.Fan{ShutoffPa: 60, FreeM3PerS: 0.02, RatedRPM: 2000},
					Speed: air.Speed{FixedRPM: 1600},
				},
			},
			{Name: "storage", PowerW: 6, Beta: 0.8, RFixKPerW: 5},
			{Name: "supply", PowerW: 43.08493, Medium: air.ToOwnDuct},
		},
	}
}

// onCoolantCurve puts the radiator fans on the curve of the last variant: 700 rpm at 28 °C to 1800 rpm at 40 °C.
func onCoolantCurve(m *air.Machine) {
	m.Paths[top].Fans.Speed = air.Speed{Curves: []air.Curve{{
		Of:     air.Sensor{Kind: air.Coolant},
		Points: []air.CurvePoint{{TempC: 28, RPM: 700}, {TempC: 40, RPM: 1800}},
	}}}
}

// asIntake turns all flow round: the radiator takes room air, the front fans exhaust.
func asIntake(m *air.Machine) {
	m.Paths[front].Direction, m.Paths[top].Direction = air.Exhaust, air.Intake
}

// controlledMachine is the worked machine with every fan on a curve and every part with a limit.
func controlledMachine() air.Machine {
	m := workedMachine()
	onCoolantCurve(&m)
	hot := func(k int, lo, hi, from, to float64) air.Curve {
		return air.Curve{
			Of:     air.Sensor{Kind: air.Component, Index: k},
			Points: []air.CurvePoint{{TempC: lo, RPM: from}, {TempC: hi, RPM: to}},
		}
	}
	m.Paths[front].Fans.Speed = air.Speed{Curves: []air.Curve{
		hot(processor, 45, 85, 500, 1500), hot(graphics, 50, 80, 400, 1500),
	}}
	m.Consumers[graphics].Fans.Speed = air.Speed{Curves: []air.Curve{hot(graphics, 50, 85, 800, 2200)}}
	m.Consumers[processor].LimitC = 95
	m.Consumers[graphics].LimitC, m.Consumers[graphics].HotspotLimitC = 90, 105
	m.Consumers[storage].LimitC = 70
	return m
}

// sandwichMachine keeps processor and graphics in chambers of their own, with a riser slot between them.
func sandwichMachine() air.Machine {
	m := controlledMachine()
	m.Zones = []air.Zone{
		{Name: "processor chamber", HeatW: 35, WallWPerK: 1, LeakImpedance: 60000, Recirculation: 0.05},
		{Name: "card chamber", WallWPerK: 1, LeakImpedance: 5000, LeakHeightM: 0.3, Recirculation: 0.08},
	}
	m.Partitions = []air.Partition{{A: 0, B: 1, Impedance: 150000, ConductanceWPerK: 0.8}}
	m.Paths = append(m.Paths, air.Path{
		Name: "card side", Zone: 1, Direction: air.Exhaust, EachImpedance: 5000, HeightM: 0.1, Fans: m.Paths[front].Fans,
	})
	m.Consumers[graphics].Zone = 1
	return m
}
