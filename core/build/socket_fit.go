package build

import (
	"slices"

	"slipfit/core/part"
	"slipfit/core/unit"
)

func (a *assigner) switchesOff(d *device, socket int) uint64 {
	if d.drive != nil && d.drive.Bus == part.BusSATA {
		return a.off[socket][1]
	}
	return a.off[socket][0]
}

// fits reports whether a device goes into a socket, and which slots it hides.
func (a *assigner) fits(d *device, socket int) (Carriage, uint64) {
	if d.drive != nil {
		state, _ := ModuleFits(d.drive, &a.b.Board.M2[socket-a.slots])
		return state, 0
	}
	slot := &a.b.Board.Cards[socket]
	want, takes, thick := unit.Whole(16), unit.Whole(1), unit.Length(0)
	hangs := true // in the slot itself, so that brackets and neighbours matter
	if d.graphics != nil {
		takes, thick = d.graphics.Slots.Or(1), d.graphics.Thickness.Or(0)
		hangs = a.space == nil || a.space.Mount == part.InSlot
	} else {
		want, takes = d.card.Slot.Or(16), d.card.Brackets.Or(1)
		if a.space != nil && a.space.Mount != part.InSlot && takes > 0 {
			return Out, 0 // the brackets are elsewhere
		}
	}
	size, known := slot.Size.Get()
	if known && size < want {
		return Out, 0
	}
	state := In
	if !known || d.card != nil && d.card.Slot.IsZero() {
		state = Unsure
	}
	if !hangs {
		return state, 0
	}
	place, known := slot.Place.Get()
	if !known {
		return Unsure, 0
	}
	if a.space != nil {
		if brackets, known := a.space.Brackets.Get(); known && place-1+takes > brackets {
			return Out, 0
		}
	}
	deep := max(takes, unit.Whole((thick+SlotPitch-1)/SlotPitch))
	var hides uint64
	for i := range a.b.Board.Cards {
		if p := a.b.Board.Cards[i].Place.Or(0); p > place && p < place+deep {
			hides |= 1 << i
		}
	}
	return state, hides
}

// ModuleFits reports whether an M.2 module goes into a socket: post for its length, room above it, chips on its back, its
// bus. Where that rests on a figure a sheet lacks the answer is Unsure and missing names it: "board" or "drive", and the
// field.
func ModuleFits(d *part.Drive, s *part.M2Slot) (state Carriage, missing [2]string) {
	length, knownLength := d.Module.Get()
	if knownLength && !slices.Contains(s.Lengths, length) {
		return Out, missing
	}
	lanes, knownLanes := s.Lanes.Get()
	sata, knownSATA := s.SATA.Get()
	if d.Bus == part.BusPCIe && knownLanes && lanes == 0 || d.Bus == part.BusSATA && knownSATA && !sata {
		return Out, missing
	}
	two, knownTwo := d.TwoSided.Get()
	takesTwo, knownTakes := s.TwoSided.Get()
	if two && knownTakes && !takesTwo {
		return Out, missing
	}
	above, knownAbove := d.Above.Get()
	room, knownRoom := s.Height.Get()
	if knownAbove && knownRoom && above > room {
		return Out, missing
	}
	switch {
	case !knownLength:
		return Unsure, [2]string{"drive", "module_length"}
	case d.Bus == part.BusPCIe && !knownLanes:
		return Unsure, [2]string{"board", s.ID + ".lanes"}
	case d.Bus == part.BusSATA && !knownSATA:
		return Unsure, [2]string{"board", s.ID + ".sata"}
	case !knownTwo && !takesTwo:
		return Unsure, [2]string{"drive", "two_sided"}
	case two && !knownTakes:
		return Unsure, [2]string{"board", s.ID + ".two_sided"}
	case !knownAbove:
		return Unsure, [2]string{"drive", "height_above_mm"}
	case !knownRoom:
		return Unsure, [2]string{"board", s.ID + ".module_height_mm"}
	}
	return In, missing
}

// lack is the bandwidth a device loses in a socket under the placing tried, in lanes of the first generation.
func (a *assigner) lack(d *device, socket int) int64 {
	var lanes unit.Figure[unit.Whole]
	var generation, slot unit.Figure[unit.Release]
	switch {
	case d.graphics != nil:
		lanes, generation = d.graphics.Lanes, d.graphics.PCIe
	case d.card != nil:
		lanes, generation = d.card.Slot, d.card.PCIe
	case d.drive.Bus == part.BusSATA:
		return 0
	default:
		lanes, generation = d.drive.Lanes, d.drive.PCIe
	}
	if socket < a.slots {
		slot = a.b.Board.Cards[socket].PCIe
	} else {
		slot = a.b.Board.M2[socket-a.slots].PCIe
	}
	want, g := lanes.Or(0), generation.Or(0)/1000
	got := min(want, a.lanes(socket, a.now))
	if want == 0 || g == 0 {
		return 0
	}
	return int64(want)<<(g-1) - int64(got)<<(min(g, max(slot.Or(generation.Or(0))/1000, 1))-1)
}

// SlotLanes is how many lanes a card slot has by itself. Where the sheet does not state them it is taken to be wired in full; the rule that
// asks for lanes names the figure.
func SlotLanes(s *part.Slot) unit.Whole { return s.Lanes.Or(s.Size.Or(16)) }

// lanes is what a socket keeps beside the others in use, of those that it has by itself (SlotLanes; four for a module).
func (a *assigner) lanes(socket int, placed []int) unit.Whole {
	var lanes unit.Whole
	var id string
	if socket < a.slots {
		s := &a.b.Board.Cards[socket]
		lanes, id = SlotLanes(s), s.ID
	} else {
		s := &a.b.Board.M2[socket-a.slots]
		lanes, id = s.Lanes.Or(4), s.ID
	}
	for d, other := range placed {
		if other < 0 || other == socket {
			continue
		}
		for _, s := range a.shares(other) {
			if s.With == id && s.Lanes > 0 && a.applies(s, &a.devices[d]) {
				lanes = min(lanes, s.Lanes)
			}
		}
	}
	return lanes
}

// applies reports whether a sharing acts when the device uses the socket.
func (a *assigner) applies(s part.Sharing, d *device) bool {
	bus := part.BusPCIe
	if d.drive != nil {
		bus = d.drive.Bus
	}
	return s.Only == "" || s.Only == bus
}
