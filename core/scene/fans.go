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
						p.fan(face, next, &c.FanFigures, build.Case, 0, nil)
						next++
					}
				}
			}
		}
		for i := range p.Fans {
			if set := &p.Fans[i]; set.Face == face {
				for range set.Count {
					p.fan(face, next, &set.Fan.FanFigures, build.Fans, i, p.placeOf(set))
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
func (p *placer) fan(face part.Face, n int, f *part.FanFigures, seat build.Seat, set int, place *part.FanPlace) {
	size, thick := p.at(f.Size), p.at(f.Thickness)
	at := p.facePlane(face, size, thick, n)
	b := at.box("case fan", Fan, 0, thick, 0, size, size)
	b.Seat, b.Faces, b.Order, b.Drawn, b.Line = seat, at.out, n, true, p.line(seat, set)
	settled, _, ok := p.settle(b, wallWide, at.along, at.side)
	switch {
	case ok:
		b = settled
	case seat == build.Case && !p.lacks: // something else has its place
		return
	default:
		b = p.within(b, at.along, at.side)
	}
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
func (p *placer) facePlane(face part.Face, size, thick unit.Length, n int) mountPlace {
	off := size * unit.Length(n)
	in := p.inside
	z := (in.Lo[Z] + in.Hi[Z] - size) / 2
	lowEnd, highEnd := in.Lo[Y]+4*mm, in.Hi[Y]-4*mm
	switch {
	case p.scene.Up == X && face == part.Top:
		return mountPlace{X, in.Lo[X] + 3*mm, false, Y, p.socket[Y] - size/2 + off, Z, z}
	case p.scene.Up == X && face == part.Bottom:
		return mountPlace{X, in.Hi[X] - 3*mm, true, Y, lowEnd + off, Z, z}
	case face == part.Front:
		return mountPlace{X, p.front, true, Y, highEnd - 16*mm - size - off, Z, z}
	case face == part.Rear:
		return mountPlace{X, 3 * mm, false, Y, p.hi - size - off, Z, max(38*mm, in.Hi[Z]-size-10*mm)}
	case p.scene.Up == Z && face == part.Top:
		return mountPlace{Z, in.Hi[Z] - 3*mm, true, X, 60*mm + off, Y, p.socket[Y] - size/2}
	case p.scene.Up == Z && face == part.Bottom:
		return mountPlace{Z, in.Lo[Z] + 3*mm, false, X, 60*mm + off, Y, p.socket[Y] - size/2}
	case p.scene.Up == Z && face == part.Side:
		return mountPlace{Y, highEnd, true, X, 40*mm + off, Z, z}
	case face == part.Side:
		return mountPlace{Z, sidePlane(thick), false, Y, p.hi - size - off, X, p.depth + 14*mm}
	case (face == part.Top) != p.scene.Over:
		return mountPlace{Y, p.plane(face, highEnd), true, X, 60*mm + off, Z, z}
	}
	return mountPlace{Y, p.plane(face, lowEnd), false, X, 60*mm + off, Z, z}
}

// plane is the plane that fans over the board are screwed to: a radiator's, where the sheet says how far over the board
// that hangs, else the end of the case.
func (p *placer) plane(face part.Face, end unit.Length) unit.Length {
	for i := range p.Layout.Radiators {
		switch m := &p.Layout.Radiators[i]; {
		case m.Face != part.Top || face != part.Top:
		case p.scene.Over:
			return p.topEdge() - max(overhead(m), 28*mm)
		default:
			return p.topEdge() + max(overhead(m), 28*mm)
		}
	}
	return end
}
