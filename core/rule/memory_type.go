package rule

import (
	"fmt"

	"slipfit/core/build"
)

// MemoryType is the generation and form of the modules against the board's slots.
var MemoryType = Rule{
	ID:    "memory-type",
	Group: Mate,
	Title: "The memory is of the board's kind",
	Doc: `generation: have = 1 where board and kit are of one memory generation, else 0; need = 1
form: have = 1 where the modules have the form of the board's slots (UDIMM, SO-DIMM, RDIMM), else 0; need = 1
The notches of generations and forms differ: a module of another kind does not seat. Do not force one. When it clashes:
	another kit.`,
	Source: "JEDEC module outlines MO-309 (DDR4) and MO-329 (DDR5), from memory: the notches differ",
	Reads:  []build.Seat{build.Board, build.Memory},
	Check: func(v *View) []Margin {
		if !v.both(build.Board, build.Memory) {
			return nil
		}
		board, kit := v.Board, v.Memory
		v.met("generation", board.Memory == kit.Type, func() string {
			return fmt.Sprintf("%s takes %s, %s is %s", board.Name, board.Memory, kit.Name, kit.Type)
		})
		v.met("form", board.Module == kit.Form, func() string {
			return fmt.Sprintf("the slots of %s take %s, the modules of %s are %s", board.Name, board.Module, kit.Name, kit.Form)
		})
		return v.margins
	},
}
