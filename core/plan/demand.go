package plan

import (
	"fmt"
	"slices"
	"strings"

	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// Demand is one thing that an ask says and that could be given up.
type Demand struct {
	Text string    // what is asked, to be read after "it asks for"
	Path string    // of the answer in the brief that asks it, such as "place.noise_dba"; empty where it follows from the work
	Kept build.Set // the seat that a choice settles; none for anything but a choice
	drop func(*Ask)
}

// Demands lists what an ask says, that which is given up last first: what the work needs, then what place and wishes
// ask, the budget, and the choices made.
func Demands(stock *part.Stock, ask Ask) []Demand {
	n := ask.Needs
	if n == nil {
		n = &brief.Needs{}
	}
	var list []Demand
	say := func(path string, drop func(*Ask), format string, args ...any) {
		list = append(list, Demand{Text: fmt.Sprintf(format, args...), Path: path, drop: drop})
	}
	for r := range n.By {
		if need := n.By[r]; need.Floor > 0 {
			say("", func(a *Ask) { a.Needs.By[r] = brief.Need{} }, "%s of at least %s: %s", need.Resource.Title(), need.FloorQ(), need.Reason)
		}
	}
	for _, c := range n.Decode {
		say("", func(a *Ask) { a.Needs.Decode = without(a.Needs.Decode, c) }, "video read in hardware as %s: %s", c.Codec, c.Reason)
	}
	for _, c := range n.Encode {
		say("", func(a *Ask) { a.Needs.Encode = without(a.Needs.Encode, c) }, "video written in hardware as %s: %s", c.Codec, c.Reason)
	}
	for _, s := range n.Screens {
		owner := "to be bought"
		if s.Owned {
			owner = "there already"
		}
		say("", func(a *Ask) { a.Needs.Screens = without(a.Needs.Screens, s) }, "%d × %d × %d pixels at %d Hz, %s", s.Count, s.Width, s.Height, s.Refresh, owner)
	}
	if n.ECC {
		say("error_correcting", func(a *Ask) { a.Needs.ECC = false }, "error-correcting memory")
	}
	if n.Copies {
		say("copies", func(a *Ask) { a.Needs.Copies = false }, "what is kept on two drives")
	}
	list = append(list, placed(n)...)
	if n.Budget > 0 && !slices.Contains(ask.Lift, "budget") {
		sum := n.Budget.String() + " before tax"
		if n.Named > 0 {
			sum = n.Named.String() + " with tax"
		}
		say("budget_minor", func(a *Ask) { a.Needs.Budget = 0 }, "a price of no more than %s", sum)
	}
	for _, c := range ask.Keep {
		text := "no " + c.Seat.Title()
		if c.Part != "" {
			text = named(stock, c.Part) + " as " + c.Seat.Title()
		}
		list = append(list, Demand{Text: text, Kept: build.SetOf(c.Seat), drop: func(a *Ask) { a.Keep = without(a.Keep, c) }})
	}
	for _, id := range ask.Without {
		say("", func(a *Ask) { a.Without = without(a.Without, id) }, "a build without %s", named(stock, id))
	}
	if makers := slices.Concat(n.Wish.Avoid, ask.Avoid); len(makers) > 0 {
		say("wishes.avoid_makers", func(a *Ask) { a.Avoid, a.Needs.Wish.Avoid = nil, nil }, "nothing made by %s", strings.Join(makers, ", "))
	}
	return list
}

// placed lists what the place and the wishes ask.
func placed(n *brief.Needs) []Demand {
	var list []Demand
	say := func(path string, drop func(*Ask), format string, args ...any) {
		list = append(list, Demand{Text: fmt.Sprintf(format, args...), Path: path, drop: drop})
	}
	if v, ok := n.Place.Noise.Get(); ok {
		say("place.noise_dba", func(a *Ask) { a.Needs.Place.Noise = unit.Figure[unit.Sound]{} }, "no more than %s at the chair", v.Q())
	}
	none := unit.Figure[unit.Length]{}
	if v, ok := n.Place.Width.Get(); ok {
		say("place.width_mm", func(a *Ask) { a.Needs.Place.Width = none }, "no more than %s of width", v.Q())
	}
	if v, ok := n.Place.Height.Get(); ok {
		say("place.height_mm", func(a *Ask) { a.Needs.Place.Height = none }, "no more than %s of height", v.Q())
	}
	if v, ok := n.Place.Depth.Get(); ok {
		say("place.depth_mm", func(a *Ask) { a.Needs.Place.Depth = none }, "no more than %s of depth", v.Q())
	}
	if v, ok := n.Wish.Volume.Get(); ok {
		say("wishes.volume_l", func(a *Ask) { a.Needs.Wish.Volume = unit.Figure[unit.Millilitre]{} }, "a case of no more than %s", v.Q())
	}
	if v, ok := n.Wish.Glass.Get(); ok {
		say("wishes.glass", func(a *Ask) { a.Needs.Wish.Glass = unit.Figure[bool]{} }, "%s", map[bool]string{true: "a glazed side", false: "no glazed side"}[v])
	}
	if v, ok := n.Wish.Lighting.Get(); ok && !v {
		say("wishes.lighting", func(a *Ask) { a.Needs.Wish.Lighting = unit.Figure[bool]{} }, "no decorative lighting")
	}
	if v, ok := n.Wish.UPS.Get(); ok && v > 0 {
		say("wishes.ups_min", func(a *Ask) { a.Needs.Wish.UPS = unit.Figure[unit.Duration]{} }, "%s through a power cut", v.Q())
	}
	if n.Wish.InStock {
		say("wishes.in_stock", func(a *Ask) { a.Needs.Wish.InStock = false }, "only parts that lie on the shelf")
	}
	return list
}

// without is a list less its first member equal to one.
func without[E comparable](list []E, x E) []E {
	if i := slices.Index(list, x); i >= 0 {
		return slices.Delete(slices.Clone(list), i, i+1)
	}
	return list
}

// named is what a person calls a part.
func named(stock *part.Stock, id string) string {
	for _, a := range stock.Articles() {
		if a.ID == id {
			return a.Title()
		}
	}
	return id
}

// dropping is an ask without some of its demands. It shares nothing with the ask that dropping changes.
func (a Ask) dropping(demands []Demand) Ask {
	n := brief.Needs{}
	if a.Needs != nil {
		n = *a.Needs
	}
	a.Needs = &n
	for i := range demands {
		demands[i].drop(&a)
	}
	return a
}
