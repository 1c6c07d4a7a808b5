package rule

import (
	"strings"

	"slipfit/core/unit"
)

// WishLiked counts the parts of makers the customer likes.
var WishLiked = Rule{
	ID:    "wish-liked",
	Group: Care,
	Title: "Some part is of a maker the customer likes",
	Doc: `have = parts bought of makers the brief prefers; need = 1
Advice only: a liking breaks a tie between equals, it does not make a part fit. When short: ask for the equals of a part.`,
	Source: "the brief",
	Reads:  partSeats,
	Check: func(v *View) []Margin {
		if len(v.Needs.Wish.Prefer) == 0 {
			return nil
		}
		liked := v.of(v.Needs.Wish.Prefer)
		v.advise("", unit.Count(len(liked)), unit.Count(1), func() string {
			if len(liked) == 0 {
				return "no part is of " + strings.Join(v.Needs.Wish.Prefer, ", ")
			}
			return "liked: " + strings.Join(liked, ", ")
		})
		return v.margins
	},
}
