package rule

import (
	"fmt"
	"slices"
	"strings"

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
			func() string {
				return fmt.Sprintf("%s %s still to come, from %s", plural(parts, "part"), agree(parts, "is", "are"), strings.Join(suppliers, ", "))
			})
		return v.margins
	},
}
