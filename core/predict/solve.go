package predict

import (
	"math"

	"slipfit/core/air"
	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/feed"
	"slipfit/core/sound"
	"slipfit/core/unit"
)

// mainsLine is the efficiency table for the brief's mains, 230 V where it does not say.
func mainsLine(p *brief.Place) feed.Line {
	if p.Mains.Or(230) < 150 {
		return feed.Line115
	}
	return feed.Line230
}

// duty sets room and powers of a run in the machine.
func (m *model) duty(r *Run) {
	m.air.RoomC, m.air.AltitudeM = r.RoomC, r.AltitudeM
	for i := range m.parts {
		c := &m.parts[i]
		m.air.Consumers[c.index].PowerW = between(c.rest, c.most, share(&r.Load, c.seat))
	}
	if m.supply.any {
		m.anySupply(r)
	}
	m.air.Zones[boardZone].HeatW = m.boardW + m.lightsW + m.brings(&r.Load) + r.besidesW
	phi := openRecirculation
	if r.forecast.needs.Place.Stands == "shelf" {
		phi = shelfRecirculation
	}
	for z := range m.air.Zones {
		m.air.Zones[z].Recirculation = phi
	}
}

func share(l *brief.Load, s build.Seat) unit.Share {
	if s == build.Graphics {
		return l.Graphics
	}
	return l.Processor
}

// solve brings the machine to rest. The loss of a supply in the case follows from what the parts and fans draw at rest, and those from
// it; it is taken over until it moves by less than settledW.
func (m *model) solve(s *air.Solver, out *air.Result, line feed.Line) error {
	if m.supply.duct >= 0 {
		if err := m.solveApart(s, out); err != nil {
			return err
		}
		m.addApart(out, line)
		return nil
	}
	const settledW, passes = 0.02, 6
	dc := m.air.Zones[boardZone].HeatW + m.pumpW + devicesW
	for i := range m.parts {
		dc += m.air.Consumers[m.parts[i].index].PowerW
	}
	loss := m.loss(dc, line)
	for pass := range passes {
		m.run(loss, dc)
		bring := s.Again
		if pass == 0 {
			bring = s.Solve
		}
		if err := bring(&m.air, out); err != nil {
			return err
		}
		dc = m.dc(out)
		next := m.loss(dc, line)
		if math.Abs(next-loss) < settledW {
			return nil
		}
		loss = next
	}
	return nil
}

// loss is what stays in the supply at a load.
func (m *model) loss(dcW float64, line feed.Line) float64 {
	if m.supply.any {
		return m.supply.lossW
	}
	share, _ := m.supply.efficiency(dcW, line)
	if share == 0 {
		return 0
	}
	return dcW/share - dcW
}

// dc is what the supply gives: all heat in the case but its own loss, and what the devices on the ports take.
func (m *model) dc(r *air.Result) float64 {
	heat := r.HeatInW + devicesW
	if k := m.supply.duct; k >= 0 {
		return heat - r.Consumers[k].HeldW
	}
	return heat - m.air.Paths[m.supply.path].HeatW
}

// name fills in which parts a run is about, for one that could not be solved.
func (m *model) name(r *Run) {
	for i := range m.parts {
		c := &m.parts[i]
		r.Parts = append(r.Parts, Part{Seat: c.seat, Name: c.part.Name, Count: 1, LimitC: c.limit})
	}
	for i := range m.drives {
		d := &m.drives[i]
		r.Drives = append(r.Drives, Part{Seat: d.seat, Name: d.part.Name, Count: d.count, LimitC: d.limit, Missing: d.missing})
	}
	r.Board = Part{Seat: build.Board, Name: m.b.Board.Name, Count: 1, LimitC: converterLimitC, Missing: m.converters.missing}
}

// read turns the machine at rest into a run.
func (m *model) read(r *Run, in *air.Machine, out *air.Result, f *Forecast) {
	for z := range out.Zones {
		r.Zones = append(r.Zones, Zone{in.Zones[z].Name, only(out.Zones[z].AirC), only(out.Zones[z].AirC - in.RoomC)})
	}
	r.freshC, r.density = out.Zones[boardZone].FreshC, out.DensityRatio
	m.readParts(r, in, out)
	m.readDrives(r, out)
	m.readBoard(r, out)
	if len(out.Loops) > 0 {
		r.CoolantC = only(out.Loops[0].HotC)
	}
	m.readFans(r, in, out)
	m.readPower(r, out, f)
	r.HeatInW, r.CarriedW, r.WallsW, r.DuctW = out.HeatInW, out.CarriedW, out.WallW, out.DuctW
	r.MassResidualKgS, r.Evaluations = out.MassResidualKgS, out.Evaluations
}

// readParts reads processor and graphics card.
func (m *model) readParts(r *Run, in *air.Machine, out *air.Result) {
	for i := range m.parts {
		c := &m.parts[i]
		st := &out.Consumers[c.index]
		r.Parts = append(r.Parts, Part{
			Seat: c.seat, Name: c.part.Name, Count: 1, AskedW: in.Consumers[c.index].PowerW, LimitC: c.limit,
			HeldW: only(st.HeldW), Kept: only(math.Pow(st.HeldShare, speedOfPower)), TempC: only(st.TempC), InletC: only(st.InletC),
		})
	}
}

// readDrives reads the drives' temperatures off the air they lie in. A solid-state drive over its limit slows down until it
// holds it: what it could hold for ever is in HeldW, while TempC is what it would reach at what is asked.
func (m *model) readDrives(r *Run, out *air.Result) {
	z := &out.Zones[boardZone]
	for i := range m.drives {
		d := &m.drives[i]
		inlet := z.FreshC + float64(d.beta*(z.AirC-z.FreshC))
		asked := between(d.rest, d.most, r.Load.Drives)
		p := Part{
			Seat: d.seat, Name: d.part.Name, Count: d.count, AskedW: asked, LimitC: d.limit, Bare: d.onModule,
			InletC: only(inlet), TempC: only(inlet + float64(asked*d.resistance)), Missing: d.missing,
		}
		held := asked
		if p.TempC.Expected > d.limit && d.resistance > 0 {
			held = max(0, (d.limit-inlet)/d.resistance)
		}
		kept := 1.0
		if asked > 0 {
			kept = held / asked
		}
		p.HeldW, p.Kept = only(held), only(kept)
		r.Drives = append(r.Drives, p)
	}
}

// readBoard reads the temperature of the board's converters.
func (m *model) readBoard(r *Run, out *air.Result) {
	r.Board = Part{Seat: build.Board, Name: m.b.Board.Name, Count: 1, LimitC: converterLimitC, Missing: m.converters.missing, Kept: only(1)}
	air := out.Zones[boardZone].AirC
	asked := out.Consumers[m.parts[0].index].HeldW
	r.Board.AskedW, r.Board.HeldW, r.Board.InletC = asked, only(asked), only(air)
	if m.converters.holdsW > 0 {
		r.Board.TempC = only(air + converterRiseK*asked/m.converters.holdsW)
	}
}

// readFans reads speeds, flows and levels.
func (m *model) readFans(r *Run, in *air.Machine, out *air.Result) {
	var running [12]sound.Running
	sources := append(running[:0], m.steady...)
	add := func(list *[]Fan, f Fan, s sound.Source, rpm float64) {
		f.Count, f.FullRPM, f.RPM = max(f.Count, s.Count), s.RatedRPM, only(rpm)
		run := sound.Running{Source: s, RPM: rpm}
		f.DBA = only(atChair(run.GroupDBA(), r.ChairM))
		*list = append(*list, f)
		sources = append(sources, run)
	}
	for i := range m.groups {
		g := &m.groups[i]
		f := Fan{Name: g.name, Face: g.face, Outward: g.outward, Count: g.count}
		flow, watts := 0.0, 0.0
		for _, path := range g.paths[:g.spans] {
			flow += out.Paths[path].FlowM3PerS
			watts += out.Paths[path].FanPowerW
		}
		f.FlowM3H, f.PowerW = only(flow*air.M3PerHPerM3PerS), only(watts)
		if g.outward {
			r.FansOut.Expected += f.FlowM3H.Expected
		} else {
			r.FansIn.Expected += f.FlowM3H.Expected
		}
		add(&r.Fans, f, g.source, out.Paths[g.paths[0]].RPM)
	}
	r.FansIn, r.FansOut = only(r.FansIn.Expected), only(r.FansOut.Expected)
	for i := range m.parts {
		if c := &m.parts[i]; c.sound.Count > 0 {
			st := &out.Consumers[c.index]
			f := Fan{Name: c.sound.Name, Count: in.Consumers[c.index].Fans.Count, PowerW: only(st.FanPowerW)}
			add(&r.Cooling, f, c.sound, st.RPM)
		}
	}
	rpm := 0.0
	if k := m.supply.duct; k >= 0 {
		rpm = out.Consumers[k].RPM
	} else {
		rpm = out.Paths[m.supply.path].RPM
	}
	add(&r.Cooling, Fan{Name: "supply"}, m.supply.source, rpm)
	flow := 0.0
	for z := range out.Zones {
		flow += out.Zones[z].InM3PerS
	}
	for i := range out.Partitions {
		flow -= math.Abs(out.Partitions[i].FlowM3PerS) // what only changes chambers comes in once
	}
	r.InM3H = only(flow * air.M3PerHPerM3PerS)
	heard := sound.TotalBand(sources, speedUShare, meterUDB)
	r.PowerDBA, r.levelU = only(heard.Expected), (heard.High-heard.Expected)/2
	r.ChairDBA = only(atChair(r.PowerDBA.Expected, r.ChairM))
}

// readPower reads what the supply gives and takes, and what that comes to in a year.
func (m *model) readPower(r *Run, out *air.Result, f *Forecast) {
	place := &f.needs.Place
	dc := m.dc(out)
	loss := m.loss(dc, mainsLine(place))
	r.DCW, r.LossW, r.WallW = only(dc), only(loss), only(dc+loss)
	wh := feed.EnergyWh(feed.Use{WallMW: int64(math.Round((dc + loss) * 1000)), MinutesPerDay: 60, DaysPerYear: int64(r.Load.Hours)})
	r.YearKWh = only(float64(wh) / 1000)
	r.YearCost = only(float64(feed.CostMinor(wh, int64(place.Energy.Or(kWhMinor))*1000)))
}
