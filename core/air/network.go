package air

import (
	"fmt"
	"math"
	"slices"
)

// hottestC is the temperature above which a result is no machine any more but heat without a way out.
const hottestC = 2000.0

// ConvergenceError is a machine the solver could not bring to rest.
type ConvergenceError struct {
	ResidualK  float64 // largest gap between a temperature that acts and the one it causes
	Flow       bool    // the flows themselves did not balance
	Iterations int
}

func (e *ConvergenceError) Error() string {
	if e.Flow {
		return fmt.Sprintf("air flows do not balance after %d iterations", e.Iterations)
	}
	return fmt.Sprintf("machine does not come to rest: residual %.3g K after %d iterations", e.ResidualK, e.Iterations)
}

// Solver solves machines one after the other in the same memory. The zero value is ready; it is not safe for use by
// two goroutines at once. Every answer depends on the machine alone, not on machines solved before.
type Solver struct {
	m     *Machine
	ratio float64 // density of the room's air to the reference
	rhoCp float64 // J/(m³·K) of the room's air

	flow      flowNet
	firstLeak int   // first branch that is not a path
	leakOf    []int // zone of each leak branch from firstLeak on
	heat      heatNet

	pathRPM, pathFanW         []float64
	consumerRPM, consumerFanW []float64
	consumerR                 []float64
	power                     []float64 // of each consumer as held, W
	zoneW, loopW              []float64 // heat into each zone's air and each loop
	lastX, lastP              []float64 // readings and pressures to begin with

	control
}

// Solve brings a machine to rest in fresh memory.
func Solve(m Machine) (Result, error) {
	var (
		s Solver
		r Result
	)
	err := s.Solve(&m, &r)
	return r, err
}

// Solve brings a machine to rest and writes the outcome to r, reusing its slices. On error r holds the last state with
// Converged false; it is not an answer.
func (s *Solver) Solve(m *Machine, r *Result) error { return s.solve(m, r, nil, nil) }

// Again is Solve of the machine that was solved last, with other powers and fixed speeds. It begins with where that came to rest, unless
// a part was at its limit there.
func (s *Solver) Again(m *Machine, r *Result) error {
	if slices.ContainsFunc(s.modes, func(o mode) bool { return o != free }) {
		return s.Solve(m, r)
	}
	s.lastX, s.lastP = append(s.lastX[:0], s.x...), append(s.lastP[:0], s.flow.p...)
	return s.solve(m, r, s.lastX, s.lastP)
}

// solve begins with readings and pressures, where there are any.
func (s *Solver) solve(m *Machine, r *Result, x, p []float64) error {
	r.resize(m)
	if err := m.Check(); err != nil {
		return err
	}
	s.prepare(m)
	copy(s.x, x)
	copy(s.flow.p, p)
	err := s.rest()
	s.fill(r)
	if err != nil {
		return err
	}
	if limit := 1e-6 * max(1, r.HeatInW); !(math.Abs(r.EnergyResidualW) <= limit) {
		return fmt.Errorf("heat in and heat out differ by %.3g W", r.EnergyResidualW)
	}
	if err := tooHot(m, r); err != nil {
		return err
	}
	r.Converged = true
	return nil
}

// prepare lays out the networks of a machine.
func (s *Solver) prepare(m *Machine) {
	s.m = m
	density := DensityKgPerM3(m.RoomC, PressurePa(m.AltitudeM))
	reference := m.RefDensityKgPerM3
	if reference == 0 {
		reference = StandardDensityKgPerM3
	}
	s.ratio, s.rhoCp = density/reference, density*CpJPerKgK

	zones, loops := len(m.Zones), len(m.Loops)
	s.pathRPM = cleared(s.pathRPM, len(m.Paths))
	s.pathFanW = cleared(s.pathFanW, len(m.Paths))
	s.consumerRPM = cleared(s.consumerRPM, len(m.Consumers))
	s.consumerFanW = cleared(s.consumerFanW, len(m.Consumers))
	s.consumerR = cleared(s.consumerR, len(m.Consumers))
	s.power = cleared(s.power, len(m.Consumers))
	s.zoneW = cleared(s.zoneW, zones)
	s.loopW = cleared(s.loopW, loops)

	s.prepareFlow()
	s.prepareHeat()
	s.control.prepare(m)
}

func (s *Solver) prepareFlow() {
	f, m := &s.flow, s.m
	n := len(m.Zones)
	f.branches = f.branches[:0]
	f.p, f.net, f.step = cleared(f.p, n), cleared(f.net, n), cleared(f.step, n)
	f.start = cleared(f.start, n)
	f.hess = cleared(f.hess, n*n)
	f.steps = 0
	for i := range m.Paths {
		p := &m.Paths[i]
		if p.Direction == Intake {
			f.add(room, p.Zone, p.Impedance())
		} else {
			f.add(p.Zone, room, p.Impedance())
		}
	}
	s.firstLeak = len(f.branches)
	s.leakOf = s.leakOf[:0]
	for z := range m.Zones {
		k := m.Zones[z].LeakImpedance
		switch {
		case k == 0:
		case m.Zones[z].LeakHeightM == 0:
			f.add(z, room, k)
			s.leakOf = append(s.leakOf, z)
		default: // two halves side by side, low and high: together they lose as much as one
			f.add(z, room, 4*k)
			f.add(z, room, 4*k)
			s.leakOf = append(s.leakOf, z, z)
		}
	}
	for i := range m.Partitions {
		if p := &m.Partitions[i]; p.Impedance > 0 {
			f.add(p.A, p.B, p.Impedance)
		}
	}
}

func (s *Solver) prepareHeat() {
	h, m := &s.heat, s.m
	zones := len(m.Zones)
	h.inflow, h.intakes = cleared(h.inflow, zones), cleared(h.intakes, zones)
	h.outflow, h.fresh = cleared(h.outflow, zones), cleared(h.fresh, zones)
	h.paths = cleared(h.paths, len(m.Paths))
	h.radiator = h.radiator[:0]
	for i := range m.Paths {
		h.paths[i].radiator = -1
		if rad := &m.Paths[i].Radiator; rad.Sections > 0 {
			h.paths[i].radiator = len(h.radiator)
			for o := range h.radiator {
				if h.radiator[o].loop == rad.Loop {
					h.radiator[o].last = false
				}
			}
			h.radiator = append(h.radiator, radiator{path: i, loop: rad.Loop, last: true})
		}
	}
	n := 3*zones + len(h.radiator)
	h.a, h.t = cleared(h.a, n*n), cleared(h.t, n)
}

// setHeads gives every branch its driving head: fans at their speed and the draught of warm zones. It reports whether
// any changed.
func (s *Solver) setHeads() bool {
	f, m := &s.flow, s.m
	changed := false
	set := func(b *branch, head float64) {
		if b.head != head {
			b.head, changed = head, true
		}
	}
	for i := range m.Paths {
		p := &m.Paths[i]
		head := 0.0
		if p.Fans.Count > 0 {
			r := s.pathRPM[i] / p.Fans.Fan.RatedRPM
			head = r * r * p.Fans.Fan.ShutoffPa
		}
		if p.HeightM != 0 {
			d := p.HeightM * s.draughtPaPerM(p.Zone)
			if p.Direction == Intake {
				d = -d
			}
			head += d
		}
		set(&f.branches[i], head)
	}
	for i := 0; i < len(s.leakOf); i++ {
		z := s.leakOf[i]
		height := m.Zones[z].LeakHeightM
		if height == 0 {
			continue
		}
		d := height / 2 * s.draughtPaPerM(z)
		set(&f.branches[s.firstLeak+i], -d)
		i++
		set(&f.branches[s.firstLeak+i], d)
	}
	return changed
}

// draughtPaPerM gives the outward pressure that a metre of warm air in a zone adds, at the reference density:
// ρ·g·(T − T_room)/T.
func (s *Solver) draughtPaPerM(z int) float64 {
	warm := s.reading[z] - s.m.RoomC
	return s.rhoCp / (CpJPerKgK * s.ratio) * GravityMPerS2 * warm / (s.m.RoomC + warm + ZeroCelsiusK)
}

// evaluate works flows and heat out for the present speeds, powers and readings, and the temperatures they cause.
func (s *Solver) evaluate() error {
	s.evaluations++
	s.setSpeeds()
	if s.setHeads() || s.evaluations == 1 {
		if !s.flow.solve() {
			return &ConvergenceError{Flow: true, Iterations: s.flow.steps}
		}
		s.updateStreams()
	}
	s.setHeat()
	if !s.solveHeat() {
		return fmt.Errorf("some heat has no way out: a zone with neither air nor walls")
	}
	s.setCaused()
	return nil
}

// setHeat gathers the heat of each zone and loop.
func (s *Solver) setHeat() {
	m := s.m
	for z := range m.Zones {
		s.zoneW[z] = m.Zones[z].HeatW
	}
	for l := range m.Loops {
		s.loopW[l] = m.Loops[l].PumpW
	}
	for k := range m.Consumers {
		switch c := &m.Consumers[k]; c.Medium {
		case ToZoneAir:
			s.zoneW[c.Zone] += s.power[k] + s.consumerFanW[k]
		case ToCoolant:
			s.loopW[c.Loop] += s.power[k]
		}
	}
}

// inletK gives the temperature over the room that a consumer's resistance is referred to. Parts on one loop warm the
// coolant for those after them.
func (s *Solver) inletK(k int) float64 {
	m, h := s.m, &s.heat
	c := &m.Consumers[k]
	switch c.Medium {
	case ToZoneAir:
		return h.zoneAir(c.Zone, (1-c.Beta)*h.fresh[c.Zone])
	case ToCoolant:
		_, cold := s.loopEnds(c.Loop)
		before := 0.0
		for o := range k {
			if m.Consumers[o].Medium == ToCoolant && m.Consumers[o].Loop == c.Loop {
				before += s.power[o]
			}
		}
		return cold + before/m.Loops[c.Loop].CapacityWPerK
	}
	return 0
}

// tooHot gives an error when anything in a result is too hot to be a machine, or is no number.
func tooHot(m *Machine, r *Result) error {
	fault := func(what string, i int, name string, tempC float64) error {
		return fmt.Errorf("%s %d %q would reach %.3g °C: its heat has no way out", what, i, name, tempC)
	}
	for i := range r.Zones {
		if t := r.Zones[i].AirC; !(t < hottestC) {
			return fault("zone", i, m.Zones[i].Name, t)
		}
	}
	for i := range r.Loops {
		if t := r.Loops[i].HotC; !(t < hottestC) {
			return fault("loop", i, m.Loops[i].Name, t)
		}
	}
	for i := range r.Consumers {
		if t := r.Consumers[i].TempC; !(t < hottestC) {
			return fault("consumer", i, m.Consumers[i].Name, t)
		}
	}
	return nil
}
