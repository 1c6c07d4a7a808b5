package rule

import (
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// GraphicsThickness keeps the card and the air it draws within its place, in millimetres, not in slots.
var GraphicsThickness = Rule{
	ID:    "graphics-thickness",
	Group: Fit,
	Title: "Card and its breathing gap fit the place's thickness",
	Doc: `have = thickness limit at plate position 0 + what the plate has moved, for a card behind or facing, mm
need = card thickness + gap the place needs between the card's fans and the panel, mm
In millimetres: "three slots" is anything from 55 to 65. A card hanging in the board's slot gains nothing from a moved
	plate. What a bottom or side radiator takes is found by radiator-card. When short: move the plate, a thinner card.`,
	Source: "case sheets, common practice; slot pitch 20.32 mm",
	Reads:  []build.Seat{build.Case, build.Graphics},
	Check: func(v *View) []Margin {
		if !v.both(build.Case, build.Graphics) {
			return nil
		}
		have := cardRoom(v)
		thick, gap := cardThickness(v)
		v.find("", have.Q(), (thick + gap).Q(), say("room for %s here, the card is %s thick and needs %s before its fans", have.Q(), thick.Q(), gap.Q()))
		return v.margins
	},
}

// cardRoom is the thickness there is for the card at the plate's position.
func cardRoom(v *View) unit.Length {
	room := figure(v, v.Layout.Card.Thickness, &v.Case.Article, "card.thickness_mm")
	if v.Layout.Card.Mount == part.InSlot {
		return room
	}
	return room + v.Shift()
}

// cardThickness is the card's thickness, and the gap its fans need in this place.
func cardThickness(v *View) (thick, gap unit.Length) {
	thick = figure(v, v.Graphics.Thickness, &v.Graphics.Article, "thickness_mm")
	gap = figure(v, v.Layout.Card.Breathing, &v.Case.Article, "card.breathing_mm")
	return thick, gap
}
