package rule

import (
	"fmt"

	"slipfit/core/build"
	"slipfit/core/feed"
	"slipfit/core/unit"
)

// SlotRating is what a slot may give a card without a plug of its own.
var SlotRating = Rule{
	ID:    "slot-rating",
	Group: Feed,
	Title: "A slot may give each card its power",
	Doc: `For a graphics card without a power socket and for each add-in card in a slot that the supply does not feed: have = what a slot may
	give a card of that width, W: 75 (16 lanes, graphics), 25 (1, 4 and 8 lanes, full height); need = the card's power, W
When short: the sheet is wrong, or the card has a plug that the sheet does not state.`,
	Source: "PCIe CEM, slot power, as set out in an encyclopaedia article",
	Reads:  []build.Seat{build.Graphics, build.Cards},
	Check: func(v *View) []Margin {
		if v.Graphics != nil && len(v.Graphics.Sockets) == 0 {
			slot, _ := feed.SlotPower(16, true)
			have, need := watts(slot.TotalMW), figure(v, v.Graphics.Power, &v.Graphics.Article, "power_w")
			v.find(build.Graphics.Title(), have.Q(), need.Q(), slotSays(have, need))
		}
		for i := range v.Cards {
			c := v.Cards[i].Card
			if len(c.Fed) > 0 {
				continue
			}
			lanes := figure(v, c.Slot, &c.Article, "slot_lanes")
			if lanes == 0 && len(v.missing) == 0 {
				continue
			}
			width := 1
			if lanes > 1 {
				width = 4
			}
			slot, _ := feed.SlotPower(width, true)
			have, need := watts(slot.TotalMW), figure(v, c.Power, &c.Article, "power_w")
			v.find(c.Name, have.Q(), need.Q(), slotSays(have, need))
		}
		return v.margins
	},
}

func slotSays(have, need unit.Power) func() string {
	return func() string { return fmt.Sprintf("a slot gives it %s at most, and it draws %s", have.Q(), need.Q()) }
}

// watts is a power of the models, which count mW.
func watts(milliwatts int64) unit.Power { return unit.Power(milliwatts) }
