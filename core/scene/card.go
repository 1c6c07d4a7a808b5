package scene

import (
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// cardPlace is where a card of the layout hangs: its back's plane, the way its fans face, and the edge it stands on.
type cardPlace struct {
	thick Axis        // the axis its thickness runs along
	back  unit.Length // the plane of its back on that axis
	down  bool        // its fans face down that axis
	high  Axis        // the axis its height runs along
	edge  unit.Length // its slot edge on that axis
}

// hangs gives the card's place, with the plate where it stands.
func (p *placer) hangs() cardPlace {
	switch p.Layout.Card.Mount {
	case part.Behind: // on the other side of the plate, its back to it; both move together
		return cardPlace{thick: Z, back: p.scene.Rise - behindPlate, down: true, high: Y, edge: p.lo}
	case part.Facing: // before the board, fans towards the panel
		return cardPlace{thick: Z, back: p.panel() - p.Layout.Card.Thickness.Or(80*mm) - p.scene.Rise, high: Y, edge: p.lowest() - underFacing}
	}
	return cardPlace{thick: Y, back: p.slot + cardBack, down: true, high: Z, edge: p.scene.Rise + cardSeated}
}

// lowest is the slot-side edge of the largest board that the layout takes.
func (p *placer) lowest() unit.Length {
	lowest := p.lo
	for _, f := range p.Layout.Boards {
		lo, _ := edges(f)
		lowest = min(lowest, lo)
	}
	return lowest
}

// panel is z of the panel before the processor cooler.
func (p *placer) panel() unit.Length { return p.Layout.Cooler.Or(160 * mm) }

// limit is the plane that the card's thickness and its breathing gap must not pass: the sheet's figure runs from the back
// of a card in the first slot, or on the riser with the plate at position 0.
func (p *placer) limit(at cardPlace) unit.Length {
	switch p.Layout.Card.Mount {
	case part.Behind:
		return -behindPlate - p.at(p.Layout.Card.Thickness)
	case part.Facing:
		p.at(p.Layout.Card.Thickness) // its back is placed by it
		return p.panel()
	}
	return slotAt(1) + cardBack - p.at(p.Layout.Card.Thickness)
}

// card places the graphics card, its plug and the air before its fans, and the walls of its place.
func (p *placer) card() {
	if p.Layout == nil {
		return
	}
	at := p.hangs()
	long := p.wall("limit of card length", X, p.at(p.Layout.Card.Length), false)
	deep := p.wall("limit of card thickness", at.thick, p.limit(at), at.down)
	top := at.edge + p.at(p.Layout.Card.Height)
	if p.Layout.Card.Mount == part.InSlot {
		top -= p.scene.Rise // the panel stays where it is when the plate moves
	}
	high := p.wall("limit of card height", at.high, top, false)
	g := p.Graphics
	if g == nil {
		return
	}
	b := Box{Name: "graphics card", Seat: build.Graphics, Kind: Part}
	b.Lo[X], b.Hi[X] = 0, p.at(g.Length)
	b.Lo[at.thick], b.Hi[at.thick] = at.span(0, p.at(g.Thickness))
	b.Lo[at.high], b.Hi[at.high] = at.edge, at.edge+p.at(g.Height)
	lacks := p.lacks
	card := p.put(b)
	plug := card
	if room := p.at(g.PlugRoom); g.PlugSide != "none" && (p.lacks || room > 0) {
		p.lacks = p.lacks || lacks
		plug = p.put(plugBox(b, g.PlugSide, at.high, room))
	}
	p.lacks = false
	whole := b // with what it needs beside it
	whole.Kind, whole.Whole = KeepOut, true
	if plug != card && g.PlugSide == "end" {
		whole.Name, whole.Hi[X] = "card with its plug", b.Hi[X]+p.at(g.PlugRoom)
		plug = p.put(whole)
		whole.Hi[X] = b.Hi[X]
		p.meet("graphics-length", "", plug, long, X, false)
		p.meet("graphics-height", "", card, high, at.high, false)
	} else {
		p.meet("graphics-length", "", card, long, X, false)
		p.meet("graphics-height", "", plug, high, at.high, false)
	}
	air := b
	air.Name, air.Kind, p.lacks = "air before the card's fans", KeepOut, lacks
	thick := p.at(g.Thickness)
	gap := p.at(p.Layout.Card.Breathing)
	air.Lo[at.thick], air.Hi[at.thick] = at.span(thick, thick+gap)
	if p.put(air) >= 0 {
		whole.Name = "card with its air"
		whole.Lo[at.thick], whole.Hi[at.thick] = at.span(0, thick+gap)
		card = p.put(whole)
	}
	p.meet("graphics-thickness", "", card, deep, at.thick, at.down)
}

// span is the stretch between two depths before the card's back.
func (c cardPlace) span(from, to unit.Length) (lo, hi unit.Length) {
	if c.down {
		return c.back - to, c.back - from
	}
	return c.back + from, c.back + to
}

// plugBox is the room of the plug and the first bend of its cable, at the far third of the card's top or at its end.
func plugBox(card Box, side string, high Axis, room unit.Length) Box {
	b := card
	b.Name, b.Kind = "plug and first bend", KeepOut
	if side == "end" {
		b.Lo[X], b.Hi[X] = card.Hi[X], card.Hi[X]+room
		return b
	}
	b.Lo[high], b.Hi[high] = card.Hi[high], card.Hi[high]+room
	b.Lo[X], b.Hi[X] = card.Hi[X]*6/10, card.Hi[X]*8/10
	return b
}

// cards places the add-in cards in their slots.
func (p *placer) cards() {
	if p.Layout == nil || p.Layout.Card.Mount != part.InSlot {
		return
	}
	long := -1
	for i, b := range p.scene.Boxes {
		if b.Name == "limit of card length" {
			long = i
		}
	}
	places := p.Assign(build.SetOf(build.Case, build.Board, build.Graphics, build.Cards, build.Boot, build.Cache, build.Archive)).Cards
	for i, c := range places {
		if c.Card == nil || c.Slot == nil {
			continue
		}
		set := 0
		for n := range p.Cards {
			if p.Cards[n].Card == c.Card {
				set = n
			}
		}
		y := slotAt(c.Slot.Place.Or(1)) + cardBack
		b := Box{Name: c.Card.Name, Seat: build.Cards, Kind: Part, Order: i, Line: p.line(build.Cards, set),
			Lo: Point{0, y - 16*mm, p.scene.Rise + cardSeated}, Hi: Point{p.at(c.Card.Length), y, p.scene.Rise + cardSeated + 111150}}
		p.meet("card-length", "", p.put(b), long, X, false)
	}
}
