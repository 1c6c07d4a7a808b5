package rule

import "slipfit/core/build"

// CoolerRaised keeps a fan that memory lifts under the panel.
var CoolerRaised = Rule{
	ID:    "cooler-raised",
	Group: Fit,
	Title: "A fan lifted by memory stands under the panel",
	Doc: `have = room above the board at plate position 0 − what the plate has moved, mm
need = top of the cooler's memory-side fan in its lowest place + how far the modules lift it, mm
lift = module height + 4 mm seat − free height under the overhang, where the cooler hangs over a module used and that is
	positive; else the rule does not apply. How far the fan can be moved is cooler-memory's. When short: lower modules.`,
	Source: "geometry; see cooler-memory",
	Reads:  []build.Seat{build.Case, build.Board, build.Cooler, build.Memory},
	Check: func(v *View) []Margin {
		if !v.both(build.Case, build.Board, build.Cooler, build.Memory) || v.Cooler.Air == nil {
			return nil
		}
		over, _ := overhang(v, nearestModule(v))
		if !over {
			return nil // beside the modules; a missing figure is told by cooler-memory
		}
		lift := moduleTop(v) - figure(v, v.Cooler.Air.UnderFan, &v.Cooler.Article, "air.memory_clear_mm")
		if len(v.missing) == 0 && lift <= 0 {
			return nil
		}
		have := coolerRoom(v)
		top := figure(v, v.Cooler.Air.FanTop, &v.Cooler.Article, "air.fan_top_mm")
		v.find("", have.Q(), (top + lift).Q(), say("room for %s above the board; the fan's top at %s is lifted %s by the memory", have.Q(), top.Q(), lift.Q()))
		return v.margins
	},
}
