package air

import "math"

// The control loop. What acts back on the flow or on a power is a reading: the mixed air of a zone (fans, draught), the
// coolant of a loop (fans), a component (fans, its own limit). Given all readings, speeds and powers follow; given
// those, flows and heat follow, and with them the temperatures really caused. At rest every reading equals the
// temperature it causes.
//
// A component over its limit is handled by stretching its reading: past the limit the same variable first calls the
// fans that serve it to full speed, then takes power away, while the reading stays at the limit. So an equilibrium with
// a limit in it is still a root of the same equations.

type mode uint8

const (
	free    mode = iota // reading may go where it likes
	calling             // past the limit: fans that serve it go towards full speed
	cutting             // those fans at full speed; past the limit its power falls
)

const (
	restK    = 1e-7 // gap allowed at rest
	callK    = 1.0  // stretch over which fans go to full speed
	cutK     = 50.0 // stretch over which power goes to 0
	mostStep = 400  // outer steps for one set of modes
)

// control is the state of the outer solver. Readings are ordered zones, loops, consumers.
type control struct {
	reading []float64 // °C that fans and draughts act on
	caused  []float64 // °C that the network returns
	active  []int     // readings that are unknowns
	x       []float64 // their stretched values, one for each active
	modes   []mode    // of each consumer
	called  []float64 // of each consumer, 0 to 1: how far it calls its fans
	backs   []int     // of each consumer: times it has come back from cutting

	gap, trial, trialGap, jac, lhs, step []float64

	iterations, evaluations int
}

func (c *control) prepare(m *Machine) {
	n := len(m.Zones) + len(m.Loops) + len(m.Consumers)
	c.reading, c.caused = cleared(c.reading, n), cleared(c.caused, n)
	c.modes = cleared(c.modes, len(m.Consumers))
	c.called = cleared(c.called, len(m.Consumers))
	c.backs = cleared(c.backs, len(m.Consumers))
	c.iterations, c.evaluations = 0, 0
	c.active, c.x = c.active[:0], c.x[:0]
	for i := range n {
		switch { // where a machine in work is likely to be
		case i < len(m.Zones):
			c.reading[i] = m.RoomC + 8
		case i < len(m.Zones)+len(m.Loops):
			c.reading[i] = m.RoomC + 14
		default:
			c.reading[i] = m.RoomC + 42
		}
	}
	for z := range m.Zones {
		if m.Zones[z].LeakImpedance > 0 && m.Zones[z].LeakHeightM > 0 {
			c.activate(z, c.reading[z])
		}
	}
	for i := range m.Paths {
		if m.Paths[i].HeightM != 0 {
			c.activate(m.Paths[i].Zone, c.reading[m.Paths[i].Zone])
		}
		if m.Paths[i].OwnOf == 0 {
			c.follow(m, &m.Paths[i].Fans)
		}
	}
	for k := range m.Consumers {
		c.follow(m, &m.Consumers[k].Fans)
	}
}

func (c *control) follow(m *Machine, f *Fans) {
	if f.Count == 0 {
		return
	}
	for i := range f.Speed.Curves {
		at := m.readingOf(f.Speed.Curves[i].Of)
		c.activate(at, c.reading[at])
	}
}

func (c *control) activate(reading int, x float64) {
	for i, a := range c.active {
		if a == reading {
			c.x[i] = x
			return
		}
	}
	c.active, c.x = append(c.active, reading), append(c.x, x)
}

// readingOf gives the place of a sensor's reading.
func (m *Machine) readingOf(s Sensor) int {
	switch s.Kind {
	case ZoneAir:
		return s.Index
	case Coolant:
		return len(m.Zones) + s.Index
	}
	return len(m.Zones) + len(m.Loops) + s.Index
}

// consumerOf gives the consumer of a reading, or −1.
func (m *Machine) consumerOf(reading int) int {
	return max(-1, reading-len(m.Zones)-len(m.Loops))
}

// judged gives the temperature that a consumer's limit and the fans that follow it go by. With a limit on the hot spot, the reading is
// whichever of the two stands nearer to its own limit, expressed against the first.
func (c *Consumer) judged(tempC, powerW float64) float64 {
	if c.HotspotLimitC == 0 {
		return tempC
	}
	spot := tempC + c.HotspotKPerW*powerW
	if c.LimitC == 0 {
		return spot
	}
	return max(tempC, spot-(c.HotspotLimitC-c.LimitC))
}

// limit gives what the judged temperature may reach; +Inf without a limit.
func (c *Consumer) limit() float64 {
	switch {
	case c.LimitC > 0:
		return c.LimitC
	case c.HotspotLimitC > 0:
		return c.HotspotLimitC
	}
	return math.Inf(1)
}

// decode turns the unknowns into readings, calls and powers.
func (s *Solver) decode(x []float64) {
	m := s.m
	for k := range m.Consumers {
		s.power[k] = m.Consumers[k].PowerW
	}
	for i, at := range s.active {
		s.reading[at] = x[i]
		k := m.consumerOf(at)
		if k < 0 {
			continue
		}
		over := x[i] - m.Consumers[k].limit()
		switch s.modes[k] {
		case free:
			s.called[k] = 0
		case calling:
			s.called[k] = min(1, max(0, over/callK))
			s.reading[at] -= min(callK, max(0, over))
		case cutting:
			s.called[k] = 1
			s.power[k] *= 1 - min(1, max(0, over/cutK))
			s.reading[at] -= min(cutK, max(0, over))
		}
	}
}

// setSpeeds runs all fans at the speed that the readings and the calls ask.
func (s *Solver) setSpeeds() {
	m := s.m
	for i := range m.Paths {
		f := &m.Paths[i].Fans
		if f.Count == 0 || m.Paths[i].OwnOf > 0 {
			continue
		}
		call := 0.0
		for k, c := range s.called {
			if c > call && m.serves(i, k) {
				call = c
			}
		}
		s.pathRPM[i] = s.speed(&f.Speed, call)
		s.pathFanW[i] = float64(f.Count) * f.Fan.PowerW(s.pathRPM[i], s.ratio)
	}
	for k := range m.Consumers {
		c := &m.Consumers[k]
		share := 1.0
		if c.Fans.Count > 0 {
			s.consumerRPM[k] = s.speed(&c.Fans.Speed, s.called[k])
			s.consumerFanW[k] = float64(c.Fans.Count) * c.Fans.Fan.PowerW(s.consumerRPM[k], s.ratio)
			share = s.consumerRPM[k] / c.Fans.Fan.RatedRPM
		}
		s.consumerR[k] = c.KPerW(share, s.ratio)
	}
	for i := range m.Paths {
		if k := m.Paths[i].OwnOf - 1; k >= 0 {
			s.pathRPM[i] = s.consumerRPM[k]
		}
	}
}

func (s *Solver) speed(sp *Speed, call float64) float64 {
	if len(sp.Curves) == 0 {
		return sp.FixedRPM
	}
	rpm := 0.0
	for i := range sp.Curves {
		c := &sp.Curves[i]
		rpm = max(rpm, c.rpm(s.reading[s.m.readingOf(c.Of)]))
	}
	if call > 0 {
		rpm += call * (sp.maxRPM() - rpm)
	}
	return rpm
}

// serves says whether a path's fans move the air that cools a consumer: those of its zone, or of any zone that holds a
// radiator of its loop.
func (m *Machine) serves(path, consumer int) bool {
	c := &m.Consumers[consumer]
	switch c.Medium {
	case ToZoneAir:
		return m.Paths[path].Zone == c.Zone
	case ToCoolant:
		for i := range m.Paths {
			if r := &m.Paths[i].Radiator; r.Sections > 0 && r.Loop == c.Loop && m.Paths[i].Zone == m.Paths[path].Zone {
				return true
			}
		}
	}
	return false
}

// setCaused reads the temperatures of the network.
func (s *Solver) setCaused() {
	m, h := s.m, &s.heat
	for z := range m.Zones {
		s.caused[z] = m.RoomC + h.t[h.air(z)]
	}
	for l := range m.Loops {
		hot, _ := s.loopEnds(l)
		s.caused[len(m.Zones)+l] = m.RoomC + hot
	}
	for k := range m.Consumers {
		t := m.RoomC + s.inletK(k) + float64(s.power[k]*s.consumerR[k])
		s.caused[len(m.Zones)+len(m.Loops)+k] = m.Consumers[k].judged(t, s.power[k])
	}
}

// try evaluates the network at x and writes the gaps, reading − caused; it returns their root of squares.
func (s *Solver) try(x, gap []float64) (float64, error) {
	s.decode(x)
	if err := s.evaluate(); err != nil {
		return 0, err
	}
	sum := 0.0
	for i, at := range s.active {
		gap[i] = s.reading[at] - s.caused[at]
		sum += float64(gap[i] * gap[i])
	}
	return math.Sqrt(sum), nil
}

// rest finds the equilibrium: settles the readings, then looks which limits are broken and stretches those.
func (s *Solver) rest() error {
	if err := s.settle(); err != nil {
		return err
	}
	for range 4*len(s.m.Consumers) + 2 {
		if !s.changeModes() {
			return nil
		}
		if err := s.settle(); err != nil {
			return err
		}
	}
	return &ConvergenceError{ResidualK: s.residual(), Iterations: s.iterations}
}

// changeModes moves consumers between free, calling and cutting where the state at rest asks for it.
func (s *Solver) changeModes() bool {
	const slack = 1e-6
	changed := false
	first := len(s.m.Zones) + len(s.m.Loops)
	for k := range s.m.Consumers {
		c := &s.m.Consumers[k]
		limit := c.limit()
		over := s.caused[first+k] - limit
		switch {
		case s.modes[k] != cutting && over > slack:
			if s.modes[k] == free && s.canCall(k) {
				s.modes[k] = calling
				s.activate(first+k, limit+callK+over)
			} else {
				s.modes[k] = cutting
				s.activate(first+k, limit)
			}
			changed = true
		case s.modes[k] == cutting && over < -slack && s.backs[k] == 0:
			s.backs[k]++
			s.modes[k] = calling
			s.activate(first+k, s.caused[first+k])
			changed = true
		}
	}
	return changed
}

// canCall says whether any fan that serves a consumer could still run faster.
func (s *Solver) canCall(k int) bool {
	m := s.m
	if f := &m.Consumers[k].Fans; f.Count > 0 && s.consumerRPM[k] < f.Speed.maxRPM() {
		return true
	}
	for i := range m.Paths {
		f := &m.Paths[i].Fans
		if f.Count > 0 && m.Paths[i].OwnOf == 0 && s.pathRPM[i] < f.Speed.maxRPM() && m.serves(i, k) {
			return true
		}
	}
	return false
}

func (s *Solver) residual() float64 {
	worst := 0.0
	for _, at := range s.active {
		worst = max(worst, math.Abs(s.reading[at]-s.caused[at]))
	}
	return worst
}
