package rule

import (
	"slices"

	"slipfit/core/part"
	"slipfit/core/unit"
)

// Supplier says what hangs on one supplier.
var Supplier = Rule{
	ID:    "supplier",
	Group: Money,
	Title: "What is still to come hangs on no single supplier",
	Doc: `have = suppliers of the parts that do not lie on the shelf; need = 2, or as many as there are such parts where that is fewer
Advice only: where everything that must still come is bought from one supplier, one late van stops the whole build.
When short: take one of those parts from another maker's equal, or fetch it early.`,
	Source: "common practice",
	Reads:  partSeats,
	Check: func(v *View) []Margin {
		var suppliers []string
		parts := 0
		for _, s := range partSeats {
			v.bought(s, func(a *part.Article, n int) {
				if n <= int(a.Stock) {
					return
				}
				parts++
				if !slices.Contains(suppliers, a.Supplier) {
					suppliers = append(suppliers, a.Supplier)
				}
			})
		}
		if parts == 0 {
			return nil
		}
		v.advise("", unit.Count(len(suppliers)), unit.Count(min(parts, 2)),
			say("%d parts are still to come, from %d suppliers, %s first", parts, len(suppliers), suppliers[0]))
		return v.margins
	},
}
