package rule

import (
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// bracketBears is the moment a bracket and slot are left to bear alone: a card of 1.0 kg, 300 mm long, borne at its
// middle. Support above about 1.0 kg is common practice; the arm is the middle of a full-length card (312 mm).
const bracketBears = 1470 // mN·m

// GraphicsSag advises a holder for a card that hangs too heavily on its bracket.
var GraphicsSag = Rule{
	ID:    "graphics-sag",
	Group: Fit,
	Title: "The card is borne without sagging",
	Doc: `have = 1.47 N·m (what bracket and slot bear alone: 1.0 kg at 150 mm) + mass a fitted holder supports × 9.81 m/s² × half the card's length
need = card mass × 9.81 m/s² × half the card's length
It concerns cards lying on their side in the slot of a standing board; one that hangs in its own plane does not sag.
	Assumes the card's centre of mass at half its length. Advice only. When short: fit a card holder, and carry the machine
	with the card out or the case lying.`,
	Source: "support above about 1.0 kg: common practice",
	Reads:  []build.Seat{build.Case, build.Graphics, build.Cards},
	Check: func(v *View) []Margin {
		if !v.both(build.Case, build.Graphics) || v.Layout.Card.Mount != part.InSlot || v.Layout.Lies {
			return nil
		}
		mass := figure(v, v.Graphics.Mass, &v.Graphics.Article, "mass_kg")
		length := figure(v, v.Graphics.Length, &v.Graphics.Article, "length_mm")
		have := unit.Quantity{N: bracketBears, Kind: unit.Newton}
		holder := false
		for _, c := range v.Cards {
			if c.Card.Use == part.UseHolder {
				have.N += moment(figure(v, c.Card.Holds, &c.Card.Article, "holds_kg"), length)
				holder = true
			}
		}
		need := unit.Quantity{N: moment(mass, length), Kind: unit.Newton}
		v.advise("", have, need, func() string {
			switch {
			case holder:
				return say("%s on half of %s bears %s on bracket and holder", mass.Q(), length.Q(), need)()
			case need.N > have.N:
				return say("%s on half of %s is %s: fit a card holder", mass.Q(), length.Q(), need)()
			}
			return say("%s on half of %s is %s: the bracket bears it", mass.Q(), length.Q(), need)()
		})
		return v.margins
	},
}

// moment of a mass at half a length, mN·m rounded up.
func moment(mass unit.Mass, length unit.Length) int64 {
	// g × µm × 9.81 m/s² ÷ 2 = 4.905e-9 N·m
	return (int64(mass)*int64(length)*981 + 199_999_999) / 200_000_000
}
