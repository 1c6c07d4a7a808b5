package rule

import (
	"fmt"

	"slipfit/core/build"
)

// GraphicsBrackets keeps the card's bracket within the openings of the rear wall.
var GraphicsBrackets = Rule{
	ID:    "graphics-brackets",
	Group: Fit,
	Title: "The card's bracket has openings enough",
	Doc: `have = bracket openings in the rear wall of this layout
need = openings the card's bracket takes
Which slot the card hangs in, and what it covers, is found by the assignment of cards to slots (rule lanes). When short: a
	card with a narrower bracket.`,
	Source: "PCI Express card electromechanical specification; bracket pitch 20.32 mm",
	Reads:  []build.Seat{build.Case, build.Graphics},
	Check: func(v *View) []Margin {
		if !v.both(build.Case, build.Graphics) {
			return nil
		}
		have := figure(v, v.Layout.Card.Brackets, &v.Case.Article, "card.brackets")
		need := figure(v, v.Graphics.Slots, &v.Graphics.Article, "bracket_slots")
		box := v.Case
		v.find("", have.Q(), need.Q(), func() string {
			return fmt.Sprintf("%s in %s, the card's bracket takes %d", plural(have, "opening"), box.Name, need)
		})
		return v.margins
	},
}
