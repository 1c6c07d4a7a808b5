package scene

import (
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// Board standards in the frame of the package. Sources: reference sheet of mechanical figures, sections 1.2 and 1.3; rows
// marked "memory" there are marked so here.
const (
	mm = unit.Millimetre

	holesToPanel = 12270 // row of holes A-B-C to the plane of the rear panel
	holesToRear  = 10160 // that row to the rear edge of the board
	slotOne      = 1570  // y of the centre line of slot 1
	slotPitch    = 20320
	cardSeated   = 3400 // slot edge of a card above the board's top face
	cardBack     = 3500 // a card's back from its slot's centre line: half its board and the solder side (memory), rounded up
	boardThick   = 1570
	standoff     = 6350
	moduleLong   = 133350 // length of a UDIMM
	moduleThick  = 8 * mm // with heat spreader (memory)
	moduleSeat   = 4 * mm // module height to top above the board (memory)
)

// What no sheet and no standard states, placed as is usual.
const (
	socketInSmall = 78 * mm   // processor socket from the rear panel, mini-ITX
	socketIn      = 98 * mm   // processor socket from the rear panel, larger boards
	behindPlate   = 18 * mm   // back of a card on a riser behind the plate, from the board's top face
	underFacing   = 50 * mm   // slot edge of a card that faces the panel, under the largest board
	wallDeep      = 2000 * mm // walls reach so far beyond their limit
	wallWide      = 1000 * mm // and so far to each side
	rearDeep      = 28 * mm   // from the rear panel, what rear sockets and a rear fan take
	sinkWide      = 18 * mm   // a heat-sink on the board
)

// placer puts the parts of one build in a scene.
type placer struct {
	*build.Build
	scene  Scene
	socket Point       // centre of the processor socket on the board's top face
	lo, hi unit.Length // slot-side and far edge of the board in y
	depth  unit.Length // front edge of the board in x
	inside Box         // the case, its outer size; empty where there is none
	front  unit.Length // x of the plane that front fans and radiators are screwed to
	slot   unit.Length // y of the centre line of the graphics card's slot
	noSlot bool        // the card finds no slot and is drawn at the first
	over   Box         // the room over the board, which coolers, cards and cables take
	lacks  bool        // a figure was missing since the last box
}

// Of puts a build in a scene. Boxes whose figures the sheets lack are left out and named in Unknown.
func Of(b *build.Build) Scene {
	p := &placer{Build: b}
	for _, l := range b.Lines() {
		if l.Seat < build.Screens {
			p.scene.Parts = append(p.scene.Parts, l)
		}
	}
	p.scene.Up, p.scene.Over = stance(b)
	p.scene.Rise = b.Shift()
	p.board()
	p.card()
	p.cards()
	p.front = p.frontPlane()
	p.shell()
	p.cooler()
	p.radiator()
	p.supply()
	p.fans()
	p.drives()
	return p.scene
}

// stance is which way the case of a build stands: with a board that lies flat, as a chimney with its rear panel on top where a
// card on a riser is longer than the case is deep, and else upright, where a board that faces the right panel stands on its head.
func stance(b *build.Build) (up Axis, over bool) {
	switch l := b.Layout; {
	case l == nil:
		return Y, false
	case l.Lies:
		return Z, false
	case l.Card.Mount == part.Behind && l.Card.Length.Or(0) > b.Case.Outer.Depth.Or(wallDeep):
		return X, false
	default:
		return Y, l.Right == "board"
	}
}

// at reads a length, noting where the sheet lacks it.
func (p *placer) at(f unit.Figure[unit.Length]) unit.Length {
	v, ok := f.Get()
	p.lacks = p.lacks || !ok
	return v
}

// put adds a box, or names it unknown where a figure was missing since the last. It returns its number, −1 where left out.
func (p *placer) put(b Box) int {
	if p.lacks {
		p.lacks = false
		p.scene.Unknown = append(p.scene.Unknown, b.Name)
		return -1
	}
	if b.Line == 0 {
		b.Line = p.line(b.Seat, 0)
	}
	if b.Kind == Wall {
		b.Line = -1
	}
	p.scene.Boxes = append(p.scene.Boxes, b)
	return len(p.scene.Boxes) - 1
}

// line is the n-th line of a seat in the list of parts; −1 where it has none.
func (p *placer) line(seat build.Seat, n int) int {
	for i, l := range p.scene.Parts {
		if l.Seat == seat {
			if n == 0 {
				return i
			}
			n--
		}
	}
	return -1
}

// wall adds what stands beyond a limit: everything from at on along the axis, or up to at where down.
func (p *placer) wall(name string, axis Axis, at unit.Length, down bool) int {
	b := Box{Name: name, Seat: build.Case, Kind: Wall}
	for i := range b.Lo {
		b.Lo[i], b.Hi[i] = -wallWide, wallWide
	}
	b.Lo[axis], b.Hi[axis] = at, at+wallDeep
	if down {
		b.Lo[axis], b.Hi[axis] = at-wallDeep, at
	}
	return p.put(b)
}

// meet notes two boxes that could meet.
func (p *placer) meet(rule, subject string, a, b int, axis Axis, down bool) {
	if a >= 0 && b >= 0 {
		p.scene.Meetings = append(p.scene.Meetings, Meeting{rule, subject, a, b, axis, down})
	}
}

// slotAt is y of the centre line of the slot at a bracket place.
func slotAt(place unit.Whole) unit.Length { return slotOne - slotPitch*unit.Length(place-1) }

// edges are the slot-side and the far edge of a board form in y.
func edges(form part.BoardForm) (lo, hi unit.Length) {
	switch form {
	case part.ATX:
		return -140970, 163830
	case part.MicroATX:
		return -80010, 163830
	}
	return -6350, 163650
}

// board places the board with its slots, heat-sinks and memory.
func (p *placer) board() {
	p.slot = slotAt(1)
	p.lo, p.hi = edges(part.ATX)
	p.socket = Point{socketIn, 90 * mm, p.scene.Rise}
	p.scene.Socket = p.socket
	if p.Board == nil {
		return
	}
	rise := p.scene.Rise
	p.scene.Form = string(p.Board.Form)
	p.lo, p.hi = edges(p.Board.Form)
	rear := unit.Length(holesToPanel - holesToRear)
	p.depth = rear + p.at(p.Board.Depth)
	p.put(Box{Name: "main board", Seat: build.Board, Kind: Board, Lo: Point{rear, p.lo, rise - boardThick}, Hi: Point{p.depth, p.hi, rise}})
	if p.Layout != nil {
		p.over = Box{Kind: KeepOut, Lo: Point{0, p.lo, rise}, Hi: Point{p.depth, p.hi, p.panel()}}
		p.put(Box{Name: "board plate", Seat: build.Case, Kind: Board, Drawn: true,
			Lo: Point{0, p.lo - 3*mm, rise - boardThick - standoff - 1500}, Hi: Point{p.depth + 4*mm, p.hi + 3*mm, rise - boardThick - standoff}})
	}

	if s := p.Assign(build.SetOf(build.Case, build.Board, build.Graphics)); len(s.Cards) > 0 {
		if p.noSlot = s.Cards[0].Slot == nil; !p.noSlot {
			p.slot = slotAt(s.Cards[0].Slot.Place.Or(1))
		}
	}
	p.socket[X] = socketIn
	if p.Board.Form == part.MiniITX {
		p.socket[X] = socketInSmall
	}
	first := unit.Whole(1)
	if len(p.Board.Cards) > 0 {
		first = p.Board.Cards[0].Place.Or(1)
	}
	p.socket[Y] = slotAt(first) + p.at(p.Board.SocketAt.Card)
	if p.lacks {
		p.lacks = false
		p.socket[Y] = p.hi - p.Board.SocketAt.TopEdge.Or(75*mm)
	}
	p.scene.Socket = p.socket
	if p.Processor != nil {
		p.put(Box{Name: "processor", Seat: build.Processor, Kind: Part, Drawn: true,
			Lo: Point{p.socket[X] - 20*mm, p.socket[Y] - 20*mm, rise}, Hi: Point{p.socket[X] + 20*mm, p.socket[Y] + 20*mm, rise + 7*mm}})
	}
	p.slots()
	p.put(Box{Name: "rear sockets", Seat: build.Board, Kind: Part, Drawn: true,
		Lo: Point{0, 12 * mm, rise}, Hi: Point{rearDeep - mm, 162 * mm, rise + 36*mm}})
	p.memory()
}

// slots draws the card slots of the board.
func (p *placer) slots() {
	for i := range p.Board.Cards {
		s := &p.Board.Cards[i]
		long := map[unit.Whole]unit.Length{1: 25 * mm, 4: 39 * mm, 8: 56 * mm}[s.Size.Or(16)]
		if long == 0 {
			long = 89 * mm
		}
		at := slotAt(s.Place.Or(1))
		x := unit.Length(holesToPanel+46940) - 12*mm
		p.put(Box{Name: s.ID, Seat: build.Board, Kind: Part,
			Lo: Point{x, at - 3750, p.scene.Rise}, Hi: Point{x + long, at + 3750, p.scene.Rise + 11250}})
	}
}

// topEdge is y of the board's edge that lies towards the top of a standing case.
func (p *placer) topEdge() unit.Length {
	if p.scene.Over {
		return p.lo
	}
	return p.hi
}

// memory places the modules in the slots the board's population order gives them, up to the board's upper edge.
func (p *placer) memory() {
	used, ok := p.MemorySlots()
	if p.Memory == nil {
		return
	}
	if !ok {
		p.scene.Unknown = append(p.scene.Unknown, "memory")
		return
	}
	for i, n := range used {
		x := p.socket[X] + p.at(p.Board.SocketAt.Memory)
		if n > 1 {
			x += p.at(p.Board.SocketAt.Pitch) * unit.Length(n-1)
		}
		y := p.hi - moduleLong
		if p.scene.Over && p.Board.Form == part.MiniITX && p.Layout.Card.Mount != part.InSlot {
			y = p.lo // on the smallest boards modules reach both edges, near enough
		}
		p.put(Box{Name: "memory", Seat: build.Memory, Kind: Part, Order: i,
			Lo: Point{x - moduleThick/2, y, p.scene.Rise},
			Hi: Point{x + moduleThick/2, y + moduleLong, p.scene.Rise + p.at(p.Memory.Height) + moduleSeat}})
	}
}
