package scene

import (
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// shell places the outer size of the case about the limits of its layout. No sheet says how the inside lies in it; what is
// over is shared between both sides.
func (p *placer) shell() {
	if p.Case == nil {
		return
	}
	lo, hi, hung := p.needs()
	size := Point{p.at(p.Case.Outer.Depth), p.at(p.Case.Outer.Height), p.at(p.Case.Outer.Width)}
	switch p.scene.Up {
	case X:
		size[X], size[Y] = size[Y], size[X]
	case Z:
		size[Y], size[Z] = size[Z], size[Y]
	}
	b := Box{Name: "case", Seat: build.Case, Kind: Shell, Drawn: true}
	for i := range size {
		spare := size[i] - (hi[i] - lo[i])
		b.Lo[i] = lo[i] - spare/2
		switch {
		case Axis(i) == X && p.scene.Up == X: // over the rear panel lies the room for its cables
			b.Lo[i] = hi[i] - size[i]
		case Axis(i) == X:
			b.Lo[i] = lo[i] - min(max(spare, 0), 10*mm)
		case Axis(i) == Y && hung && p.scene.Over:
			b.Lo[i] = lo[i]
		case Axis(i) == Y && hung:
			b.Lo[i] = hi[i] - size[i]
		}
		b.Hi[i] = b.Lo[i] + size[i]
	}
	p.inside = b
	p.put(b)
}

// needs is what the layout's limits take, from corner to corner; hung reports that they say where the top of a standing
// case is.
func (p *placer) needs() (lo, hi Point, hung bool) {
	at, card := p.hangs(), &p.Layout.Card
	lo = Point{0, p.lo, -standoff - 12*mm}
	hi = Point{p.front, p.hi, p.panel()}
	deep := p.limit(at)
	p.lacks = false
	if at.down {
		lo[at.thick] = min(lo[at.thick], deep)
	}
	if card.Mount == part.InSlot {
		hi[Z] = max(hi[Z], cardSeated+card.Height.Or(0))
	} else {
		lo[Y], hi[Y] = min(lo[Y], at.edge), max(hi[Y], at.edge+card.Height.Or(0))
	}
	over, under, hung := p.overAndUnder()
	where := p.supplyAt()
	switch {
	case p.scene.Up == Z:
		hi[Y] = max(hi[Y], p.hi+3*mm)
		if where == part.Top {
			hi[Z] += p.bayTall(false) + 6*mm
		}
		switch where {
		case part.Bottom:
			lo[Z] -= p.bayTall(false)
		case part.Side:
			lo[Y] = min(lo[Y], p.lo-4*mm-p.bayTall(true))
		}
		return lo, hi, false
	case p.scene.Up == X:
		return lo, hi, false
	case where == part.Side:
		lo[Z] = -standoff - boardThick - 2*mm - p.bayTall(false)
	}
	if p.scene.Over {
		lo[Y], hi[Y] = lo[Y]-over, hi[Y]+under
	} else {
		lo[Y], hi[Y] = lo[Y]-under, hi[Y]+over
	}
	return lo, hi, hung
}

// overAndUnder is what a standing case takes over the board and under what stands lowest; hung reports that a radiator's
// mount says how far over the board its top is.
func (p *placer) overAndUnder() (over, under unit.Length, hung bool) {
	over, under = 12*mm, 6*mm
	for i := range p.Layout.FanPlaces {
		if p.Layout.FanPlaces[i].Face == part.Top {
			over = 31 * mm
		}
	}
	for i := range p.Layout.Radiators {
		m := &p.Layout.Radiators[i]
		if m.Face == part.Top {
			over, hung = max(over, overhead(m)+4*mm), true
		}
	}
	slim := p.scene.Up == Y && p.Case.Outer.Width.Or(wallDeep) < p.bayTall(true)
	tall := p.bayTall(slim)
	switch p.supplyAt() {
	case part.Top:
		over = max(over, tall+14*mm)
	case part.Bottom:
		under = tall + 8*mm
	}
	return over, under, hung
}

// overhead is how far over the board a radiator at the top is screwed: far enough not to hang over it, where the sheet does
// not say how thick it may be before it does.
func overhead(m *part.RadiatorMount) unit.Length { return m.Board.Or(m.Thickness.Or(60*mm) + 4*mm) }

// bayTall is the height of the tallest supply the bay takes, on edge its width.
func (p *placer) bayTall(onEdge bool) unit.Length {
	var tall unit.Length
	for _, f := range p.Layout.Supply.Forms {
		w, h := supplySize(f)
		if onEdge {
			h = w
		}
		tall = max(tall, h)
	}
	return tall
}
