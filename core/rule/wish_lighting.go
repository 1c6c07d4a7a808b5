package rule

import (
	"strings"

	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// litSeats is the seats whose parts may carry decorative lighting.
var litSeats = []build.Seat{build.Case, build.Board, build.Cooler, build.Memory, build.Graphics, build.Supply, build.Fans}

// WishLighting keeps decorative lighting out where none is wished.
var WishLighting = Rule{
	ID:    "wish-lighting",
	Group: Care,
	Title: "No part carries decorative lighting where none is wished",
	Doc: `have = 0; need = parts that carry decorative lighting
Only where the brief will not have any, and binding then. A part whose sheet says nothing of lighting is not dark: it is unknown.
	When short: the same part without lights, or its equal.`,
	Source: "the brief",
	Reads:  litSeats,
	Sum:    &Sum{Kind: unit.Number, Term: lightTerm},
	Check: func(v *View) []Margin {
		if unwanted(v) {
			v.sum("", func(_, takes int64) string {
				if takes == 0 {
					return "no part carries lighting"
				}
				var lit []string
				for _, s := range litSeats {
					v.lying(s, func(a *part.Article, _ int) {
						if a.Lighting.Or(false) {
							lit = append(lit, a.Name)
						}
					})
				}
				return "lit: " + strings.Join(lit, ", ")
			})
		}
		return v.margins
	},
}

// unwanted reports a brief that will not have lighting.
func unwanted(v *View) bool {
	wants, said := v.Needs.Wish.Lighting.Get()
	return said && !wants
}

func lightTerm(v *View, s build.Seat) (gives, takes int64) {
	if unwanted(v) {
		v.lying(s, func(a *part.Article, _ int) {
			if figure(v, a.Lighting, a, "lighting") {
				takes++
			}
		})
	}
	return 0, takes
}
