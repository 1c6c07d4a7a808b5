package rule

import (
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// CoolerCard keeps the cooler clear of the back of a card that hangs in a slot near it.
var CoolerCard = Rule{
	ID:    "cooler-card",
	Group: Fit,
	Title: "The cooler clears the back of the graphics card",
	Doc: `have = socket centre to the centre line of the card's slot − 3.5 mm (half the card's board and its solder side), mm
need = the cooler's reach towards the slots; of cold plate and pump for a liquid loop, mm
The card hangs in the first slot long enough for it; slots stand 20.32 mm apart. On a riser the card is elsewhere and the
	rule does not apply. When short: a narrower cooler, or turn it by a quarter where its frame allows.`,
	Source: "slot pitch 20.32 mm: public CAD models of the microATX board; solder side 2.67 mm: PCI Express CEM, from memory",
	Reads:  []build.Seat{build.Case, build.Board, build.Cooler, build.Graphics},
	Check: func(v *View) []Margin {
		if !v.both(build.Case, build.Board, build.Cooler, build.Graphics) || v.Layout.Card.Mount != part.InSlot {
			return nil
		}
		slot := v.Assign(build.SetOf(build.Case, build.Board, build.Graphics)).Cards[0].Slot
		if slot == nil {
			return nil // rule lanes says so
		}
		have := figure(v, v.Board.SocketAt.Card, &v.Board.Article, "socket_place.first_slot_mm") - cardBack
		first := figure(v, v.Board.Cards[0].Place, &v.Board.Article, "slots."+v.Board.Cards[0].ID+".place")
		have += build.SlotPitch * unit.Length(figure(v, slot.Place, &v.Board.Article, "slots."+slot.ID+".place")-first)
		var need unit.Length
		switch {
		case v.Cooler.Air != nil:
			need = figure(v, v.Cooler.Air.ToCard, &v.Cooler.Article, "air.reach_card_mm")
		case v.Cooler.Liquid != nil:
			need = figure(v, v.Cooler.Liquid.PumpReach, &v.Cooler.Article, "liquid.pump_reach_mm")
		}
		v.find("", have.Q(), need.Q(), say("%s from the socket to the back of the card in %s, the cooler reaches %s", have.Q(), slot.ID, need.Q()))
		return v.margins
	},
}

// cardBack is how far the back of a card stands out from its slot's centre line: half its board of 1.57 mm and the
// solder side's 2.67 mm, rounded up. Source: PCI Express CEM, from memory.
const cardBack = 3500 * unit.Millimetre / 1000
