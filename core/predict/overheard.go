package predict

import (
	"math"

	"slipfit/core/air"
	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/sound"
	"slipfit/core/unit"
)

// How loud a core is at least, whichever supply feeds it, follows from how warm its chambers are at least (see breath). Fans that follow
// their air turn no slower than that asks, those of a part no slower than the part would be warm in it, those of a radiator no slower than
// the coolant would be with as much air through it as there can be. A part that comes to its limit calls all of them at full speed.

// LouderFed reports that no build which holds this one's parts, disks of so much sound power, dB(A), and one of the supplies besides is as
// quiet at the chair as a level in an activity on an ordinary day. False says nothing.
func (p *Predictor) LouderFed(b *build.Build, n *brief.Needs, besides Besides, load int, wish unit.Sound, disksDBA float64) bool {
	return p.louderFed(p.breath(b, n, besides, nil), b, n, besides, load, wish, disksDBA)
}

// louderFed is LouderFed of a core; of none nothing is said.
func (p *Predictor) louderFed(x *breath, b *build.Build, n *brief.Needs, besides Besides, load int, wish unit.Sound, disksDBA float64) bool {
	if x == nil || len(x.unheard.missing) > 0 {
		return false
	}
	a := airing{
		breath: x, place: &n.Place, load: load, asked: &Loads(n)[load], roomC: roomC(n, Ordinary), besidesW: besides.at(load), mostW: besides.mostW(load),
	}
	_, a.boardW, _ = boardless(b)
	k := asking(load, wish, disksDBA)
	pw := a.leastPW(func(loadW float64) float64 { return p.quietestPW(x.supplies, loadW) })
	return sum(sound.FromPicowatts(pw), k.disks) > sound.FromPicowatts(allowedPW(k, a.place))
}

// leastPW is the sound power of all but disks at least, pW, where a supply has so much at a load. A part may hold less than it is asked, and
// ask as much less of the supply: then it is at its limit, and its fans turn at full speed.
func (a *airing) leastPW(supplyPW func(loadW float64) float64) float64 {
	m := &a.model
	var rise [2]float64
	warmest := 0.0
	for z := range m.air.Zones {
		rise[z] = a.leastRise(z)
		warmest = max(warmest, rise[z])
	}
	heard := func(s sound.Source, rpm float64) float64 {
		return sound.Picowatts(sound.Running{Source: s, RPM: rpm}.GroupDBA())
	}
	others := 0.0
	var free, held, cooler [2]float64 // by part: of fans where it holds all it is asked, where it does not, and where it does but the processor not
	for _, s := range m.steady {
		others += heard(s.Source, s.RPM)
	}
	for i := range m.groups {
		g := &m.groups[i]
		f := &m.air.Paths[g.paths[0]].Fans
		switch {
		case g.radiator:
			free[0] = heard(g.source, slowest(f, func(share float64) float64 { return a.coolantC(share, rise) }))
			held[0] = heard(g.source, f.Fan.RatedRPM)
		case a.bought != nil && i == a.anyOf:
			others += a.bought.quietestPW(a.roomC + warmest)
		default:
			others += heard(g.source, asked(&f.Speed, a.roomC+warmest))
		}
	}
	for i := range m.parts {
		c := &m.parts[i]
		if c.sound.Count == 0 {
			continue
		}
		in := &m.air.Consumers[c.index]
		askedW := between(c.rest, c.most, share(a.asked, c.seat))
		turning := func(inlet float64) float64 {
			return heard(c.sound, slowest(&in.Fans, func(share float64) float64 {
				return a.roomC + float64(inlet*rise[in.Zone]) + float64(askedW*in.KPerW(share, a.density()/air.StandardDensityKgPerM3))
			}))
		}
		cooler[i] = turning(in.Beta)
		if free[i] = cooler[i]; a.warmsInlet {
			free[i] = turning(a.inletShare(in))
		}
		held[i] = heard(c.sound, in.Fans.Fan.RatedRPM)
	}
	least := math.Inf(1)
	for cut := range 1 << len(m.parts) {
		pw, loadW := others, a.partsW()
		for i := range m.parts {
			if c := &m.parts[i]; cut>>i&1 != 0 {
				pw += held[i]
				loadW -= between(c.rest, c.most, share(a.asked, c.seat))
			} else if cut&1 != 0 {
				pw += cooler[i]
			} else {
				pw += free[i]
			}
		}
		least = min(least, pw+supplyPW(loadW))
	}
	return least
}

// inletShare is the least share of its chamber's warmth over the room that a part breathes. Where a radiator warms all that comes in, that is
// as much warmer than the room as the radiator's share of all heat in the chamber makes the chamber.
func (a *airing) inletShare(in *air.Consumer) float64 {
	c := &a.model.parts[0]
	if !a.warmsInlet || math.IsInf(a.mostW, 1) {
		return in.Beta
	}
	radiatorW := inwardShare * (between(c.rest, c.most, a.asked.Processor) + a.pumpW)
	allW := a.partsW() + a.mostW + a.fansW()
	if a.supply.path >= 0 {
		allW += a.strongest().lossW // some of it stays in the case where its fan stands still
	}
	return in.Beta + float64((1-in.Beta)*radiatorW/allW)
}

// leastRise is by how much a chamber is warmer than the room at least, K, to a sixth of a kelvin.
func (a *airing) leastRise(zone int) float64 {
	low, high := 0.0, 40.0
	for range 8 {
		if a.riseK = (low + high) / 2; a.warmer(zone) {
			low = a.riseK
		} else {
			high = a.riseK
		}
	}
	return low
}

// slowest is how fast fans turn at least that follow a temperature which is no lower, at a share of their full speed, than so much, °C.
func slowest(f *air.Fans, leastC func(share float64) float64) (rpm float64) {
	low, high := turned(&f.Speed, 0), turned(&f.Speed, 1)
	for range 10 {
		if middle := (low + high) / 2; asked(&f.Speed, leastC(middle/f.Fan.RatedRPM)) > middle {
			low = middle
		} else {
			high = middle
		}
	}
	return low
}

// coolantC is how warm coolant is at least as it comes to the radiators, °C, with their fans at a share of their full speed and chambers so
// much warmer than the room.
func (a *airing) coolantC(share float64, rise [2]float64) float64 {
	m, density := &a.model, a.density()
	leastPa, mostPa := 0.0, 0.0
	for z := range m.air.Zones {
		leastPa, mostPa = min(leastPa, a.chambers[z].least), max(mostPa, a.chambers[z].most)
	}
	airC, takesWPerK := math.Inf(1), 0.0
	for i := range m.air.Paths {
		path := &m.air.Paths[i]
		r := &path.Radiator
		if r.Sections == 0 {
			continue
		}
		drivePa, pull := share*share*path.Fans.Fan.ShutoffPa, hotDraught*math.Abs(path.HeightM)
		with, against := drivePa-leastPa+pull, mostPa-drivePa+pull
		inC := a.roomC
		if path.Direction == air.Exhaust {
			with, against = drivePa+mostPa+pull, -leastPa-drivePa+pull
			if against <= 0 {
				inC += rise[path.Zone]
			}
		}
		still := float64(r.Sections) * air.StillM3PerS
		m3PerS := math.Sqrt(math.Hypot(max(with, against, 0)/path.Impedance(), still*still))
		takesWPerK += r.Arrangement.Exchange(r.ConductsWPerK(m3PerS, density/air.StandardDensityKgPerM3), density*air.CpJPerKgK*m3PerS, m.air.Loops[r.Loop].CapacityWPerK).ConductanceWPerK
		airC = min(airC, inC)
	}
	c := &m.parts[0]
	return airC + (between(c.rest, c.most, a.asked.Processor)+m.pumpW)/takesWPerK
}
