package rule

import (
	"strings"

	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// Stock says what is not on the shelf and how long it takes to come.
var Stock = Rule{
	ID:    "stock",
	Group: Money,
	Title: "The parts lie on the shelf",
	Doc: `have = 0; need = pieces that the shelf lacks, seat by seat: pieces bought − pieces in stock, where that is above 0
Binding where the customer wants only what lies on the shelf; otherwise an advice that names the working days until the last
	piece comes. Labour is always in stock. Drives that serve several tiers are counted together by another rule
	(stock-drives). When short: another maker's equal, or the days.`,
	Source: "the catalog's stock and lead times",
	Reads:  partSeats,
	Sum:    &Sum{Kind: unit.Number, Term: stockTerm},
	Check: func(v *View) []Margin {
		var lacking []string
		var days unit.Whole
		for _, s := range partSeats {
			v.bought(s, func(a *part.Article, n int) {
				if lack := n - int(a.Stock); lack > 0 {
					lacking = append(lacking, say("%d × %s", lack, a.Name)())
					days = max(days, figure(v, a.Lead, a, "lead_days"))
				}
			})
		}
		why := say("every part lies on the shelf")
		if len(lacking) > 0 {
			why = func() string {
				s := "not on the shelf: " + strings.Join(lacking, ", ")
				if days > 0 {
					s += "; the last comes in " + plural(days, "working day")
				}
				return s
			}
		}
		if v.Needs.Wish.InStock {
			v.missing = v.missing[:0] // how long the rest takes is not asked
			v.sum("", func(gives, takes int64) string { return why() })
			return v.margins
		}
		if len(lacking) > 0 {
			gives, takes := 0, 0
			for _, s := range partSeats {
				g, t := missingPieces(v, s)
				gives, takes = gives+g, takes+t
			}
			v.advise("", unit.Count(gives), unit.Count(takes), why)
		}
		return v.margins
	},
}

// partSeats is every seat but that of labour.
var partSeats = everySeat[:build.Services]

// missingPieces is what the shelf lacks of a seat's articles.
func missingPieces(v *View, s build.Seat) (gives, takes int) {
	v.bought(s, func(a *part.Article, n int) { takes += max(0, n-int(a.Stock)) })
	return 0, takes
}

func stockTerm(v *View, s build.Seat) (gives, takes int64) {
	if !v.Needs.Wish.InStock {
		return 0, 0
	}
	g, t := missingPieces(v, s)
	return int64(g), int64(t)
}
