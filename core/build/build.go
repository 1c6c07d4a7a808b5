package build

import (
	"slipfit/core/part"
	"slipfit/core/unit"
)

// Build is parts in seats. An empty seat is nil. It holds pointers into a part.Stock and changes none of it.
type Build struct {
	Title string

	Case   *part.Case
	Layout *part.Layout // one of the case's; nil only where Case is nil
	Plate  int          // steps the board plate stands from position 0

	Board     *part.Board
	Processor *part.Processor
	Cooler    *part.Cooler
	Face      part.Face // where a liquid cooler's radiator hangs; empty for air
	Memory    *part.Memory
	Kits      int // kits of memory
	Graphics  *part.Graphics
	Supply    *part.Supply
	Boot      Storage
	Cache     Storage
	Archive   Storage
	Fans      []FanSet // added to those the case brings
	Cards     []CardSet
	Screens   []ScreenSet // screens bought with the machine
	UPS       *part.UPS
	Services  []ServiceSet

	Owned Set // seats filled with what the customer owns already; their price is nought
}

// Storage is equal drives for one tier; Count 0 is none.
type Storage struct {
	Drive *part.Drive
	Count int
}

// FanSet is equal fans on one face.
type FanSet struct {
	Fan   *part.Fan
	Count int // fans, not packs
	Face  part.Face
}

// CardSet is equal add-in cards or adapters.
type CardSet struct {
	Card  *part.Card
	Count int
}

// ScreenSet is equal screens.
type ScreenSet struct {
	Monitor *part.Monitor
	Count   int
}

// ServiceSet is a service or sundry, so many times.
type ServiceSet struct {
	Service *part.Service
	Count   int
}

// Tiers are the storage seats with what they hold, empty ones left out.
func (b *Build) Tiers() []Tier {
	list := make([]Tier, 0, 3)
	for _, t := range [...]Tier{{Boot, b.Boot}, {Cache, b.Cache}, {Archive, b.Archive}} {
		if t.Drive != nil {
			list = append(list, t)
		}
	}
	return list
}

// Tier is a storage seat and what it holds.
type Tier struct {
	Seat Seat
	Storage
}

// Filled reports whether a seat holds anything.
func (b *Build) Filled(s Seat) bool {
	switch s {
	case Case:
		return b.Case != nil
	case Board:
		return b.Board != nil
	case Processor:
		return b.Processor != nil
	case Cooler:
		return b.Cooler != nil
	case Memory:
		return b.Memory != nil
	case Graphics:
		return b.Graphics != nil
	case Supply:
		return b.Supply != nil
	case Boot:
		return b.Boot.Drive != nil
	case Cache:
		return b.Cache.Drive != nil
	case Archive:
		return b.Archive.Drive != nil
	case Fans:
		return len(b.Fans) > 0
	case Cards:
		return len(b.Cards) > 0
	case Screens:
		return len(b.Screens) > 0
	case UPS:
		return b.UPS != nil
	case Services:
		return len(b.Services) > 0
	}
	return false
}

// Line is one article of a build with its seat and number.
type Line struct {
	Seat    Seat
	Article *part.Article
	Count   int // articles bought: packs of fans, kits of memory
	Owned   bool
}

// Price of the line, nought where the customer owns the part.
func (l Line) Price() unit.Money {
	if l.Owned {
		return 0
	}
	return l.Article.Price * unit.Money(l.Count)
}

// Lines lists every article of the build in seat order.
func (b *Build) Lines() []Line {
	lines := make([]Line, 0, Seats)
	add := func(s Seat, a *part.Article, n int) {
		lines = append(lines, Line{s, a, n, b.Owned.Has(s)})
	}
	if b.Case != nil {
		add(Case, &b.Case.Article, 1)
	}
	if b.Board != nil {
		add(Board, &b.Board.Article, 1)
	}
	if b.Processor != nil {
		add(Processor, &b.Processor.Article, 1)
	}
	if b.Cooler != nil {
		add(Cooler, &b.Cooler.Article, 1)
	}
	if b.Memory != nil {
		add(Memory, &b.Memory.Article, b.Kits)
	}
	if b.Graphics != nil {
		add(Graphics, &b.Graphics.Article, 1)
	}
	if b.Supply != nil {
		add(Supply, &b.Supply.Article, 1)
	}
	for _, t := range b.Tiers() {
		add(t.Seat, &t.Drive.Article, t.Count)
	}
	for _, f := range b.Fans {
		add(Fans, &f.Fan.Article, f.Packs())
	}
	for _, c := range b.Cards {
		add(Cards, &c.Card.Article, c.Count)
	}
	for _, s := range b.Screens {
		add(Screens, &s.Monitor.Article, s.Count)
	}
	if b.UPS != nil {
		add(UPS, &b.UPS.Article, 1)
	}
	for _, s := range b.Services {
		add(Services, &s.Service.Article, s.Count)
	}
	return lines
}

// Packs is how many packs the fans of a set come in. A pack whose size is not stated counts as one fan.
func (f FanSet) Packs() int {
	pack := int(f.Fan.Pack.Or(1))
	return (f.Count + pack - 1) / pack
}

// Price of everything in the build, before tax.
func (b *Build) Price() unit.Money {
	var sum unit.Money
	for _, l := range b.Lines() {
		sum += l.Price()
	}
	return sum
}

// Shift is how far the board plate stands from position 0: what the card's side gains and the cooler's side loses.
func (b *Build) Shift() unit.Length {
	if b.Layout == nil || b.Layout.Plate == nil {
		return 0
	}
	return b.Layout.Plate.Step * unit.Length(b.Plate)
}

// Mount is the place that takes the cooler's radiator; nil for air coolers and where the layout has none on that face.
func (b *Build) Mount() *part.RadiatorMount {
	if b.Layout == nil || b.Cooler == nil || b.Cooler.Liquid == nil {
		return nil
	}
	for i := range b.Layout.Radiators {
		if m := &b.Layout.Radiators[i]; m.Face == b.Face {
			return m
		}
	}
	return nil
}
