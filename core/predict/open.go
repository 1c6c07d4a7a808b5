package predict

import (
	"slipfit/core/air"
	"slipfit/core/brief"
	"slipfit/core/build"
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
	m := model{b: b}
	m.air = air.Machine{
		RoomC: roomC(n, day), AltitudeM: float64(n.Place.Altitude.Or(0)),
		Zones: []air.Zone{{Name: "the open", WallWPerK: openWPerK}},
	}
	if b.Processor != nil && b.Cooler != nil && b.Cooler.Air != nil {
		m.cooling()
	}
	m.graphics()
	m.idling()
	out := Open{ChairM: chairOf(&n.Place), Unheard: m.unheard.missing, Missing: m.missing}
	if len(m.missing) > 0 {
		return out
	}
	m.air.Paths = nil // a panel that a part's fans would draw through
	for i := range m.air.Consumers {
		m.air.Consumers[i].Zone = 0
	}
	r := Run{Load: l, RoomC: m.air.RoomC, ChairM: out.ChairM}
	for i := range m.parts {
		c := &m.parts[i]
		m.air.Consumers[c.index].PowerW = between(c.rest, c.most, share(&l, c.seat))
	}
	if out.Err = p.solver.Solve(&m.air, &p.result); out.Err != nil {
		return out
	}
	m.readParts(&r, &m.air, &p.result)
	out.Parts = r.Parts
	sources := m.steady
	for i := range m.parts {
		if c := &m.parts[i]; c.sound.Count > 0 {
			sources = append(sources, sound.Running{Source: c.sound, RPM: p.result.Consumers[c.index].RPM})
		}
	}
	out.ChairDBA = atChair(sound.Total(sources), out.ChairM)
	return out
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
	lowest := func(s sound.Source, rpm float64) {
		if rpm > 0 {
			m.steady = append(m.steady, sound.Running{Source: s, RPM: rpm})
		}
	}
	if k := b.Cooler; k != nil && k.Liquid != nil {
		m.pump(k)
		fans := int(read(&m.sheet, k.Liquid.Sections, &k.Article, "liquid.sections"))
		lowest(m.heard(&k.Fan, &k.Article, "fan.", "radiator", fans), m.lowest(&k.Fan, &k.Article, "fan."))
	}
	for i := range b.Fans {
		f := b.Fans[i].Fan
		lowest(m.heard(&f.FanFigures, &f.Article, "", "fans added", b.Fans[i].Count), m.lowest(&f.FanFigures, &f.Article, ""))
	}
	if p := b.Supply; p != nil && read(&m.sheet, p.ZeroTo, &p.Article, "fan_stopped_below_w") == 0 {
		s := m.heard(&p.Fan, &p.Article, "fan.", "supply", 1)
		lowest(s, max(m.lowest(&p.Fan, &p.Article, "fan."), leastTurning*s.RatedRPM))
	}
	if b.Case == nil || b.Layout == nil || b.Cooler == nil {
		return // without a cooler it is open which fans of the case a radiator takes out
	}
	for _, face := range faces {
		for _, h := range m.hung(face) {
			if h.owner == &b.Case.Article {
				lowest(m.heard(h.figures, h.owner, h.path, h.name, h.count), m.lowest(h.figures, h.owner, h.path))
			}
		}
	}
}
