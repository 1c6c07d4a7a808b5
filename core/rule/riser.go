package rule

import (
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// Riser finds what a riser takes from the card's link.
var Riser = Rule{
	ID:    "riser",
	Group: Fit,
	Title: "The riser carries the card's link",
	Doc: `have = PCIe generation of the riser; need = the lesser of the card's and its slot's generation; advice only: a link trains down
	to what the riser carries, and each generation less halves what it carries. Set the slot to the riser's generation in the firmware:
	left to itself a link may train too high and drop out. Unknown where the case states no riser: then one must be bought, and its
	generation asked for. When short: a riser of a later generation, if the picture work is bound by the link at all.`,
	Source: "PCI Express base specification: rate a lane doubles with each generation; common practice",
	Reads:  []build.Seat{build.Case, build.Board, build.Graphics},
	Check: func(v *View) []Margin {
		if !v.both(build.Case, build.Board, build.Graphics) || v.Layout.Card.Mount == part.InSlot {
			return nil
		}
		slot := v.Assign(build.SetOf(build.Case, build.Board, build.Graphics)).Cards[0].Slot
		if slot == nil {
			return nil // rule lanes says so
		}
		riser := figure(v, v.Layout.Card.Riser, &v.Case.Article, "card.riser_pcie")
		card := figure(v, v.Graphics.PCIe, &v.Graphics.Article, "pcie")
		wired := figure(v, slot.PCIe, &v.Board.Article, "slots."+slot.ID+".pcie")
		need := min(card, wired)
		if len(v.missing) > 0 {
			v.find("", riser.Q(), need.Q(), nil)
			return v.margins
		}
		v.advise("", riser.Q(), need.Q(), func() string {
			if riser >= need {
				return say("riser of generation %d, card %d, slot %d: the link runs at %d", riser/1000, card/1000, wired/1000, need/1000)()
			}
			share := unit.Share(100_000 >> ((need - riser) / 1000))
			return say("the riser carries generation %d, card and slot %d: set the slot to %d in the firmware; the link carries %s of what it could",
				riser/1000, need/1000, riser/1000, share.Q())()
		})
		return v.margins
	},
}
