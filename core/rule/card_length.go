package rule

import (
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// CardLength keeps add-in cards within the layout's length.
var CardLength = Rule{
	ID:    "card-length",
	Group: Fit,
	Title: "Add-in cards are no longer than their place",
	Doc: `have = longest card of this layout − what a front radiator and its fans take, mm; need = longest add-in card that takes a slot, mm
Only where cards hang in the board's own slots; with the graphics card on a riser the sheet states no length for others. When
	short: a half-length card (167.65 mm) goes in nearly everywhere.`,
	Source: "half length 167.65 mm: PCI Express CEM, by second-hand texts; geometry of the case's sheet",
	Reads:  []build.Seat{build.Case, build.Cooler, build.Cards},
	Check: func(v *View) []Margin {
		if !v.both(build.Case, build.Cards) || v.Layout.Card.Mount != part.InSlot {
			return nil
		}
		var need unit.Length
		found := false
		for _, c := range v.Cards {
			if c.Card.Slot.Or(1) > 0 {
				need = max(need, figure(v, c.Card.Length, &c.Card.Article, "length_mm"))
				found = true
			}
		}
		if !found {
			return nil
		}
		have := figure(v, v.Layout.Card.Length, &v.Case.Article, "card.length_mm")
		if m := v.Mount(); m != nil && m.Face == part.Front {
			if free, meets := m.Card.Get(); meets {
				have -= max(0, hangs(v)-free)
			}
		}
		v.find("", have.Q(), need.Q(), say("room for cards of %s, the longest add-in card is %s", have.Q(), need.Q()))
		return v.margins
	},
}
