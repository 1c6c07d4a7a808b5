package predict

import (
	"slices"

	"slipfit/core/air"
	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/sound"
)

// Open is parts of a build that is not whole, as they would run in the open: in air that is as cool as the room. In a case
// their air is warmer, so no build that holds these parts is quieter, and no part of it holds more.
type Open struct {
	ChairM   float64
	ChairDBA float64  // least level at the chair
	Unheard  []string // figures without which the level is not known
	Missing  []string // figures without which nothing is known
	Err      error
	Parts    []Part // processor under an air cooler, graphics card
}

// openWPerK ties the air in the open to the room.
const openWPerK = 1e9

// Open runs what there is of a build at a load in the brief's room of a day. An air cooler and a card turn as fast as the
// load asks in that air; all other fans turn at their lowest; pumps and disks sound as they always do.
func (p *Predictor) Open(b *build.Build, n *brief.Needs, l brief.Load, day Day) Open {
	cooled := p.cooled(b, n, l, day)
	m := model{b: b}
	m.idling()
	out := Open{
		ChairM: chairOf(&n.Place), Unheard: slices.Concat(cooled.unheard, m.unheard.missing), Missing: slices.Concat(cooled.missing, m.missing),
	}
	if len(out.Missing) > 0 {
		return out
	}
	if out.Err = cooled.err; out.Err != nil {
		return out
	}
	out.Parts = cooled.parts
	out.ChairDBA = atChair(sound.Total(append(m.steady, cooled.sources...)), out.ChairM)
	return out
}

// inOpen is the parts that have fans of their own, in the open.
type inOpen struct {
	missing, unheard []string
	err              error
	parts            []Part
	sources          []sound.Running
}

// openKey is what they depend on.
type openKey struct {
	needs     *brief.Needs
	load      brief.Load
	day       Day
	processor *part.Processor
	cooler    *part.Cooler
	graphics  *part.Graphics
}

// opensKept is how many a predictor keeps.
const opensKept = 1 << 12

// cooled runs them. A predictor keeps many, since the same ones are asked for beside many others.
func (p *Predictor) cooled(b *build.Build, n *brief.Needs, l brief.Load, day Day) *inOpen {
	k := openKey{n, l, day, b.Processor, b.Cooler, b.Graphics}
	if k.processor == nil || k.cooler == nil || k.cooler.Air == nil {
		k.processor, k.cooler = nil, nil
	}
	x, kept := p.opens.get(k, opensKept)
	if kept {
		return x
	}
	x = p.alone(k, 0)
	p.opens.put(k, x, opensKept)
	return x
}

// alone runs the parts of a key without a case, in air so much warmer than the room; panels and chambers change nothing in air as cool.
func (p *Predictor) alone(k openKey, warmerK float64) *inOpen {
	b := build.Build{Processor: k.processor, Cooler: k.cooler, Graphics: k.graphics}
	m := model{b: &b}
	m.air = air.Machine{
		RoomC: roomC(k.needs, k.day), AltitudeM: float64(k.needs.Place.Altitude.Or(0)),
		Zones: []air.Zone{{Name: "the open", WallWPerK: openWPerK}},
	}
	if k.cooler != nil {
		m.cooling()
	}
	m.graphics()
	x := &inOpen{missing: m.missing, unheard: m.unheard.missing}
	if len(m.missing) > 0 {
		return x
	}
	for i := range m.parts {
		c := &m.parts[i]
		m.air.Consumers[c.index].PowerW = between(c.rest, c.most, share(&k.load, c.seat))
	}
	if warmerK > 0 {
		m.air.Zones[0].HeatW = warmerK * openWPerK
		for i := range m.air.Consumers {
			m.air.Consumers[i].Beta = 1
		}
	}
	if x.err = p.solver.Solve(&m.air, &p.result); x.err != nil {
		return x
	}
	r := Run{Load: k.load, RoomC: m.air.RoomC, ChairM: chairOf(&k.needs.Place)}
	m.readParts(&r, &m.air, &p.result)
	x.parts = r.Parts
	for i := range m.parts {
		if c := &m.parts[i]; c.sound.Count > 0 {
			x.sources = append(x.sources, sound.Running{Source: c.sound, RPM: p.result.Consumers[c.index].RPM})
		}
	}
	return x
}

// LeastPW is the sound power that what is in one seat of a build has at any load, pW, at least: a pump's, turning disks', and that of every
// fan that never stands still, at its lowest speed. Of a case's own fans nothing is said, since a radiator may take their places. Missing
// names figures without which it is not known.
func LeastPW(b *build.Build, s build.Seat) (pw float64, missing []string) {
	var alone build.Build
	switch s {
	case build.Cooler:
		alone.Cooler = b.Cooler
	case build.Graphics:
		alone.Graphics = b.Graphics
	case build.Supply:
		alone.Supply = b.Supply
	case build.Boot:
		alone.Boot = b.Boot
	case build.Cache:
		alone.Cache = b.Cache
	case build.Archive:
		alone.Archive = b.Archive
	case build.Fans:
		alone.Fans = b.Fans
	default:
		return 0, nil
	}
	m := model{b: &alone}
	m.idling()
	if k := alone.Cooler; k != nil && k.Air != nil && read(&m.sheet, k.Fans, &k.Article, "fans") > 0 {
		m.turns(m.heard(&k.Fan, &k.Article, "fan.", "cooler fans", int(k.Fans.Or(0))), m.lowest(&k.Fan, &k.Article, "fan."))
	}
	if g := alone.Graphics; g != nil && read(&m.sheet, g.Fans, &g.Article, "fans") > 0 {
		full := float64(read(&m.sheet, g.FanSpeed, &g.Article, "fan_rpm"))
		m.turns(m.cardFans(g, full), leastTurning*full)
	}
	if missing = slices.Concat(m.missing, m.unheard.missing); len(missing) > 0 || len(m.steady) == 0 {
		return 0, missing
	}
	return sound.Picowatts(sound.Total(m.steady)), nil
}

// idling adds what sounds at any load: pump, turning disks, and every fan that never stands still, at its lowest speed.
func (m *model) idling() {
	b := m.b
	if b.Board != nil {
		m.storage()
	} else {
		for _, t := range b.Tiers() {
			m.disk(t)
		}
	}
	if k := b.Cooler; k != nil && k.Liquid != nil {
		m.pump(k)
		fans := int(read(&m.sheet, k.Liquid.Sections, &k.Article, "liquid.sections"))
		m.turns(m.heard(&k.Fan, &k.Article, "fan.", "radiator", fans), m.lowest(&k.Fan, &k.Article, "fan."))
	}
	for i := range b.Fans {
		f := b.Fans[i].Fan
		m.turns(m.heard(&f.FanFigures, &f.Article, "", "fans added", b.Fans[i].Count), m.lowest(&f.FanFigures, &f.Article, ""))
	}
	if p := b.Supply; p != nil && read(&m.sheet, p.ZeroTo, &p.Article, "fan_stopped_below_w") == 0 {
		s := m.heard(&p.Fan, &p.Article, "fan.", "supply", 1)
		m.turns(s, max(m.lowest(&p.Fan, &p.Article, "fan."), leastTurning*s.RatedRPM))
	}
	if b.Case == nil || b.Layout == nil || b.Cooler == nil {
		return // without a cooler it is open which fans of the case a radiator takes out
	}
	for _, face := range faces {
		for _, h := range m.hung(face) {
			if h.owner == &b.Case.Article {
				m.turns(m.heard(h.figures, h.owner, h.path, h.name, h.count), m.lowest(h.figures, h.owner, h.path))
			}
		}
	}
}

// turns adds fans at a speed, if they turn.
func (m *model) turns(s sound.Source, rpm float64) {
	if rpm > 0 {
		m.steady = append(m.steady, sound.Running{Source: s, RPM: rpm})
	}
}
