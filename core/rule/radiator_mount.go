package rule

import (
	"fmt"
	"slices"

	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// RadiatorMount keeps a liquid cooler's radiator, its tanks and its fans within the place it hangs in.
var RadiatorMount = Rule{
	ID:    "radiator-mount",
	Group: Fit,
	Title: "The radiator fits its mount",
	Doc: `mount: have = 1 where this layout takes a radiator on the chosen face, else 0; need = 1
fan size: have = 1 where the mount carries the hole pattern of the radiator's fan size, else 0; need = 1
fans: have = fans side by side the mount takes; need = sections of the radiator
length: have = longest radiator of the mount; need = radiator with its tanks, mm
thickness: have = thickest radiator with its fans, nothing else in the way; need = radiator + one layer of its fans, mm
The nominal size (fans × fan size) leaves the tanks out, which take 30 to 40 mm: length is checked on its own. What it takes
	from the card, the memory and the board is found by radiator-card, radiator-memory and radiator-board.`,
	Source: "radiator nominal length = n × fan size: naming practice; figures: makers' sheets",
	Reads:  []build.Seat{build.Case, build.Cooler},
	Check: func(v *View) []Margin {
		if !v.both(build.Case, build.Cooler) || v.Cooler.Liquid == nil {
			return nil
		}
		m, l := v.Mount(), v.Cooler.Liquid
		face := v.Face
		v.met("mount", m != nil, func() string {
			if m == nil {
				return say("%s takes no radiator at the %s in layout %s", v.Case.Name, face, v.Layout.ID)()
			}
			return say("%s takes a radiator at the %s", v.Case.Name, face)()
		})
		if m == nil {
			return v.margins
		}
		size := figure(v, l.FanSize, &v.Cooler.Article, "liquid.fan_size_mm")
		v.met("fan size", slices.Contains(m.FanSizes, size), func() string {
			return say("the radiator is made for fans of %s, the mount at the %s for %s", size.Q(), face, sizes(m.FanSizes))()
		})
		sections := figure(v, l.Sections, &v.Cooler.Article, "liquid.sections")
		fans := mountFigure(v, m, m.Fans, "fans")
		v.find("fans", fans.Q(), sections.Q(), func() string {
			return fmt.Sprintf("the mount at the %s takes %s side by side, the radiator has %s", face, plural(fans, "fan"), plural(sections, "section"))
		})
		longest := mountFigure(v, m, m.Length, "length_mm")
		length := figure(v, l.Length, &v.Cooler.Article, "liquid.radiator_length_mm")
		v.find("length", longest.Q(), length.Q(), say("the mount at the %s takes %s, the radiator with its tanks is %s long", face, longest.Q(), length.Q()))
		thickest := mountFigure(v, m, m.Thickness, "thickness_mm")
		hung := hangs(v)
		v.find("thickness", thickest.Q(), hung.Q(), say("the mount at the %s takes %s, the radiator with its fans is %s thick", face, thickest.Q(), hung.Q()))
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

// sizes lists lengths for a sentence.
func sizes(list []unit.Length) string {
	s := ""
	for i, l := range list {
		if i > 0 {
			s += " and "
		}
		s += l.Q().String()
	}
	return s
}
