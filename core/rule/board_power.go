package rule

import (
	"fmt"

	"slipfit/core/build"
)

// BoardPower is what the board's converters hold against what the processor draws.
var BoardPower = Rule{
	ID:    "board-power",
	Group: Mate,
	Title: "The board's converters carry the processor",
	Doc: `sustained: have = processor power the board's converters hold without end, W; need = power the processor draws without end, W
boost: the same have; need = power the processor may draw for more than a second, W
Under the sustained power the board would slow the processor for ever, so that is a clash. Under the boost alone the board
	cuts short the first seconds of a job, which is an advice. The board's figure holds with some air over its converters.
	When short: a board with stronger converters, or a processor that asks less.`,
	Source: "common practice; that boost is what may last over one second: ATX 3.0 design guide, table 2-1, notes",
	Reads:  []build.Seat{build.Board, build.Processor},
	Check: func(v *View) []Margin {
		if !v.both(build.Board, build.Processor) {
			return nil
		}
		board, processor := v.Board, v.Processor
		have := figure(v, board.Sustained, &board.Article, "processor_power_w")
		steady := figure(v, processor.Sustained, &processor.Article, "sustained_w")
		v.find("sustained", have.Q(), steady.Q(), func() string {
			return fmt.Sprintf("%s holds %s for the processor, and %s draws %s at full work", board.Name, have.Q(), processor.Name, steady.Q())
		})
		have = figure(v, board.Sustained, &board.Article, "processor_power_w")
		boost := figure(v, processor.Boost, &processor.Article, "boost_w")
		held := have
		v.advise("boost", held.Q(), boost.Q(), func() string {
			if held < boost {
				return fmt.Sprintf("%s would boost to %s in the first seconds of a job, and %s holds it to %s", processor.Name, boost.Q(), board.Name, held.Q())
			}
			return fmt.Sprintf("%s carries the %s to which %s boosts", board.Name, boost.Q(), processor.Name)
		})
		return v.margins
	},
}
