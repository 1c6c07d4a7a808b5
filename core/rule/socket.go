package rule

import "slipfit/core/build"

// Socket is the processor's socket on the board.
var Socket = Rule{
	ID:     "socket",
	Group:  Mate,
	Title:  "Processor and board have the same socket",
	Doc:    `have = 1 where the names of the two sockets are equal, else 0; need = 1. When it clashes: another board or another processor; there is no adapter.`,
	Source: "common practice",
	Reads:  []build.Seat{build.Board, build.Processor},
	Check: func(v *View) []Margin {
		if !v.both(build.Board, build.Processor) {
			return nil
		}
		v.met("", v.Board.Socket == v.Processor.Socket,
			say("%s is made for socket %s, %s has socket %s", v.Processor.Name, v.Processor.Socket, v.Board.Name, v.Board.Socket))
		return v.margins
	},
}
