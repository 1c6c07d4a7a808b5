package predict

import (
	"math"
	"slices"

	"slipfit/core/air"
	"slipfit/core/build"
	"slipfit/core/sound"
)

// level is a level at the chair, where one is known.
type level struct {
	dba          float64
	asked, known bool
}

// QuietestDBA is a level at the chair on an ordinary day that no build is under which holds this one's parts and more memory,
// drives and cards, and these turning disks among them; known is false where nothing is said.
//
// How: the case's fans turn at some speed between what they have here, for more heat slows none, and their full one. That range is looked at in steps. Within a
// step they are heard at its lower end, while everything else is solved with them at its upper end, a radiator's fans at full
// speed and the supply's as fast as its planned load asks: so much air leaves every part at its coolest. Where Least speaks of
// the build it says more.
func (f *Forecast) QuietestDBA(load int, disks ...build.Tier) (dba float64, known bool) {
	if f.quietest == nil {
		f.quietest = make([]level, len(f.loads))
	}
	l := &f.quietest[load]
	if !l.asked {
		l.asked = true
		l.dba, l.known = f.bound(load)
	}
	if len(disks) == 0 || !l.known {
		return l.dba, l.known
	}
	var m model
	for _, t := range disks {
		m.disk(t)
	}
	more := atChair(sound.Total(m.steady), chairOf(&f.needs.Place))
	return 10 * math.Log10(math.Pow(10, l.dba/10)+math.Pow(10, more/10)), true
}

// bound is what QuietestDBA says without disks.
func (f *Forecast) bound(load int) (dba float64, known bool) {
	const day = Ordinary
	r := f.Run(load, day)
	if r.Err != nil || len(r.Missing) > 0 || !r.clear() {
		return 0, false
	}
	if runs := f.Least(load, day); len(runs) > 0 && !slices.ContainsFunc(runs, func(r *Run) bool { return !r.clear() }) {
		dba = math.Inf(1)
		for _, r := range runs {
			dba = min(dba, r.heard())
		}
		return dba, true
	}
	return f.stepped(r)
}

// steps is how many steps the speed of the case's fans is looked at in.
const steps = 8

// plannedLoad is the share of a supply's rating that everything at work may take (rule supply-steady).
const plannedLoad = 0.9

// stepped bounds the level with the case's fans at every speed.
func (f *Forecast) stepped(r *Run) (dba float64, known bool) {
	m, p := &f.model, f.predictor
	m.duty(r)
	dc, card := m.air.Zones[boardZone].HeatW+m.pumpW+devicesW, 0.0
	for i := range m.parts {
		c := &m.parts[i]
		dc += m.air.Consumers[c.index].PowerW
		if c.seat == build.Graphics {
			card = m.air.Consumers[c.index].PowerW
		}
	}
	from := 0.0
	if r.free() {
		from = m.share(r)
	}
	bound := m.air
	bound.Paths = slices.Clone(m.air.Paths)
	bound.Consumers = slices.Clone(m.air.Consumers)
	loss := m.loss(dc, mainsLine(&f.needs.Place))
	if k := m.supply.duct; k >= 0 {
		bound.Consumers[k].PowerW, bound.Consumers[k].Fans.Speed.FixedRPM = loss, m.supply.rpm(dc)
	} else {
		q := &bound.Paths[m.supply.path]
		q.HeatW, q.Fans.Speed.FixedRPM = loss, m.supply.rpm(plannedLoad*float64(m.supply.rating)/1000)
	}
	dba = math.Inf(1)
	for k := range steps {
		low, high := from+float64((1-from)*float64(k)/steps), from+float64((1-from)*float64(k+1)/steps)
		for i := range m.air.Paths {
			if at := &m.air.Paths[i]; at.Radiator.Sections > 0 {
				bound.Paths[i].Fans.Speed = air.Speed{FixedRPM: at.Fans.Fan.RatedRPM}
			} else if len(at.Fans.Speed.Curves) > 0 {
				bound.Paths[i].Fans.Speed = air.Speed{FixedRPM: turned(&at.Fans.Speed, high)}
			}
		}
		if p.solver.Solve(&bound, &p.result) != nil {
			return 0, false
		}
		sources := slices.Clone(m.steady)
		for i := range m.groups {
			g := &m.groups[i]
			at := low
			if g.radiator {
				at = 0
			}
			sources = append(sources, sound.Running{Source: g.source, RPM: turned(&m.air.Paths[g.paths[0]].Fans.Speed, at)})
		}
		held, cut := sources, slices.Clone(sources) // a card at its limit takes less and turns its fans at full speed
		for i := range m.parts {
			c := &m.parts[i]
			if c.sound.Count == 0 {
				continue
			}
			run := sound.Running{Source: c.sound, RPM: p.result.Consumers[c.index].RPM}
			held = append(held, run)
			if c.seat == build.Graphics {
				run.RPM = c.sound.RatedRPM
			}
			cut = append(cut, run)
		}
		held = append(held, sound.Running{Source: m.supply.source, RPM: m.supply.rpm(dc)})
		cut = append(cut, sound.Running{Source: m.supply.source, RPM: m.supply.rpm(dc - card)})
		dba = min(dba, atChair(min(sound.Total(held), sound.Total(cut)), r.ChairM))
	}
	return dba, true
}

// share is how far the case's fans are on the way from their lowest to their full speed; 0 where there are none.
func (m *model) share(r *Run) float64 {
	least := 1.0
	found := false
	for i := range m.groups {
		g := &m.groups[i]
		if g.radiator {
			continue
		}
		s := &m.air.Paths[g.paths[0]].Fans.Speed
		if low, full := turned(s, 0), turned(s, 1); full > low {
			least, found = min(least, (r.Fans[i].RPM.Expected-low)/(full-low)), true
		}
	}
	if !found {
		return 0
	}
	return max(0, least)
}

// turned is a fan's speed at a share of the way from the lowest to the full speed of its curve.
func turned(s *air.Speed, share float64) float64 {
	points := s.Curves[0].Points
	low, full := points[0].RPM, points[len(points)-1].RPM
	return low + float64(share*(full-low))
}

// heard is the level at the chair, dB(A), with a radiator's fans at their lowest where they blow in: more air through it may
// let them slow down.
func (r *Run) heard() float64 {
	m := &r.forecast.model
	if m.b.Cooler.Liquid == nil || !intakes(m.b.Face) {
		return r.ChairDBA.Expected
	}
	sources := slices.Clone(m.steady)
	for i := range m.groups {
		g := &m.groups[i]
		rpm := r.Fans[i].RPM.Expected
		if g.radiator {
			rpm = min(rpm, turned(&m.air.Paths[g.paths[0]].Fans.Speed, 0))
		}
		sources = append(sources, sound.Running{Source: g.source, RPM: rpm})
	}
	own := r.Cooling
	for i := range m.parts {
		if c := &m.parts[i]; c.sound.Count > 0 {
			sources = append(sources, sound.Running{Source: c.sound, RPM: own[0].RPM.Expected})
			own = own[1:]
		}
	}
	sources = append(sources, sound.Running{Source: m.supply.source, RPM: own[0].RPM.Expected})
	return atChair(sound.Total(sources), r.ChairM)
}

// clear reports a processor well under its limit: it keeps the power it is asked for when memory, drives and cards are added,
// and its supply's fan is no slower.
func (r *Run) clear() bool { return r.Parts[0].TempC.Expected <= r.Parts[0].LimitC-nearK }
