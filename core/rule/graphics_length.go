package rule

import (
	"slipfit/core/build"
	"slipfit/core/unit"
)

// GraphicsLength keeps the graphics card within the layout's length. What a front radiator takes is radiator-card's.
var GraphicsLength = Rule{
	ID:    "graphics-length",
	Group: Fit,
	Title: "The graphics card is no longer than its place",
	Doc: `have = longest card of this layout, no radiator fitted, mm
need = length of the card from the bracket plane + room for its plug where that leaves at the end, mm
Makers differ in whether the bracket counts in the length; the catalog counts from the bracket plane. What a front radiator
	takes of the length is found by radiator-card. When short: a shorter card or another layout.`,
	Source: "PCI Express card electromechanical specification for the bracket plane; case sheets, common practice",
	Reads:  []build.Seat{build.Case, build.Graphics},
	Check: func(v *View) []Margin {
		if !v.both(build.Case, build.Graphics) {
			return nil
		}
		have := figure(v, v.Layout.Card.Length, &v.Case.Article, "card.length_mm")
		need := cardLength(v)
		v.find("", have.Q(), need.Q(), say("%s takes cards of %s, %s needs %s", v.Case.Name, have.Q(), v.Graphics.Name, need.Q()))
		return v.margins
	},
}

// cardLength is the card's length with the plug that leaves at its end.
func cardLength(v *View) unit.Length {
	length, missing := build.CardLength(v.Graphics)
	if missing != "" {
		v.lacks(&v.Graphics.Article, missing)
	}
	return length
}
