package rule

import (
	"fmt"
	"slices"

	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/feed"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// SupplyExcursion is what the supply must ride through at each time scale against what the parts draw at that scale.
var SupplyExcursion = Rule{
	ID:    "supply-excursion",
	Group: Feed,
	Title: "The supply rides through the peaks of card and processor",
	Doc: `For 100 µs, 1 ms, 10 ms and 100 ms: have = power a supply of this rating and edition of the design guide must ride through, W;
need = graphics card at that scale + processor at that scale + everything else steady, W; all are taken to peak together
Card: its sustained power × the allowance of its plug class; a measured peak of its sheet rules over it. Processor up to 10 ms: its
	boost × the guide's ratio of peak to continuous current at its thermal design power; longer: its boost. An edition that promises no
	excursion is held to its rating at 10 ms and more; under that its own capacitors carry, so that the shorter scales only advise. When
	short: a larger supply, or one of edition 3.0 or later with the 12-contact plug.`,
	Source:   "ATX12VO design guide 2.01, table 3-3 (same split in the ATX 3.x guide); ATX 3.0 guide, table 2-1; PCIe CEM 5.0; cards with older plugs, and what capacitors carry: common practice",
	Reads:    loadSeats,
	Early:    []Early{{Seats: []build.Seat{build.Board, build.Processor, build.Supply}}, {Seats: []build.Seat{build.Board, build.Processor, build.Graphics, build.Supply}}},
	Bounds:   excursions[:],
	Suffices: func(*brief.Needs) []Sum { return excursions[:] },
	Check: func(v *View) []Margin {
		if !v.both(build.Supply, build.Board, build.Processor) {
			return nil
		}
		rating := figure(v, v.Supply.Rating, &v.Supply.Article, "rating_w")
		gives, promised := feed.SupplyPeaks(int64(rating), revisionOf(v.Supply.Guide), hasPlug(v.Supply, part.PlugCard12))
		card, processor := cardPeaks(v), processorPeaks(v)
		var rest unit.Power
		for _, s := range loadSeats {
			if s != build.Processor && s != build.Graphics {
				rest += steadyLoad(v, s)
			}
		}
		supply, lacking := v.Supply, slices.Clone(v.missing)
		for span := feed.Span100us; span < feed.SpanSteady; span++ {
			v.missing = append(v.missing[:0], lacking...) // every scale rests on the same figures
			have, fromCard, fromProcessor := unit.Power(gives[span]), unit.Power(card[span]), unit.Power(processor[span])
			why := func() string {
				promise := "must ride through"
				if !promised {
					promise = "promises nothing over"
				}
				return fmt.Sprintf("for %s the card may draw %s, the processor %s and the rest %s; %s %s %s", span, fromCard.Q(), fromProcessor.Q(), rest.Q(), supply.Name, promise, have.Q())
			}
			if need := (fromCard + fromProcessor + rest).Q(); !promised && span < feed.Span10ms {
				v.advise(span.String(), have.Q(), need, why)
			} else {
				v.find(span.String(), have.Q(), need, why)
			}
		}
		return v.margins
	},
}

var excursions = [...]Sum{excursion(feed.Span100us), excursion(feed.Span1ms), excursion(feed.Span10ms), excursion(feed.Span100ms)}

// excursion is the sum of one time scale.
func excursion(span feed.Span) Sum {
	return Sum{
		Kind: unit.Watt,
		Term: func(v *View, s build.Seat) (gives, takes int64) {
			switch {
			case s == build.Supply && v.Supply != nil:
				rating := figure(v, v.Supply.Rating, &v.Supply.Article, "rating_w")
				given, promised := feed.SupplyPeaks(int64(rating), revisionOf(v.Supply.Guide), hasPlug(v.Supply, part.PlugCard12))
				if !promised && span < feed.Span10ms {
					return boundless, 0 // its capacitors carry
				}
				return given[span], 0
			case s == build.Graphics && v.Graphics != nil:
				return 0, cardPeaks(v)[span]
			case s == build.Processor && v.Processor != nil:
				return 0, processorPeaks(v)[span]
			}
			return 0, int64(steadyLoad(v, s))
		},
	}
}

// boundless stands for what a supply gives where nothing holds it, mW: far more than a wall socket feeds. Common practice.
const boundless = 100_000_000

// cardPeaks is what the graphics card draws at each time scale.
func cardPeaks(v *View) feed.Peaks {
	if v.Graphics == nil {
		return feed.Peaks{}
	}
	class := feed.CardOlder
	for i := range v.Graphics.Sockets {
		if v.Graphics.Sockets[i].Kind == part.SocketCard12 {
			class = feed.CardTwelve
		}
	}
	steady := int64(steadyLoad(v, build.Graphics))
	peaks := feed.CardPeaks(steady, class)
	if stated, ok := v.Graphics.Peak.Get(); ok {
		for span := range peaks {
			peaks[span] = min(peaks[span], max(int64(stated), steady))
		}
		peaks[feed.Span100us] = max(int64(stated), steady)
	}
	return peaks
}

// processorPeaks is what the processor draws at each time scale.
func processorPeaks(v *View) feed.Peaks {
	boost := int64(figure(v, v.Processor.Boost, &v.Processor.Article, "boost_w"))
	budget := feed.ProcessorPower(int64(figure(v, v.Processor.TDP, &v.Processor.Article, "tdp_w")))
	return feed.ProcessorPeaks(boost, (boost*budget.PeakMW+budget.ContinuousMW-1)/budget.ContinuousMW)
}

func revisionOf(g part.Guide) feed.Revision {
	switch g {
	case part.Guide2:
		return feed.Revision2
	case part.Guide30:
		return feed.Revision30
	case part.Guide31:
		return feed.Revision31
	}
	return feed.RevisionUnknown
}

// hasPlug reports whether a supply has a plug of a kind on any cable.
func hasPlug(s *part.Supply, kind part.PlugKind) bool {
	for i := range s.Cables {
		for _, p := range s.Cables[i].Plugs {
			if p == kind {
				return true
			}
		}
	}
	return false
}
