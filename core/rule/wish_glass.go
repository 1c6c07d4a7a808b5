package rule

import (
	"slices"

	"slipfit/core/build"
	"slipfit/core/part"
)

// WishGlass holds the case against the wish for a glazed side, or for none.
var WishGlass = Rule{
	ID:    "wish-glass",
	Group: Care,
	Title: "The side is glazed, or closed, as wished",
	Doc: `have = 1 where a side of the case is glazed as wished, or none is as wished; need = 1
Only where the brief says so, and binding then. A closed side damps a little and shows no dust. When short: another case.`,
	Source: "the brief",
	Reads:  []build.Seat{build.Case},
	Check: func(v *View) []Margin {
		wants, said := v.Needs.Wish.Glass.Get()
		if !said || !v.both(build.Case) {
			return nil
		}
		glazed := slices.Contains(v.Case.Glazed, part.Side)
		how := map[bool]string{true: "has a glazed side", false: "has closed sides"}[glazed]
		wish := map[bool]string{true: "one is wished for", false: "no glass is wished for"}[wants]
		v.met("", glazed == wants, say("%s %s; %s", v.Case.Name, how, wish))
		return v.margins
	},
}
