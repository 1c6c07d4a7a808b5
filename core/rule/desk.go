package rule

import (
	"slipfit/core/build"
	"slipfit/core/unit"
)

// rearPlugs is what plugs and the first bend of their cables need behind the machine. Common practice.
const rearPlugs = 50 * unit.Millimetre

// Desk keeps the machine within the place it will stand in.
var Desk = Rule{
	ID:    "desk",
	Group: Fit,
	Title: "The machine fits its place",
	Doc: `width, height: have = free width, free height of the place; need = outer width, height of the case, feet included, mm
depth: have = free depth; need = outer depth of the case + 50 mm for the plugs behind it, mm
volume: have = largest case wished for; need = outer volume of the case, litres
Each only where the brief says so. Leave the air openings free besides. When short: a smaller case or another place.`,
	Source: "plugs behind the machine 50 mm: common practice",
	Reads:  []build.Seat{build.Case},
	Check: func(v *View) []Margin {
		if !v.both(build.Case) {
			return nil
		}
		p, o := &v.Needs.Place, &v.Case.Outer
		v.within("width", p.Width, o.Width, "outer.width_mm", 0)
		v.within("height", p.Height, o.Height, "outer.height_mm", 0)
		v.within("depth", p.Depth, o.Depth, "outer.depth_mm", rearPlugs)
		if most, asked := v.Needs.Wish.Volume.Get(); asked {
			volume := figure(v, v.Case.Volume, &v.Case.Article, "volume_l")
			v.find("volume", most.Q(), volume.Q(), say("a case of at most %s is wished for, %s has %s", most.Q(), v.Case.Name, volume.Q()))
		}
		return v.margins
	},
}

// within adds the margin of one dimension of the place, where the brief gives it.
func (v *View) within(subject string, place, outer unit.Figure[unit.Length], field string, more unit.Length) {
	have, asked := place.Get()
	if !asked {
		return
	}
	need := figure(v, outer, &v.Case.Article, field) + more
	v.find(subject, have.Q(), need.Q(), say("%s free, %s needs %s", have.Q(), v.Case.Name, need.Q()))
}
