package grow

import (
	"slices"
	"strings"

	"slipfit/core/feed"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// board varies a board: converters, memory rate and firmware, where the socket lies, ports and headers. Form, socket, chipset,
// memory, slots and module sockets stay; the processor's power sockets carry what the converters hold.
func (g *grower) board(p *part.Board) string {
	was := *p
	if p.Form == part.MicroATX && p.Depth.Or(244*mm) < 244*mm { // up to 244 mm (microATX 1.2, table 3); other forms have one depth
		move(&p.Depth, unit.Length(g.shift(8))*mm, 180*mm, 244*mm)
	}
	other := like(g, g.from.Boards, p, func(o *part.Board) bool { return o.Chipset == p.Chipset })
	p.Firmware, p.FlashAlone = other.Firmware, other.FlashAlone
	other = like(g, g.from.Boards, p, func(o *part.Board) bool {
		return o.Socket == p.Socket && o.Memory == p.Memory && o.Module == p.Module && o.Slots == p.Slots
	})
	p.Speed, p.SpeedTwo = other.Speed, other.SpeedTwo

	var fed unit.Power
	for _, s := range p.PowerPlugs {
		switch s.Kind {
		case part.SocketProcessor8:
			fed += unit.Power(feed.SocketProcessor8.LimitMW()) * unit.Power(s.Count.Or(0))
		case part.SocketProcessor4:
			fed += unit.Power(feed.SocketProcessor4.LimitMW()) * unit.Power(s.Count.Or(0))
		}
	}
	vary(&p.Sustained, 5*w, 30*w, min(max(fed, 30*w), 500*w), g.about(150))
	stronger := change(p.Sustained, was.Sustained)
	vary(&p.Own, w, 5*w, 80*w, g.about(100))

	at := &p.SocketAt // between the first slot and the edge: one grows as the other shrinks
	if edge, ok := at.TopEdge.Get(); ok && at.Card.Or(0) > 40*mm && edge > 30*mm {
		by := mm / 10 * unit.Length(g.shift(15))
		at.TopEdge.Set(edge + by)
		move(&at.Card, -by, 30*mm, 150*mm)
	}
	move(&at.Memory, mm/10*unit.Length(g.shift(15)), 30*mm, 120*mm)
	move(&at.SinkAt, mm/10*unit.Length(g.shift(20)), 15*mm, 120*mm)
	vary(&at.SinkHigh, mm/10, 0, 80*mm, stronger.lean(40), g.about(60))
	p.M2 = slices.Clone(p.M2)
	for i := range p.M2 {
		vary(&p.M2[i].Height, mm/10, mm*3/2, 40*mm, g.about(100))
	}

	ports := unit.Whole(0)
	p.Rear = slices.Clone(p.Rear)
	for i, r := range p.Rear {
		if n, ok := r.Count.Get(); ok && strings.HasPrefix(string(r.Kind), "usb-a") {
			move(&p.Rear[i].Count, unit.Whole(g.shift(1)), 1, 8)
			ports += p.Rear[i].Count.Or(0) - n
		}
	}
	p.Headers = slices.Clone(p.Headers)
	for i, h := range p.Headers {
		if h.Kind == part.HeaderFan {
			move(&p.Headers[i].Count, unit.Whole(g.shift(1)), 1, 8)
			ports += p.Headers[i].Count.Or(0) - h.Count.Or(0)
		}
	}
	mass(&p.Article, change(p.Depth, was.Depth), stronger.lean(20), g.about(25))
	price(&p.Article, stronger.lean(70), change(p.Speed, was.Speed).lean(30), factor(1000+10*ports), g.about(45))
	return ""
}
