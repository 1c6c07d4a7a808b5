package verb

import (
	"fmt"
	"slices"

	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/format"
	"slipfit/core/part"
	"slipfit/core/rule"
	"slipfit/core/unit"
)

// Trial is every part of the catalog for one seat, put into a build in place of what sits there now.
type Trial struct {
	format.Head
	Seat  string  `json:"seat"`
	Title string  `json:"seat_title"`
	Now   string  `json:"now,omitempty"` // id of what sits there
	Parts []Tried `json:"parts"`         // as the catalog lists them; first the empty seat where a build may do without
}

// Tried is one part put in on trial.
type Tried struct {
	ID     string        `json:"part"` // empty for the empty seat
	Name   string        `json:"name"`
	Count  int           `json:"count,omitempty"`
	Face   string        `json:"face,omitempty"`
	Layout string        `json:"layout,omitempty"`
	Named  string        `json:"layout_name,omitempty"`
	Plate  int           `json:"plate,omitempty"`
	Sits   bool          `json:"sits,omitempty"` // of the ways to fit a part: the one it is fitted
	Price  unit.Quantity `json:"price"`
	Change unit.Quantity `json:"change"` // price of the build with it less the price without
	Stands bool          `json:"stands"`
	Worth  int64         `json:"worth"`
	Fails  string        `json:"fails,omitempty"` // id of the first rule that does not hold
	Why    string        `json:"why,omitempty"`   // its sentence
}

// Try puts every part of a seat into the build on trial and proves each, so that a person who looks for another part
// sees beforehand which go in, what they cost and why the others do not. Cases are tried in each layout and plate
// position, radiators on each face, fans in each number on each face; the first that stands is kept, or the first of all.
func (w *Bench) Try(file Document, asked *Document, seatName string) (*Trial, error) {
	seat, ok := build.Named(seatName)
	if !ok {
		return nil, fmt.Errorf("no seat %q", seatName)
	}
	b, n, _, err := w.read(file, asked)
	if err != nil {
		return nil, err
	}
	out := &Trial{Head: head("slipfit-trial"), Seat: seat.String(), Title: seat.Title(), Now: sitting(b, seat)}
	before, owned, fans := b.Price(), b.Owned, b.Fans
	for _, ways := range w.ways(seat, b, pieces(b, seat)) {
		if seat == build.Fans && len(fans) == 1 && fans[0].Fan.ID == ways[0].ID() {
			ways = []build.Option{{Seat: seat, Part: fans[0].Fan, Count: fans[0].Count, Face: fans[0].Face}} // as they are fitted
		}
		b.Owned = owned
		if ways[0].ID() != out.Now {
			b.Owned &^= build.SetOf(seat) // what the customer has is the part that sits there
		}
		out.Parts = append(out.Parts, try(b, n, ways, before))
	}
	return out, nil
}

// try proves a build with each way of fitting one part and keeps the first that stands, or the first of all.
func try(b *build.Build, n *brief.Needs, ways []build.Option, before unit.Money) Tried {
	var kept Tried
	for i, o := range ways {
		b.Set(o)
		p := rule.Prove(b, n)
		t := Tried{
			ID: o.ID(), Name: "none", Count: o.Count, Face: string(o.Face), Plate: o.Plate, Price: o.Price().Q(),
			Change: (b.Price() - before).Q(), Stands: p.Stands(), Worth: p.Worth,
		}
		if o.Part != nil {
			t.Name = o.Part.Common().Title()
		}
		if o.Layout != nil {
			t.Layout, t.Named = o.Layout.ID, o.Layout.Name
		}
		if !t.Stands {
			worst := firstFailing(p.Margins)
			t.Fails, t.Why = worst.Rule.ID, worst.Why()
		}
		if i == 0 || t.Stands {
			kept = t
		}
		if t.Stands {
			break
		}
	}
	return kept
}

func firstFailing(margins []rule.Margin) *rule.Margin {
	for i := range margins {
		if m := &margins[i]; !m.Advice && !m.Passes() {
			return m
		}
	}
	return nil
}

// pieces is how many kits or drives sit in a seat; one in an empty seat and where only one can.
func pieces(b *build.Build, seat build.Seat) int {
	switch seat {
	case build.Memory:
		return max(b.Kits, 1)
	case build.Boot:
		return max(b.Boot.Count, 1)
	case build.Cache:
		return max(b.Cache.Count, 1)
	case build.Archive:
		return max(b.Archive.Count, 1)
	}
	return 1
}

// ways lists, part by part, the ways to fill a seat of b with it, with so many kits or drives; first the empty seat where a build may
// do without.
func (w *Bench) ways(seat build.Seat, b *build.Build, count int) [][]build.Option {
	var all [][]build.Option
	if !slices.Contains(build.Compulsory(), seat) {
		all = append(all, []build.Option{{Seat: seat}})
	}
	var places []part.FanPlace
	if b.Layout != nil {
		places = b.Layout.FanPlaces
	}
	for _, p := range build.Shelf(w.Stock, seat) {
		switch p := p.(type) {
		case *part.Case:
			all = append(all, build.CaseOptions(p))
		case *part.Cooler:
			all = append(all, build.CoolerOptions(p, b.Layout))
		case *part.Fan:
			all = append(all, build.FanOptions(p, places))
		default:
			all = append(all, []build.Option{{Seat: seat, Part: p, Count: count}})
		}
	}
	return all
}
