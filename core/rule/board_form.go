package rule

import (
	"slices"
	"strings"

	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// holes are the mounting holes each board form has, by the letters of the microATX specification. Hole S of a full-width
// microATX board is optional and left out.
var holes = map[part.BoardForm][]string{
	part.ATX:      {"A", "C", "F", "G", "H", "J", "K", "L", "M"},
	part.MicroATX: {"B", "C", "F", "H", "J", "L", "M", "R"},
	part.MiniITX:  {"C", "F", "H", "J"},
}

// BoardForm keeps the board's form and its mounting holes with those of the layout's plate.
var BoardForm = Rule{
	ID:    "board-form",
	Group: Fit,
	Title: "The plate takes the board and meets its holes",
	Doc: `form: have = 1 where the board's form is one the layout takes, else 0; need = 1.
holes: have = mounting holes of the board with a standoff under them; need = holes of its form: ATX A C F G H J K L M
	(no B), micro-ATX B C F H J L M R (S is optional), mini-ITX C F H J.
All forms share hole C, so boards overlay without shifting. A board without a standoff under a hole bends when cards and
	plugs go in; a standoff under no hole may short traces and must come out. When short: another layout or a smaller board.`,
	Source: "microATX specification 1.2, figure 2 and section 2.2; Mini-ITX addendum 1.1, table 1",
	Reads:  []build.Seat{build.Case, build.Board},
	Check: func(v *View) []Margin {
		if !v.both(build.Case, build.Board) {
			return nil
		}
		v.met("form", slices.Contains(v.Layout.Boards, v.Board.Form),
			say("%s is %s, the plate of %s takes %s", v.Board.Name, v.Board.Form, v.Case.Name, words[part.BoardForm](v.Layout.Boards)))
		want := holes[v.Board.Form]
		have := 0
		for _, h := range want {
			if slices.Contains(v.Layout.Standoffs, h) {
				have++
			}
		}
		standoffs := v.Layout.Standoffs
		v.find("holes", unit.Count(have), unit.Count(len(want)), func() string {
			var none []string
			for _, h := range want {
				if !slices.Contains(standoffs, h) {
					none = append(none, h)
				}
			}
			if none == nil {
				return "every mounting hole of the board has a standoff: " + strings.Join(want, " ")
			}
			return "no standoff under the board's holes " + strings.Join(none, " ")
		})
		return v.margins
	},
}
