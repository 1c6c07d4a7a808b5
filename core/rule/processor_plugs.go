package rule

import (
	"fmt"

	"slipfit/core/build"
	"slipfit/core/feed"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// converterShare is what the board's converters pass on of what they take, in per cent. Common practice.
const converterShare = 90

// ProcessorPlugs is what the fed processor sockets of the board carry against what the processor draws.
var ProcessorPlugs = Rule{
	ID:    "processor-plugs",
	Group: Feed,
	Title: "The processor's plugs carry its boost",
	Doc: `have = sum over the board's processor sockets that the supply has a plug for: 384 W (8 contacts) or 192 W (4 contacts)
need = processor boost ÷ 0.9, since the board's converters keep a tenth, W
Sockets a board may leave empty count where the supply has a plug left for them. Whether the sockets that must be fed are fed is the rule
	plugs. When short: a supply with more processor plugs, or a board with more sockets.`,
	Source: "live pins × 8 A × 12 V; 6 to 8 A a pin: ATX 3.0 design guide § 2.2.1; efficiency of the board's converters: common practice",
	Reads:  []build.Seat{build.Board, build.Processor, build.Supply},
	Check: func(v *View) []Margin {
		if !v.both(build.Board, build.Processor, build.Supply) {
			return nil
		}
		var n socketList
		n.board(v, processorSockets)
		n.board(v, optionalSockets)
		var gives int64
		given, err := feed.AssignPlugs(n.sockets, processorCables(v))
		if err != nil {
			v.find("", unit.Count(0), unit.Count(len(n.sockets)), err.Error)
			return v.margins
		}
		fed := 0
		for i, f := range given.Feeds {
			if f.Cable >= 0 {
				gives += n.sockets[i].Kind.LimitMW()
				fed++
			}
		}
		boost := int64(figure(v, v.Processor.Boost, &v.Processor.Article, "boost_w"))
		have, need := watts(gives), watts((boost*100+converterShare-1)/converterShare)
		v.find("", have.Q(), need.Q(), func() string {
			return fmt.Sprintf("%s fed, which %s %s, and the processor's boost takes %s at the plugs", plural(fed, "processor socket"), agree(fed, "carries", "carry"), have.Q(), need.Q())
		})
		return v.margins
	},
}

// processorCables is the supply's cables with plugs for the processor.
func processorCables(v *View) []feed.Cable {
	list := make([]feed.Cable, 0, 4)
	for i := range v.Supply.Cables {
		c := &v.Supply.Cables[i]
		var plugs []feed.Plug
		for _, p := range c.Plugs {
			switch p {
			case part.PlugProcessor44, part.PlugProcessor8, part.PlugProcessor4:
				plugs = append(plugs, feed.Plug{Kind: plugOf(p)})
			}
		}
		if len(plugs) == 0 {
			continue
		}
		for range figure(v, c.Count, &v.Supply.Article, "cables.count") {
			list = append(list, feed.Cable{Plugs: plugs})
		}
	}
	return list
}
