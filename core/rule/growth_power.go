package rule

import (
	"slipfit/core/build"
	"slipfit/core/unit"
)

// laterCard is what the graphics card of a few years on is taken to draw more than today's. Common practice.
const laterCard = 100 * unit.Watts

// GrowthPower says how many watts are left.
var GrowthPower = Rule{
	ID:    "growth-power",
	Group: Care,
	Title: "Watts are left for later",
	Doc: `have = rating × 0.9 − what all parts draw without end with everything at work, W
need = 100 W for a stronger card where an upgrade is thought of, else 0
Advice only: whether the supply feeds what is in the machine now is another rule's business (supply-steady).`,
	Source: "nine tenths of the rating, 100 W more for a later card: common practice",
	Reads:  loadSeats,
	Check: func(v *View) []Margin {
		if !v.both(build.Supply) {
			return nil
		}
		rating := figure(v, v.Supply.Rating, &v.Supply.Article, "rating_w")
		load := allOut(v)
		left := rating*plannedShare/100 - load
		need := unit.Power(0)
		if years, thought := v.Needs.Wish.Growth.Get(); thought && years > 0 {
			need = laterCard
		}
		v.advise("", left.Q(), need.Q(), say("nine tenths of %s less %s with everything at work leave %s", rating.Q(), load.Q(), left.Q()))
		return v.margins
	},
}
