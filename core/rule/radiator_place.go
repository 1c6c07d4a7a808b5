package rule

import (
	"fmt"
	"slices"

	"slipfit/core/build"
	"slipfit/core/unit"
)

// RadiatorPlace wants a place for a liquid cooler's radiator on the chosen face, made for fans of its size and as many of them.
var RadiatorPlace = Rule{
	ID:    "radiator-place",
	Group: Fit,
	Title: "The layout takes such a radiator there",
	Doc: `mount: have = 1 where this layout takes a radiator on the chosen face, else 0; need = 1
fan size: have = 1 where the mount carries the hole pattern of the radiator's fan size, else 0; need = 1
fans: have = fans side by side the mount takes; need = sections of the radiator
A radiator's nominal size is fans × fan size. Its length with its tanks, and its thickness, are checked by radiator-mount.`,
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
		return v.margins
	},
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
