package air_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"slipfit/core/air"
)

func TestCheckNamesTheFault(t *testing.T) {
	for want, spoil := range map[string]func(*air.Machine){
		"room temperature °C is NaN":                       func(m *air.Machine) { m.RoomC = math.NaN() },
		"altitude m is 20000":                              func(m *air.Machine) { m.AltitudeM = 20000 },
		"no zone":                                          func(m *air.Machine) { m.Zones = nil },
		`zone 0 "case": heat W is -1`:                      func(m *air.Machine) { m.Zones[0].HeatW = -1 },
		`zone 0 "case": recirculation is 1`:                func(m *air.Machine) { m.Zones[0].Recirculation = 1 },
		"partition 0: zone 3, want one of 1":               func(m *air.Machine) { m.Partitions = []air.Partition{{A: 0, B: 3}} },
		"partition 0: zone 0 on both sides":                func(m *air.Machine) { m.Partitions = []air.Partition{{}} },
		`path 0 "front": zone 1`:                           func(m *air.Machine) { m.Paths[0].Zone = 1 },
		`path 0 "front": an opening without fans`:          func(m *air.Machine) { m.Paths[0] = air.Path{Name: "front"} },
		`path 0 "front": fan rated speed rpm is 0`:         func(m *air.Machine) { m.Paths[0].Fans.Fan.RatedRPM = 0 },
		`path 0 "front": fan shut-off pressure Pa is +Inf`: func(m *air.Machine) { m.Paths[0].Fans.Fan.ShutoffPa = math.Inf(1) },
		`path 1 "top": radiator loop 2`:                    func(m *air.Machine) { m.Paths[1].Radiator.Loop = 2 },
		`path 1 "top": radiator arrangement 9`:             func(m *air.Machine) { m.Paths[1].Radiator.Arrangement = 9 },
		`loop 0 "processor": no radiator`:                  func(m *air.Machine) { m.Paths[1].Radiator.Sections = 0 },
		`loop 0 "processor": coolant capacity W/K is 0`:    func(m *air.Machine) { m.Loops[0].CapacityWPerK = 0 },
		`consumer 1 "graphics": beta is 1.5`:               func(m *air.Machine) { m.Consumers[1].Beta = 1.5 },
		`consumer 1 "graphics": zone 4`:                    func(m *air.Machine) { m.Consumers[1].Zone = 4 },
		`consumer 0 "processor": loop 1`:                   func(m *air.Machine) { m.Consumers[0].Loop = 1 },
		`consumer 0 "processor": a part on coolant with`:   func(m *air.Machine) { m.Consumers[0].Fans = m.Paths[0].Fans },
		"control curve 0: sensor 7": func(m *air.Machine) {
			m.Paths[0].Fans.Speed.Curves = []air.Curve{{Of: air.Sensor{Kind: air.Component, Index: 7}}}
		},
		"control curve 0: no points": func(m *air.Machine) { m.Paths[0].Fans.Speed.Curves = []air.Curve{{}} },
		"control curve 0: point 1 (30 °C, 900 rpm): want a higher temperature": func(m *air.Machine) {
			m.Paths[0].Fans.Speed.Curves = []air.Curve{{Points: []air.CurvePoint{{TempC: 30, RPM: 800}, {TempC: 30, RPM: 900}}}}
		},
	} {
		m := workedMachine()
		spoil(&m)
		_, err := air.Solve(m)
		require.ErrorContains(t, err, want)
	}
	m := workedMachine()
	require.NoError(t, m.Check())
}
