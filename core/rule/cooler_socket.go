package rule

import (
	"slices"
	"strings"

	"slipfit/core/build"
)

// CoolerSocket is the cooler's mounting kit against the board's socket.
var CoolerSocket = Rule{
	ID:    "cooler-socket",
	Group: Mate,
	Title: "The cooler's mounting kit fits the socket",
	Doc: `have = 1 where the cooler's sheet lists the board's socket among those its mounting kit fits, else 0; need = 1
When it clashes: another cooler; makers also sell kits for sockets a cooler was not delivered for, and then the sheet of the
	shop must say so.`,
	Source: "common practice",
	Reads:  []build.Seat{build.Board, build.Cooler},
	Check: func(v *View) []Margin {
		if !v.both(build.Board, build.Cooler) {
			return nil
		}
		board, cooler := v.Board, v.Cooler
		v.met("", slices.Contains(cooler.Sockets, board.Socket), func() string {
			return "the mounting kit of " + cooler.Name + " fits " + strings.Join(cooler.Sockets, ", ") + ", and " + board.Name + " has socket " + board.Socket
		})
		return v.margins
	},
}
