package rule

import (
	"fmt"

	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// GrowthDrives says how many module sockets are left.
var GrowthDrives = Rule{
	ID:    "growth-drives",
	Group: Care,
	Title: "A socket for another drive is left",
	Doc: `have = module sockets for storage on the board − modules fitted; need = 1 where an upgrade is thought of, else 0
Advice only. What using a further socket switches off stands in the lanes rule. Bays for 2.5 and 3.5 inch drives are counted
	by the bays rule.`,
	Source: "common practice",
	Reads:  []build.Seat{build.Board, build.Boot, build.Cache, build.Archive},
	Check: func(v *View) []Margin {
		if !v.both(build.Board) {
			return nil
		}
		fitted := 0
		for _, t := range v.Tiers() {
			if t.Drive.Form == part.FormM2 {
				fitted += t.Count
			}
		}
		board := v.Board
		left, need := len(board.M2)-fitted, 0
		if years, thought := v.Needs.Wish.Growth.Get(); thought && years > 0 {
			need = 1
		}
		v.advise("", unit.Count(left), unit.Count(need), func() string {
			return fmt.Sprintf("%s has %s for modules, %s left", board.Name, plural(len(board.M2), "socket"), remain(left))
		})
		return v.margins
	},
}
