package rule

import "slipfit/core/build"

// RadiatorMemory keeps memory out from under a radiator that hangs over the board.
var RadiatorMemory = Rule{
	ID:    "radiator-memory",
	Group: Fit,
	Title: "Memory stands under a radiator that hangs over the board",
	Doc: `clear: where radiator and fans do not reach over the board, have = thickness they may have before they do; need = thickness they have, mm
under: where they do, have = height above the board that stays free under them − what the plate has moved; need = module height + 4 mm seat, mm
Assumes modules reach up to the board's top edge, as they nearly do. When short: lower modules, a thinner radiator, or another face.`,
	Source: "seated height module + 3 to 4 mm: common practice; geometry of the case's sheet",
	Reads:  []build.Seat{build.Case, build.Cooler, build.Memory},
	Check: func(v *View) []Margin {
		if !v.both(build.Case, build.Cooler, build.Memory) {
			return nil
		}
		over, meets, free, hung := overBoard(v)
		switch {
		case !meets:
			return nil
		case !over:
			v.find("clear", free.Q(), hung.Q(), say("the radiator with its fans is %s thick, over the board it would hang from %s on", hung.Q(), free.Q()))
		default:
			above := mountFigure(v, v.Mount(), v.Mount().Above, "board_above_mm") - v.Shift()
			top := moduleTop(v)
			v.find("under", above.Q(), top.Q(), say("the radiator hangs over the board and leaves %s above it, modules stand %s", above.Q(), top.Q()))
		}
		return v.margins
	},
}
