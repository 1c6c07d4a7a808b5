package rule

import (
	"slices"

	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// FanPlaces keeps the fans bought for the case within its fan places.
var FanPlaces = Rule{
	ID:    "fan-places",
	Group: Fit,
	Title: "Case fans have places of their size",
	Doc: `For each face with fans bought for it:
place: have = 1 where the layout takes fans there with their hole pattern, else 0; need = 1
thickness: have = thickest fan of the place; need = thickness of the fan, mm
count: have = fans the place takes − sections of a radiator on that face − fans the case brings there; need = fans bought
Holes count, not frames: 120 mm fans have a pitch of 105 mm, 140 mm fans 124.5 mm, some "140 mm" fans 105 mm. A fan that came
	with the case comes out where a radiator takes its place: keep it with the papers. When short: another face, or fewer.`,
	Source: "hole pitches: public CAD models of fans; 80 and 92 mm from memory; common practice",
	Reads:  []build.Seat{build.Case, build.Cooler, build.Fans},
	Early:  []Early{{Seats: []build.Seat{build.Case, build.Fans}}},
	Check: func(v *View) []Margin {
		if !v.both(build.Case, build.Fans) {
			return nil
		}
		for i, set := range v.Fans {
			first := !slices.ContainsFunc(v.Fans[:i], func(f build.FanSet) bool { return f.Face == set.Face })
			pitch := figure(v, set.Fan.Holes, &set.Fan.Article, "hole_pitch_mm")
			place := v.fanPlace(set.Face, pitch)
			face := set.Face
			v.met(fanSubjects[face].place, place != nil, func() string {
				return say("%s with holes %s apart, bought for the %s of %s", set.Fan.Name, pitch.Q(), face, v.Case.Name)()
			})
			if place == nil {
				continue
			}
			thick := figure(v, set.Fan.Thickness, &set.Fan.Article, "thickness_mm")
			room := placeFigure(v, place, place.Thickness, "thickness_mm")
			v.find(fanSubjects[face].thickness, room.Q(), thick.Q(), say("the place at the %s takes fans of %s, these are %s", face, room.Q(), thick.Q()))
			if first {
				v.fanCount(face, place)
			}
		}
		return v.margins
	},
}

// fanCount adds the margin of the number of fans on a face.
func (v *View) fanCount(face part.Face, place *part.FanPlace) {
	want := 0
	for _, set := range v.Fans {
		if set.Face == face {
			want += set.Count
		}
	}
	takes := int(placeFigure(v, place, place.Fans, "fans"))
	radiator, brings := 0, 0
	if v.Mount() != nil && v.Face == face {
		radiator = int(figure(v, v.Cooler.Liquid.Sections, &v.Cooler.Article, "liquid.sections"))
	}
	for i := range v.Case.Fans {
		if f := &v.Case.Fans[i]; f.Face == face {
			brings += int(figure(v, f.Count, &v.Case.Article, "fans."+string(face)+".count"))
		}
	}
	kept := max(0, min(brings, takes-radiator))
	out := brings - kept
	v.find(fanSubjects[face].count, unit.Count(takes-radiator-kept), unit.Count(want), func() string {
		s := say("%s at the %s, %d of them the radiator's, %d filled by fans the case brings; %d bought", plural(takes, "place"), face, radiator, kept, want)()
		if out > 0 {
			s += say("; %d that came with the case %s out for the radiator", out, agree(out, "comes", "come"))()
		}
		return s
	})
}

// fanPlace is the layout's place on a face that carries the hole pitch; nil where there is none.
func (v *View) fanPlace(face part.Face, pitch unit.Length) *part.FanPlace {
	for i := range v.Layout.FanPlaces {
		if p := &v.Layout.FanPlaces[i]; p.Face == face && p.Takes(pitch) {
			return p
		}
	}
	return nil
}

// placeFigure reads a figure the case's sheet gives for a fan place.
func placeFigure[T ~int64 | ~bool](v *View, p *part.FanPlace, f unit.Figure[T], field string) T {
	x, ok := f.Get()
	if !ok {
		v.lacks(&v.Case.Article, "fan_places."+string(p.Face)+"."+field)
	}
	return x
}

// fanSubjects names the margins of each face.
var fanSubjects = map[part.Face]struct{ place, thickness, count string }{
	"":          {"no face, place", "no face, thickness", "no face, count"},
	part.Front:  {"front, place", "front, thickness", "front, count"},
	part.Rear:   {"rear, place", "rear, thickness", "rear, count"},
	part.Top:    {"top, place", "top, thickness", "top, count"},
	part.Bottom: {"bottom, place", "bottom, thickness", "bottom, count"},
	part.Side:   {"side, place", "side, thickness", "side, count"},
}
