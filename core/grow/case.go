package grow

import (
	"fmt"
	"slices"

	"slipfit/core/part"
	"slipfit/core/unit"
)

// enclosure varies a case: its outer size by up to 4 %, and the room inside with it, wall for wall, so that everything
// stacks and seats as before; its openings, its own fans and its routes. Mounts, fan places, bays and board forms stay.
func (g *grower) enclosure(p *part.Case) string {
	was := *p
	w0, h0, d0 := was.Outer.Width.Or(0), was.Outer.Height.Or(0), was.Outer.Depth.Or(0)
	by := box{g.wall(w0), g.wall(h0), g.wall(d0)}
	if l := scaled(was.Volume.Or(10_000), of(w0+by.wide, w0), of(h0+by.high, h0), of(d0+by.deep, d0)); l > 59_500 || l < 7_500 {
		by = box{-by.wide, -by.high, -by.deep} // desktop cases hold 7 to 60 l
	}
	least := smallest(p)
	by = box{max(by.wide, min(0, least.wide-w0)), max(by.high, min(0, least.high-h0)), max(by.deep, min(0, least.deep-d0))}
	move(&p.Outer.Width, by.wide, 10*mm, 1500*mm)
	move(&p.Outer.Height, by.high, 10*mm, 1500*mm)
	move(&p.Outer.Depth, by.deep, 10*mm, 1500*mm)
	size := scaled(of(w0+by.wide, w0), of(h0+by.high, h0), of(d0+by.deep, d0))
	if v, ok := p.Volume.Get(); ok && w0 > 0 && h0 > 0 && d0 > 0 {
		now, before := hold(p.Outer), hold(was.Outer)
		p.Volume.Set(min((v*now/before+99)/100*100, now))
	}

	p.Fans = slices.Clone(p.Fans)
	for i := range p.Fans {
		g.fan(&p.Fans[i].FanFigures)
	}
	airy := g.about(80)
	if len(p.Fans) == 0 {
		airy = max(airy, 1000) // a case that brings no fan must be open
	}
	p.Openings = slices.Clone(p.Openings)
	for i, o := range p.Openings {
		vary(&p.Openings[i].Free, 10, 1, min(max(face(p.Outer, o.Face)*7/10, 1), 3000), airy)
	}
	p.Layouts = slices.Clone(p.Layouts)
	for i := range p.Layouts {
		g.layout(&p.Layouts[i], by, h0 > d0)
	}
	mass(&p.Article, size, airy.lean(-10), g.about(20))
	price(&p.Article, size.lean(120), airy.lean(10), g.about(45))
	if v, ok := p.Volume.Get(); ok {
		return fmt.Sprintf("%d L", (v+500)/1000)
	}
	return ""
}

// box is a width, a height and a depth.
type box struct{ wide, high, deep unit.Length }

// wall is how far a wall moves: up to 4 % of the length, to the millimetre.
func (g *grower) wall(length unit.Length) unit.Length {
	return unit.Length(g.shift(max(int64(length/mm)*4/100, 1))) * mm
}

// hold is what an outer size holds.
func hold(s part.Size) unit.Millilitre {
	return unit.Millilitre(s.Width.Or(0) / mm * (s.Height.Or(0) / mm) * (s.Depth.Or(0) / mm) / 1000)
}

// face is the area of a side, square centimetres; of both sides together.
func face(s part.Size, f part.Face) unit.Whole {
	wide, high, deep := unit.Whole(s.Width.Or(0)/mm), unit.Whole(s.Height.Or(0)/mm), unit.Whole(s.Depth.Or(0)/mm)
	switch f {
	case part.Front, part.Rear:
		return wide * high / 100
	case part.Side:
		return 2 * high * deep / 100
	}
	return wide * deep / 100
}

// layout moves the room inside a case with its walls.
func (g *grower) layout(l *part.Layout, by box, tall bool) {
	long := by.deep
	if tall && l.Card.Mount == part.Behind {
		long = by.high // a chimney, the card on edge
	}
	move(&l.Card.Length, long, 50*mm, 600*mm)
	switch {
	case l.Card.Mount == part.Behind: // cooler, plate and card stack across the width
		half := by.wide / 2 / mm * mm
		move(&l.Cooler, half, 20*mm, 250*mm)
		move(&l.Card.Thickness, by.wide-half, 10*mm, mostThick(l))
	case l.Card.Mount == part.Facing:
		move(&l.Card.Thickness, by.wide, 10*mm, 200*mm)
	case l.Lies: // the board lies, cooler and card stand on it
		move(&l.Cooler, by.high, 20*mm, 250*mm)
		move(&l.Card.Height, by.high, 50*mm, 300*mm)
	default: // cooler and card end under the same panel
		move(&l.Cooler, by.wide, 20*mm, 250*mm)
		move(&l.Card.Height, by.wide, 50*mm, 300*mm)
	}
	if by.deep > 0 {
		move(&l.Supply.Length, unit.Length(g.Int64N(int64(by.deep/mm)+1))*mm, 80*mm, 400*mm)
	}
	further := min((by.high+by.deep)/2/mm*mm, 15*mm) + 5*mm*unit.Length(g.shift(2))
	for _, r := range []*unit.Figure[unit.Length]{&l.Routes.Main, &l.Routes.Processor, &l.Routes.Card, &l.Routes.Drive} {
		move(r, further, 50*mm, 1500*mm)
	}
	l.Radiators = slices.Clone(l.Radiators)
	for i := range l.Radiators {
		r := &l.Radiators[i]
		move(&r.Length, max(by.along(r.Face, tall), 0), 100*mm, 600*mm)
		move(&r.Tube, further, 50*mm, 900*mm)
	}
	l.Bays = slices.Clone(l.Bays)
	for i := range l.Bays {
		move(&l.Bays[i].Card, long, 50*mm, 600*mm)
	}
}

// along is how far the walls move along a radiator at a face.
func (by box) along(f part.Face, tall bool) unit.Length {
	if f == part.Front || f == part.Rear || f == part.Side && tall {
		return by.high
	}
	return by.deep
}

// mostThick is the thickest card that a place behind the plate may allow: its brackets at a pitch of 20.32 mm and a shroud
// past them, the plate's travel taken off; what it allows already where that is more.
func mostThick(l *part.Layout) unit.Length {
	most := unit.Length(20_320)*unit.Length(l.Card.Brackets.Or(0)) + 25*mm
	if l.Plate != nil {
		most -= l.Plate.Step * unit.Length(l.Plate.Steps)
	}
	return max(most/mm*mm, l.Card.Thickness.Or(0))
}

// smallest is how far a case may shrink and still take its boards, radiators and fans; rooms that only short, thin or
// low cards and flat coolers fit do not shrink.
func smallest(p *part.Case) box {
	var s box
	now := box{p.Outer.Width.Or(0), p.Outer.Height.Or(0), p.Outer.Depth.Or(0)}
	for i := range p.Layouts {
		l := &p.Layouts[i]
		for _, f := range l.Boards {
			s.board(l, f, now)
		}
		for _, r := range l.Radiators {
			s.span(r.Face, r.Length.Or(0), slices.Max(r.FanSizes), now)
		}
		for _, f := range l.FanPlaces {
			s.span(f.Face, slices.Min(f.FanSizes)*unit.Length(f.Fans.Or(0)), 0, now)
		}
		if slack := max(l.Card.Length.Or(0)-240*mm, 0); l.Card.Mount == part.Behind && now.high > now.deep {
			s.high = max(s.high, now.high-slack)
		} else {
			s.deep = max(s.deep, now.deep-slack)
		}
		slack := l.Cooler.Or(0) - 62*mm
		if l.Card.Mount == part.Behind {
			slack = min(slack, l.Card.Thickness.Or(0)-40*mm, 4*mm)
		} else {
			slack = min(slack, l.Card.Height.Or(70*mm)-72*mm)
		}
		if l.Lies {
			s.high = max(s.high, now.high-max(slack, 0))
		} else {
			s.wide = max(s.wide, now.wide-max(slack, 0))
		}
	}
	return s
}

// board keeps a board's outline inside: ATX 305 × 244 mm, microATX 244 × 244, Mini-ITX 170 × 170 (microATX 1.2, table 3;
// Mini-ITX addendum 1.1, table 1), 4 mm beside it and 20 mm before it.
func (s *box) board(l *part.Layout, f part.BoardForm, now box) {
	edge, depth := 170*mm, 170*mm
	switch f {
	case part.ATX:
		edge, depth = 305*mm, 244*mm
	case part.MicroATX:
		edge, depth = 244*mm, 244*mm
	}
	across, room := &s.high, now.high
	if l.Lies {
		across, room = &s.wide, now.wide
	}
	if edge+4*mm > room || depth+20*mm > now.deep {
		edge, depth = depth, edge // turned
	}
	*across = max(*across, edge+4*mm)
	s.deep = max(s.deep, depth+20*mm)
}

// span keeps what lies along a face inside, by its length and breadth.
func (s *box) span(f part.Face, length, breadth unit.Length, now box) {
	switch {
	case f == part.Front || f == part.Rear:
		s.high, s.wide = max(s.high, length), max(s.wide, breadth)
	case f == part.Side && now.high > now.deep:
		s.high, s.deep = max(s.high, length), max(s.deep, breadth)
	case f == part.Side:
		s.deep, s.high = max(s.deep, length), max(s.high, breadth)
	default:
		s.deep, s.wide = max(s.deep, length), max(s.wide, breadth)
	}
}
