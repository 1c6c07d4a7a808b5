package rule

import (
	"slices"
	"strings"

	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// SideOnShow says which side of the machine faces the chair and what it shows.
var SideOnShow = Rule{
	ID:    "side-on-show",
	Group: Care,
	Title: "The glazed side faces the chair and shows the board",
	Doc: `have = 1 where the side that faces the chair is glazed and the board or the card stands behind it in this layout; need = 1
Advice only, for cases with a glazed side whose place is named. The front faces the chair's side of the room, so a machine at
	the left of the chair turns its right side to it, as one stands before the front, and one at the right its left side. A machine
	on a shelf shows its front. When it shows the wrong side: the other side of the desk, the other layout, or a case without glass.`,
	Source: "geometry",
	Reads:  []build.Seat{build.Case},
	Check: func(v *View) []Margin {
		if !v.both(build.Case) || v.Needs.Place.Stands == "" || !slices.Contains(v.Case.Glazed, part.Side) {
			return nil
		}
		facing, shows := "right", v.Layout.Right
		switch {
		case v.Needs.Place.Stands == "shelf":
			v.advise("", unit.Met(false), unit.Met(true), say("on a shelf %s shows its front; its glazed side shows nothing", v.Case.Name))
			return v.margins
		case strings.HasSuffix(v.Needs.Place.Stands, "right"):
			facing, shows = "left", v.Layout.Left
		}
		if v.Case.GlazedSide == "" {
			v.missing = append(v.missing, v.Case.ID+": glazed_side")
		} else if shows == "" {
			v.missing = append(v.missing, v.Case.ID+": layouts."+v.Layout.ID+"."+facing+"_shows")
		}
		glazed := v.Case.GlazedSide == facing || v.Case.GlazedSide == "both"
		v.advise("", unit.Met(glazed && shows != "back"), unit.Met(true), func() string {
			what := map[string]string{"board": "the board's face", "card": "the graphics card", "back": "the back of the board plate"}[shows]
			if !glazed {
				return say("the %s side faces the chair and is not glazed; behind it lies %s", facing, what)()
			}
			return say("the glazed %s side faces the chair and shows %s", facing, what)()
		})
		return v.margins
	},
}
