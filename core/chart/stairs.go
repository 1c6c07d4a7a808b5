package chart

import (
	"fmt"
	"math"
	"slices"
	"strings"
)

// Stairs is a figure of points that each go further than all before: what every price buys.
type Stairs struct {
	ID            string // begins the ids within the drawing; must be unique on its page
	Title, Desc   string
	XName, XUnit  string
	YName, YUnit  string
	X, Y          []float64 // both rising
	Marked        int       // the point that is rung; none where it is no point's place
	Limit         float64   // a thin upright line; none where its name is empty
	LimitName     string
	Width, Height float64 // of the drawing, in user units
}

// Measures of the drawing in user units: room for the scale and the names of the axes.
const (
	stairsLeft, stairsRight = 44.0, 14.0
	stairsTop, stairsBottom = 24.0, 40.0
)

// Draw draws the stairs: a line along every price that buys no more than the one before, with a point where it rises. Each
// point is a group of class chart-point with its place in the list as data-point.
func (s *Stairs) Draw() string {
	g := s.grid()
	var b strings.Builder
	fmt.Fprintf(&b, `<svg xmlns="http://www.w3.org/2000/svg" class="chart" role="img" viewBox="0 0 %s %s" aria-labelledby="%s-title %s-desc" font-family="sans-serif" font-size="11" fill="currentColor" stroke="none">`,
		num(s.Width), num(s.Height), esc(s.ID), esc(s.ID))
	fmt.Fprintf(&b, `<title id="%s-title">%s</title><desc id="%s-desc">%s</desc>`, esc(s.ID), esc(s.Title), esc(s.ID), esc(s.Desc))
	fmt.Fprintf(&b, `<text x="%s" y="12">%s</text>`, num(g.x-stairsLeft+2), esc(joined(s.YName, s.YUnit)))
	g.paper(&b)
	if s.LimitName != "" {
		x := g.px(s.Limit)
		fmt.Fprintf(&b, `<path class="chart-limit" fill="none" stroke="currentColor" stroke-width="0.9" d="M%s %sV%s"/><text class="chart-limit" font-size="9" text-anchor="end" x="%s" y="%s">%s</text>`,
			num(x), num(g.y), num(g.y+g.h), num(x-4), num(g.y+g.h-6), esc(s.LimitName))
	}
	if len(s.X) > 0 {
		fmt.Fprintf(&b, `<path class="chart-line" fill="none" stroke="currentColor" stroke-width="1.2" stroke-linejoin="round" d="M%s %s`, num(g.px(s.X[0])), num(g.py(s.Y[0])))
		for i := 1; i < len(s.X); i++ {
			fmt.Fprintf(&b, "H%sV%s", num(g.px(s.X[i])), num(g.py(s.Y[i])))
		}
		fmt.Fprintf(&b, `H%s"/>`, num(g.x+g.w))
	}
	for i := range s.X {
		x, y := num(g.px(s.X[i])), num(g.py(s.Y[i]))
		fmt.Fprintf(&b, `<g class="chart-point" data-point="%d">`, i)
		if i == s.Marked {
			fmt.Fprintf(&b, `<circle cx="%s" cy="%s" r="7.5" fill="none" stroke="currentColor" stroke-width="1.5"/>`, x, y)
		}
		fmt.Fprintf(&b, `<circle cx="%s" cy="%s" r="2.6"/></g>`, x, y)
	}
	fmt.Fprintf(&b, `<text x="%s" y="%s" text-anchor="middle">%s</text></svg>`, num(g.x+g.w/2), num(g.y+g.h+32), esc(joined(s.XName, s.XUnit)))
	return b.String()
}

// Nearest is the point nearest to a place in the drawing, in its user units; −1 where there is none.
func (s *Stairs) Nearest(x, y float64) int {
	g := s.grid()
	best, least := -1, 0.0
	for i := range s.X {
		if d := math.Hypot(g.px(s.X[i])-x, g.py(s.Y[i])-y); best < 0 || d < least {
			best, least = i, d
		}
	}
	return best
}

// grid is the plot in the drawing.
func (s *Stairs) grid() grid {
	across := s.X
	if s.LimitName != "" {
		across = append(slices.Clone(s.X), s.Limit)
	}
	return grid{x: stairsLeft, y: stairsTop, w: s.Width - stairsLeft - stairsRight, h: s.Height - stairsTop - stairsBottom,
		across: scaleOf(across, false), up: scaleOf(s.Y, false)}
}
