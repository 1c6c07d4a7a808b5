package rule

import (
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// GraphicsSlot keeps a card that hangs in a lower slot within what is left below it.
var GraphicsSlot = Rule{
	ID:    "graphics-slot",
	Group: Fit,
	Title: "A card in a lower slot has its thickness",
	Doc: `wall: have = thickness limit of the place − 20.32 mm × (bracket place of the card's slot − 1), mm; need = card + breathing gap, mm
radiator: have = that − what a radiator under the card takes (see radiator-card), mm; need = the same
The case's sheet measures from a card in the first bracket place; many large boards put their first long slot in the second. Found
	only where the card's slot is not in the first place; graphics-thickness finds the rest. When short: a board with its slot
	in the first place, or a thinner card.`,
	Source: "slot pitch 20.32 mm: public CAD models of the microATX board",
	Reads:  []build.Seat{build.Case, build.Board, build.Cooler, build.Graphics},
	Check: func(v *View) []Margin {
		if !v.both(build.Case, build.Board, build.Graphics) || v.Layout.Card.Mount != part.InSlot {
			return nil
		}
		slot := v.Assign(build.SetOf(build.Case, build.Board, build.Graphics)).Cards[0].Slot
		if slot == nil {
			return nil // rule lanes says so
		}
		place := figure(v, slot.Place, &v.Board.Article, "slots."+slot.ID+".place")
		if len(v.missing) == 0 && place == 1 {
			return nil
		}
		have := cardRoom(v) - build.SlotPitch*unit.Length(place-1)
		thick, gap := cardThickness(v)
		v.find("wall", have.Q(), (thick + gap).Q(), say("%s left under %s in bracket place %d, the card is %s thick and needs %s before its fans", have.Q(), slot.ID, place, thick.Q(), gap.Q()))
		m := v.Mount()
		if m == nil || m.Face == part.Front {
			return v.margins
		}
		if free, meets := m.Card.Get(); meets {
			if takes := hangs(v) - free; len(v.missing) > 0 || takes > 0 {
				v.find("radiator", (have - takes).Q(), (thick + gap).Q(), say("the radiator takes %s and leaves %s under %s", takes.Q(), (have-takes).Q(), slot.ID))
			}
		}
		return v.margins
	},
}
