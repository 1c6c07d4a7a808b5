package rule

import (
	"cmp"
	"fmt"
	"slices"

	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// ScreenMode is the pictures of the screens bought against those the brief asks for.
var ScreenMode = Rule{
	ID:    "screen-mode",
	Group: Mate,
	Title: "The screens bought show the pictures asked for",
	Doc: `have = screens bought that show at least the width, height, refresh and bits a colour asked; need = screens the brief asks to
	be bought
Each screen serves one picture: the picture with most pixels a second goes first, on the smallest screen that shows it. When short:
	another screen.`,
	Source: "common practice",
	Reads:  []build.Seat{build.Screens},
	Check: func(v *View) []Margin {
		need := screensToBuy(v.Needs)
		if need == 0 || len(v.Screens) == 0 {
			return nil
		}
		asked := make([]brief.Screen, 0, need)
		for _, s := range v.Needs.Screens {
			if !s.Owned {
				for range s.Count {
					asked = append(asked, s)
				}
			}
		}
		slices.SortStableFunc(asked, func(a, b brief.Screen) int {
			return cmp.Compare(b.Width*b.Height*b.Refresh, a.Width*a.Height*a.Refresh)
		})
		have := 0
		left := make([]int, len(v.Screens))
		for i := range v.Screens {
			left[i] = v.Screens[i].Count
		}
		var lacking *brief.Screen
		for i := range asked {
			best := -1
			for j := range v.Screens {
				if left[j] > 0 && shows(v, v.Screens[j].Monitor, &asked[i]) && (best < 0 || pixels(v.Screens[j].Monitor) < pixels(v.Screens[best].Monitor)) {
					best = j
				}
			}
			if best < 0 {
				lacking = &asked[i]
				continue
			}
			left[best]--
			have++
		}
		v.short("", unit.Count(have), unit.Count(need), func() string {
			if lacking == nil {
				return fmt.Sprintf("%s of %d %s the pictures asked for", plural(have, "screen"), need, agree(have, "shows", "show"))
			}
			return fmt.Sprintf("no screen chosen shows %d × %d at %d Hz with %d bits a colour", lacking.Width, lacking.Height, lacking.Refresh, lacking.Bits)
		})
		return v.margins
	},
}

// shows reports whether a screen shows the picture asked for.
func shows(v *View, m *part.Monitor, s *brief.Screen) bool {
	return int(figure(v, m.Width, &m.Article, "width_px")) >= s.Width &&
		int(figure(v, m.Height, &m.Article, "height_px")) >= s.Height &&
		int(figure(v, m.Refresh, &m.Article, "refresh_hz")) >= s.Refresh &&
		int(figure(v, m.Depth, &m.Article, "bits_per_colour")) >= s.Bits
}

func pixels(m *part.Monitor) unit.Whole { return m.Width.Or(0) * m.Height.Or(0) * m.Refresh.Or(0) }
