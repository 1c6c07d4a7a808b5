package rule

import "slipfit/core/build"

// RadiatorBoard keeps the board's heat-sinks out from under a radiator that hangs over the board.
var RadiatorBoard = Rule{
	ID:    "radiator-board",
	Group: Fit,
	Title: "Board heat-sinks stand under a radiator over the board",
	Doc: `Where radiator and fans hang over the board (see radiator-memory):
have = height above the board that stays free under them − what the plate has moved, mm; need = height of the nearest heat-sink on the board, mm
The converters' heat-sink stands along the board's top edge on most boards. When short: a thinner radiator or another face.`,
	Source: "geometry of the case's sheet; common practice",
	Reads:  []build.Seat{build.Case, build.Board, build.Cooler},
	Check: func(v *View) []Margin {
		if !v.both(build.Case, build.Board, build.Cooler) {
			return nil
		}
		if over, _, _, _ := overBoard(v); !over {
			return nil // a missing figure is told by radiator-mount
		}
		above := mountFigure(v, v.Mount(), v.Mount().Above, "board_above_mm") - v.Shift()
		high := figure(v, v.Board.SocketAt.SinkHigh, &v.Board.Article, "socket_place.heat_sink_height_mm")
		v.find("", above.Q(), high.Q(), say("the radiator hangs over the board and leaves %s above it, its heat-sink stands %s", above.Q(), high.Q()))
		return v.margins
	},
}
