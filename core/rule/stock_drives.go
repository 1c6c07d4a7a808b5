package rule

import (
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// StockDrives counts a drive that serves several tiers against the shelf once.
var StockDrives = Rule{
	ID:    "stock-drives",
	Group: Money,
	Title: "Equal drives of several tiers lie on the shelf",
	Doc: `have = pieces of the drive in stock; need = pieces bought of it for boot, cache and archive together
Only where one and the same drive is bought for more than one tier. Binding where the customer wants only what lies on the
	shelf, otherwise an advice. When short: another drive for one of the tiers.`,
	Source: "the catalog's stock",
	Reads:  []build.Seat{build.Boot, build.Cache, build.Archive},
	Check: func(v *View) []Margin {
		for i, t := range tiers {
			d := v.holds(t.seat).Drive
			if d == nil || v.Owned.Has(t.seat) {
				continue
			}
			pieces, seats, earlier := 0, 0, false
			for j, u := range tiers {
				v.bought(u.seat, func(a *part.Article, n int) {
					if a.ID == d.ID {
						pieces, seats, earlier = pieces+n, seats+1, earlier || j < i
					}
				})
			}
			if seats < 2 || earlier {
				continue
			}
			have, need := unit.Count(int(d.Stock)), unit.Count(pieces)
			why := say("%d of %s are bought for %d tiers, %d %s on the shelf", pieces, d.Name, seats, d.Stock, agree(d.Stock, "lies", "lie"))
			if v.Needs.Wish.InStock {
				v.find(d.Name, have, need, why)
			} else {
				v.advise(d.Name, have, need, why)
			}
		}
		return v.margins
	},
}
