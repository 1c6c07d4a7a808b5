package build

import (
	"errors"
	"fmt"
	"strings"

	"slipfit/core/format"
	"slipfit/core/part"
)

// Kind and Version of build files.
const (
	Kind    = "slipfit-build"
	Version = 1
)

// File is a build as it is kept: part ids in seats. It is what plan writes and prove, sheet and the page read.
type File struct {
	format.Head
	Title  string   `json:"title,omitempty" doc:"What the job is called."`
	Layout string   `json:"layout,omitempty" doc:"Layout of the case; may be left out where it has one only."`
	Plate  int      `json:"plate,omitempty" range:"0..10" doc:"Steps the board plate stands from position 0."`
	Seats  []Filled `json:"seats" doc:"What sits where."`
}

// Filled is one article in a seat.
type Filled struct {
	Seat  SeatName  `json:"seat" doc:"The seat."`
	Part  string    `json:"part" doc:"Id of the part in the catalog."`
	Count int       `json:"count,omitempty" range:"1..24" doc:"How many: kits of memory, drives, fans (not packs), cards, screens. Left out for one."`
	Face  part.Face `json:"face,omitempty" doc:"Where a radiator or fans hang."`
	Owned bool      `json:"owned,omitempty" doc:"The customer has it already."`
}

// SeatName is a seat's word.
type SeatName string

// Values lists the accepted words.
func (SeatName) Values() []string { return seatNames[:] }

// Read reads a build file against a stock. Every part must be in the stock, one article a seat where the seat takes
// one, and the layout one of the case's.
func Read(file string, data []byte, stock *part.Stock) (*Build, error) {
	var f File
	if err := format.Read(file, data, Kind, Version, &f); err != nil {
		return nil, err
	}
	return f.Build(file, stock)
}

// Build looks the file's parts up in a stock.
func (f *File) Build(file string, stock *part.Stock) (*Build, error) {
	b := &Build{Title: f.Title, Plate: f.Plate}
	var errs []error
	fail := func(path, got, want string) {
		errs = append(errs, &format.Error{File: file, Path: path, Value: got, Want: want})
	}
	var taken Set
	for i, s := range f.Seats {
		seat, _ := Named(string(s.Seat))
		path := fmt.Sprintf("seats[%d]", i)
		if seat.Single() && taken.Has(seat) {
			fail(path, fmt.Sprintf("%q, a second part in seat %s", s.Part, seat), "one part in that seat")
			continue
		}
		taken |= SetOf(seat)
		count := max(s.Count, 1)
		if count > 1 && !seat.Several() {
			fail(path+".count", fmt.Sprint(s.Count), "1 in seat "+seat.String())
			continue
		}
		if s.Owned {
			b.Owned |= SetOf(seat)
		}
		if !b.place(seat, s.Part, count, s.Face, stock) {
			fail(path+".part", fmt.Sprintf("%q", s.Part), "the id of a part of this catalog for seat "+seat.String())
		}
	}
	f.arrange(b, fail)
	if len(errs) > 0 {
		return nil, errors.Join(errs...)
	}
	return b, nil
}

// arrange finds the layout and checks the plate position.
func (f *File) arrange(b *Build, fail func(path, got, want string)) {
	if b.Case == nil {
		if f.Layout != "" {
			fail("layout", fmt.Sprintf("%q", f.Layout), "no layout where there is no case")
		}
		return
	}
	var known []string
	for i := range b.Case.Layouts {
		l := &b.Case.Layouts[i]
		known = append(known, l.ID)
		if l.ID == f.Layout || f.Layout == "" && len(b.Case.Layouts) == 1 {
			b.Layout = l
		}
	}
	if b.Layout == nil {
		fail("layout", fmt.Sprintf("%q", f.Layout), "one of "+strings.Join(known, ", "))
		return
	}
	steps := 0
	if b.Layout.Plate != nil {
		steps = int(b.Layout.Plate.Steps)
	}
	if b.Plate > steps {
		fail("plate", fmt.Sprint(b.Plate), fmt.Sprintf("a step between 0 and %d in this layout", steps))
	}
}

// place puts the article with the id into a seat; false where the stock has none of that kind.
func (b *Build) place(seat Seat, id string, count int, face part.Face, stock *part.Stock) bool {
	var ok bool
	switch seat {
	case Case:
		b.Case, ok = part.Find(stock.Cases, id)
	case Board:
		b.Board, ok = part.Find(stock.Boards, id)
	case Processor:
		b.Processor, ok = part.Find(stock.Processors, id)
	case Cooler:
		b.Cooler, ok = part.Find(stock.Coolers, id)
		b.Face = face
	case Memory:
		b.Memory, ok = part.Find(stock.Memory, id)
		b.Kits = count
	case Graphics:
		b.Graphics, ok = part.Find(stock.Graphics, id)
	case Supply:
		b.Supply, ok = part.Find(stock.Supplies, id)
	case Boot, Cache, Archive:
		var d *part.Drive
		d, ok = part.Find(stock.Drives, id)
		tier := map[Seat]*Storage{Boot: &b.Boot, Cache: &b.Cache, Archive: &b.Archive}[seat]
		*tier = Storage{d, count}
	case Fans:
		var f *part.Fan
		f, ok = part.Find(stock.Fans, id)
		b.Fans = append(b.Fans, FanSet{f, count, face})
	case Cards:
		var c *part.Card
		c, ok = part.Find(stock.Cards, id)
		b.Cards = append(b.Cards, CardSet{c, count})
	case Screens:
		var m *part.Monitor
		m, ok = part.Find(stock.Monitors, id)
		b.Screens = append(b.Screens, ScreenSet{m, count})
	case UPS:
		b.UPS, ok = part.Find(stock.UPS, id)
	case Services:
		var s *part.Service
		s, ok = part.Find(stock.Services, id)
		b.Services = append(b.Services, ServiceSet{s, count})
	}
	return ok
}

// File writes the build down as ids in seats.
func (b *Build) File() File {
	f := File{Head: format.Head{Kind: Kind, Version: Version}, Title: b.Title, Plate: b.Plate}
	if b.Layout != nil {
		f.Layout = b.Layout.ID
	}
	fans := 0
	for _, l := range b.Lines() {
		s := Filled{Seat: SeatName(l.Seat.String()), Part: l.Article.ID, Owned: l.Owned}
		if l.Count > 1 {
			s.Count = l.Count
		}
		switch l.Seat {
		case Cooler:
			s.Face = b.Face
		case Fans:
			s.Face, s.Count = b.Fans[fans].Face, b.Fans[fans].Count
			fans++
		}
		f.Seats = append(f.Seats, s)
	}
	return f
}
