package predict

import (
	"slipfit/core/air"
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/sound"
	"slipfit/core/unit"
)

// cooling adds the processor with what cools it.
func (m *model) cooling() {
	p, k := m.b.Processor, m.b.Cooler
	lid := float64(read(&m.sheet, p.Lid, &p.Article, "lid_mm2")) / 1e6
	through := thousandth(&m.sheet, p.Spread, &p.Article, "junction_to_lid_k_w")
	if lid > 0 {
		through += air.InterfaceKPerW(pasteM, pasteWPerMK, lid, 0)
	}
	c := consumer{
		seat: build.Processor, part: &p.Article, index: len(m.air.Consumers),
		rest:  thousandth(&m.sheet, p.Idle, &p.Article, "idle_w"),
		most:  thousandth(&m.sheet, p.Sustained, &p.Article, "sustained_w"),
		limit: thousandth(&m.sheet, p.Limit, &p.Article, "limit_c"),
	}
	in := air.Consumer{Name: "processor", LimitC: c.limit, RFixKPerW: through}
	if k.Air != nil {
		m.airCooler(k, &c, &in)
	} else {
		m.loop(k, &in)
	}
	m.air.Consumers = append(m.air.Consumers, in)
	m.parts = append(m.parts, c)
}

// airCooler is a sink whose fans stir the air of the board's chamber; behind a grille of that chamber they draw from outside.
func (m *model) airCooler(k *part.Cooler, c *consumer, in *air.Consumer) {
	in.Zone, in.Beta, in.FlowExponent = boardZone, betaCooler, flowExponent
	sink := thousandth(&m.sheet, k.Air.Sink, &k.Article, "air.sink_k_w")
	fans := int(read(&m.sheet, k.Fans, &k.Article, "fans"))
	if fans == 0 {
		in.RFixKPerW += sink
		return
	}
	in.RFixKPerW += sinkFixed * sink
	in.RFlowKPerW = (1 - sinkFixed) * sink
	fan := m.fan(&k.Fan, &k.Article, "fan.")
	low := m.lowest(&k.Fan, &k.Article, "fan.")
	sensor := air.Sensor{Kind: air.Component, Index: c.index}
	in.Fans = air.Fans{Count: fans, Fan: fan, Speed: air.Speed{Curves: []air.Curve{
		ramp(sensor, sinkLowC, in.LimitC-sinkFullK, low, fan.RatedRPM),
	}}}
	c.sound = m.heard(&k.Fan, &k.Article, "fan.", "cooler fans", fans)
	height := read(&m.sheet, k.Air.Height, &k.Article, "air.height_mm")
	if side := m.panel(); side > 0 && height <= topFlowMM*unit.Millimetre {
		in.Beta = betaPanel
		size := metres(&m.sheet, k.Fan.Size, &k.Article, "fan.size_mm")
		m.throughPanel("cooler fans at the side panel", boardZone, c.index, air.Fans{Count: fans, Fan: fan}, float64(fans)*size*size, side)
	}
}

// loop is a closed coolant loop: the plate on the processor, the pump, and a radiator in a face of the case.
func (m *model) loop(k *part.Cooler, in *air.Consumer) {
	l, at := k.Liquid, &k.Article
	in.Medium = air.ToCoolant
	in.RFixKPerW += thousandth(&m.sheet, l.Plate, at, "liquid.plate_k_w")
	m.pumpW = thousandth(&m.sheet, l.PumpPower, at, "liquid.pump_w")
	litresPerMin := thousandth(&m.sheet, l.CoolantFlow, at, "liquid.coolant_m3_h") * 1000 / 60
	m.air.Loops = []air.Loop{{
		Name: "processor", PumpW: m.pumpW,
		CapacityWPerK: air.CoolantCapacityWPerK(litresPerMin, coolantKgPerM3, coolantJPerKgK),
	}}
	m.pump(k)
}

// pump adds the pump as a source.
func (m *model) pump(k *part.Cooler) {
	m.always("pump", 1, thousandth(&m.unheard, k.Liquid.PumpSound, &k.Article, "liquid.pump_dba"))
}

// radiator is the loop's, with its fans: one to a section.
func (m *model) radiator() (air.Radiator, float64) {
	k := m.b.Cooler
	l, at := k.Liquid, &k.Article
	side := metres(&m.sheet, l.FanSize, at, "liquid.fan_size_mm")
	depth := metres(&m.sheet, l.Thickness, at, "liquid.radiator_thickness_mm")
	wider := sectionSideM / max(side, 0.01)
	return air.Radiator{
		Sections: int(read(&m.sheet, l.Sections, at, "liquid.sections")),
		UAWPerK:  thousandth(&m.sheet, l.Conductance, at, "liquid.section_ua_w_k"), FlowM3PerS: sectionFlow,
		Exponent: sectionExponent, Arrangement: air.CrossflowUnmixedApprox,
	}, sectionImpedance * depth / sectionDepthM * wider * wider * wider * wider
}

// graphics adds the graphics card.
func (m *model) graphics() {
	g := m.b.Graphics
	if g == nil {
		return
	}
	c := consumer{
		seat: build.Graphics, part: &g.Article, index: len(m.air.Consumers),
		rest:  thousandth(&m.sheet, g.Idle, &g.Article, "idle_w"),
		most:  thousandth(&m.sheet, g.Power, &g.Article, "power_w"),
		limit: thousandth(&m.sheet, g.Limit, &g.Article, "limit_c"),
	}
	in := air.Consumer{
		Name: "graphics card", LimitC: c.limit, Zone: m.chambers() - 1, Beta: betaGraphics, FlowExponent: flowExponent,
		RFixKPerW:  thousandth(&m.sheet, g.CoreFixed, &g.Article, "core_fixed_k_w"),
		RFlowKPerW: thousandth(&m.sheet, g.CoreAir, &g.Article, "core_air_k_w"),
	}
	side := m.panel()
	if m.chambers() == 2 {
		in.Beta = 1
		if side > 0 {
			in.Beta = betaPanel
		}
	}
	if fans := int(read(&m.sheet, g.Fans, &g.Article, "fans")); fans > 0 {
		full := float64(read(&m.sheet, g.FanSpeed, &g.Article, "fan_rpm"))
		ratio := full / cardFanRatedRPM
		fan := air.Fan{ShutoffPa: cardFanPa * ratio * ratio, FreeM3PerS: cardFanM3PerH / 3600 * ratio, RatedRPM: full}
		in.Fans = air.Fans{Count: fans, Fan: fan, Speed: air.Speed{Curves: []air.Curve{
			ramp(air.Sensor{Kind: air.Component, Index: c.index}, cardLowC, in.LimitC-cardFullK, leastTurning*full, full),
		}}}
		c.sound = m.cardFans(g, full)
		if side > 0 {
			face := metres(&m.sheet, g.Length, &g.Article, "length_mm") * metres(&m.sheet, g.Height, &g.Article, "height_mm")
			m.throughPanel("card fans at the side panel", cardZone, c.index, air.Fans{Count: fans, Fan: fan}, face, side)
		}
	}
	m.air.Consumers = append(m.air.Consumers, in)
	m.parts = append(m.parts, c)
}

// cardFans is a card's fans as one source, with their full speed.
func (m *model) cardFans(g *part.Graphics, fullRPM float64) sound.Source {
	return sound.Source{
		Name: "graphics card", Count: 1, UDB: sourceUDB, RatedRPM: fullRPM,
		RatedDBA: sound.PowerFromHemisphere(thousandth(&m.unheard, g.Sound, &g.Article, "sound_dba"), 1),
	}
}

// panel is the open share of a side panel in a layout with two chambers, each behind its own panel; 0 where the side is
// closed or the layout has one chamber.
func (m *model) panel() float64 {
	c := m.b.Case
	if m.chambers() == 1 {
		return 0
	}
	free, _ := m.free(part.Side)
	panel := 2 * metres(&m.sheet, c.Outer.Height, &c.Article, "outer.height_mm") * metres(&m.sheet, c.Outer.Depth, &c.Article, "outer.depth_mm")
	if panel == 0 {
		return 0
	}
	return min(1, free/panel)
}

// throughPanel lets a consumer's own fans draw room air through the grille in front of them: as much of the panel as lies
// before its sink. The fin pack lets half the free flow through.
func (m *model) throughPanel(name string, zone, owner int, f air.Fans, faceM2, openShare float64) {
	_, filtered := m.free(part.Side)
	m.drawn[zone] += faceM2 * openShare
	m.air.Paths = append(m.air.Paths, air.Path{
		Name: name, Zone: zone, Direction: air.Intake, Fans: f, OwnOf: owner + 1,
		SharedImpedance: opening(faceM2*openShare, filtered),
		EachImpedance:   packImpedance * f.Fan.Impedance(),
	})
}
