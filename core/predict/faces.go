package predict

import (
	"slipfit/core/air"
	"slipfit/core/part"
	"slipfit/core/sound"
)

// group is fans of one kind on one face, as one sees, hears and steers them. Where the face spans two chambers the group is
// a path in each.
type group struct {
	name     string
	face     part.Face
	outward  bool
	count    int
	paths    [2]int
	spans    int
	radiator bool
	source   sound.Source
}

// hung is fans of one kind that hang on a face.
type hung struct {
	figures *part.FanFigures
	owner   *part.Article
	path    string // of the figures in the owner's sheet
	name    string
	count   int
	loop    bool
}

var faces = [...]part.Face{part.Front, part.Rear, part.Top, part.Bottom, part.Side}

// free is the free area of a face's openings, m², and whether a filter lies in any.
func (m *model) free(f part.Face) (areaM2 float64, filtered bool) {
	c := m.b.Case
	for i := range c.Openings {
		if o := &c.Openings[i]; o.Face == f {
			areaM2 += float64(read(&m.sheet, o.Free, &c.Article, "openings."+string(f)+".free_cm2")) / 1e4
			filtered = read(&m.sheet, o.Filtered, &c.Article, "openings."+string(f)+".filtered") || filtered
		}
	}
	return areaM2, filtered
}

// openings adds the paths of every face: the fans on it share the part of its free area that lies before their frames; the
// rest is open for what pressure and draught make of it.
func (m *model) openings() {
	for _, f := range faces {
		free, filtered := m.free(f)
		fans := m.hung(f)
		frames := 0.0
		for i := range fans {
			frames += fans[i].frameM2(m)
		}
		covered := min(free, frames)
		for i := range fans {
			at := covered
			if frames > 0 {
				at = covered * fans[i].frameM2(m) / frames
			}
			if free == 0 {
				at = grilleShare * 0.785398 * fans[i].frameM2(m)
			}
			m.hang(f, &fans[i], at, filtered)
		}
		m.leave(f, free-covered, filtered)
	}
}

func (h *hung) frameM2(m *model) float64 {
	size := metres(&m.sheet, h.figures.Size, h.owner, h.path+"size_mm")
	return float64(h.count) * size * size
}

// hung lists the fans on a face: a radiator's, then those of the case that still have a place, then those added.
func (m *model) hung(f part.Face) []hung {
	b := m.b
	var list []hung
	radiator := 0
	if b.Cooler.Liquid != nil && b.Face == f {
		k := b.Cooler
		radiator = int(read(&m.sheet, k.Liquid.Sections, &k.Article, "liquid.sections"))
		list = append(list, hung{&k.Fan, &k.Article, "fan.", string(f) + " radiator", radiator, true})
	}
	left := m.places(f) - radiator
	for i := range b.Case.Fans {
		c := &b.Case.Fans[i]
		if c.Face != f {
			continue
		}
		n := min(max(0, left), int(read(&m.sheet, c.Count, &b.Case.Article, "fans."+string(f)+".count")))
		left -= n
		if n > 0 {
			list = append(list, hung{&c.FanFigures, &b.Case.Article, "fans." + string(f) + ".", string(f) + " fans of the case", n, false})
		}
	}
	for i := range b.Fans {
		if s := &b.Fans[i]; s.Face == f {
			list = append(list, hung{&s.Fan.FanFigures, &s.Fan.Article, "", string(f) + " fans added", s.Count, false})
		}
	}
	return list
}

// places is how many fans a face takes in this layout; a face with none listed keeps what the case brings there, unless a
// radiator takes it.
func (m *model) places(f part.Face) int {
	most, listed := 0, false
	for i := range m.b.Layout.FanPlaces {
		if p := &m.b.Layout.FanPlaces[i]; p.Face == f {
			most, listed = max(most, int(read(&m.sheet, p.Fans, &m.b.Case.Article, "fan_places."+string(f)+".fans"))), true
		}
	}
	if !listed && (m.b.Cooler.Liquid == nil || m.b.Face != f) {
		return 64
	}
	return most
}

// spans gives each chamber's share of a face. Front, rear, top and bottom span both chambers as the plate divides them. Each
// chamber has a side panel of its own: what hangs there is in the board's, or in the card's where its mount says that it
// takes room from the card.
func (m *model) spans(f part.Face, radiator bool) [2]float64 {
	if f != part.Side || m.chambers() == 1 {
		return m.shell().share
	}
	if mount := m.b.Mount(); radiator && mount != nil {
		if _, meets := mount.Card.Get(); meets {
			return [2]float64{0, 1}
		}
	}
	return [2]float64{1, 0}
}

// hang adds fans on a face as a path in each chamber the face spans.
func (m *model) hang(f part.Face, h *hung, freeM2 float64, filtered bool) {
	fan := m.fan(h.figures, h.owner, h.path)
	low := m.lowest(h.figures, h.owner, h.path)
	g := group{name: h.name, face: f, outward: !intakes(f), count: h.count, radiator: h.loop, source: m.heard(h.figures, h.owner, h.path, h.name, h.count)}
	p := air.Path{Name: h.name, HeightM: m.height(f), Direction: air.Exhaust}
	if intakes(f) {
		p.Direction = air.Intake
	}
	var speed air.Speed
	if h.loop {
		p.Radiator, p.EachImpedance = m.radiator()
		speed.Curves = []air.Curve{ramp(air.Sensor{Kind: air.Coolant}, coolantLowC, coolantFullC, low, fan.RatedRPM)}
	} else {
		for z := range m.chambers() {
			speed.Curves = append(speed.Curves, ramp(air.Sensor{Kind: air.ZoneAir, Index: z}, caseAirLowC, caseAirFullC, low, fan.RatedRPM))
		}
	}
	for z, share := range m.spans(f, h.loop) {
		if share == 0 {
			continue
		}
		part := p
		part.Zone = z
		part.Fans = air.Fans{Count: h.count, Speed: speed, Fan: air.Fan{
			ShutoffPa: fan.ShutoffPa, FreeM3PerS: fan.FreeM3PerS * share, RatedRPM: fan.RatedRPM, RatedPowerW: fan.RatedPowerW * share,
		}}
		part.SharedImpedance = opening(freeM2*share, filtered)
		part.EachImpedance /= share * share
		part.Radiator.UAWPerK *= share
		part.Radiator.FlowM3PerS *= share
		g.paths[g.spans] = len(m.air.Paths)
		g.spans++
		m.air.Paths = append(m.air.Paths, part)
	}
	m.groups = append(m.groups, g)
}

// height is where a face lies over the middle of the case, for the draught.
func (m *model) height(f part.Face) float64 {
	c := m.b.Case
	switch f {
	case part.Top:
		return metres(&m.sheet, c.Outer.Height, &c.Article, "outer.height_mm") / 2
	case part.Bottom:
		return -metres(&m.sheet, c.Outer.Height, &c.Article, "outer.height_mm") / 2
	}
	return 0
}

// leave adds what stays open of a face. Upright faces breathe in below and out above, so their opening is two halves.
func (m *model) leave(f part.Face, freeM2 float64, filtered bool) {
	shares := m.shell().share
	if f == part.Side && m.chambers() == 2 {
		shares = [2]float64{0.5, 0.5}
	}
	for z, share := range shares {
		area := freeM2*share - m.drawn[z]
		if f != part.Side {
			area = freeM2 * share
		}
		if area < 1e-5 {
			continue
		}
		p := air.Path{Name: string(f) + " opening", Zone: z, Direction: air.Intake}
		if f == part.Top || f == part.Bottom {
			p.HeightM, p.SharedImpedance = m.height(f), opening(area, filtered)
			m.air.Paths = append(m.air.Paths, p)
			continue
		}
		high := metres(&m.sheet, m.b.Case.Outer.Height, &m.b.Case.Article, "outer.height_mm") / 4
		for _, h := range [...]float64{-high, high} {
			p.HeightM, p.SharedImpedance = h, opening(area/2, filtered)
			m.air.Paths = append(m.air.Paths, p)
		}
	}
}
