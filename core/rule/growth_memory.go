package rule

import (
	"fmt"

	"slipfit/core/build"
	"slipfit/core/unit"
)

// GrowthMemory says how many memory slots are left.
var GrowthMemory = Rule{
	ID:    "growth-memory",
	Group: Care,
	Title: "Memory slots are left for later",
	Doc: `have = slots of the board − modules fitted; need = modules of one more such kit where an upgrade is thought of, else 0
Advice only. Four modules run slower than two on most platforms, so even free slots are a second choice: larger modules in
	place of these are the first.`,
	Source: "common practice",
	Reads:  []build.Seat{build.Board, build.Memory},
	Check: func(v *View) []Margin {
		if !v.both(build.Board, build.Memory) {
			return nil
		}
		board := v.Board
		slots := figure(v, board.Slots, &board.Article, "memory_slots")
		modules := figure(v, v.Memory.Modules, &v.Memory.Article, "modules")
		left := slots - modules*unit.Whole(v.Kits)
		need := unit.Whole(0)
		if years, thought := v.Needs.Wish.Growth.Get(); thought && years > 0 {
			need = modules
		}
		v.advise("", left.Q(), need.Q(), func() string {
			return fmt.Sprintf("%s has %s, %s left", board.Name, plural(slots, "memory slot"), remain(left))
		})
		return v.margins
	},
}
