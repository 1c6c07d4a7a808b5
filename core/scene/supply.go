package scene

import (
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

// supply places the power supply with its plugs, and the end of its bay. Bay and body lie along x.
func (p *placer) supply() {
	if p.Layout == nil {
		return
	}
	width, height := supplySize(part.SupplyATX)
	if p.Supply != nil {
		width, height = supplySize(p.Supply.Form)
	}
	at := p.bay(width, height)
	end := p.wall("end of the supply's bay", X, at[X]+p.at(p.Layout.Supply.Length), false)
	if p.Supply == nil {
		return
	}
	body := Box{Name: "power supply", Seat: build.Supply, Kind: Part, Drawn: true, Lo: at, Hi: at}
	body.Hi[X] += p.at(p.Supply.Length)
	body.Hi[Y] += height
	body.Hi[Z] += width
	if p.bayAxis() == Z {
		body.Hi[Y], body.Hi[Z] = at[Y]+width, at[Z]+height
	}
	lacks := p.lacks
	n := p.put(body)
	plugs := body
	plugs.Name, plugs.Kind, p.lacks = "plugs of the supply", KeepOut, lacks
	plugs.Lo[X] = body.Hi[X]
	plugs.Hi[X] = body.Hi[X] + p.at(p.Supply.PlugBend)
	if plugs.Lo[X] == plugs.Hi[X] && !p.lacks {
		p.meet("supply-length", "", n, end, X, false)
		return
	}
	p.meet("supply-length", "", p.put(plugs), end, X, false)
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
	if p.scene.Up == Z && (at == part.Bottom || at == part.Top) || p.scene.Up == Y && at == part.Side {
		return Z
	}
	return Y
}

// bay is the corner of the supply's bay.
func (p *placer) bay(width, height unit.Length) Point {
	z := p.panel() - width - 4*mm
	behind := -standoff - boardThick - 12*mm - height
	switch at := p.supplyAt(); {
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
