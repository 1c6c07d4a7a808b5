package air

import "math"

// The heat network. At fixed flows and powers it is linear in the temperatures over the room's, and is solved
// directly. The unknowns of zone z are its mixed air, its intake air (room air with its own outlet air mixed in) and
// its fresh air (the mean of all that enters); of each radiator the coolant that enters it.
//
// A zone's balance is written in differences, inflow·(fresh − mixed), so that a trace of flow imbalance costs no heat.

const (
	noFlowWPerK  = 1e-9 // below this a stream is taken as absent
	leastUAWPerK = 1e-6 // of a radiator without air: keeps its coolant's temperature finite
)

// heatNet holds the heat network and its working space. Temperatures are kelvin over the room.
type heatNet struct {
	a, t     []float64
	inflow   []float64  // W/K entering each zone
	outflow  []float64  // W/K leaving each zone to the room
	fresh    []float64  // weight of fresh air, see freshAirScaleWPerK
	radiator []radiator // in order of paths
	paths    []stream   // in order of paths
}

// radiator is one path's radiator at the present flow.
type radiator struct {
	path, loop int
	last       bool // of its loop
	ua         float64
	exchange   Exchange
}

// stream is the air of one path at the present flow.
type stream struct {
	zone     int
	inward   bool
	capacity float64 // W/K
	addedW   float64 // heat it takes up besides the radiator's
	radiator int     // index, or −1
}

func (h *heatNet) air(z int) int                       { return z }
func (h *heatNet) intake(z int) int                    { return len(h.inflow) + z }
func (h *heatNet) freshAir(z int) int                  { return 2*len(h.inflow) + z }
func (h *heatNet) coolant(r int) int                   { return 3*len(h.inflow) + r }
func (h *heatNet) row(i int) []float64                 { n := len(h.t); return h.a[i*n : (i+1)*n] }
func (h *heatNet) freshShare(z int, b float64) float64 { return b * h.fresh[z] }

// addDrawn adds k times the temperature of the air that a path takes in to a row: intake air, or zone air with its
// bypass share of fresh air.
func (h *heatNet) addDrawn(row []float64, s *stream, bypass, k float64) {
	if s.inward {
		row[h.intake(s.zone)] += k
		return
	}
	b := h.freshShare(s.zone, bypass)
	row[h.air(s.zone)] += float64(k * (1 - b))
	row[h.freshAir(s.zone)] += float64(k * b)
}

// drawn gives the temperature of the air that a path takes in.
func (h *heatNet) drawn(s *stream, bypass float64) float64 {
	if s.inward {
		return h.t[h.intake(s.zone)]
	}
	b := h.freshShare(s.zone, bypass)
	return float64((1-b)*h.t[h.air(s.zone)]) + float64(b*h.t[h.freshAir(s.zone)])
}

// update takes the flows over: capacities, radiators and the share of fresh air.
func (s *Solver) updateStreams() {
	h, m := &s.heat, s.m
	clear(h.inflow)
	clear(h.outflow)
	for i := range m.Paths {
		p, b, st := &m.Paths[i], &s.flow.branches[i], &h.paths[i]
		st.zone = p.Zone
		st.inward = (p.Direction == Intake) == (b.flow >= 0)
		st.capacity = s.rhoCp * math.Abs(b.flow)
		st.addedW = p.HeatW
		if !st.inward || st.radiator >= 0 {
			st.addedW += s.pathFanW[i]
		}
		if st.inward {
			h.inflow[p.Zone] += st.capacity
		} else {
			h.outflow[p.Zone] += st.capacity
		}
		if st.radiator >= 0 {
			s.updateRadiator(&h.radiator[st.radiator], &p.Radiator, math.Abs(b.flow))
		}
	}
	for i := s.firstLeak; i < len(s.flow.branches); i++ {
		b := &s.flow.branches[i]
		c := s.rhoCp * math.Abs(b.flow)
		from, to := b.from, b.to
		if b.flow < 0 {
			from, to = to, from
		}
		if to != room {
			h.inflow[to] += c
		} else {
			h.outflow[from] += c
		}
	}
	for z, c := range h.inflow {
		h.fresh[z] = -math.Expm1(-c / freshAirScaleWPerK)
	}
}

func (s *Solver) updateRadiator(r *radiator, in *Radiator, flowM3PerS float64) {
	n := float64(in.Sections)
	each := flowM3PerS / n
	r.ua = n * in.UAWPerK * math.Pow(s.ratio*each/in.FlowM3PerS, in.Exponent)
	capacity := s.rhoCp * flowM3PerS
	if capacity < noFlowWPerK || r.ua < leastUAWPerK {
		r.exchange = Exchange{ConductanceWPerK: leastUAWPerK}
		return
	}
	r.exchange = in.Arrangement.Exchange(r.ua, capacity, s.m.Loops[in.Loop].CapacityWPerK)
	r.exchange.ConductanceWPerK = max(r.exchange.ConductanceWPerK, leastUAWPerK)
}

// solveHeat finds all air and coolant temperatures. It reports false when some heat has no way out.
func (s *Solver) solveHeat() bool {
	h, m := &s.heat, s.m
	clear(h.a)
	clear(h.t)
	for z := range m.Zones {
		s.zoneRows(z)
	}
	for i := range h.paths {
		s.pathRows(i)
	}
	for i := s.firstLeak; i < len(s.flow.branches); i++ {
		b := &s.flow.branches[i]
		c := s.rhoCp * math.Abs(b.flow)
		from, to := b.from, b.to
		if b.flow < 0 {
			from, to = to, from
		}
		switch {
		case from != room && to != room:
			if h.inflow[to] >= noFlowWPerK {
				h.row(h.freshAir(to))[h.air(from)] -= c
			}
		case to == room && h.outflow[from] >= noFlowWPerK:
			h.row(h.intake(from))[h.air(from)] -= float64(m.Zones[from].Recirculation * c)
		}
	}
	for i := range m.Partitions {
		p := &m.Partitions[i]
		g := p.ConductanceWPerK + float64(s.rhoCp*p.ExchangeM3PerS)
		a, b := h.row(h.air(p.A)), h.row(h.air(p.B))
		a[h.air(p.A)] += g
		a[h.air(p.B)] -= g
		b[h.air(p.B)] += g
		b[h.air(p.A)] -= g
	}
	s.radiatorRows()
	return solveDense(h.a, h.t, len(h.t))
}

// zoneRows starts the three rows of a zone: what does not depend on any one stream.
func (s *Solver) zoneRows(z int) {
	h := &s.heat
	air, intake, fresh := h.air(z), h.intake(z), h.freshAir(z)

	h.row(air)[air] += h.inflow[z] + s.m.Zones[z].WallWPerK
	h.row(air)[fresh] -= h.inflow[z]
	h.t[air] = s.zoneW[z]

	h.row(intake)[intake] = 1
	if h.outflow[z] >= noFlowWPerK {
		h.row(intake)[intake] = h.outflow[z]
	}
	h.row(fresh)[fresh] = 1
	if h.inflow[z] >= noFlowWPerK {
		h.row(fresh)[fresh] = h.inflow[z]
	} else {
		h.row(fresh)[air] = -1
	}
}

// pathRows adds what a path's stream brings into its zone, or takes out of it.
func (s *Solver) pathRows(i int) {
	h, p := &s.heat, &s.m.Paths[i]
	st := &h.paths[i]
	z := st.zone
	if st.inward {
		if h.inflow[z] >= noFlowWPerK {
			row := h.row(h.freshAir(z))
			row[h.intake(z)] -= st.capacity
			h.t[h.freshAir(z)] += st.addedW
			s.addRadiatorHeat(row, st, p.BypassShare, -1)
		} else {
			s.addRadiatorHeat(h.row(h.air(z)), st, p.BypassShare, -1)
			h.t[h.air(z)] += st.addedW
		}
		return
	}
	byFresh := float64(st.capacity * h.freshShare(z, p.BypassShare))
	air := h.row(h.air(z))
	air[h.air(z)] -= byFresh
	air[h.freshAir(z)] += byFresh

	if phi := s.m.Zones[z].Recirculation; phi > 0 && h.outflow[z] >= noFlowWPerK {
		row := h.row(h.intake(z))
		h.addDrawn(row, st, p.BypassShare, -float64(phi*st.capacity))
		h.t[h.intake(z)] += float64(phi * st.addedW)
		s.addRadiatorHeat(row, st, p.BypassShare, -phi)
	}
}

// addRadiatorHeat adds k times the heat of a stream's radiator to a row.
func (s *Solver) addRadiatorHeat(row []float64, st *stream, bypass, k float64) {
	if st.radiator < 0 {
		return
	}
	h := &s.heat
	g := float64(k * h.radiator[st.radiator].exchange.ConductanceWPerK)
	row[h.coolant(st.radiator)] += g
	h.addDrawn(row, st, bypass, -g)
}

// radiatorRows chains the radiators of each loop: every one passes its cooled coolant on to the next, and all of them
// together give off the loop's heat.
func (s *Solver) radiatorRows() {
	h, m := &s.heat, s.m
	for r := range h.radiator {
		rad := &h.radiator[r]
		if rad.last {
			row := h.row(h.coolant(r))
			for o := range h.radiator {
				if h.radiator[o].loop == rad.loop {
					path := h.radiator[o].path
					s.addRadiatorHeat(row, &h.paths[path], m.Paths[path].BypassShare, 1)
				}
			}
			h.t[h.coolant(r)] = s.loopW[rad.loop]
			continue
		}
		next := r + 1
		for h.radiator[next].loop != rad.loop {
			next++
		}
		row := h.row(h.coolant(r))
		row[h.coolant(next)] += 1
		row[h.coolant(r)] -= 1
		s.addRadiatorHeat(row, &h.paths[rad.path], m.Paths[rad.path].BypassShare, 1/m.Loops[rad.loop].CapacityWPerK)
	}
}

// radiatorHeat gives the heat of a radiator, W.
func (s *Solver) radiatorHeat(r int) float64 {
	h := &s.heat
	rad := &h.radiator[r]
	in := h.drawn(&h.paths[rad.path], s.m.Paths[rad.path].BypassShare)
	return rad.exchange.ConductanceWPerK * (h.t[h.coolant(r)] - in)
}

// loopEnds gives the coolant into a loop's first radiator and out of its last, kelvin over the room.
func (s *Solver) loopEnds(loop int) (hot, cold float64) {
	h := &s.heat
	first := true
	for r := range h.radiator {
		if h.radiator[r].loop != loop {
			continue
		}
		if first {
			hot, first = h.t[h.coolant(r)], false
		}
		if h.radiator[r].last {
			cold = h.t[h.coolant(r)] - s.radiatorHeat(r)/s.m.Loops[loop].CapacityWPerK
		}
	}
	return hot, cold
}
