package rule

import (
	"slices"

	"slipfit/core/build"
	"slipfit/core/part"
)

// Platform is the board's chipset against the chipsets the processor runs on.
var Platform = Rule{
	ID:    "platform",
	Group: Mate,
	Title: "The board's chipset runs the processor",
	Doc: `have = 1 where the processor's sheet lists the board's chipset, else 0; need = 1
One socket often carries several generations of processors, and not every chipset runs them all. When it clashes: another
	board or another processor.`,
	Source: "common practice: the processor support list of a board's maker",
	Reads:  []build.Seat{build.Board, build.Processor},
	Check: func(v *View) []Margin {
		if !v.both(build.Board, build.Processor) {
			return nil
		}
		board, processor := v.Board, v.Processor
		listed := platformOf(processor, board) >= 0
		v.met("", listed, func() string {
			if listed {
				return processor.Name + " runs on chipset " + board.Chipset + " of " + board.Name
			}
			return processor.Name + " does not run on chipset " + board.Chipset + " of " + board.Name + ", though the socket may be the same"
		})
		return v.margins
	},
}

// platformOf is the place of the board's chipset among those that run the processor, −1 where it is not listed.
func platformOf(p *part.Processor, b *part.Board) int {
	return slices.IndexFunc(p.Platforms, func(x part.Platform) bool { return x.Chipset == b.Chipset })
}
