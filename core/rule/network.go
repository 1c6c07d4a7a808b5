package rule

import (
	"fmt"

	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/unit"
)

// Network is the wired and wireless network the machine has against what the brief asks.
var Network = Rule{
	ID:    "network",
	Group: Mate,
	Title: "The machine has the network asked for",
	Doc: `wired: have = fastest wired interface of board and cards, Mbit/s; need = what the brief asks, Mbit/s
wireless: the same of wireless interfaces
The figures are link rates: about 94 % of a wired rate carries data, and seldom more than half of a wireless one. The other end
	must keep up. When short: a board with a faster interface, or a card.`,
	Source: "IEEE 802.3 link rates; wireless share: common practice",
	Reads:  []build.Seat{build.Board, build.Cards},
	Check: func(v *View) []Margin {
		if !v.both(build.Board) {
			return nil
		}
		for _, kind := range [...]struct {
			resource brief.Resource
			wireless bool
		}{{brief.Wired, false}, {brief.Wireless, true}} {
			need, asked := v.Needs.Get(kind.resource)
			if !asked {
				continue
			}
			have := networkRate(v, kind.wireless)
			title := need.Resource.Title()
			v.serve(need, int64(have), func() string {
				if have == 0 {
					return "the machine has no " + title
				}
				return fmt.Sprintf("the fastest %s of the machine runs at %s", title, have.Q())
			})
		}
		return v.margins
	},
}

// networkRate is the fastest interface of a kind, 0 where there is none.
func networkRate(v *View, wireless bool) unit.LinkRate {
	var best unit.LinkRate
	for i := range v.Board.Network {
		if n := &v.Board.Network[i]; n.Wireless == wireless {
			best = max(best, figure(v, n.Rate, &v.Board.Article, "network.rate_mbit_s"))
		}
	}
	for i := range v.Cards {
		c := v.Cards[i].Card
		if c.Network != nil && c.Network.Wireless == wireless {
			best = max(best, figure(v, c.Network.Rate, &c.Article, "network.rate_mbit_s"))
		}
	}
	return best
}
