package predict

import (
	"math"
	"slices"

	"slipfit/core/air"
	"slipfit/core/brief"
	"slipfit/core/build"
)

// How warm the air of a chamber is at least, whichever supply feeds the build, follows from how much air can come in at most: with heat
// from the parts there, rise ≥ heat / (ρ·cp·Q + UA), for what comes in, from the room or through the plate, is no cooler than the
// room.
//
// Q at most: at a pressure of the chamber what its ways let in falls with that pressure, and what they let out rises. Take each way's
// fans at the speed between their lowest and their full one that lets most through. What can come in and what can go out meet in one
// point, and the chamber, in which as much comes in as goes out, takes in no more than there. A supply's fan drives as much as that of the
// strongest, or stands still, in a way as free as the freest. The chamber behind the plate has no more pressure, where it gives some of its
// air, than its own ways can make it without the plate, and no less, where it takes some.
//
// Asked is whether the air can be no warmer than so much. Then fans that follow it alone, those of a case in one chamber, turn no faster
// than such air asks, draughts are no stronger than its warmth makes them, and a part that would stay under its limit in such air draws all
// that it is asked. In two chambers a case's fans follow the warmer one, which may be the other, up to full speed. Where the card's chamber
// is warmer than so much, nothing that comes from there cools the board's.

// breath is a core by what its chambers can breathe.
type breath struct {
	model
	silent     bool
	warmsInlet bool // a radiator in one chamber that air comes in through, however fast its fans turn
	supplies   *Supplies
	chambers   [2]chamber
	plateWPerK float64
	fed        []fed   // by load
	bought     *bought // fans besides; nil for none
	anyOf      int     // which group they are
}

// chamber is what a chamber breathes through.
type chamber struct {
	ways        []way
	owned       uint8     // bit by part: whose own fans some way has
	stillM3PerS float64   // through which a radiator that spans both may take heat out of one, where its air hardly moves
	plates      []float64 // impedances of openings to the other one
	least, most float64   // its own pressure, Pa, where it takes some of the other's air, and where it gives some
}

// way is a way between the room and a chamber.
type way struct {
	in        bool       // its fans blow in
	sections  int        // of a radiator in it
	low, full float64    // Pa that they drive at least and at most
	follows   *air.Speed // the chamber's air, alone
	owner     int        // place of the part whose own they are among those with a temperature, −1 for none
	fan       air.Fan
	impedance float64
	heightM   float64 // above the middle of the chamber
}

// inPa is what drives air in through a way at most, Pa, beside the chamber's pressure, with a draught of up to so much to a metre: warm air
// goes out above and lets in below.
func (w *way) inPa(draughtPaPerM float64) float64 {
	draught := float64(draughtPaPerM * max(0, -w.heightM))
	if w.in {
		return w.full + draught
	}
	return draught - w.low
}

// outPa is what drives it out.
func (w *way) outPa(draughtPaPerM float64) float64 {
	draught := float64(draughtPaPerM * max(0, w.heightM))
	if w.in {
		return draught - w.low
	}
	return w.full + draught
}

// fed is the way of the strongest of some supplies, with so much heat in the case at most.
type fed struct {
	boardW, mostW float64
	way           way
	lossW         float64 // that stays in one at most, where a radiator warms what comes in
}

// breath is a build's core so, without its board and supply and with fans bought for it besides, nil for none; nil where it has not enough in
// it or nothing can be said of it. A predictor keeps many.
func (p *Predictor) breath(b *build.Build, n *brief.Needs, besides Besides, fans *bought) *breath {
	bare, _, known := boardless(b)
	bare = bared(&bare)
	bare.Supply = nil
	if !known || besides.supplies == nil || len(besides.supplies.list) == 0 || !readyToFeed(&bare) {
		return nil
	}
	k := keyOf(&bare, n, besides.Feeds())
	if fans != nil {
		bare.Fans, k.bought = []build.FanSet{fans.FanSet}, fans
	}
	x, kept := p.breaths.get(k, coresKept)
	if !kept || !slices.Equal(x.b.Fans, bare.Fans) {
		bare.Fans = slices.Clone(bare.Fans)
		x = newBreath(&bare, besides, fans)
		p.breaths.put(k, x, coresKept)
	}
	if x.silent {
		return nil
	}
	return x
}

// newBreath lays a core out. Nothing is said of one of which a sheet lacks a figure.
func newBreath(b *build.Build, besides Besides, fans *bought) *breath {
	x := &breath{supplies: besides.supplies}
	m := newModel(b, besides, &x.model)
	if x.silent = len(m.missing) > 0; x.silent {
		return x
	}
	var still []int // paths whose fans may as well drive nothing
	if fans != nil {
		x.bought = fans
		x.anyOf, still = fans.hang(m)
	}
	for z := range m.air.Zones {
		zone, c := &m.air.Zones[z], &x.chambers[z]
		for _, heightM := range [...]float64{-zone.LeakHeightM / 2, zone.LeakHeightM / 2} {
			c.ways = append(c.ways, way{owner: -1, impedance: 4 * zone.LeakImpedance, heightM: heightM})
		}
		for i := range m.air.Paths {
			path := &m.air.Paths[i]
			if path.Zone != z || i == m.supply.path {
				continue
			}
			w := wayOf(path)
			if slices.Contains(still, i) {
				w.low = 0
			}
			c.ways = append(c.ways, w)
			if w.owner >= 0 {
				c.owned |= 1 << w.owner
			}
			if len(m.air.Zones) > 1 {
				c.stillM3PerS += float64(path.Radiator.Sections) * air.StillM3PerS
			}
		}
	}
	for i := range m.air.Partitions {
		plate := &m.air.Partitions[i]
		x.plateWPerK += plate.ConductanceWPerK
		for z := range x.chambers {
			x.chambers[z].plates = append(x.chambers[z].plates, plate.Impedance)
		}
	}
	if len(m.air.Partitions) > 0 || len(m.air.Loops) > 0 {
		ways := x.chambers[boardZone].ways
		if m.supply.path >= 0 {
			ways = append(slices.Clone(ways), x.throughSupply(besides.supplies.atBest(b.Layout, 0, math.Inf(1), math.Inf(1)).fan))
		}
		x.chambers[boardZone].gauge(ways)
		x.chambers[cardZone].gauge(x.chambers[cardZone].ways)
		x.warmsInlet = len(m.air.Partitions) == 0 && inward(ways)
	}
	return x
}

// wayOf is a path as a way. Fans that turn as a part's do may stand still.
func wayOf(p *air.Path) way {
	w := way{in: p.Direction == air.Intake, sections: p.Radiator.Sections, fan: p.Fans.Fan, owner: p.OwnOf - 1, impedance: p.Impedance(), heightM: p.HeightM}
	if p.Fans.Count == 0 {
		return w
	}
	w.full = w.fan.ShutoffPa
	if s := &p.Fans.Speed; len(s.Curves) > 0 {
		w.low, w.full = w.fan.PressurePa(turned(s, 0), 0), w.fan.PressurePa(turned(s, 1), 0)
		if len(s.Curves) == 1 && s.Curves[0].Of.Kind == air.ZoneAir {
			w.follows = s
		}
	}
	return w
}

// throughSupply is the way through a supply with a fan, which may stand still.
func (x *breath) throughSupply(fan air.Fan) way {
	path := x.air.Paths[x.supply.path]
	path.Fans.Fan, path.EachImpedance = fan, packImpedance*fan.Impedance()
	return wayOf(&path)
}

// hotDraught is the draught of a chamber, Pa/m, at most: as if its air were a third lighter than the room's, as at 130 °C it is not.
const hotDraught = air.StandardDensityKgPerM3 * air.GravityMPerS2 / 3

// gaugePa is how close the pressures are told that ways make alone.
const gaugePa = 1e-4

// gauge finds the least and the greatest pressure that ways make alone.
func (c *chamber) gauge(ways []way) {
	low, high := 0.0, 0.0
	for i := range ways {
		low, high = min(low, -ways[i].outPa(hotDraught)), max(high, ways[i].inPa(hotDraught))
	}
	c.least, _ = meet(ways, low, high, func(w *way) float64 { return -w.outPa(hotDraught) })
	_, c.most = meet(ways, low, high, func(w *way) float64 { return w.inPa(hotDraught) })
}

// meet closes in on the pressure at which as much goes out through ways as comes in, where each drives so much.
func meet(ways []way, low, high float64, drivePa func(w *way) float64) (from, to float64) {
	for high-low > gaugePa {
		p, net := (low+high)/2, 0.0
		for i := range ways {
			d := drivePa(&ways[i]) - p
			net += math.Copysign(math.Sqrt(math.Abs(d)/ways[i].impedance), d)
		}
		if net > 0 {
			low = p
		} else {
			high = p
		}
	}
	return low, high
}

// inward reports a radiator that air comes in through, whatever pressure the other ways make: so much of it that no more than a two-thousandth
// of its heat goes out against it, as the still air does.
func inward(ways []way) bool {
	i := slices.IndexFunc(ways, func(w way) bool { return w.sections > 0 })
	w := &ways[i]
	if !w.in {
		return false
	}
	var others chamber
	others.gauge(slices.Concat(ways[:i], ways[i+1:]))
	leastM3PerS := 4 * float64(w.sections) * air.StillM3PerS
	return w.low-others.most > leastM3PerS*leastM3PerS*w.impedance
}

// inwardShare is how much of a radiator's heat comes in at least where it is inward.
const inwardShare = 0.9995
