package rule

import (
	"slices"
	"strings"

	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// WishMakers keeps makers out that the customer will not have.
var WishMakers = Rule{
	ID:    "wish-makers",
	Group: Care,
	Title: "No part is of a maker the customer will not have",
	Doc: `have = 0; need = parts bought of makers the brief avoids
Only where the brief names such makers, and binding then; what the customer owns already is left alone. When short: another
	maker's equal.`,
	Source: "the brief",
	Reads:  partSeats,
	Sum:    &Sum{Kind: unit.Number, Term: makerTerm},
	Check: func(v *View) []Margin {
		if len(v.Needs.Wish.Avoid) > 0 {
			v.sum("", func(_, takes int64) string {
				if takes == 0 {
					return "no part is of a maker to be avoided"
				}
				return "to be avoided: " + strings.Join(v.of(v.Needs.Wish.Avoid), ", ")
			})
		}
		return v.margins
	},
}

func makerTerm(v *View, s build.Seat) (gives, takes int64) {
	v.bought(s, func(a *part.Article, _ int) {
		if slices.Contains(v.Needs.Wish.Avoid, a.Maker) {
			takes++
		}
	})
	return 0, takes
}

// of lists the titles of the parts bought that are of the given makers.
func (v *View) of(makers []string) []string {
	var list []string
	for _, s := range partSeats {
		v.bought(s, func(a *part.Article, _ int) {
			if slices.Contains(makers, a.Maker) {
				list = append(list, a.Title())
			}
		})
	}
	return list
}
