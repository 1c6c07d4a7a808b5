package rule

import (
	"slipfit/core/build"
	"slipfit/core/unit"
)

// CoolerHeight keeps the processor cooler under the panel. A fan that memory lifts is cooler-raised's.
var CoolerHeight = Rule{
	ID:    "cooler-height",
	Group: Fit,
	Title: "The processor cooler stands under the panel",
	Doc: `have = room above the board at plate position 0 − what the plate has moved, mm
need = height of the cooler above the board, fans in their lowest place; of cold plate and pump for a liquid loop, mm
A fan that tall memory lifts stands higher: cooler-raised finds that. When short: a lower cooler, or move the plate.`,
	Source: "maker's sheets",
	Reads:  []build.Seat{build.Case, build.Cooler},
	Check: func(v *View) []Margin {
		if !v.both(build.Case, build.Cooler) {
			return nil
		}
		have := coolerRoom(v)
		need := coolerHeight(v)
		v.find("", have.Q(), need.Q(), say("room for %s above the board, %s stands %s", have.Q(), v.Cooler.Name, need.Q()))
		return v.margins
	},
}

// coolerRoom is the height above the board at the plate's position.
func coolerRoom(v *View) unit.Length {
	return figure(v, v.Layout.Cooler, &v.Case.Article, "cooler_height_mm") - v.Shift()
}

// coolerHeight is the height of the cooler above the board, fans in their lowest place.
func coolerHeight(v *View) unit.Length {
	switch {
	case v.Cooler.Air != nil:
		return figure(v, v.Cooler.Air.Height, &v.Cooler.Article, "air.height_mm")
	case v.Cooler.Liquid != nil:
		return figure(v, v.Cooler.Liquid.PumpHeight, &v.Cooler.Article, "liquid.pump_height_mm")
	}
	v.lacks(&v.Cooler.Article, "air or liquid")
	return 0
}
