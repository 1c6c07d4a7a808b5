package rule

import (
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// RadiatorCard keeps the card out of the room a radiator takes.
var RadiatorCard = Rule{
	ID:    "radiator-card",
	Group: Fit,
	Title: "The radiator leaves the graphics card its room",
	Doc: `takes = radiator with its fans − thickness it may have before it takes room from the card, mm; nothing found where that is
	not positive, or where the mount never meets the card.
length (front mount): have = longest card − takes; need = card with a plug at its end, mm
thickness (other mounts): have = thickness limit at the plate's position − takes; need = card + breathing gap, mm
When short: another face for the radiator, a thinner one, or a smaller card.`,
	Source: "geometry of the case's sheet",
	Reads:  []build.Seat{build.Case, build.Cooler, build.Graphics},
	Harder: []string{"Graphics.Length", "Graphics.Thickness", "LiquidCooler.Thickness"},
	Easier: []string{"CardSpace.Length", "CardSpace.Thickness"},
	Check: func(v *View) []Margin {
		if !v.both(build.Case, build.Cooler, build.Graphics) {
			return nil
		}
		m := v.Mount()
		if m == nil {
			return nil
		}
		free, meets := m.Card.Get()
		if !meets {
			return nil
		}
		takes := hangs(v) - free
		if len(v.missing) == 0 && takes <= 0 {
			return nil
		}
		face := v.Face
		if face == part.Front {
			have := figure(v, v.Layout.Card.Length, &v.Case.Article, "card.length_mm") - takes
			need := cardLength(v)
			v.find("length", have.Q(), need.Q(), say("the radiator at the %s takes %s and leaves %s, the card needs %s", face, takes.Q(), have.Q(), need.Q()))
			return v.margins
		}
		have := cardRoom(v) - takes
		thick, gap := cardThickness(v)
		v.find("thickness", have.Q(), (thick + gap).Q(),
			say("the radiator at the %s takes %s and leaves %s, the card is %s thick and needs %s before its fans", face, takes.Q(), have.Q(), thick.Q(), gap.Q()))
		return v.margins
	},
}

// overBoard reports whether a radiator at the top hangs over the board, and by how much it stays clear of that.
func overBoard(v *View) (over, meets bool, free, hung unit.Length) {
	m := v.Mount()
	if m == nil {
		return false, false, 0, 0
	}
	free, meets = m.Board.Get()
	if !meets {
		return false, false, 0, 0
	}
	hung = hangs(v)
	return len(v.missing) == 0 && hung > free, true, free, hung
}
