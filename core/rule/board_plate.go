package rule

import (
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// BoardPlate finds where a moving plate must stand: it trades cooler height against card thickness.
var BoardPlate = Rule{
	ID:    "board-plate",
	Group: Fit,
	Title: "The board plate has a place that suits cooler and card",
	Doc: `With x what the plate has moved: cooler room(x) = a − x, card room(x) = b + x, mm.
steps: have = plate positions at which both the cooler and the card go in; need = 1
this step: have = the lesser of the two slacks here; need = the lesser slack at the best position, mm; advice only.
A card in the board's own slot has no part in it. For a liquid cooler the height is that of cold plate and pump. When no
	step works, cooler height and card thickness together are too much for this case: have them give way by the sum.`,
	Source: "geometry of the case's sheet",
	Reads:  []build.Seat{build.Case, build.Cooler, build.Graphics},
	Check: func(v *View) []Margin {
		if !v.Filled(build.Case) || v.Layout.Plate == nil || !v.Filled(build.Cooler) && !v.Filled(build.Graphics) {
			return nil
		}
		// slack at position 0 of what is fitted; a side with nothing fitted never binds
		const never = 1000 * 1000 * unit.Millimetre
		cooler, card := unit.Length(never), unit.Length(never)
		if v.Cooler != nil {
			cooler = figure(v, v.Layout.Cooler, &v.Case.Article, "cooler_height_mm") - coolerHeight(v)
		}
		if v.Graphics != nil && v.Layout.Card.Mount != part.InSlot {
			thick, gap := cardThickness(v)
			card = figure(v, v.Layout.Card.Thickness, &v.Case.Article, "card.thickness_mm") - thick - gap
		}
		step, steps := v.Layout.Plate.Step, int(v.Layout.Plate.Steps)
		slack := func(n int) unit.Length {
			x := step * unit.Length(n)
			return min(cooler-x, card+x)
		}
		first, last, best := -1, -1, 0
		for n := range steps + 1 {
			if s := slack(n); s >= 0 {
				if first < 0 {
					first = n
				}
				last = n
			}
			if slack(n) > slack(best) {
				best = n
			}
		}
		works := 0
		if first >= 0 {
			works = last - first + 1
		}
		missing := len(v.missing) > 0
		v.find("steps", unit.Count(works), unit.Count(1), func() string {
			if works == 0 {
				return say("at no step of the plate do cooler and card both go in; at step %d, the best, %s are wanting", best, (-slack(best)).Q())()
			}
			if works == 1 {
				return say("cooler and card both go in with the plate at step %d alone, of 0 to %d", first, steps)()
			}
			return say("cooler and card both go in with the plate at steps %d to %d of 0 to %d; step %d leaves most play", first, last, steps, best)()
		})
		if !missing {
			here := v.Build.Plate
			v.advise("this step", slack(here).Q(), slack(best).Q(), func() string {
				if slack(here) == slack(best) {
					return say("step %d leaves %s to the tighter side, the most there is", here, slack(here).Q())()
				}
				return say("move the plate to step %d: %s to the tighter side, here %s", best, slack(best).Q(), slack(here).Q())()
			})
		}
		return v.margins
	},
}
