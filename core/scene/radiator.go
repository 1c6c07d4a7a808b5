package scene

import (
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// mountPlace is how a radiator hangs: the plane it is screwed to, the axis it stands out along, and the two it lies along.
type mountPlace struct {
	out   Axis
	plane unit.Length
	down  bool // it stands out down that axis
	along Axis
	from  unit.Length // where its length begins
	side  Axis
	left  unit.Length // where its width begins
}

// frontPlane is x of the plane that front fans and radiators are screwed to: what a radiator may be thick beyond the
// longest card, where the sheet says so.
func (p *placer) frontPlane() unit.Length {
	if p.Layout == nil {
		return 0
	}
	long := p.Layout.Card.Length.Or(330 * mm)
	for i := range p.Layout.Radiators {
		if m := &p.Layout.Radiators[i]; m.Face == part.Front {
			if free, ok := m.Card.Get(); ok {
				return long + free
			}
		}
	}
	deep := p.Case.Outer.Depth
	if p.scene.Up == X {
		deep = p.Case.Outer.Height
	}
	return max(long, min(long+30*mm, deep.Or(400*mm)-10*mm))
}

// mount is the place of the build's radiator. length and width are the radiator's, hung what stands in from the plane. It
// begins where the mount does.
func (p *placer) mount(m *part.RadiatorMount, length, width, hung unit.Length) mountPlace {
	at := p.hangs()
	upper := p.topEdge()
	middle := (p.inside.Lo[Z] + p.inside.Hi[Z] - width) / 2
	switch {
	case m.Face == part.Front:
		card := p.slot
		if at.thick == Z {
			card = at.edge + 60*mm
			middle = at.back - width/2
		}
		if length > p.inside.Hi[Y]-p.inside.Lo[Y] {
			return mountPlace{X, p.front, true, Z, middle + (width-length)/2, Y, p.begins(m, Y, width, card-10*mm, card+4*mm)}
		}
		return mountPlace{X, p.front, true, Y, p.begins(m, Y, length, card-10*mm, card+4*mm), Z, middle}
	case m.Face == part.Top && p.scene.Up == Z:
		bottom := m.Above.Or(p.panel()-hung) + max(0, m.Board.Or(hung)-hung)
		return mountPlace{Z, bottom + hung, true, X, p.overBoard(m, length), Y, p.socket[Y] - width/2}
	case m.Face == part.Top && p.scene.Over:
		return mountPlace{Y, upper - overhead(m), false, X, p.overBoard(m, length), Z, m.Above.Or(20 * mm)}
	case m.Face == part.Top:
		return mountPlace{Y, upper + overhead(m), true, X, p.overBoard(m, length), Z, m.Above.Or(20 * mm)}
	case m.Face == part.Rear:
		return mountPlace{X, 3 * mm, false, Y, p.socket[Y] - length/2, Z, 46 * mm}
	}
	return p.sideMount(m, at, length, hung, middle)
}

// overBoard is where a radiator at the top begins: its mount in the middle of the case, the radiator over processor and
// memory.
func (p *placer) overBoard(m *part.RadiatorMount, length unit.Length) unit.Length {
	memory := p.socket[X] + 50*mm
	if p.Board != nil {
		memory = p.socket[X] + p.Board.SocketAt.Memory.Or(50*mm)
	}
	return p.begins(m, X, length, p.socket[X]-10*mm, memory+20*mm)
}

// begins is where a mount begins along an axis of the case, in its middle, but so that the radiator reaches from one
// place to another.
func (p *placer) begins(m *part.RadiatorMount, axis Axis, length, from, to unit.Length) unit.Length {
	middle := (p.inside.Lo[axis] + p.inside.Hi[axis] - m.Length.Or(length)) / 2
	return min(max(middle, to-length), from)
}

// sideMount is a place at the bottom or on a side: under the card's fans where the sheet says it takes room from the card.
func (p *placer) sideMount(m *part.RadiatorMount, at cardPlace, length, hung, middle unit.Length) mountPlace {
	free, meets := m.Card.Get()
	if !meets {
		if m.Face == part.Bottom {
			if p.scene.Over {
				return mountPlace{Y, p.inside.Hi[Y] - 4*mm, true, X, 20 * mm, Z, middle}
			}
			return mountPlace{Y, p.inside.Lo[Y] + 4*mm, false, X, 20 * mm, Z, middle}
		}
		if p.scene.Up == Z {
			return mountPlace{Y, p.inside.Hi[Y] - 4*mm, true, X, 20 * mm, Z, p.panel()}
		}
		return mountPlace{Z, sidePlane(m.Thickness.Or(hung)), false, Y, p.socket[Y] + 80*mm - length, X, p.depth + 14*mm}
	}
	plane := p.limit(at) + free
	if at.down {
		plane = p.limit(at) - free
	}
	return mountPlace{at.thick, plane, !at.down, X, 20 * mm, at.high, at.edge}
}

// sidePlane is the plane of what is screwed beside the board in the far chamber: so deep that it ends under the card.
func sidePlane(thick unit.Length) unit.Length { return min(-12*mm, cardSeated-thick) }

// radiator places the radiator of a liquid cooler and its fans, and what it must clear.
func (p *placer) radiator() {
	m := p.Mount()
	if m == nil {
		return
	}
	l := p.Cooler.Liquid
	length, width, thick := p.at(l.Length), p.at(l.Width), p.at(l.Thickness)
	hung := thick
	fans, known := p.Cooler.Fans.Get()
	p.lacks = p.lacks || !known
	if fans > 0 {
		hung += p.at(p.Cooler.Fan.Thickness)
	}
	if p.lacks {
		p.put(Box{Name: "radiator"})
		return
	}
	at := p.mount(m, length, width, hung)
	inside := p.within(at.box("", Radiator, 0, hung, 0, length, width), at.along, at.side)
	at.from = inside.Lo[at.along]
	if m.Above.IsZero() { // else the sheet says where it begins
		at.left = inside.Lo[at.side]
	}
	core := p.put(at.box("radiator", Radiator, 0, thick, 0, length, width))
	layer := core
	size := l.FanSize.Or(120 * mm)
	for i := range int(fans) {
		start := (length-size*unit.Length(fans))/2 + size*unit.Length(i)
		f := at.box("radiator fan", Fan, thick, hung, start, start+size, max(size, width))
		f.Faces, f.Order = at.out, i
		layer = p.put(f)
	}
	whole := at.box("radiator with its fans", KeepOut, 0, hung, 0, length, width)
	whole.Whole = true
	far := p.put(whole)
	p.radiatorWalls(m, at, core, layer, far)
	p.radiatorMeets(m, at, far)
}

// box is a layer of a radiator: from one depth to another before the plane, from one length to another.
func (at mountPlace) box(name string, kind Kind, near, far, from, to, width unit.Length) Box {
	b := Box{Name: name, Seat: build.Cooler, Kind: kind}
	b.Lo[at.out], b.Hi[at.out] = at.plane+near, at.plane+far
	if at.down {
		b.Lo[at.out], b.Hi[at.out] = at.plane-far, at.plane-near
	}
	b.Lo[at.along], b.Hi[at.along] = at.from+from, at.from+to
	b.Lo[at.side], b.Hi[at.side] = at.left, at.left+width
	return b
}

// radiatorWalls places the end of the mount and the depth it allows.
func (p *placer) radiatorWalls(m *part.RadiatorMount, at mountPlace, core, layer, far int) {
	p.meet("radiator-mount", "length", core, p.wall("end of the radiator's mount", at.along, at.from+p.at(m.Length), false), at.along, false)
	depth := at.plane + p.at(m.Thickness)
	if at.down {
		depth = at.plane - m.Thickness.Or(0)
	}
	p.meet("radiator-mount", "thickness", far, p.wall("depth of the radiator's mount", at.out, depth, at.down), at.out, at.down)
}

// radiatorMeets keeps the radiator clear of card, memory and heat-sinks where the sheet says that they can meet.
func (p *placer) radiatorMeets(m *part.RadiatorMount, at mountPlace, far int) {
	subject := "thickness"
	if m.Face == part.Front {
		subject = "length"
	}
	_, card := m.Card.Get()
	_, board := m.Board.Get()
	above := !m.Above.IsZero()
	out := p.cardEnds(m.Face)
	for i := range p.scene.Boxes {
		switch b := &p.scene.Boxes[i]; {
		case card && i == out:
			p.meet("radiator-card", subject, i, far, at.out, !at.down)
		case board && above && b.Name == "memory":
			p.meet("radiator-memory", "under", i, far, Z, false)
		case board && above && b.Name == "heat-sink at the edge":
			p.meet("radiator-board", "", i, far, Z, false)
		case board && b.Name == "memory" && b.Order == 0 && !above:
			p.scene.Unknown = append(p.scene.Unknown, "height left above the board")
		}
	}
}

// cardEnds is the box of the card that comes nearest to a radiator: with a plug at its end at the front, with the air
// before its fans elsewhere; −1 where there is none.
func (p *placer) cardEnds(face part.Face) int {
	found := -1
	for i, b := range p.scene.Boxes {
		switch {
		case b.Name == "graphics card",
			face == part.Front && b.Name == "card with its plug",
			face != part.Front && b.Name == "card with its air":
			found = i
		}
	}
	return found
}
