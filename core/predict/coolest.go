package predict

import (
	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// CoolestC is the least temperature, °C, that a drive on a board can come to in an activity on the brief's hottest day,
// whatever else the build holds: it breathes room air, in the socket that suits it best. A forecast of the whole build is
// never under it, since the air in a case is no cooler than the room. Known is false where a sheet lacks a figure.
func CoolestC(b *part.Board, d *part.Drive, l brief.Load, p *brief.Place) (coolestC float64, known bool) {
	return coolest(b, d, dayC(p), l.Drives)
}

// coolest is the temperature of a drive in air of a temperature, in the socket that suits it best.
func coolest(b *part.Board, d *part.Drive, airC float64, work unit.Share) (coolestC float64, known bool) {
	var s sheet
	rest := thousandth(&s, d.Idle, &d.Article, "idle_w")
	most := thousandth(&s, d.Power, &d.Article, "power_w")
	resistance := thousandth(&s, d.SinkAir, &d.Article, "sink_k_w")
	if len(s.missing) > 0 {
		return 0, false
	}
	if d.Form == part.FormM2 && resistance < bareModule && !d.Sink.Or(false) && !sinks(b) {
		resistance = bareModule
	}
	return airC + between(rest, most, work)*resistance, true
}

// OverLimit reports a build one of whose drives passes its limit in an activity on the brief's hottest day even in room
// air, in the socket it sits in beside the cards and the other drives. Figures that a sheet lacks conclude nothing.
func OverLimit(b *build.Build, l brief.Load, p *brief.Place) bool {
	m := model{b: b}
	m.storage()
	if len(m.missing) > 0 {
		return false
	}
	for i := range m.drives {
		d := &m.drives[i]
		if len(d.missing) == 0 && dayC(p)+d.risenK(&l) > d.limit {
			return true
		}
	}
	return false
}

// dayC is the brief's hottest day in the room, °C.
func dayC(p *brief.Place) float64 {
	return float64(max(p.Room.Or(ordinaryRoomC*1000), p.Hottest.Or(hottestRoomC*1000))) / 1000
}

// sinks reports a board that brings a heat-sink for some module, or does not say.
func sinks(b *part.Board) bool {
	for i := range b.M2 {
		if b.M2[i].Sink.Or(true) {
			return true
		}
	}
	return false
}

// LimitC is the temperature a drive slows or must stop at, °C.
func LimitC(d *part.Drive) (float64, bool) {
	limit, ok := d.Limit.Get()
	return float64(limit) / float64(unit.Temperature(1000)), ok
}
