package air

import "math"

// The heat network. At fixed flows and powers it is linear in the temperatures over the room's, and is solved
// directly. The unknowns of zone z are its mixed air, its intake air (room air with its own outlet air mixed in) and
// its fresh air (the mean of all that enters); of each radiator the coolant that enters it.
//
// A zone's balance is written in differences, inflow·(fresh − mixed), so that a trace of flow imbalance costs no heat.
//
// A face at rest breathes both ways: where a path's flow nears zero its heat is shared between zone and room, so that
// temperatures do not jump when the flow turns round. At working flows the share is all one way.

const (
	noFlowWPerK = 1e-9 // below this a stream is taken as absent

	// StillM3PerS is the air that each fan's or section's opening exchanges with no net flow. An assumption, marked so.
	StillM3PerS = 5e-4
)

// heatNet holds the heat network and its working space. Temperatures are kelvin over the room.
type heatNet struct {
	a, t     []float64
	inflow   []float64  // W/K entering each zone
	intakes  []float64  // of it by paths
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
	inside   float64 // share of the path's heat that stays in the zone: 1 at any working inward flow, ½ at rest
	bypass   float64 // fresh share of the zone air it takes out
	radiator int     // index, or −1
	streamW  float64 // heat given to the stream besides the radiator's
	zoneW    float64 // heat of inward fans, given to the zone's air and not to the stream
}

func (h *heatNet) air(z int) int       { return z }
func (h *heatNet) intake(z int) int    { return len(h.inflow) + z }
func (h *heatNet) freshAir(z int) int  { return 2*len(h.inflow) + z }
func (h *heatNet) coolant(r int) int   { return 3*len(h.inflow) + r }
func (h *heatNet) row(i int) []float64 { n := len(h.t); return h.a[i*n : (i+1)*n] }

// addZoneAir adds k times the temperature of zone air with a share of fresh air in it to a row.
func (h *heatNet) addZoneAir(row []float64, z int, fresh, k float64) {
	row[h.air(z)] += float64(k * (1 - fresh))
	row[h.freshAir(z)] += float64(k * fresh)
}

// zoneAir gives the temperature of zone air with a share of fresh air in it.
func (h *heatNet) zoneAir(z int, fresh float64) float64 {
	return float64((1-fresh)*h.t[h.air(z)]) + float64(fresh*h.t[h.freshAir(z)])
}

// addRadiatorHeat adds k times the heat of a stream's radiator, G·(coolant − air), to a row.
func (h *heatNet) addRadiatorHeat(row []float64, st *stream, k float64) {
	if st.radiator < 0 {
		return
	}
	g := float64(k * h.radiator[st.radiator].exchange.ConductanceWPerK)
	row[h.coolant(st.radiator)] += g
	row[h.intake(st.zone)] -= float64(g * st.inside)
	h.addZoneAir(row, st.zone, st.bypass, -float64(g*(1-st.inside)))
}

// radiatorHeat gives the heat of a radiator, W.
func (h *heatNet) radiatorHeat(r int) float64 {
	rad := &h.radiator[r]
	st := &h.paths[rad.path]
	in := float64(st.inside*h.t[h.intake(st.zone)]) + float64((1-st.inside)*h.zoneAir(st.zone, st.bypass))
	return rad.exchange.ConductanceWPerK * (h.t[h.coolant(r)] - in)
}

// drawn gives the temperature of the air that a path takes in.
func (h *heatNet) drawn(st *stream) float64 {
	if st.inward {
		return h.t[h.intake(st.zone)]
	}
	return h.zoneAir(st.zone, st.bypass)
}

// updateStreams takes the flows over: capacities, radiators and the share of fresh air.
func (s *Solver) updateStreams() {
	h, m := &s.heat, s.m
	clear(h.inflow)
	clear(h.intakes)
	clear(h.outflow)
	for i := range m.Paths {
		p, st := &m.Paths[i], &h.paths[i]
		q := s.flow.branches[i].flow
		if p.Direction == Exhaust {
			q = -q
		}
		n := float64(p.elements())
		still := n * StillM3PerS
		moving := math.Sqrt(math.Hypot(q*q, still*still)) // the flow itself, but never less than the still exchange
		st.zone = p.Zone
		st.inward = q >= 0
		st.inside = (1 + q/moving) / 2
		st.capacity = s.rhoCp * math.Abs(q)
		if st.inward {
			h.inflow[p.Zone] += st.capacity
			h.intakes[p.Zone] += st.capacity
		} else {
			h.outflow[p.Zone] += st.capacity
		}
		st.streamW, st.zoneW = p.HeatW, 0
		if st.radiator >= 0 || p.Direction == Exhaust {
			st.streamW += s.pathFanW[i]
		} else {
			st.zoneW = s.pathFanW[i]
		}
		if st.radiator >= 0 {
			s.updateRadiator(&h.radiator[st.radiator], &p.Radiator, moving)
		}
	}
	for i := s.firstLeak; i < len(s.flow.branches); i++ {
		from, to, c := s.wind(i)
		if to != room {
			h.inflow[to] += c
		} else {
			h.outflow[from] += c
		}
	}
	for z, c := range h.inflow {
		h.fresh[z] = -math.Expm1(-c / freshAirScaleWPerK)
	}
	for i := range h.paths {
		h.paths[i].bypass = m.Paths[i].BypassShare * h.fresh[h.paths[i].zone]
	}
}

// wind gives a branch's ends in the direction of its flow, and the flow's capacity, W/K.
func (s *Solver) wind(i int) (from, to int, capacity float64) {
	b := &s.flow.branches[i]
	if b.flow < 0 {
		return b.to, b.from, -s.rhoCp * b.flow
	}
	return b.from, b.to, s.rhoCp * b.flow
}

func (s *Solver) updateRadiator(r *radiator, in *Radiator, flowM3PerS float64) {
	r.ua = in.ConductsWPerK(flowM3PerS, s.ratio)
	r.exchange = in.Arrangement.Exchange(r.ua, s.rhoCp*flowM3PerS, s.m.Loops[in.Loop].CapacityWPerK)
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
		from, to, c := s.wind(i)
		switch {
		case from != room && to != room:
			if h.inflow[to] >= noFlowWPerK {
				h.row(h.freshAir(to))[h.air(from)] -= c
			}
		case to == room && h.recirculates(from):
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

// recirculates says whether a zone takes air in or gives any off, so that its intake air is its own unknown.
func (h *heatNet) recirculates(z int) bool {
	return max(h.outflow[z], h.intakes[z]) >= noFlowWPerK
}

// zoneRows starts the three rows of a zone: what does not depend on any one stream. The share of own outlet air in the
// intake is the zone's recirculation, less where more is taken in than is given off to the room.
func (s *Solver) zoneRows(z int) {
	h := &s.heat
	air, intake, fresh := h.air(z), h.intake(z), h.freshAir(z)

	h.row(air)[air] += h.inflow[z] + s.m.Zones[z].WallWPerK
	h.row(air)[fresh] -= h.inflow[z]
	h.t[air] += s.zoneW[z]

	h.row(intake)[intake] = 1
	if h.recirculates(z) {
		h.row(intake)[intake] = max(h.outflow[z], h.intakes[z])
	}
	h.row(fresh)[fresh] = 1
	if h.inflow[z] >= noFlowWPerK {
		h.row(fresh)[fresh] = h.inflow[z]
	} else {
		h.row(fresh)[air] = -1
	}
}

// pathRows adds what a path's stream brings into its zone and takes out of it.
func (s *Solver) pathRows(i int) {
	h := &s.heat
	st := &h.paths[i]
	z := st.zone
	air, fresh, intake := h.row(h.air(z)), h.row(h.freshAir(z)), h.row(h.intake(z))

	// the path's heat: with the stream as far as it blows inward, the rest of the inner share into the zone's air
	withStream := max(0, 2*st.inside-1)
	if h.inflow[z] < noFlowWPerK {
		withStream = 0
	}
	toAir := st.inside - withStream
	if withStream > 0 {
		fresh[h.intake(z)] -= st.capacity
		h.t[h.freshAir(z)] += float64(withStream * st.streamW)
		h.addRadiatorHeat(fresh, st, -withStream)
	}
	h.t[h.air(z)] += float64(toAir*st.streamW) + float64(st.inside*st.zoneW)
	h.addRadiatorHeat(air, st, -toAir)

	if !st.inward {
		byFresh := float64(st.capacity * st.bypass)
		air[h.air(z)] -= byFresh
		air[h.freshAir(z)] += byFresh
	}
	phi := s.m.Zones[z].Recirculation
	if phi == 0 || !h.recirculates(z) {
		return
	}
	outer := float64(phi * (1 - st.inside))
	h.t[h.intake(z)] += float64(outer * (st.streamW + st.zoneW))
	h.addRadiatorHeat(intake, st, -outer)
	if !st.inward {
		h.addZoneAir(intake, z, st.bypass, -float64(phi*st.capacity))
	}
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
					h.addRadiatorHeat(row, &h.paths[h.radiator[o].path], 1)
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
		h.addRadiatorHeat(row, &h.paths[rad.path], 1/m.Loops[rad.loop].CapacityWPerK)
	}
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
			cold = h.t[h.coolant(r)] - h.radiatorHeat(r)/s.m.Loops[loop].CapacityWPerK
		}
	}
	return hot, cold
}
