package rule

import (
	"fmt"

	"slipfit/core/build"
)

// Firmware is the firmware the board is delivered with against the earliest that knows the processor.
var Firmware = Rule{
	ID:    "firmware",
	Group: Mate,
	Title: "The board's firmware knows the processor",
	Doc: `have = firmware version the board is delivered with
need = earliest firmware version of that chipset's boards that knows the processor
A board with older firmware does not start with that processor. Where the board renews its firmware with no processor
	fitted this is an advice: flash it before assembly. Where it does not, it is a clash: it would take an older processor to
	do it, so choose another board, a board of later delivery, or another processor.`,
	Source: "common practice: the processor support list of a board's maker",
	Reads:  []build.Seat{build.Board, build.Processor},
	Check: func(v *View) []Margin {
		if !v.both(build.Board, build.Processor) {
			return nil
		}
		board, processor := v.Board, v.Processor
		at := platformOf(processor, board)
		if at < 0 {
			return nil
		}
		have := figure(v, board.Firmware, &board.Article, "firmware")
		need := figure(v, processor.Platforms[at].Firmware, &processor.Article, "platforms.firmware")
		if have >= need || len(v.missing) > 0 {
			v.find("", have.Q(), need.Q(), func() string {
				return fmt.Sprintf("%s comes with firmware %s, and %s is known from %s on", board.Name, have, processor.Name, need)
			})
			return v.margins
		}
		if figure(v, board.FlashAlone, &board.Article, "flashes_without_processor") {
			v.advise("", have.Q(), need.Q(), func() string {
				return fmt.Sprintf("renew the firmware of %s from %s to %s or later before assembly: it can be done from a USB stick with no processor fitted", board.Name, have, need)
			})
			return v.margins
		}
		v.find("", have.Q(), need.Q(), func() string {
			return fmt.Sprintf("%s comes with firmware %s but %s needs %s, and the board cannot be renewed without a processor it knows already", board.Name, have, processor.Name, need)
		})
		return v.margins
	},
}
