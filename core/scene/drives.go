package scene

import (
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// drives places modules on the board and drives in bays. No sheet states where sockets and bays lie: they are drawn where
// they mostly do.
func (p *placer) drives() {
	if p.Layout == nil || p.Board == nil {
		return
	}
	seats := build.SetOf(build.Case, build.Board, build.Graphics, build.Cards, build.Boot, build.Cache, build.Archive)
	for i, d := range p.Assign(seats).Drives {
		if d.Socket != nil {
			p.module(i, d)
		}
	}
	n := 0
	for i, d := range p.AssignBays().Places {
		if d.Bay != nil {
			p.inBay(i, n, d)
			n++
		}
	}
}

// module draws a module in its socket: the first between processor and slot 1, the next ones between the slots below.
func (p *placer) module(i int, d build.DrivePlace) {
	n := 0
	for j := range p.Board.M2 {
		if &p.Board.M2[j] == d.Socket {
			n = j
		}
	}
	length := unit.Length(d.Drive.Module.Or(80)) * mm
	x := unit.Length(58 * mm)
	y := slotAt(1) + 11*mm - slotPitch*unit.Length(2*n) + 0
	if p.Board.Form == part.MiniITX {
		y = slotAt(1) + 11*mm
	}
	lo, hi := p.scene.Rise+2300, p.scene.Rise+2300+800+d.Drive.Above.Or(2*mm)
	if d.Socket.Back {
		lo, hi = p.scene.Rise-boardThick-2300-800-d.Drive.Above.Or(2*mm), p.scene.Rise-boardThick-2300
	}
	p.put(Box{Name: "storage module", Seat: d.Seat, Kind: Part, Drawn: true, Order: i,
		Lo: Point{x, y, lo}, Hi: Point{x + length, y + 22*mm, hi}})
}

// inBay draws a drive in a bay, where there is room one above the other at the lower front.
func (p *placer) inBay(i, n int, d build.BayPlace) {
	long, wide, thick := unit.Length(100200), unit.Length(69850), d.Drive.Height.Or(7*mm)
	if d.Drive.Form == part.Form35 {
		long, wide, thick = 147*mm, 101600, d.Drive.Height.Or(26100)
	}
	y := p.lo - 40*mm
	if p.Layout.Card.Mount == part.InSlot {
		y = min(p.lo, slotAt(1)+cardBack-p.Layout.Card.Thickness.Or(60*mm)) - 8*mm
	}
	y -= thick + unit.Length(n)*34*mm
	z := 20 * mm
	if p.scene.Up == Z { // on the floor, under the plate
		y, z = p.socket[Y]-wide/2, p.inside.Lo[Z]+5*mm+unit.Length(n)*34*mm
		wide, thick = thick, wide
	}
	x := p.front - 34*mm - long
	b, _ := p.lay(Point{x, y, z}, Point{long, thick, wide})
	b.Name, b.Seat, b.Kind, b.Drawn, b.Order = "drive", d.Seat, Part, true, i
	p.put(b)
}
