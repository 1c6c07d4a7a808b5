package air

import "math"

// fill writes the state of the networks to a result.
func (s *Solver) fill(r *Result) {
	m, h := s.m, &s.heat
	r.DensityRatio = s.ratio
	r.DensityKgPerM3 = s.rhoCp / CpJPerKgK
	r.Iterations, r.Evaluations, r.ControlResidualK = s.iterations, s.evaluations, s.residual()
	for z := range m.Zones {
		s.fillZone(r, z)
	}
	for i := range m.Paths {
		s.fillPath(r, i)
	}
	s.fillLeaks(r)
	s.fillOutlets(r)
	for l := range m.Loops {
		hot, cold := s.loopEnds(l)
		r.Loops[l] = LoopState{HotC: m.RoomC + hot, ColdC: m.RoomC + cold, HeatW: s.loopW[l]}
		r.HeatInW += m.Loops[l].PumpW
		r.PumpPowerW += m.Loops[l].PumpW
	}
	for k := range m.Consumers {
		s.fillConsumer(r, k)
	}
	for z := range m.Zones {
		r.HeatInW += m.Zones[z].HeatW
		r.WallW += r.Zones[z].WallLossW
		r.MassResidualKgS = max(r.MassResidualKgS, math.Abs(s.flow.net[z])*r.DensityKgPerM3)
	}
	for i := range m.Paths {
		if st := &h.paths[i]; st.inward {
			r.CarriedW -= float64(st.capacity * h.t[h.intake(st.zone)])
		}
		r.HeatInW += m.Paths[i].HeatW + r.Paths[i].FanPowerW
		r.FanPowerW += r.Paths[i].FanPowerW
	}
	r.EnergyResidualW = r.HeatInW - r.CarriedW - r.WallW - r.DuctW
}

func (s *Solver) fillZone(r *Result, z int) {
	m, h := s.m, &s.heat
	air := h.t[h.air(z)]
	r.Zones[z] = ZoneState{
		GaugePa:   s.flow.p[z] * s.ratio,
		AirC:      m.RoomC + air,
		IntakeC:   m.RoomC + h.t[h.intake(z)],
		FreshC:    m.RoomC + h.t[h.freshAir(z)],
		InM3PerS:  h.inflow[z] / s.rhoCp,
		OutM3PerS: h.outflow[z] / s.rhoCp,
		WallLossW: m.Zones[z].WallWPerK * air,
	}
}

func (s *Solver) fillPath(r *Result, i int) {
	m, h := s.m, &s.heat
	p, st := &m.Paths[i], &h.paths[i]
	q := s.flow.branches[i].flow
	each := q / float64(p.elements())
	in := h.drawn(st)
	out := PathState{
		RPM:           s.pathRPM[i],
		FlowM3PerS:    q,
		EachM3PerS:    each,
		SharedLossPa:  s.ratio * p.SharedImpedance * q * math.Abs(q),
		EachLossPa:    s.ratio * p.EachImpedance * each * math.Abs(each),
		FanPowerW:     s.pathFanW[i],
		CapacityWPerK: st.capacity,
		AirInC:        m.RoomC + in,
		AirOutC:       m.RoomC + in,
	}
	if p.Fans.Count > 0 {
		out.FanRisePa = s.ratio * p.Fans.Fan.PressurePa(out.RPM, each)
	}
	added := st.streamW
	if st.radiator >= 0 {
		rad := &h.radiator[st.radiator]
		out.RadiatorW = h.radiatorHeat(st.radiator)
		out.RadiatorUAWPerK, out.Exchange = rad.ua, rad.exchange
		hot := h.t[h.coolant(st.radiator)]
		out.CoolantInC = m.RoomC + hot
		out.CoolantOutC = out.CoolantInC - out.RadiatorW/m.Loops[rad.loop].CapacityWPerK
		added += out.RadiatorW
	}
	if st.capacity >= noFlowWPerK {
		out.AirOutC += added / st.capacity
	}
	r.Paths[i] = out
}

func (s *Solver) fillLeaks(r *Result) {
	for i, z := range s.leakOf {
		r.Zones[z].LeakM3PerS += s.flow.branches[s.firstLeak+i].flow
	}
	h, at := &s.heat, s.firstLeak+len(s.leakOf)
	for i := range s.m.Partitions {
		p := &s.m.Partitions[i]
		st := &r.Partitions[i]
		a, b := h.t[h.air(p.A)], h.t[h.air(p.B)]
		st.HeatW = (p.ConductanceWPerK + float64(s.rhoCp*p.ExchangeM3PerS)) * (a - b)
		if p.Impedance == 0 {
			continue
		}
		st.FlowM3PerS = s.flow.branches[at].flow
		from := a
		if st.FlowM3PerS < 0 {
			from = b
		}
		st.HeatW += float64(s.rhoCp * st.FlowM3PerS * from)
		at++
	}
}

// fillOutlets adds up what leaves each zone to the room, and gives its mean temperature.
func (s *Solver) fillOutlets(r *Result) {
	h := &s.heat
	for z := range r.Zones {
		left := h.outflow[z] // still to be shared out: what the paths do not take leaves by the leak, as mixed air
		sum := 0.0
		for i := range h.paths {
			st := &h.paths[i]
			if st.zone != z {
				continue
			}
			sum += float64((1 - st.inside) * (st.streamW + st.zoneW + r.Paths[i].RadiatorW))
			if !st.inward {
				left -= st.capacity
				sum += float64(st.capacity * h.drawn(st))
			}
		}
		sum += float64(left * h.t[h.air(z)])
		r.CarriedW += sum
		r.Zones[z].OutletC = r.Zones[z].AirC
		if h.outflow[z] >= noFlowWPerK {
			r.Zones[z].OutletC = s.m.RoomC + sum/h.outflow[z]
		}
	}
}

func (s *Solver) fillConsumer(r *Result, k int) {
	c := &s.m.Consumers[k]
	inlet := s.m.RoomC + s.inletK(k)
	st := ConsumerState{
		InletC:          inlet,
		ResistanceKPerW: s.consumerR[k],
		TempC:           inlet + float64(s.power[k]*s.consumerR[k]),
		RPM:             s.consumerRPM[k],
		FanPowerW:       s.consumerFanW[k],
		HeldW:           s.power[k],
		HeldShare:       1,
		Throttled:       s.power[k] < c.PowerW,
		CallShare:       s.called[k],
	}
	st.HotspotC = st.TempC + float64(c.HotspotKPerW*st.HeldW)
	if c.PowerW > 0 {
		st.HeldShare = st.HeldW / c.PowerW
	}
	r.Consumers[k] = st
	r.HeatInW += st.HeldW + st.FanPowerW
	r.FanPowerW += st.FanPowerW
	if c.Medium == ToOwnDuct {
		r.DuctW += st.HeldW + st.FanPowerW
	}
}
