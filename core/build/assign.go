package build

import (
	"slipfit/core/part"
	"slipfit/core/unit"
)

// SlotPitch is the distance between neighbouring card slots: 0.8 in. Source: drawn in public CAD models of the microATX
// board, and stated there.
const SlotPitch = 20_320 * unit.Millimetre / 1000

// Assignment is which card sits in which slot and which drive in which socket or port of the board: the most devices
// placed, then the fewest whose place rests on a figure no sheet states, then the least bandwidth lost, then the lowest
// socket for the first device, for the second, and so on. It is exact and unique.
type Assignment struct {
	Cards  []CardPlace  // the graphics card, then the add-in cards in order, one by one
	Drives []DrivePlace // boot, cache, archive, drive by drive
	Off    []string     // slots, sockets and ports that those in use switch off, in board order
	Ports  int          // SATA ports live, used or not
}

// CardPlace is where one card sits.
type CardPlace struct {
	Seat     Seat           // Graphics or Cards
	Graphics *part.Graphics // where Seat is Graphics
	Card     *part.Card     // where Seat is Cards
	Slot     *part.Slot     // nil where no slot is left for it
	Lanes    unit.Whole     // lanes the slot keeps beside the others in use
	State    Carriage
}

// DrivePlace is where one drive connects.
type DrivePlace struct {
	Seat   Seat
	Drive  *part.Drive
	Socket *part.M2Slot // for modules; nil where none is left
	Port   int          // for drives on a cable: the SATA port, counted from 1; 0 where none is left
	Lanes  unit.Whole   // lanes the socket keeps beside the others in use
	State  Carriage
}

// Carriage is whether something goes where it is put.
type Carriage uint8

// Carriages, worst first.
const (
	Out    Carriage = iota // it does not go there, or nowhere at all
	Unsure                 // a figure is missing
	In                     // it goes
)

// device is one thing to be placed: a card or an M.2 module.
type device struct {
	seat     Seat
	graphics *part.Graphics
	card     *part.Card
	drive    *part.Drive
	like     bool // the same article as the device before it
}

// assigner is one search. Sockets are numbered card slots first, then M.2 sockets, then SATA ports.
type assigner struct {
	b        *Build
	space    *part.CardSpace // nil where the case is not looked at
	devices  []device
	slots    int
	sockets  int // slots and M.2 sockets
	onCable  int // drives that need a SATA port
	ports    int
	portsIn  Carriage
	off      [][2]uint64 // by socket, what it switches off when used otherwise than by, and by, a SATA module
	now      []int       // socket of each device, −1 for none
	best     []int
	bestCost int64
}

// usual is how many devices a build has hardly more than.
const usual = 12

const (
	costMissing = 1 << 44
	costUnsure  = 1 << 34
	costLack    = 1 << 33 // lacks stay under it
)

// Assign places cards and drives, looking at the board and at those seats of the set alone: Case for what hangs in the
// slots and how many brackets there are, Graphics, Cards, Boot, Cache, Archive.
func (b *Build) Assign(of Set) Assignment {
	if b.Board == nil {
		return Assignment{}
	}
	a := assigner{b: b, slots: len(b.Board.Cards), sockets: len(b.Board.Cards) + len(b.Board.M2), portsIn: In}
	if of.Has(Case) && b.Layout != nil {
		a.space = &b.Layout.Card
	}
	ports, known := b.Board.SATA.Get()
	if a.ports = int(ports); !known {
		a.portsIn = Unsure
	}
	var devices [usual]device
	var off [2 * usual][2]uint64
	var places [2 * usual]int
	a.devices, a.onCable = b.devices(of, devices[:0])
	a.off = a.sharing(off[:0])
	n := len(a.devices)
	a.now = append(places[:0], make([]int, 2*n)...)
	a.now, a.best = a.now[:n], a.now[n:]
	a.bestCost = 1 << 62
	a.place(0, 0, 0, 0, 0)
	return a.read(of)
}

// devices lists what is to be placed, and counts the drives on a cable.
func (b *Build) devices(of Set, list []device) (all []device, onCable int) {
	if of.Has(Graphics) && b.Graphics != nil {
		list = append(list, device{seat: Graphics, graphics: b.Graphics})
	}
	if of.Has(Cards) {
		for _, set := range b.Cards {
			if set.Card.Slot.Or(1) == 0 {
				continue
			}
			for i := range set.Count {
				list = append(list, device{seat: Cards, card: set.Card, like: i > 0})
			}
		}
	}
	for _, t := range b.Tiers() {
		switch {
		case !of.Has(t.Seat):
		case t.Drive.Form != part.FormM2:
			onCable += t.Count
		default:
			for i := range t.Count {
				n := len(list)
				list = append(list, device{seat: t.Seat, drive: t.Drive, like: i > 0 || n > 0 && list[n-1].drive == t.Drive})
			}
		}
	}
	return list, onCable
}

// sharing lists what each socket switches off.
func (a *assigner) sharing(off [][2]uint64) [][2]uint64 {
	for i := range a.sockets {
		var by [2]uint64
		for _, s := range a.shares(i) {
			if s.Lanes > 0 {
				continue
			}
			bit := a.bit(s.With)
			if s.Only != part.BusSATA {
				by[0] |= bit
			}
			if s.Only != part.BusPCIe {
				by[1] |= bit
			}
		}
		off = append(off, by)
	}
	return off
}

func (a *assigner) shares(socket int) []part.Sharing {
	if socket < a.slots {
		return a.b.Board.Cards[socket].Shares
	}
	return a.b.Board.M2[socket-a.slots].Shares
}

// bit is the socket or port of a name, none where the board has no such thing.
func (a *assigner) bit(name string) uint64 {
	for i := range a.b.Board.Cards {
		if a.b.Board.Cards[i].ID == name {
			return 1 << i
		}
	}
	for i := range a.b.Board.M2 {
		if a.b.Board.M2[i].ID == name {
			return 1 << (a.slots + i)
		}
	}
	for i := range a.ports {
		if portName(i+1) == name {
			return 1 << (a.sockets + i)
		}
	}
	return 0
}

// place tries every socket for device d and those after it. used, off and covered are bits of sockets; cost is of the
// devices placed so far, lacks left out.
func (a *assigner) place(d int, used, off, covered uint64, cost int64) {
	if cost >= a.bestCost {
		return
	}
	if d == len(a.devices) {
		a.weigh(off, cost)
		return
	}
	dev := &a.devices[d]
	from, to := a.reach(dev)
	if dev.like {
		if from = max(from, a.now[d-1]+1); a.now[d-1] < 0 {
			from = to
		}
	}
	for s := from; s < to; s++ {
		if (used|off|covered)&(1<<s) != 0 || a.switchesOff(dev, s)&used != 0 {
			continue
		}
		state, hides := a.fits(dev, s)
		if state == Out || hides&used != 0 {
			continue
		}
		more := int64(0)
		if state == Unsure {
			more = costUnsure
		}
		a.now[d] = s
		a.place(d+1, used|1<<s, off|a.switchesOff(dev, s), covered|hides, cost+more)
	}
	a.now[d] = -1
	a.place(d+1, used, off, covered, cost+costMissing)
}

// reach is the range of sockets a device could go into.
func (a *assigner) reach(d *device) (from, to int) {
	if d.drive != nil {
		return a.slots, a.sockets
	}
	return 0, a.slots
}

// weigh adds what the drives on cables and the lanes left come to, and keeps the placing where it is the best so far.
func (a *assigner) weigh(off uint64, cost int64) {
	live := a.live(off)
	if a.portsIn == Unsure {
		cost += costUnsure * int64(min(a.onCable, 1))
	} else {
		cost += costMissing * int64(max(0, a.onCable-live))
	}
	var lack int64
	for d, s := range a.now {
		if s >= 0 {
			lack += a.lack(&a.devices[d], s)
		}
	}
	if cost += min(lack, costLack); cost < a.bestCost {
		a.bestCost = cost
		copy(a.best, a.now)
	}
}

// live is the number of SATA ports not switched off.
func (a *assigner) live(off uint64) int {
	n := a.ports
	for i := range a.ports {
		if off&(1<<(a.sockets+i)) != 0 {
			n--
		}
	}
	return n
}

// read turns the best placing into places.
func (a *assigner) read(of Set) Assignment {
	var out Assignment
	var off uint64
	for d, s := range a.best {
		if s >= 0 {
			off |= a.switchesOff(&a.devices[d], s)
		}
	}
	next := 0
	if n := len(a.devices) + a.onCable; n > 0 {
		out.Cards, out.Drives = make([]CardPlace, 0, len(a.devices)), make([]DrivePlace, 0, n)
	}
	for ; next < len(a.devices) && a.devices[next].drive == nil; next++ {
		d, s := &a.devices[next], a.best[next]
		p := CardPlace{Seat: d.seat, Graphics: d.graphics, Card: d.card}
		if s >= 0 {
			p.Slot, p.Lanes = &a.b.Board.Cards[s], a.lanes(s, a.best)
			p.State, _ = a.fits(d, s)
		}
		out.Cards = append(out.Cards, p)
	}
	port := 0
	for _, t := range a.b.Tiers() {
		if !of.Has(t.Seat) {
			continue
		}
		for range t.Count {
			p := DrivePlace{Seat: t.Seat, Drive: t.Drive}
			if t.Drive.Form == part.FormM2 {
				if s := a.best[next]; s >= 0 {
					p.Socket, p.Lanes = &a.b.Board.M2[s-a.slots], a.lanes(s, a.best)
					p.State, _ = ModuleFits(t.Drive, p.Socket)
				}
				next++
			} else {
				p.Port, p.State = a.nextPort(&port, off)
			}
			out.Drives = append(out.Drives, p)
		}
	}
	out.Ports = a.live(off)
	out.Off = a.names(off)
	return out
}

// nextPort is the next live SATA port after port.
func (a *assigner) nextPort(port *int, off uint64) (int, Carriage) {
	if a.portsIn == Unsure {
		return 0, Unsure
	}
	for *port < a.ports {
		*port++
		if off&(1<<(a.sockets+*port-1)) == 0 {
			return *port, In
		}
	}
	return 0, Out
}

// names lists what bits of sockets and ports stand for.
func (a *assigner) names(bits uint64) []string {
	var list []string
	for i := range a.sockets + a.ports {
		switch {
		case bits&(1<<i) == 0:
		case i < a.slots:
			list = append(list, a.b.Board.Cards[i].ID)
		case i < a.sockets:
			list = append(list, a.b.Board.M2[i-a.slots].ID)
		default:
			list = append(list, portName(i-a.sockets+1))
		}
	}
	return list
}

var portNames = [...]string{"sata1", "sata2", "sata3", "sata4", "sata5", "sata6", "sata7", "sata8", "sata9", "sata10", "sata11", "sata12"}

// portName is the name of the SATA port of a number from 1 to 12, the most a board has.
func portName(n int) string { return portNames[n-1] }
