package scene

import (
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// cooler places what stands on the processor, and what it must clear: heat-sinks, memory, the card's back, the panel.
func (p *placer) cooler() {
	if p.Layout != nil {
		defer func(before int) { p.underPanel(before) }(len(p.scene.Boxes))
	}
	if p.Cooler == nil {
		p.heatSinks(nil, nil)
		return
	}
	switch {
	case p.Cooler.Air != nil:
		p.airCooler(p.Cooler.Air)
	case p.Cooler.Liquid != nil:
		l := p.Cooler.Liquid
		reach := p.at(l.PumpReach)
		b := p.round("cold plate and pump", reach, reach, reach, reach, 0, p.at(l.PumpHeight))
		pump := p.put(b)
		p.heatSinks([]int{pump}, nil)
		p.clearOfCard(pump)
		for i, m := range p.scene.Boxes {
			if m.Name == "memory" {
				p.meet("cooler-memory", "beside", pump, i, X, false)
			}
		}
	}
}

// round is a box about the socket: how far it reaches to the rear, the front, the slots and the far edge, and from what
// height above the board to what.
func (p *placer) round(name string, rear, front, slots, far, from, to unit.Length) Box {
	c := p.socket
	return Box{Name: name, Seat: build.Cooler, Kind: Part,
		Lo: Point{c[X] - rear, c[Y] - slots, c[Z] + from}, Hi: Point{c[X] + front, c[Y] + far, c[Z] + to}}
}

// airCooler places base, fins and what hangs over the memory, its fan moved up as far as the modules under it ask.
func (p *placer) airCooler(a *part.AirCooler) {
	reach, clear := p.at(a.BaseReach), p.at(a.BaseClear)
	lacks := p.lacks
	base := p.put(p.round("cooler base", reach, reach, reach, reach, 0, clear))
	// No sheet states the reach to the rear: it is drawn no longer than the one towards the memory, and short of a rear fan
	// and the rear sockets.
	forward := p.at(a.ToMemory)
	p.lacks = p.lacks || lacks
	fins := p.put(p.round("cooler fins", min(forward, p.socket[X]-rearDeep), min(reach, forward), p.at(a.ToCard), p.at(a.ToTop), clear, p.at(a.Height)))
	p.heatSinks([]int{base}, []int{fins})
	p.clearOfCard(fins)
	p.overhang(a, lacks)
}

// overhang places the part of an air cooler that hangs towards the memory.
func (p *placer) overhang(a *part.AirCooler, lacks bool) {
	p.lacks = lacks
	forward, under, top, raise := p.at(a.ToMemory), p.at(a.UnderFan), p.at(a.FanTop), p.at(a.Raise)
	from := min(p.at(a.BaseReach), forward-mm)
	b := p.round("cooler fan", -from, forward, p.at(a.ToCard), p.at(a.ToTop), under, max(top, under+mm))
	b.Kind, b.Faces = Fan, X
	if p.lacks {
		p.put(b)
		return
	}
	var below []int
	lift := unit.Length(0)
	for i := range p.scene.Boxes {
		m := &p.scene.Boxes[i]
		if m.Name == "memory" && m.Lo[X] < b.Hi[X] && m.Hi[X] > b.Lo[X] {
			below = append(below, i)
			lift = max(lift, m.Hi[Z]-b.Lo[Z])
		}
	}
	asked := lift
	lift = min(lift, raise)
	b.Lo[Z] += lift
	b.Hi[Z] += lift
	fan := p.put(b)
	for _, m := range below {
		p.meet("cooler-memory", "under", m, fan, Z, false)
	}
	if len(below) == 0 {
		for i, m := range p.scene.Boxes {
			if m.Name == "memory" && m.Order == 0 {
				p.meet("cooler-memory", "beside", fan, i, X, false)
			}
		}
	}
	if asked > raise { // where it would have to stand to clear the modules
		b.Name, b.Kind = "fan clear of memory", KeepOut
		b.Lo[Z] += asked - lift
		b.Hi[Z] += asked - lift
		p.put(b)
	}
}

// underPanel keeps everything placed on the processor since a box under the panel.
func (p *placer) underPanel(before int) {
	after := len(p.scene.Boxes)
	panel := p.wall("limit of cooler height", Z, p.at(p.Layout.Cooler), false)
	lifted := false
	for i := before; i < after; i++ {
		lifted = lifted || p.scene.Boxes[i].Name == "fan clear of memory"
	}
	for i := before; i < after; i++ {
		switch b := &p.scene.Boxes[i]; b.Name {
		case "cooler fins", "cold plate and pump":
			p.meet("cooler-height", "", i, panel, Z, false)
		case "cooler fan":
			if top, ok := p.Cooler.Air.FanTop.Get(); ok && b.Hi[Z] > p.scene.Rise+top && !lifted {
				p.meet("cooler-raised", "", i, panel, Z, false)
			}
		case "fan clear of memory":
			p.meet("cooler-raised", "", i, panel, Z, false)
		}
	}
}

// heatSinks places the board's heat-sinks to the rear, to the slots and to the far edge of the socket: the sheet states
// how far the nearest is, not on which side. One stands along the board's upper edge besides. Two of them are drawn.
func (p *placer) heatSinks(low, high []int) {
	if p.Board == nil {
		return
	}
	c, at, h := p.socket, p.at(p.Board.SocketAt.SinkAt), p.at(p.Board.SocketAt.SinkHigh)
	lacks := p.lacks
	place := func(drawn bool, name string, lo, hi Point) int {
		p.lacks = lacks
		lo[Z], hi[Z] = c[Z], c[Z]+h
		return p.put(Box{Name: name, Seat: build.Board, Kind: Part, Drawn: true, Whole: !drawn, Lo: lo, Hi: hi})
	}
	const half = 32 * mm
	rear := place(true, "heat-sink", Point{min(max(c[X]-at-sinkWide, rearDeep), c[X]-at-mm), c[Y] - half}, Point{c[X] - at, c[Y] + half})
	far := place(true, "heat-sink", Point{c[X] - half, c[Y] + at}, Point{c[X] + half, c[Y] + at + sinkWide})
	slots := place(false, "heat-sink", Point{c[X] - half, c[Y] - at - sinkWide}, Point{c[X] + half, c[Y] - at})
	edge := p.topEdge()
	if p.scene.Over {
		place(false, "heat-sink at the edge", Point{c[X] - half, edge}, Point{c[X] + half, edge + sinkWide})
	} else {
		place(false, "heat-sink at the edge", Point{c[X] - half, edge - sinkWide}, Point{c[X] + half, edge})
	}
	for _, i := range low {
		p.meet("cooler-board", "base", i, rear, X, true)
		p.meet("cooler-board", "base", i, far, Y, false)
		p.meet("cooler-board", "base", i, slots, Y, true)
	}
	for _, i := range high {
		for _, s := range []int{rear, far, slots} {
			p.meet("cooler-board", "fins", s, i, Z, false)
		}
	}
}

// clearOfCard keeps the cooler clear of the back of a card in the board's slot.
func (p *placer) clearOfCard(cooler int) {
	if p.Layout == nil || p.Layout.Card.Mount != part.InSlot || p.noSlot {
		return
	}
	for i, b := range p.scene.Boxes {
		if b.Name == "graphics card" {
			p.meet("cooler-card", "", cooler, i, Y, true)
		}
	}
}
