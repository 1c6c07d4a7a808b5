package build

import (
	"slipfit/core/part"
	"slipfit/core/unit"
)

// Option is one way to fill a seat: an article, how many, and the mounting decisions that go with it. The zero Option
// of a seat leaves it empty.
type Option struct {
	Seat   Seat
	Part   interface{ Common() *part.Article } // nil leaves the seat empty
	Count  int                                 // kits, drives, fans, cards, screens; 1 elsewhere
	Layout *part.Layout                        // for Case
	Plate  int                                 // for Case
	Face   part.Face                           // for liquid coolers and fans
}

// Price of the option before tax.
func (o Option) Price() unit.Money {
	if o.Part == nil {
		return 0
	}
	n := o.Count
	if f, ok := o.Part.(*part.Fan); ok {
		n = FanSet{Fan: f, Count: o.Count}.Packs()
	}
	return o.Part.Common().Price * unit.Money(n)
}

// ID of the option's article, empty where it leaves the seat empty.
func (o Option) ID() string {
	if o.Part == nil {
		return ""
	}
	return o.Part.Common().ID
}

// Set fills the option's seat with it, in place of whatever was there.
func (b *Build) Set(o Option) {
	switch o.Seat {
	case Case:
		b.Case, _ = o.Part.(*part.Case)
		b.Layout, b.Plate = o.Layout, o.Plate
	case Board:
		b.Board, _ = o.Part.(*part.Board)
	case Processor:
		b.Processor, _ = o.Part.(*part.Processor)
	case Cooler:
		b.Cooler, _ = o.Part.(*part.Cooler)
		b.Face = o.Face
	case Memory:
		b.Memory, _ = o.Part.(*part.Memory)
		b.Kits = o.Count
	case Graphics:
		b.Graphics, _ = o.Part.(*part.Graphics)
	case Supply:
		b.Supply, _ = o.Part.(*part.Supply)
	case Boot:
		b.Boot = storage(o)
	case Cache:
		b.Cache = storage(o)
	case Archive:
		b.Archive = storage(o)
	case Fans:
		b.Fans = nil
		if f, ok := o.Part.(*part.Fan); ok {
			b.Fans = []FanSet{{f, o.Count, o.Face}}
		}
	case Cards:
		b.Cards = nil
		if c, ok := o.Part.(*part.Card); ok {
			b.Cards = []CardSet{{c, o.Count}}
		}
	case Screens:
		b.Screens = nil
		if m, ok := o.Part.(*part.Monitor); ok {
			b.Screens = []ScreenSet{{m, o.Count}}
		}
	case UPS:
		b.UPS, _ = o.Part.(*part.UPS)
	case Services:
		b.Services = nil
		if s, ok := o.Part.(*part.Service); ok {
			b.Services = []ServiceSet{{s, o.Count}}
		}
	}
}

func storage(o Option) Storage {
	d, _ := o.Part.(*part.Drive)
	if d == nil {
		return Storage{}
	}
	return Storage{d, o.Count}
}

// Clear empties a seat.
func (b *Build) Clear(s Seat) { b.Set(Option{Seat: s}) }

// CaseOptions lists the ways to use a case: each layout, each position of its plate.
func CaseOptions(c *part.Case) []Option {
	var list []Option
	for i := range c.Layouts {
		l := &c.Layouts[i]
		steps := 0
		if l.Plate != nil {
			steps = int(l.Plate.Steps)
		}
		for plate := 0; plate <= steps; plate++ {
			list = append(list, Option{Seat: Case, Part: c, Count: 1, Layout: l, Plate: plate})
		}
	}
	return list
}

// CoolerOptions lists the ways to hang a cooler in a layout: one for an air cooler, each face with a radiator mount for
// a liquid one. Where the layout has no mount the radiator hangs nowhere, which the rules then say.
func CoolerOptions(c *part.Cooler, l *part.Layout) []Option {
	if c.Liquid == nil || l == nil || len(l.Radiators) == 0 {
		return []Option{{Seat: Cooler, Part: c, Count: 1}}
	}
	var list []Option
	for _, m := range l.Radiators {
		list = append(list, Option{Seat: Cooler, Part: c, Count: 1, Face: m.Face})
	}
	return list
}

// FanOptions lists the ways to add a fan to a case with some places for fans: on each face whose place has its holes, as many as come in
// a pack, or as there is room for, and each number from there to what there is room for. Where no place has its holes it is a pack
// on the first face, or on none, which the rules then say.
func FanOptions(f *part.Fan, places []part.FanPlace) []Option {
	pack := int(f.Pack.Or(1))
	var list []Option
	for i := range places {
		p := &places[i]
		if room := int(p.Fans.Or(1)); p.Takes(f.Holes.Or(0)) {
			for n := min(pack, room); n <= room; n++ {
				list = append(list, Option{Seat: Fans, Part: f, Count: n, Face: p.Face})
			}
		}
	}
	if list == nil {
		none := Option{Seat: Fans, Part: f, Count: pack}
		if len(places) > 0 {
			none.Face = places[0].Face
		}
		return []Option{none}
	}
	return list
}

// Shelf lists the articles of a stock that a seat takes, in the stock's order.
func Shelf(stock *part.Stock, s Seat) []interface{ Common() *part.Article } {
	switch s {
	case Case:
		return shelf(stock.Cases)
	case Board:
		return shelf(stock.Boards)
	case Processor:
		return shelf(stock.Processors)
	case Cooler:
		return shelf(stock.Coolers)
	case Memory:
		return shelf(stock.Memory)
	case Graphics:
		return shelf(stock.Graphics)
	case Supply:
		return shelf(stock.Supplies)
	case Boot, Cache, Archive:
		return shelf(stock.Drives)
	case Fans:
		return shelf(stock.Fans)
	case Cards:
		return shelf(stock.Cards)
	case Screens:
		return shelf(stock.Monitors)
	case UPS:
		return shelf(stock.UPS)
	}
	return shelf(stock.Services)
}

func shelf[P interface{ Common() *part.Article }](parts []P) []interface{ Common() *part.Article } {
	list := make([]interface{ Common() *part.Article }, len(parts))
	for i, p := range parts {
		list[i] = p
	}
	return list
}
