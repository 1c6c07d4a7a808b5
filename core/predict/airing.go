package predict

import (
	"math"
	"slices"

	"slipfit/core/air"
	"slipfit/core/brief"
	"slipfit/core/build"
)

// DriveOverFed reports drives of a tier over their limit in an activity on the hottest day, where the board puts them, in a build with one of
// the supplies besides, whichever it is. Of memory, drives and cards it counts the heat of those in some seats.
func (p *Predictor) DriveOverFed(b *build.Build, n *brief.Needs, counted build.Set, besides Besides, load int, tier build.Seat) bool {
	x := p.breath(b, n, besides, nil)
	return x != nil && p.driveOverFed(x, b, n, counted, besides, load, tier)
}

// driveOverFed is DriveOverFed of a core.
func (p *Predictor) driveOverFed(x *breath, b *build.Build, n *brief.Needs, counted build.Set, besides Besides, load int, tier build.Seat) bool {
	some := but(b, counted)
	m := model{b: &some}
	m.extras()
	m.storage()
	if len(m.missing) > 0 {
		return false
	}
	a := airing{breath: x, place: &n.Place, load: load, asked: &Loads(n)[load], roomC: roomC(n, Hottest)}
	_, a.boardW, _ = boardless(b)
	a.besidesW, a.mostW = m.brings(a.asked)+besides.at(load), besides.mostW(load)
	m.b, m.drives = b, nil
	m.storage()
	return slices.ContainsFunc(m.drives, func(d drive) bool {
		if d.seat != tier || len(d.missing) > 0 {
			return false
		}
		a.riseK = (d.limit + slackK - d.risenK(a.asked) - a.roomC) / d.beta
		return a.riseK <= 0 || a.warmer(boardZone)
	})
}

// airing is a breath in an activity, on a day, with so much heat besides in the board's chamber at least, and with all there is at most.
type airing struct {
	*breath
	place           *brief.Place
	load            int
	asked           *brief.Load
	roomC           float64
	boardW          float64 // of the board, which the breath is without
	besidesW, mostW float64
	riseK           float64 // over the room, that is asked about
}

// warmer reports the air of a chamber warmer than the rise, which is more than nought.
func (a *airing) warmer(zone int) bool {
	throughPlate := len(a.chambers[zone].plates) > 0 && (zone == cardZone || !a.warmer(cardZone))
	rhoCp := a.density() * air.CpJPerKgK
	coolsWPerK := a.coolsWPerK(zone, throughPlate)
	heatW, fans := a.parts(zone, coolsWPerK)
	if zone == boardZone {
		heatW += a.boardW + a.lightsW + a.besidesW
	}
	m3PerS := (heatW/a.riseK - coolsWPerK) / rhoCp
	return m3PerS > 0 && a.breathesLess(zone, m3PerS, throughPlate, fans)
}

// density is that of the room's air, kg/m³.
func (a *airing) density() float64 {
	return air.DensityKgPerM3(a.roomC, air.PressurePa(float64(a.place.Altitude.Or(0))))
}

// coolsWPerK is what takes heat out of a chamber beside the air that goes through: its walls, the plate where what is behind it may be
// cooler, and a radiator that spans both.
func (a *airing) coolsWPerK(zone int, throughPlate bool) float64 {
	cools := a.air.Zones[zone].WallWPerK + a.density()*air.CpJPerKgK*a.chambers[zone].stillM3PerS
	if throughPlate {
		cools += a.plateWPerK
	}
	return cools
}

// most is how fast fans may turn at most: calm where no part may come to its limit, and so call others, and by part the share of their full
// speed that its own turn.
type most struct {
	calm  bool
	share [2]float64
}

// parts is the heat that parts give to the air of a chamber at least, W, and how fast fans turn at most.
func (a *airing) parts(zone int, coolsWPerK float64) (heatW float64, fans most) {
	fans = most{true, [2]float64{1, 1}}
	for i := range a.model.parts {
		at, in := &a.model.parts[i], &a.air.Consumers[a.model.parts[i].index]
		askedW := between(at.rest, at.most, share(a.asked, at.seat))
		if in.Medium == air.ToCoolant {
			calm := a.looped(in, askedW) < at.limit-1
			if fans.calm = fans.calm && calm; calm && a.warmsInlet {
				heatW += inwardShare * (askedW + a.pumpW)
			}
			continue
		}
		if in.Zone != zone {
			continue
		}
		inletC := a.roomC + float64(a.riseK*(1+(1-in.Beta)*coolsWPerK)) // what comes in may be warmer than the chamber, which the walls cool
		warmC := func(share float64) float64 {                          // at most, with fans at a share of their speed
			return inletC + float64(askedW*in.KPerW(share, a.density()/air.StandardDensityKgPerM3))
		}
		if warmC(1) >= at.limit-1 {
			fans.calm = false
			continue
		}
		heatW += askedW
		if a.chambers[zone].owned>>i&1 != 0 {
			fans.share[i] = fastestShare(&in.Fans, warmC)
		}
	}
	return heatW, fans
}

// fastestShare is the share of their full speed that a part's fans turn at most, where it is no warmer at a share than so much, °C.
func fastestShare(f *air.Fans, warmC func(share float64) float64) float64 {
	if f.Count == 0 {
		return 0
	}
	low, high := turned(&f.Speed, 0)/f.Fan.RatedRPM, turned(&f.Speed, 1)/f.Fan.RatedRPM
	for range 8 {
		if middle := (low + high) / 2; asked(&f.Speed, warmC(middle)) < middle*f.Fan.RatedRPM {
			high = middle
		} else {
			low = middle
		}
	}
	return high
}

// looped is how warm a processor in a loop is at most, °C, in a case of one chamber, unless it stays under the temperature of coolant from
// which on the fans of the radiator turn at full speed; +Inf where that is not known, as in two.
func (a *airing) looped(in *air.Consumer, askedW float64) float64 {
	m, c, density := &a.model, &a.chambers[boardZone], a.density()
	for i := range m.air.Paths {
		path := &m.air.Paths[i]
		r := &path.Radiator
		if r.Sections == 0 || len(m.air.Zones) > 1 {
			continue
		}
		w := wayOf(path)
		drivePa := w.full - c.most
		if !w.in {
			drivePa = w.full + c.least
		}
		if drivePa <= 0 {
			continue
		}
		m3PerS := math.Sqrt(drivePa / w.impedance)
		x := r.Arrangement.Exchange(r.ConductsWPerK(m3PerS, density/air.StandardDensityKgPerM3), density*air.CpJPerKgK*m3PerS, m.air.Loops[r.Loop].CapacityWPerK)
		return max(coolantFullC, a.roomC+a.riseK+(askedW+m.pumpW)/x.ConductanceWPerK) + float64(askedW*in.RFixKPerW)
	}
	return math.Inf(1)
}

// breathesLess reports less than so much air through a chamber that is no warmer than the rise, or from the room alone.
func (a *airing) breathesLess(zone int, m3PerS float64, throughPlate bool, fans most) bool {
	c, other := &a.chambers[zone], &a.chambers[1-zone]
	draught := air.StandardDensityKgPerM3 * air.GravityMPerS2 * a.riseK / (a.roomC + a.riseK + air.ZeroCelsiusK)
	type opening struct{ impedance, inPa, outPa float64 }
	var room [24]opening
	list := room[:0]
	low, high := 0.0, 0.0
	add := func(o opening) {
		list = append(list, o)
		low, high = min(low, -o.outPa), max(high, o.inPa)
	}
	for i := range c.ways {
		w := c.ways[i]
		if w.follows != nil && fans.calm {
			w.full = w.fan.PressurePa(asked(w.follows, a.roomC+a.riseK), 0)
		}
		if w.owner >= 0 {
			w.full *= fans.share[w.owner] * fans.share[w.owner]
		}
		add(opening{w.impedance, w.inPa(draught), w.outPa(draught)})
	}
	if zone == boardZone && a.supply.path >= 0 {
		w := &a.strongest().way
		add(opening{w.impedance, w.inPa(draught), w.outPa(draught)})
	}
	for _, impedance := range c.plates {
		o := opening{impedance, other.most, -other.least}
		if !throughPlate {
			o.inPa = math.Inf(-1)
		}
		add(o)
	}
	for range 60 {
		p := (low + high) / 2 // of the chamber
		in, out := 0.0, 0.0
		for i := range list {
			o := &list[i]
			if d := o.inPa - p; d > 0 {
				in += math.Sqrt(d / o.impedance)
			}
			if d := o.outPa + p; d > 0 {
				out += math.Sqrt(d / o.impedance)
			}
		}
		switch {
		case max(in, out) < m3PerS:
			return true
		case min(in, out) >= m3PerS:
			return false
		case in > out:
			low = p
		default:
			high = p
		}
	}
	return false
}

// strongest is the way through the supplies that carry what the parts ask, and what one of them loses.
func (a *airing) strongest() *fed {
	for len(a.fed) <= a.load {
		a.fed = append(a.fed, fed{mostW: -1})
	}
	at := &a.fed[a.load]
	if at.boardW != a.boardW || at.mostW != a.mostW {
		m, leastW := &a.model, a.partsW()
		mostW := leastW + m.fansW() + a.mostW
		*at = fed{boardW: a.boardW, mostW: a.mostW, way: a.throughSupply(a.supplies.atBest(m.b.Layout, leastW, mostW, mostW).fan)}
		if a.warmsInlet {
			at.lossW = a.supplies.lossW(mostW)
		}
	}
	return at
}

// partsW is what the parts of the core ask, W.
func (a *airing) partsW() float64 {
	m := &a.model
	sum := a.boardW + m.lightsW + m.pumpW + devicesW
	for i := range m.parts {
		sum += between(m.parts[i].rest, m.parts[i].most, share(a.asked, m.parts[i].seat))
	}
	return sum
}
