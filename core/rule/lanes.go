package rule

import (
	"fmt"

	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/link"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// Lanes is the bandwidth of the slot or socket that each card and module gets against what it asks.
var Lanes = Rule{
	ID:    "lanes",
	Group: Mate,
	Title: "Slots and sockets starve nothing that sits in them",
	Doc: `have = data rate of the link a card or module gets: the lesser of its own lanes and those its slot keeps beside the others in
	use, at the least generation of its own, slot, processor and riser, MB/s each way
need = graphics card: half of what it is wired for, under which work starts to feel it; drive: its own reading speed; network card:
	its link rate; other cards: what they are wired for
Cards and modules are placed together, over every way the board allows: most placed, then least bandwidth lost. A graphics card or
	network card under its need is a clash. A drive or other card that is slower there works all the same, so that it only advises, unless
	the brief asks for more speed of that drive than the link carries. When short: another slot, a board with more lanes, or a drive on
	SATA that does not share.`,
	Source: "data rate of lanes: PCI Express Base specification, line code only; half the lanes of a graphics card: common practice; sharing: the board's manual",
	Reads:  []build.Seat{build.Case, build.Board, build.Processor, build.Graphics, build.Boot, build.Cache, build.Archive, build.Cards},
	Early: []Early{
		{Seats: []build.Seat{build.Board, build.Processor, build.Graphics}, Fails: starves},
		{Seats: []build.Seat{build.Case, build.Board, build.Processor, build.Graphics}},
		{Seats: []build.Seat{build.Case, build.Board, build.Processor, build.Graphics, build.Cards}},
		{Seats: []build.Seat{build.Case, build.Board, build.Processor, build.Graphics, build.Cards, build.Boot}},
		{Seats: []build.Seat{build.Case, build.Board, build.Processor, build.Graphics, build.Cards, build.Boot, build.Cache}},
		{Seats: []build.Seat{build.Case, build.Board, build.Processor, build.Boot}},
		{Seats: []build.Seat{build.Case, build.Board, build.Processor, build.Cache}},
		{Seats: []build.Seat{build.Case, build.Board, build.Processor, build.Archive}},
	},
	Steps: []Steps{{"Drive.Read", readSteps}},
	Check: func(v *View) []Margin {
		if !v.both(build.Case, build.Board, build.Processor) {
			return nil
		}
		placing := v.placing()
		for i := range placing.Cards {
			p := &placing.Cards[i]
			switch {
			case p.Slot == nil:
				if alone := v.Assign(build.SetOf(build.Case, build.Graphics, build.Cards)); alone.Cards[i].Slot != nil {
					unplaced(v, cardName(p), "slot") // else the rule cards tells
				}
			case p.Seat == build.Graphics:
				graphicsLane(v, p)
			default:
				cardLane(v, p)
			}
		}
		for i := range placing.Drives {
			p := &placing.Drives[i]
			switch {
			case p.Drive.Form != part.FormM2:
			case p.Socket == nil:
				if alone := v.Assign(build.SetOf(build.Boot, build.Cache, build.Archive)); alone.Drives[i].Socket != nil {
					unplaced(v, p.Seat.Title(), "socket") // else the rule drive-slots tells
				}
			case p.Drive.Bus == part.BusPCIe:
				driveLane(v, p)
			}
		}
		return v.margins
	},
}

// starves reports a graphics card that no slot of a board serves, whatever else is in use and whatever the case is.
func starves(v *View) bool {
	if !v.both(build.Board, build.Processor, build.Graphics) {
		return false
	}
	for i := range v.Board.Cards {
		s := &v.Board.Cards[i]
		v.margins, v.missing = v.margins[:0], v.missing[:0]
		graphicsLane(v, &build.CardPlace{Graphics: v.Graphics, Slot: s, Lanes: build.SlotLanes(s)})
		if v.margins[0].Passes() {
			return false
		}
	}
	return len(v.Board.Cards) > 0
}

// cardName is what a margin calls a card.
func cardName(p *build.CardPlace) string {
	if p.Card != nil {
		return p.Card.Name
	}
	return build.Graphics.Title()
}

// unplaced finds that something has no place beside the others.
func unplaced(v *View, name, place string) {
	v.find(name, unit.Throughput(0).Q(), unit.Throughput(1).Q(), func() string {
		return "no " + place + " is left for " + name + " beside the other cards and drives: those in use fill it or switch it off"
	})
}

// laneRate is what a link carries each way, in MB/s rounded down; 0 where a figure is missing or no standard has such a link.
func laneRate(generation unit.Release, lanes unit.Whole) unit.Throughput {
	for _, n := range [...]unit.Whole{16, 8, 4, 2, 1} {
		if lanes >= n {
			perSecond, err := link.ExpressBytePerS(int(generation/1000), int(n))
			if err != nil {
				return 0
			}
			return unit.Throughput(perSecond / 1_000_000)
		}
	}
	return 0
}

// readSteps is what a drive's speed is held against: the rates of all links, one of which nothing is known included, and what the
// brief asks.
func readSteps(n *brief.Needs) []int64 {
	list := []int64{1}
	for generation := unit.Release(1000); laneRate(generation, 1) > 0; generation += 1000 {
		for lanes := unit.Whole(1); lanes <= 16; lanes *= 2 {
			list = append(list, int64(laneRate(generation, lanes))+1)
		}
	}
	for _, s := range [...]build.Seat{build.Boot, build.Cache, build.Archive} {
		list = append(list, n.By[askedSpeed(s)].Floor)
	}
	return list
}

func graphicsLane(v *View, p *build.CardPlace) {
	card := p.Graphics
	generation := figure(v, card.PCIe, &card.Article, "pcie")
	wired := figure(v, card.Lanes, &card.Article, "lanes")
	lanes := slotLanes(v, p)
	runs := min(generation, figure(v, p.Slot.PCIe, &v.Board.Article, "slots.pcie"), figure(v, v.Processor.PCIe, &v.Processor.Article, "pcie"))
	if v.Case != nil && v.Layout.Card.Mount != part.InSlot {
		runs = min(runs, figure(v, v.Layout.Card.Riser, &v.Case.Article, "card.riser_pcie"))
	}
	have, full := laneRate(runs, min(wired, lanes)), laneRate(generation, wired)
	slot, got := p.Slot.ID, min(wired, lanes)
	v.find(build.Graphics.Title(), have.Q(), (full / 2).Q(), func() string {
		return fmt.Sprintf("%s gets %s of generation %d in %s, %s of the %s it is wired for", card.Name, plural(got, "lane"), runs/1000, slot, have.Q(), full.Q())
	})
}

// slotLanes is the lanes that a card's slot keeps, noting where the sheet does not say.
func slotLanes(v *View, p *build.CardPlace) unit.Whole {
	figure(v, p.Slot.Lanes, &v.Board.Article, "slots.lanes")
	return p.Lanes
}

func cardLane(v *View, p *build.CardPlace) {
	card := p.Card
	wired := figure(v, card.Slot, &card.Article, "slot_lanes")
	generation := figure(v, card.PCIe, &card.Article, "pcie")
	lanes := min(wired, slotLanes(v, p))
	runs := min(generation, figure(v, p.Slot.PCIe, &v.Board.Article, "slots.pcie"))
	have, need := laneRate(runs, lanes), laneRate(generation, wired)
	slot := p.Slot.ID
	if card.Network == nil {
		v.advise(card.Name, have.Q(), need.Q(), func() string {
			return fmt.Sprintf("%s gets %s in %s, and is wired for %s", card.Name, have.Q(), slot, need.Q())
		})
		return
	}
	need = unit.Throughput((figure(v, card.Network.Rate, &card.Article, "network.rate_mbit_s") + 7) / 8)
	v.find(card.Name, have.Q(), need.Q(), func() string {
		return fmt.Sprintf("%s gets %s in %s, and its network brings %s", card.Name, have.Q(), slot, need.Q())
	})
}

func driveLane(v *View, p *build.DrivePlace) {
	drive := p.Drive
	figure(v, p.Socket.Lanes, &v.Board.Article, "m2.lanes")
	lanes := min(figure(v, drive.Lanes, &drive.Article, "lanes"), p.Lanes)
	runs := min(figure(v, drive.PCIe, &drive.Article, "pcie"), figure(v, p.Socket.PCIe, &v.Board.Article, "m2.pcie"))
	have := laneRate(runs, lanes)
	own := figure(v, drive.Read, &drive.Article, "read_mb_s")
	socket := p.Socket.ID
	why := func() string {
		return fmt.Sprintf("%s gets %s of generation %d in %s, %s, and reads %s", drive.Name, plural(lanes, "lane"), runs/1000, socket, have.Q(), own.Q())
	}
	asked := v.Needs.By[askedSpeed(p.Seat)].Floor
	switch {
	case have >= own || len(v.missing) > 0:
		v.find(p.Seat.Title(), have.Q(), own.Q(), why)
	case int64(have) < asked && int64(own) >= asked:
		v.find(p.Seat.Title(), have.Q(), unit.Throughput(asked).Q(), func() string { return why() + "; the brief asks more than the link carries" })
	default:
		v.advise(p.Seat.Title(), have.Q(), own.Q(), why)
	}
}

// askedSpeed is the speed a brief asks of a storage seat.
func askedSpeed(s build.Seat) brief.Resource {
	switch s {
	case build.Cache:
		return brief.CacheWrite
	case build.Archive:
		return brief.ArchiveWrite
	}
	return brief.BootRead
}
