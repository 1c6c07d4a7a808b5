package rule

import (
	"slipfit/core/build"
	"slipfit/core/part"
)

// SupplyReachCard keeps the supply's card cables long enough.
var SupplyReachCard = Rule{
	ID:    "supply-reach-card",
	Group: Fit,
	Title: "Graphics card cables reach",
	Doc: `12-contact, 8-pin: have = shortest of the longest cables that the card's sockets of that kind ask for, one a socket, mm; need =
	routed way to the card in this layout, mm
See supply-reach. A 12-contact plug must be pushed home and its cable left straight for the first 35 mm.`,
	Source: "makers' sheets; common practice",
	Reads:  []build.Seat{build.Case, build.Graphics, build.Supply},
	Check: func(v *View) []Margin {
		if !v.both(build.Case, build.Graphics, build.Supply) {
			return nil
		}
		var twelve, eight int
		for _, s := range v.Graphics.Sockets {
			n := int(figure(v, s.Count, &v.Graphics.Article, "power_sockets.count"))
			if s.Kind == part.SocketCard12 {
				twelve += max(n, 1)
			} else {
				eight += max(n, 1)
			}
		}
		route := v.Layout.Routes.Card
		if twelve > 0 {
			v.reach("12-contact", twelve, route, "routes.card_mm", func(p part.PlugKind) bool { return p == part.PlugCard12 })
		}
		if eight > 0 {
			v.reach("8-pin", eight, route, "routes.card_mm", func(p part.PlugKind) bool {
				return p == part.PlugCard62 || p == part.PlugCard8 || p == part.PlugCard6
			})
		}
		return v.margins
	},
}
