package rule

import "slipfit/core/build"

// RadiatorTubes keeps the tubes long enough for the way from socket to mount.
var RadiatorTubes = Rule{
	ID:    "radiator-tubes",
	Group: Fit,
	Title: "Tubes reach from the socket to the mount",
	Doc: `have = free length of the tubes, mm; need = routed path from the processor socket to this mount, mm
The case's sheet gives the path with ordinary bends; tubes pulled tight kink or load their fittings. When short: turn the
	radiator so that its tanks come nearer the socket, another face, or a loop with longer tubes.`,
	Source: "makers' sheets, common practice",
	Reads:  []build.Seat{build.Case, build.Cooler},
	Check: func(v *View) []Margin {
		if !v.both(build.Case, build.Cooler) {
			return nil
		}
		m := v.Mount()
		if m == nil {
			return nil
		}
		have := figure(v, v.Cooler.Liquid.Tube, &v.Cooler.Article, "liquid.tube_mm")
		need := mountFigure(v, m, m.Tube, "tube_mm")
		v.find("", have.Q(), need.Q(), say("tubes of %s, the way to the %s is %s", have.Q(), v.Face, need.Q()))
		return v.margins
	},
}
