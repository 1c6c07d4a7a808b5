package air

import (
	"fmt"
	"math"
)

// Check says what is wrong with the machine as an input, or nil.
func (m *Machine) Check() error {
	if err := firstOf(
		between("room temperature °C", m.RoomC, -40, 80),
		between("altitude m", m.AltitudeM, -500, 11000),
		between("reference density kg/m³", m.RefDensityKgPerM3, 0, 5),
	); err != nil {
		return err
	}
	if len(m.Zones) == 0 {
		return fmt.Errorf("machine: no zone, want at least 1")
	}
	for i := range m.Zones {
		z := &m.Zones[i]
		if err := firstOf(
			atLeast0("heat W", z.HeatW),
			atLeast0("wall W/K", z.WallWPerK),
			atLeast0("leak impedance Pa·s²/m⁶", z.LeakImpedance),
			atLeast0("leak height m", z.LeakHeightM),
			between("recirculation", z.Recirculation, 0, 0.95),
		); err != nil {
			return fmt.Errorf("zone %d %q: %w", i, z.Name, err)
		}
	}
	for i := range m.Partitions {
		p := &m.Partitions[i]
		err := firstOf(
			index("zone", p.A, len(m.Zones)),
			index("zone", p.B, len(m.Zones)),
			atLeast0("impedance Pa·s²/m⁶", p.Impedance),
			atLeast0("exchange m³/s", p.ExchangeM3PerS),
			atLeast0("conductance W/K", p.ConductanceWPerK),
		)
		if err == nil && p.A == p.B {
			err = fmt.Errorf("zone %d on both sides, want two zones", p.A)
		}
		if err != nil {
			return fmt.Errorf("partition %d: %w", i, err)
		}
	}
	for i := range m.Paths {
		if err := m.checkPath(&m.Paths[i]); err != nil {
			return fmt.Errorf("path %d %q: %w", i, m.Paths[i].Name, err)
		}
	}
	for i := range m.Loops {
		if err := m.checkLoop(i); err != nil {
			return fmt.Errorf("loop %d %q: %w", i, m.Loops[i].Name, err)
		}
	}
	for i := range m.Consumers {
		if err := m.checkConsumer(&m.Consumers[i]); err != nil {
			return fmt.Errorf("consumer %d %q: %w", i, m.Consumers[i].Name, err)
		}
	}
	return nil
}

func (m *Machine) checkPath(p *Path) error {
	if err := firstOf(
		index("zone", p.Zone, len(m.Zones)),
		index("direction", int(p.Direction), int(Exhaust)+1),
		atLeast0("shared impedance Pa·s²/m⁶", p.SharedImpedance),
		atLeast0("impedance of each Pa·s²/m⁶", p.EachImpedance),
		between("height m", p.HeightM, -5, 5),
		between("bypass share", p.BypassShare, 0, 1),
		atLeast0("heat W", p.HeatW),
		m.checkFans(&p.Fans),
		index("consumer its fans belong to", p.OwnOf, len(m.Consumers)+1),
	); err != nil {
		return err
	}
	if p.OwnOf > 0 && m.Consumers[p.OwnOf-1].Fans.Count == 0 {
		return fmt.Errorf("fans of consumer %d, which has none", p.OwnOf-1)
	}
	if !(p.Impedance() > 0) {
		return fmt.Errorf("an opening without fans has impedance 0, want above 0")
	}
	r := &p.Radiator
	if r.Sections == 0 {
		return nil
	}
	return firstOf(
		between("radiator sections", float64(r.Sections), 1, 64),
		index("radiator loop", r.Loop, len(m.Loops)),
		above0("radiator conductance W/K", r.UAWPerK),
		above0("radiator flow m³/s", r.FlowM3PerS),
		between("radiator exponent", r.Exponent, 0, 1),
		index("radiator arrangement", int(r.Arrangement), int(ParallelFlow)+1),
	)
}

func (m *Machine) checkLoop(loop int) error {
	if err := firstOf(
		above0("coolant capacity W/K", m.Loops[loop].CapacityWPerK),
		atLeast0("pump W", m.Loops[loop].PumpW),
	); err != nil {
		return err
	}
	for i := range m.Paths {
		if r := &m.Paths[i].Radiator; r.Sections > 0 && r.Loop == loop {
			return nil
		}
	}
	return fmt.Errorf("no radiator gives off its heat, want at least 1")
}

func (m *Machine) checkConsumer(c *Consumer) error {
	err := firstOf(
		atLeast0("power W", c.PowerW),
		index("medium", int(c.Medium), int(ToOwnDuct)+1),
		between("beta", c.Beta, 0, 1),
		atLeast0("fixed resistance K/W", c.RFixKPerW),
		atLeast0("flow resistance K/W", c.RFlowKPerW),
		between("flow exponent", c.FlowExponent, 0, 1),
		atLeast0("hot spot K/W", c.HotspotKPerW),
		between("limit °C", c.LimitC, 0, 1000),
		between("hot spot limit °C", c.HotspotLimitC, 0, 1000),
		m.checkFans(&c.Fans),
	)
	switch {
	case err != nil:
		return err
	case c.Medium == ToZoneAir:
		return index("zone", c.Zone, len(m.Zones))
	case c.Medium == ToCoolant && c.Fans.Count > 0:
		return fmt.Errorf("a part on coolant with fans of its own, want the fans on the radiator's path")
	case c.Medium == ToCoolant:
		return index("loop", c.Loop, len(m.Loops))
	}
	return nil
}

func (m *Machine) checkFans(f *Fans) error {
	if f.Count == 0 {
		return nil
	}
	if err := firstOf(
		between("fan count", float64(f.Count), 1, 64),
		above0("fan shut-off pressure Pa", f.Fan.ShutoffPa),
		above0("fan free flow m³/s", f.Fan.FreeM3PerS),
		above0("fan rated speed rpm", f.Fan.RatedRPM),
		atLeast0("fan power W", f.Fan.RatedPowerW),
		atLeast0("fan speed rpm", f.Speed.FixedRPM),
	); err != nil {
		return err
	}
	for i := range f.Speed.Curves {
		if err := m.checkCurve(&f.Speed.Curves[i]); err != nil {
			return fmt.Errorf("control curve %d: %w", i, err)
		}
	}
	return nil
}

func (m *Machine) checkCurve(c *Curve) error {
	size := 0
	switch c.Of.Kind {
	case ZoneAir:
		size = len(m.Zones)
	case Coolant:
		size = len(m.Loops)
	case Component:
		size = len(m.Consumers)
	}
	if err := index("sensor", c.Of.Index, size); err != nil {
		return err
	}
	if len(c.Points) == 0 {
		return fmt.Errorf("no points, want at least 1")
	}
	for i, p := range c.Points {
		if err := firstOf(between("temperature °C", p.TempC, -273, 1000), atLeast0("speed rpm", p.RPM)); err != nil {
			return fmt.Errorf("point %d: %w", i, err)
		}
		if i > 0 && !(p.TempC > c.Points[i-1].TempC && p.RPM >= c.Points[i-1].RPM) {
			return fmt.Errorf("point %d (%g °C, %g rpm): want a higher temperature and no lower speed than the point before",
				i, p.TempC, p.RPM)
		}
	}
	return nil
}

func firstOf(errs ...error) error {
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}

func between(what string, v, lo, hi float64) error {
	if v >= lo && v <= hi {
		return nil
	}
	return fmt.Errorf("%s is %g, want %g to %g", what, v, lo, hi)
}

func atLeast0(what string, v float64) error {
	if v >= 0 && v <= math.MaxFloat32 {
		return nil
	}
	return fmt.Errorf("%s is %g, want 0 or more", what, v)
}

func above0(what string, v float64) error {
	if v > 0 && v <= math.MaxFloat32 {
		return nil
	}
	return fmt.Errorf("%s is %g, want above 0", what, v)
}

func index(what string, i, n int) error {
	if i >= 0 && i < n {
		return nil
	}
	return fmt.Errorf("%s %d, want one of %d", what, i, n)
}
