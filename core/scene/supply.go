package scene

import (
	"slices"

	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// supplySize is width and height of a supply's body. Source: reference sheet, section 2.
func supplySize(f part.SupplyForm) (width, height unit.Length) {
	if f == part.SupplyATX {
		return 150 * mm, 86 * mm
	}
	return 125 * mm, 63500
}

// supply places the power supply with its plugs, and the end of its bay. It lies along x, in slim cases on edge or on end.
func (p *placer) supply() {
	if p.Layout == nil || p.Supply == nil {
		return
	}
	width, height := supplySize(p.Supply.Form)
	size := Point{p.at(p.Supply.Length), height, width}
	if p.bayAxis() == Z {
		size[Y], size[Z] = width, height
	}
	lacks := p.lacks
	bend := p.at(p.Supply.PlugBend)
	size[X] += bend
	body, turning := p.lay(p.bay(width, height), size)
	long := Axis(slices.Index(turning[:], X))
	plugs := body
	body.Name, body.Seat, body.Kind, body.Drawn = "power supply", build.Supply, Part, true
	plugs.Name, plugs.Seat, plugs.Kind, plugs.Drawn = "plugs of the supply", build.Supply, KeepOut, true
	body.Hi[long] -= bend
	plugs.Lo[long] = body.Hi[long]
	unsure := p.lacks
	p.lacks = lacks
	last := p.put(body)
	p.lacks = unsure
	if bend > 0 || unsure {
		last = p.put(plugs)
	}
	end := p.wall("end of the supply's bay", long, body.Lo[long]+p.at(p.Layout.Supply.Length), false)
	p.meet("supply-length", "", last, end, long, false)
}

// supplyAt is the face the supply lies against: at the bottom of a tower and in front of the board elsewhere, where the
// sheet does not say.
func (p *placer) supplyAt() part.Face {
	switch {
	case p.Layout.Supply.At != "":
		return p.Layout.Supply.At
	case p.Layout.Card.Mount == part.InSlot && !p.Layout.Lies:
		return part.Bottom
	}
	return part.Front
}

// bayAxis is the axis the supply's height runs along.
func (p *placer) bayAxis() Axis {
	at := p.supplyAt()
	if at == part.Side || p.scene.Up == Z && at != part.Front {
		return Z
	}
	return Y
}

// bay is the corner of the supply's bay.
func (p *placer) bay(width, height unit.Length) Point {
	z := p.panel() - width - 4*mm
	behind := -standoff - boardThick - 12*mm - height
	switch at := p.supplyAt(); {
	case p.scene.Up == X: // over the fans in the floor
		return Point{p.inside.Hi[X] - 30*mm - width, p.hi - height - 8*mm, max(p.scene.Rise-8*mm, z)}
	case at == part.Front:
		front := p.depth
		if front == 0 {
			front = 180 * mm
		}
		return Point{front + 6*mm, p.hi - height - 8*mm, max(p.scene.Rise-8*mm, z)}
	case p.scene.Up == Z && at == part.Bottom:
		return Point{4 * mm, p.hi - width, behind}
	case p.scene.Up == Z && at == part.Top:
		return Point{4 * mm, p.hi - width, p.panel() + 4*mm}
	case p.scene.Up == Z && at == part.Side:
		return Point{4 * mm, p.inside.Lo[Y] + 2*mm, p.inside.Lo[Z] + 4*mm}
	case at == part.Side:
		return Point{4 * mm, p.hi - width, behind}
	case (at == part.Top) != p.scene.Over:
		return Point{4 * mm, p.hi + 12*mm, z}
	}
	low := p.lo - 6*mm
	if p.Layout.Card.Mount == part.InSlot {
		low = min(low, slotAt(1)+cardBack-p.Layout.Card.Thickness.Or(60*mm))
	}
	return Point{4 * mm, low - height - 3*mm, z}
}
