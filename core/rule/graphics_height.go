package rule

import (
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// GraphicsHeight keeps the card, its plug and the first bend of the cable under the panel.
var GraphicsHeight = Rule{
	ID:    "graphics-height",
	Group: Fit,
	Title: "Card, plug and first bend fit under the panel",
	Doc: `have = room from the card's slot edge to the panel above its plug, mm; a card in the slot of a board whose plate
	has moved towards that panel loses what the plate has moved
need = card height + room for plug and first bend, where the plug leaves at the top, mm
A cable bent at the plug itself loosens contacts: the card's sheet states the room its plug needs. When short: a card with its
	plug at the end, or a wider case. Do not force the panel shut on the cable.`,
	Source: "card height 111.15 mm and more (PCI Express CEM); plug and bend: maker's sheet",
	Reads:  []build.Seat{build.Case, build.Graphics},
	Check: func(v *View) []Margin {
		if !v.both(build.Case, build.Graphics) {
			return nil
		}
		have := figure(v, v.Layout.Card.Height, &v.Case.Article, "card.height_mm")
		if v.Layout.Card.Mount == part.InSlot {
			have -= v.Shift()
		}
		height := figure(v, v.Graphics.Height, &v.Graphics.Article, "height_mm")
		var plug unit.Length
		if v.Graphics.PlugSide == "top" {
			plug = figure(v, v.Graphics.PlugRoom, &v.Graphics.Article, "plug_room_mm")
		}
		v.find("", have.Q(), (height + plug).Q(), say("%s to the panel, the card stands %s and its plug and cable %s", have.Q(), height.Q(), plug.Q()))
		return v.margins
	},
}
