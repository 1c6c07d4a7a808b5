package rule

import (
	"fmt"

	"slipfit/core/build"
	"slipfit/core/unit"
)

// MemoryCount is the board's memory slots against the modules.
var MemoryCount = Rule{
	ID:    "memory-count",
	Group: Mate,
	Title: "There is a slot for every memory module",
	Doc: `have = memory slots of the board
need = modules of a kit × kits
A board with two slots takes two modules, whatever the size. When short: fewer and larger modules, which also run faster,
	or a board with more slots.`,
	Source: "common practice",
	Reads:  []build.Seat{build.Board, build.Memory},
	Check: func(v *View) []Margin {
		if !v.both(build.Board, build.Memory) {
			return nil
		}
		board, kit, kits := v.Board, v.Memory, v.Kits
		slots := figure(v, board.Slots, &board.Article, "memory_slots")
		modules := figure(v, kit.Modules, &kit.Article, "modules") * unit.Whole(kits)
		v.find("", slots.Q(), modules.Q(), func() string {
			return fmt.Sprintf("%s has %s for %s", board.Name, plural(slots, "memory slot"), plural(modules, "module"))
		})
		return v.margins
	},
}
