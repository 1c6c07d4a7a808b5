package air_test

import (
	"math/rand/v2"

	"slipfit/core/air"
)

// maker draws random machines: one to three chambers, fans and radiators on any face, coolant loops, parts with
// limits, control curves from gentle to nearly a switch, closed cases without fans.
type maker struct{ *rand.Rand }

func newMaker(seed uint64) maker { return maker{rand.New(rand.NewPCG(seed, 7))} }

func (r maker) in(lo, hi float64) float64 { return lo + (hi-lo)*r.Float64() }
func (r maker) chance(p float64) bool     { return r.Float64() < p }

func (r maker) machine(controlled bool) air.Machine {
	m := air.Machine{RoomC: r.in(10, 38), AltitudeM: r.in(0, 2500)}
	zones := 1
	if r.chance(0.4) {
		zones = 2 + r.IntN(2)
	}
	for range zones {
		z := air.Zone{HeatW: r.in(0, 50), WallWPerK: r.in(0.5, 4)}
		z.LeakImpedance = 1000 * r.in(1, 60)
		if r.chance(0.1) {
			z.LeakImpedance = 1e6
		}
		if r.chance(0.4) {
			z.LeakHeightM = r.in(0.1, 0.5)
		}
		if r.chance(0.7) {
			z.Recirculation = r.in(0, 0.3)
		}
		m.Zones = append(m.Zones, z)
	}
	for z := 1; z < zones; z++ {
		if r.chance(0.7) {
			p := air.Partition{A: r.IntN(z), B: z, ConductanceWPerK: r.in(0, 2)}
			if r.chance(0.7) {
				p.Impedance = 100 * r.in(1, 2000)
			}
			if r.chance(0.3) {
				p.ExchangeM3PerS = r.in(0, 0.004)
			}
			m.Partitions = append(m.Partitions, p)
		}
	}
	loops := r.IntN(3)
	for range loops {
		m.Loops = append(m.Loops, air.Loop{CapacityWPerK: r.in(30, 280), PumpW: r.in(0, 12)})
	}
	parts := 1 + r.IntN(5)
	for range parts {
		m.Consumers = append(m.Consumers, r.consumer(&m))
	}
	if !r.chance(0.1) || loops > 0 {
		for l := range loops {
			p := r.path(&m, zones, controlled)
			p.Radiator = r.radiator(&p, l)
			m.Paths = append(m.Paths, p)
			if r.chance(0.25) {
				p := r.path(&m, zones, controlled)
				p.Radiator = r.radiator(&p, l)
				m.Paths = append(m.Paths, p)
			}
		}
		for range r.IntN(5) {
			m.Paths = append(m.Paths, r.path(&m, zones, controlled))
		}
	}
	for k := range m.Consumers {
		if c := &m.Consumers[k]; c.Medium == air.ToZoneAir && r.chance(0.5) {
			c.Fans = r.fans(&m, controlled)
		}
	}
	return m
}

func (r maker) consumer(m *air.Machine) air.Consumer {
	c := air.Consumer{
		PowerW: r.in(0, 400), Zone: r.IntN(len(m.Zones)), Beta: r.Float64(),
		RFixKPerW: r.in(0.02, 0.3), RFlowKPerW: r.in(0, 0.2), FlowExponent: r.in(0.3, 0.8),
		HotspotKPerW: r.in(0, 0.06),
	}
	switch {
	case len(m.Loops) > 0 && r.chance(0.5):
		c.Medium, c.Loop = air.ToCoolant, r.IntN(len(m.Loops))
	case r.chance(0.1):
		c.Medium = air.ToOwnDuct
	}
	if r.chance(0.2) {
		c.PowerW, c.RFixKPerW = r.in(0, 10), r.in(3, 20)
	}
	if r.chance(0.7) {
		c.LimitC = r.in(65, 105)
	}
	if r.chance(0.3) {
		c.HotspotLimitC = r.in(85, 115)
	}
	return c
}

func (r maker) fans(m *air.Machine, controlled bool) air.Fans {
	f := air.Fans{
		Count: 1 + r.IntN(3),
		Fan: air.Fan{
			ShutoffPa: r.in(8, 60), FreeM3PerS: r.in(0.01, 0.06), RatedRPM: r.in(900, 3000), RatedPowerW: r.in(0.5, 5),
		},
	}
	f.Speed.FixedRPM = f.Fan.RatedRPM * r.in(0.2, 1)
	if !controlled || r.chance(0.2) {
		return f
	}
	for range 1 + r.IntN(2) {
		f.Speed.Curves = append(f.Speed.Curves, r.curve(m, f.Fan.RatedRPM))
	}
	return f
}

func (r maker) curve(m *air.Machine, rated float64) air.Curve {
	c := air.Curve{}
	temp := m.RoomC + r.in(2, 12)
	switch k := r.IntN(3); {
	case k == 0 && len(m.Loops) > 0:
		c.Of = air.Sensor{Kind: air.Coolant, Index: r.IntN(len(m.Loops))}
	case k == 1:
		c.Of = air.Sensor{Kind: air.ZoneAir, Index: r.IntN(len(m.Zones))}
	default:
		c.Of = air.Sensor{Kind: air.Component, Index: r.IntN(len(m.Consumers))}
		temp += r.in(10, 35)
	}
	rpm := rated * r.in(0, 0.5)
	if r.chance(0.2) {
		rpm = 0
	}
	for range 2 + r.IntN(3) {
		c.Points = append(c.Points, air.CurvePoint{TempC: temp, RPM: rpm})
		temp += r.in(0.5, 15)
		rpm += (rated - rpm) * r.in(0.2, 1)
	}
	return c
}

func (r maker) path(m *air.Machine, zones int, controlled bool) air.Path {
	p := air.Path{
		Zone: r.IntN(zones), Direction: air.Direction(r.IntN(2)), SharedImpedance: r.in(0, 8000),
		EachImpedance: r.in(0, 20000),
	}
	if r.chance(0.85) {
		p.Fans = r.fans(m, controlled)
	} else {
		p.SharedImpedance += 200
	}
	if r.chance(0.2) {
		p.HeightM = r.in(-0.25, 0.25)
	}
	if r.chance(0.2) {
		p.BypassShare = r.in(0, 0.6)
	}
	if r.chance(0.1) {
		p.HeatW = r.in(0, 60)
	}
	return p
}

func (r maker) radiator(p *air.Path, loop int) air.Radiator {
	p.EachImpedance = 1000 * r.in(10, 80)
	return air.Radiator{
		Sections: max(1, p.Fans.Count), Loop: loop, UAWPerK: r.in(8, 30), FlowM3PerS: 0.015, Exponent: r.in(0.3, 0.7),
		Arrangement: air.Arrangement(r.IntN(int(air.ParallelFlow) + 1)),
	}
}
