package build

import (
	"slices"

	"slipfit/core/part"
	"slipfit/core/unit"
)

// Bays is what a layout leaves for drives on a cable, and what the build puts there.
type Bays struct {
	Have35, Have25 int // places for 3.5 inch drives; for 2.5 inch drives beside them
	Need35, Need25 int
	Lost           []LostBay
	Places         []BayPlace
	Missing        []Lacking // figures the sheets do not state
}

// LostBay is a bay that something else takes.
type LostBay struct {
	Bay *part.Bay
	By  Seat // Graphics or Cooler
}

// BayPlace is the bay one drive goes into; Bay is nil where none is left.
type BayPlace struct {
	Seat  Seat
	Drive *part.Drive
	Bay   *part.Bay
}

// Lacking is a figure a sheet does not state.
type Lacking struct {
	Owner *part.Article
	Field string
}

// AssignBays puts the 2.5 and 3.5 inch drives into the bays the card and the radiator leave. 3.5 inch drives go first,
// into bays that take nothing else before those that take both; so nothing is turned away that could have gone in.
// It looks at the Case, Graphics, Cooler, Boot, Cache and Archive seats.
func (b *Build) AssignBays() Bays {
	var out Bays
	if b.Layout == nil {
		return out
	}
	var free [3]int // places for 3.5 alone, 2.5 alone, both
	left := make([]int, len(b.Layout.Bays))
	for i := range b.Layout.Bays {
		bay := &b.Layout.Bays[i]
		if by, lost := b.losesBay(bay, &out); lost {
			out.Lost = append(out.Lost, LostBay{bay, by})
			continue
		}
		n, known := bay.Count.Get()
		if !known {
			out.Missing = append(out.Missing, Lacking{&b.Case.Article, "bays." + bay.ID + ".count"})
		}
		left[i] = int(n)
		free[takes(bay)] += int(n)
	}
	for _, t := range b.Tiers() {
		switch t.Drive.Form {
		case part.Form35:
			out.Need35 += t.Count
		case part.Form25:
			out.Need25 += t.Count
		}
	}
	out.Have35 = free[only35] + free[both]
	out.Have25 = free[only25] + free[both] - min(max(0, out.Need35-free[only35]), free[both])
	for _, t := range b.Tiers() {
		if t.Drive.Form == part.Form35 {
			out.Places = b.put(out.Places, t, left, only35, both)
		}
	}
	for _, t := range b.Tiers() {
		if t.Drive.Form == part.Form25 {
			out.Places = b.put(out.Places, t, left, only25, both)
		}
	}
	return out
}

const (
	only35 = iota
	only25
	both
)

// takes is which drives a bay takes.
func takes(bay *part.Bay) int {
	switch {
	case !slices.Contains(bay.Forms, part.Bay25):
		return only35
	case !slices.Contains(bay.Forms, part.Bay35):
		return only25
	}
	return both
}

// put gives the drives of a tier a bay each, of the first sort and then of the second.
func (b *Build) put(places []BayPlace, t Tier, left []int, sorts ...int) []BayPlace {
	for range t.Count {
		p := BayPlace{Seat: t.Seat, Drive: t.Drive}
		for _, s := range sorts {
			for i := range left {
				if bay := &b.Layout.Bays[i]; p.Bay == nil && left[i] > 0 && takes(bay) == s {
					p.Bay = bay
					left[i]--
				}
			}
		}
		places = append(places, p)
	}
	return places
}

// losesBay reports whether the radiator or the graphics card takes a bay.
func (b *Build) losesBay(bay *part.Bay, out *Bays) (by Seat, lost bool) {
	if m := b.Mount(); m != nil && slices.Contains(m.Bays, bay.ID) {
		return Cooler, true
	}
	upTo, limited := bay.Card.Get()
	if !limited || b.Graphics == nil {
		return 0, false
	}
	length, missing := CardLength(b.Graphics)
	if missing != "" {
		out.Missing = append(out.Missing, Lacking{&b.Graphics.Article, missing})
		return 0, false
	}
	return Graphics, length > upTo
}

// CardLength is the length of a card with the plug that leaves at its end; missing names a figure its sheet lacks.
func CardLength(g *part.Graphics) (length unit.Length, missing string) {
	length, known := g.Length.Get()
	if !known {
		return 0, "length_mm"
	}
	if g.PlugSide != "end" {
		return length, ""
	}
	plug, known := g.PlugRoom.Get()
	if !known {
		return 0, "plug_room_mm"
	}
	return length + plug, ""
}
