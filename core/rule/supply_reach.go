package rule

import (
	"slices"

	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// SupplyReach keeps the supply's own cables long enough for the board.
var SupplyReach = Rule{
	ID:    "supply-reach",
	Group: Fit,
	Title: "Board and processor cables reach",
	Doc: `main, processor: have = longest cable of that kind to its first plug, mm; need = routed way in this layout, mm
The way is round the plate and through its openings, not through the air. Whether there are plugs enough is found by rule
	plugs. When short: a supply with longer cables, or a listed extension. Never cables of another supply: the sockets at the supply's
	end differ without looking different, and wrong ones destroy parts.`,
	Source: "makers' sheets; design guide, DC connectors: the shortest harness is 150 mm and most need longer",
	Reads:  []build.Seat{build.Case, build.Supply},
	Check: func(v *View) []Margin {
		if !v.both(build.Case, build.Supply) {
			return nil
		}
		v.reach("main", 1, v.Layout.Routes.Main, "routes.main_mm", func(p part.PlugKind) bool { return p == part.PlugMain24 })
		v.reach("processor", 1, v.Layout.Routes.Processor, "routes.processor_mm", func(p part.PlugKind) bool {
			return p == part.PlugProcessor44 || p == part.PlugProcessor8 || p == part.PlugProcessor4
		})
		return v.margins
	},
}

// reach adds the margin of a route: the n-th longest cable with a plug of the kind against it. None where the supply has no
// such cable: rule plugs says so.
func (v *View) reach(subject string, n int, route unit.Figure[unit.Length], field string, kind func(part.PlugKind) bool) {
	have, some := v.longest(n, kind)
	if !some {
		return
	}
	need := figure(v, route, &v.Case.Article, field)
	v.find(subject, have.Q(), need.Q(), say("cable of %s, the way in %s is %s", have.Q(), v.Case.Name, need.Q()))
}

// longest is how long the n-th longest of a supply's cables with a plug of a kind is, or the shortest where there are fewer; false where there
// is none.
func (v *View) longest(n int, kind func(part.PlugKind) bool) (length unit.Length, some bool) {
	var longest [8]unit.Length // longest first; no machine needs more cables of a kind
	found := 0
	for i := range v.Supply.Cables {
		c := &v.Supply.Cables[i]
		if !slices.ContainsFunc(c.Plugs, kind) {
			continue
		}
		count := int(figure(v, c.Count, &v.Supply.Article, "cables.count"))
		length := figure(v, c.Length, &v.Supply.Article, "cables.length_mm")
		for range max(count, 1) {
			at := found
			for at > 0 && longest[at-1] < length {
				at--
			}
			if at == len(longest) {
				continue
			}
			copy(longest[at+1:], longest[at:])
			longest[at] = length
			found = min(found+1, len(longest))
		}
	}
	if found == 0 {
		return 0, false
	}
	return longest[min(n, found)-1], true
}
