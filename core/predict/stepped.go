package predict

import (
	"slices"

	"slipfit/core/air"
	"slipfit/core/build"
	"slipfit/core/sound"
)

// stepped is Louder by steps.
func (f *Forecast) stepped(r *Run, k toldOf) bool {
	s := stepping{f: f, r: r, k: k, m: &f.model}
	s.ready()
	var at step
	for i := range s.m.groups {
		if s.m.groups[i].radiator {
			at[radiatorFans][1] = 1
		} else {
			at[caseFans][1] = 1
		}
	}
	if at[caseFans][1] > 0 {
		at[caseFans][0] = f.slowest(r, k.load)
	}
	if s.m.supply.duct < 0 {
		at[supplyLoad][1] = 1
	}
	return s.all(at, finest)
}

// slowest is the least share of their speed that the case's fans have with any more heat in a run. A supply's fan that starts takes
// air out, so that they may slow down; so may they where the warmer one of two chambers gets more of the other's air.
func (f *Forecast) slowest(r *Run, load int) float64 {
	if !r.free() || f.model.chambers() > 1 {
		return 0
	}
	share := f.model.share(r)
	if s := &f.model.supply; s.duct < 0 && r.DCW.Expected < s.zeroToW {
		t := f.turning().Run(load, Ordinary)
		if !t.free() {
			return 0
		}
		share = min(share, f.model.share(t))
	}
	return share
}

// step is from which to which share of their range things turn.
type step [3][2]float64

// What a step speaks of: the case's fans, a radiator's, and the supply's by its load, from the least to the planned one.
const (
	caseFans = iota
	radiatorFans
	supplyLoad
)

// finest is how often a step is halved at most.
const finest = 12

// all reports a level over the wish in all of a step, or in both its halves.
func (s *stepping) all(at step, halvings int) bool {
	if s.over(&at) {
		return true
	}
	if halvings == 0 {
		return false
	}
	widest := 0
	for i := range at {
		if at[i][1]-at[i][0] > at[widest][1]-at[widest][0] {
			widest = i
		}
	}
	middle := (at[widest][0] + at[widest][1]) / 2
	slow, fast := at, at
	slow[widest][1], fast[widest][0] = middle, middle
	return s.all(slow, halvings-1) && s.all(fast, halvings-1)
}

// stepping is what steps have in common.
type stepping struct {
	f        *Forecast
	r        *Run
	k        toldOf
	m        *model
	bound    air.Machine
	solved   bool    // whether that was the last that was solved
	dc, card float64 // what the supply gives at least, and the card's part of it
}

func (s *stepping) ready() {
	m := s.m
	m.duty(s.r)
	s.dc = m.air.Zones[boardZone].HeatW + m.pumpW + devicesW
	for i := range m.parts {
		c := &m.parts[i]
		s.dc += m.air.Consumers[c.index].PowerW
		if c.seat == build.Graphics {
			s.card = m.air.Consumers[c.index].PowerW
		}
	}
	s.bound = m.air
	s.bound.Paths = slices.Clone(m.air.Paths)
	s.bound.Consumers = slices.Clone(m.air.Consumers)
	loss := m.loss(s.dc, mainsLine(&s.f.needs.Place))
	if k := m.supply.duct; k >= 0 {
		s.bound.Consumers[k].PowerW, s.bound.Consumers[k].Fans.Speed.FixedRPM = loss, m.supply.rpm(s.dc)
	} else {
		s.bound.Paths[m.supply.path].HeatW = loss
	}
}

// loadW is the supply's load at a share of the way from its least to its planned one.
func (s *stepping) loadW(share float64) float64 {
	return s.dc + float64(share*(max(s.dc, plannedLoad*float64(s.m.supply.rating)/1000)-s.dc))
}

// supply is the supply at a load; of several that breathe room air, with each of which the case is the same, the quietest.
func (s *stepping) supply(loadW float64) sound.Running {
	if s.m.supply.any {
		quietest := sound.FromPicowatts(s.f.predictor.quietestPW(s.f.besides.supplies, loadW))
		return sound.Running{Source: sound.Source{Count: 1, RatedDBA: quietest}}
	}
	return sound.Running{Source: s.m.supply.source, RPM: s.m.supply.rpm(loadW)}
}

// over reports a level over the wish in all of a step, or that the machine is never in it.
func (s *stepping) over(at *step) bool {
	m, p := s.m, s.f.predictor
	held := slices.Clone(m.steady)
	for i := range m.groups {
		g := &m.groups[i]
		share := at[caseFans][0]
		if g.radiator {
			share = at[radiatorFans][0]
		}
		held = append(held, sound.Running{Source: g.source, RPM: turned(&m.air.Paths[g.paths[0]].Fans.Speed, share)})
	}
	supply := s.supply(s.loadW(at[supplyLoad][0]))
	less := supply // where a card at its limit takes less
	if at[supplyLoad][0] == 0 {
		less = s.supply(s.dc - s.card)
	}
	held, cut := append(held, supply), append(slices.Clone(held), less)
	if s.loud(held) && s.loud(cut) {
		return true
	}
	if !s.solve(at) {
		return false
	}
	for i := range m.parts {
		c := &m.parts[i]
		if c.sound.Count == 0 {
			continue
		}
		run := sound.Running{Source: c.sound, RPM: p.result.Consumers[c.index].RPM}
		held = append(held, run)
		if c.seat == build.Graphics {
			run.RPM = c.sound.RatedRPM // to which a card at its limit turns its fans
		}
		cut = append(cut, run)
	}
	return s.loud(cut) && (s.loud(held) || s.faster(at))
}

// solve solves the machine with everything at the upper end of a step: so much air leaves every part at its coolest.
func (s *stepping) solve(at *step) bool {
	m, p := s.m, s.f.predictor
	for i := range m.air.Paths {
		if path := &m.air.Paths[i]; path.Radiator.Sections > 0 {
			s.bound.Paths[i].Fans.Speed = air.Speed{FixedRPM: turned(&path.Fans.Speed, at[radiatorFans][1])}
		} else if len(path.Fans.Speed.Curves) > 0 {
			s.bound.Paths[i].Fans.Speed = air.Speed{FixedRPM: turned(&path.Fans.Speed, at[caseFans][1])}
		}
	}
	if m.supply.duct < 0 {
		s.bound.Paths[m.supply.path].Fans.Speed.FixedRPM = m.supply.rpm(s.loadW(at[supplyLoad][1]))
	}
	solve := p.solver.Solve
	if s.solved {
		solve = p.solver.Again
	}
	s.solved = solve(&s.bound, &p.result) == nil
	return s.solved
}

// faster reports that what fans follow, at its coolest, asks them to turn faster than the upper end of a step: the machine is
// never in it.
func (s *stepping) faster(at *step) bool {
	m, r := s.m, &s.f.predictor.result
	for i := range m.groups {
		g := &m.groups[i]
		speed := &m.air.Paths[g.paths[0]].Fans.Speed
		end := turned(speed, at[caseFans][1])
		if g.radiator {
			end = turned(speed, at[radiatorFans][1])
		}
		for j := range speed.Curves {
			of := &speed.Curves[j].Of
			coolest := 0.0
			if of.Kind == air.Coolant {
				coolest = r.Loops[of.Index].HotC
			} else {
				coolest = r.Zones[of.Index].AirC
			}
			if asked(speed, coolest) > end {
				return true
			}
		}
	}
	return false
}

// loud reports sources, with the disks beside, over the wish.
func (s *stepping) loud(sources []sound.Running) bool {
	return atChair(sum(sound.Total(sources), s.k.disks), s.r.ChairM) > s.k.wish
}
