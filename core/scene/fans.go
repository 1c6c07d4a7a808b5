package scene

import (
	"slices"

	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// fans places the fans the case brings and those bought for it, face by face, beside a radiator's, and the depth each
// place allows.
func (p *placer) fans() {
	if p.Layout == nil {
		return
	}
	for _, f := range part.Front.Values() {
		face := part.Face(f)
		next := 0
		if m := p.Mount(); m != nil && m.Face == face {
			next = int(p.Cooler.Liquid.Sections.Or(0))
		}
		room := p.roomFor(face)
		for i := range p.Case.Fans {
			if c := &p.Case.Fans[i]; c.Face == face {
				for range int(c.Count.Or(0)) {
					if next < room || room == 0 {
						p.fan(face, next, &c.FanFigures, build.Case, nil)
						next++
					}
				}
			}
		}
		for i := range p.Fans {
			if set := &p.Fans[i]; set.Face == face {
				for range set.Count {
					p.fan(face, next, &set.Fan.FanFigures, build.Fans, p.placeOf(set))
					next++
				}
			}
		}
	}
}

// roomFor is how many fans a face takes; 0 where the sheet names no place there.
func (p *placer) roomFor(face part.Face) int {
	for i := range p.Layout.FanPlaces {
		if f := &p.Layout.FanPlaces[i]; f.Face == face {
			return int(f.Fans.Or(0))
		}
	}
	return 0
}

// placeOf is the place on its face that carries a fan's hole pattern; nil where none does.
func (p *placer) placeOf(set *build.FanSet) *part.FanPlace {
	for i := range p.Layout.FanPlaces {
		if f := &p.Layout.FanPlaces[i]; f.Face == set.Face && slices.ContainsFunc(f.FanSizes, func(size unit.Length) bool { return part.HolePitch(size) == set.Fan.Holes.Or(0) }) {
			return f
		}
	}
	return nil
}

// fan places one fan, the n-th of its face, and the depth of its place where it is one bought.
func (p *placer) fan(face part.Face, n int, f *part.FanFigures, seat build.Seat, place *part.FanPlace) {
	size, thick := p.at(f.Size), p.at(f.Thickness)
	at := p.facePlane(face, size, n)
	b := at.box("case fan", Fan, 0, thick, 0, size, size)
	b.Seat, b.Faces, b.Order, b.Drawn = seat, at.out, n, true
	i := p.put(b)
	if place == nil || i < 0 {
		return
	}
	deep := at.plane + p.at(place.Thickness)
	if at.down {
		deep = at.plane - place.Thickness.Or(0)
	}
	p.meet("fan-places", string(face)+", thickness", i, p.wall("depth of the fan place", at.out, deep, at.down), at.out, at.down)
}

// facePlane is where the n-th fan of a size stands on a face.
func (p *placer) facePlane(face part.Face, size unit.Length, n int) mountPlace {
	off := size * unit.Length(n)
	middle := max(8*mm, (p.panel()-size)/2)
	switch {
	case face == part.Front:
		return mountPlace{X, p.front, true, Y, p.hi - 10*mm - size - off, Z, middle}
	case face == part.Rear:
		return mountPlace{X, 2 * mm, false, Y, p.hi - size - off, Z, max(40*mm, p.panel()-size-6*mm)}
	case p.scene.Up == Z && face == part.Top:
		return mountPlace{Z, p.panel() + 2*mm, true, X, 60*mm + off, Y, p.socket[Y] - size/2}
	case p.scene.Up == Z && face == part.Bottom:
		return mountPlace{Z, -60 * mm, false, X, 60*mm + off, Y, p.socket[Y] - size/2}
	case p.scene.Up == Z && face == part.Side:
		return mountPlace{Y, p.hi + 70*mm, true, X, 40*mm + off, Z, middle}
	case face == part.Side:
		return mountPlace{Z, -12 * mm, false, Y, p.hi - size - off, X, p.depth + 14*mm}
	case (face == part.Top) != p.scene.Over:
		return mountPlace{Y, p.highPlane(face), true, X, 60*mm + off, Z, middle}
	}
	low := p.lo - 30*mm
	if p.Layout.Card.Mount == part.InSlot {
		low = min(low, slotAt(1)+cardBack-p.Layout.Card.Thickness.Or(60*mm))
	}
	return mountPlace{Y, low, false, X, 60*mm + off, Z, middle}
}

// highPlane is the plane, beyond the board's far edge, that fans of a face are screwed to.
func (p *placer) highPlane(face part.Face) unit.Length {
	for i := range p.Layout.Radiators {
		if m := &p.Layout.Radiators[i]; m.Face == face {
			if free, ok := m.Board.Get(); ok {
				return p.hi + max(free, 28*mm)
			}
		}
	}
	return p.hi + 32*mm
}
