package rule

import (
	"fmt"

	"slipfit/core/build"
	"slipfit/core/feed"
	"slipfit/core/part"
)

// PlugRating is what slot and plugs may give the graphics card against its power.
var PlugRating = Rule{
	ID:    "plug-rating",
	Group: Feed,
	Title: "Slot and plugs may give the graphics card its power",
	Doc: `have = 75 W of the slot + rating of each of the card's sockets, W: 75 (6 contacts), 150 (8 contacts), 12 contacts what the sense
	pins of the supply's plug announce, at most 600
need = the card's sustained power, W
A supply's 12-contact plug of 300 W lets a card draw 300 W through it, whatever the supply's rating. Push that plug home and keep its
	cable straight for the first 35 mm: it has far less contact to spare than the others. When short: a supply whose plug announces more.`,
	Source: "ATX 3.0 design guide 2.01, table 3-5; slot 75 W and the sum: PCIe CEM; sense coding: ATX 3.1 guide § 3.3; straight run: trade guidance",
	Reads:  []build.Seat{build.Graphics, build.Supply},
	Check: func(v *View) []Margin {
		if !v.both(build.Graphics, build.Supply) || len(v.Graphics.Sockets) == 0 {
			return nil
		}
		card, supply := v.Graphics, v.Supply
		slot, _ := feed.SlotPower(16, true)
		gives := slot.TotalMW
		for i := range card.Sockets {
			s := &card.Sockets[i]
			limit := socketOf(s.Kind).LimitMW()
			if s.Kind == part.SocketCard12 {
				limit = min(limit, announced(v, supply))
			}
			gives += limit * int64(figure(v, s.Count, &card.Article, "power_sockets.count"))
		}
		have, need := watts(gives), figure(v, card.Power, &card.Article, "power_w")
		v.find("", have.Q(), need.Q(), func() string {
			return fmt.Sprintf("slot and plugs may give %s, and it draws %s", have.Q(), need.Q())
		})
		return v.margins
	},
}

// announced is the most that a 12-contact plug of a supply announces, 0 where it has none.
func announced(v *View, s *part.Supply) int64 {
	var most int64
	for i := range s.Cables {
		for _, p := range s.Cables[i].Plugs {
			if p == part.PlugCard12 {
				most = max(most, int64(figure(v, s.Cables[i].Rated, &s.Article, "cables.rated_w")))
			}
		}
	}
	return most
}
