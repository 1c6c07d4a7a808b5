package rule

import (
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// RadiatorMount keeps a liquid cooler's radiator, its tanks and its fans within the place they hang in.
var RadiatorMount = Rule{
	ID:    "radiator-mount",
	Group: Fit,
	Title: "The radiator fits its mount",
	Doc: `length: have = longest radiator of the mount; need = radiator with its tanks, mm
thickness: have = thickest radiator with its fans, nothing else in the way; need = radiator + one layer of its fans, mm
The nominal size (fans × fan size) leaves the tanks out, which take 30 to 40 mm: length is checked on its own. What it takes
	from the card, the memory and the board is found by radiator-card, radiator-memory and radiator-board.`,
	Source: "makers' sheets; that tanks come on top of the nominal size: common practice",
	Reads:  []build.Seat{build.Case, build.Cooler},
	Check: func(v *View) []Margin {
		if !v.both(build.Case, build.Cooler) || v.Cooler.Liquid == nil {
			return nil
		}
		m, l := v.Mount(), v.Cooler.Liquid
		if m == nil {
			return nil // radiator-place tells
		}
		longest := mountFigure(v, m, m.Length, "length_mm")
		length := figure(v, l.Length, &v.Cooler.Article, "liquid.radiator_length_mm")
		v.find("length", longest.Q(), length.Q(), say("the mount at the %s takes %s, the radiator with its tanks is %s long", v.Face, longest.Q(), length.Q()))
		thickest := mountFigure(v, m, m.Thickness, "thickness_mm")
		hung := hangs(v)
		v.find("thickness", thickest.Q(), hung.Q(), say("the mount at the %s takes %s, the radiator with its fans is %s thick", v.Face, thickest.Q(), hung.Q()))
		return v.margins
	},
}

// hangs is how far the radiator and one layer of its fans stand in from the mount.
func hangs(v *View) unit.Length {
	t := figure(v, v.Cooler.Liquid.Thickness, &v.Cooler.Article, "liquid.radiator_thickness_mm")
	if figure(v, v.Cooler.Fans, &v.Cooler.Article, "fans") > 0 {
		t += figure(v, v.Cooler.Fan.Thickness, &v.Cooler.Article, "fan.thickness_mm")
	}
	return t
}

// mountFigure reads a figure the case's sheet gives for a mount.
func mountFigure[T ~int64 | ~bool](v *View, m *part.RadiatorMount, f unit.Figure[T], field string) T {
	x, ok := f.Get()
	if !ok {
		v.lacks(&v.Case.Article, "radiators."+string(m.Face)+"."+field)
	}
	return x
}
