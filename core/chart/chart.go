// Package chart draws figures on graph paper as SVG: ink on a fine grid, small panels side by side over one axis. The same
// figure gives the same bytes. Nothing is told by colour alone: lines differ by their dashes and carry their names at their
// ends, what a figure may miss by is a light band, a limit a thin line with its name.
package chart

import (
	"fmt"
	"math"
	"strings"
)

// Figure is panels over one common axis.
type Figure struct {
	ID    string // begins the ids within the drawing; must be unique on its page
	Title string
	Desc  string // one sentence for those who do not see it; one is made from the panels where it is empty
	XName string
	XUnit string
	X     []float64 // rising
	Panel []Panel
}

// Panel is lines of one unit.
type Panel struct {
	Title string
	Unit  string
	Line  []Line
	Zero  bool // whether the scale starts at nought
}

// Line is one quantity along the axis. Low and High are the ends of its band; both are empty where it has none.
type Line struct {
	Name           string
	Mid, Low, High []float64
	Limit          float64
	LimitName      string // empty where it has none
}

// Measures of the drawing in user units. A panel's plot is plotW by plotH, with room for its scale on the left and its names on the
// right.
const (
	plotW, plotH  = 230.0, 190.0
	scaleW, nameW = 46.0, 104.0
	headH, footH  = 44.0, 46.0
	titleH        = 26.0
	perRow        = 2
	minGap        = 13.0 // between names
)

// dashes of the lines in order.
var dashes = [...]string{"", "7 3", "2 2.5", "9 3 2 3", "1 3", "12 4"}

// Lines draws the figure.
func Lines(f Figure) string {
	rows := (len(f.Panel) + perRow - 1) / perRow
	cols := min(len(f.Panel), perRow)
	w := float64(cols) * (scaleW + plotW + nameW)
	h := titleH + float64(rows)*(headH+plotH+footH)
	var b strings.Builder
	fmt.Fprintf(&b, `<svg xmlns="http://www.w3.org/2000/svg" class="chart" role="img" viewBox="0 0 %s %s" width="%s" height="%s" aria-labelledby="%s-title %s-desc" font-family="sans-serif" font-size="11" fill="currentColor" stroke="none">`,
		num(w), num(h), num(w), num(h), esc(f.ID), esc(f.ID))
	fmt.Fprintf(&b, `<title id="%s-title">%s</title><desc id="%s-desc">%s</desc>`, esc(f.ID), esc(f.Title), esc(f.ID), esc(f.desc()))
	fmt.Fprintf(&b, `<text class="chart-title" x="%s" y="16" font-size="13" font-weight="bold">%s</text>`, num(scaleW), esc(f.Title))
	for i := range f.Panel {
		x := float64(i%perRow)*(scaleW+plotW+nameW) + scaleW
		y := titleH + float64(i/perRow)*(headH+plotH+footH) + headH
		f.panel(&b, &f.Panel[i], x, y)
	}
	b.WriteString("</svg>")
	return b.String()
}

// desc is the figure in a sentence a panel.
func (f *Figure) desc() string {
	if f.Desc != "" {
		return f.Desc
	}
	var parts []string
	for i := range f.Panel {
		p := &f.Panel[i]
		var names []string
		for _, l := range p.Line {
			if n := len(l.Mid); n > 0 {
				names = append(names, fmt.Sprintf("%s from %s to %s %s", l.Name, short(l.Mid[0]), short(l.Mid[n-1]), p.Unit))
			}
		}
		parts = append(parts, p.Title+": "+strings.Join(names, ", "))
	}
	span := ""
	if n := len(f.X); n > 0 {
		span = fmt.Sprintf("Against %s from %s to %s %s. ", f.XName, short(f.X[0]), short(f.X[n-1]), f.XUnit)
	}
	return span + strings.Join(parts, ". ") + "."
}

func (f *Figure) panel(b *strings.Builder, p *Panel, x, y float64) {
	across := scaleOf(f.X, true)
	var values []float64
	for _, l := range p.Line {
		values = append(append(append(values, l.Mid...), l.Low...), l.High...)
		if l.LimitName != "" {
			values = append(values, l.Limit)
		}
	}
	if p.Zero {
		values = append(values, 0)
	}
	up := scaleOf(values, false)
	g := grid{x: x, y: y, w: plotW, h: plotH, across: across, up: up}
	fmt.Fprintf(b, `<g class="chart-panel"><text x="%s" y="%s" font-weight="bold">%s</text><text x="%s" y="%s" text-anchor="end">%s</text>`,
		num(x), num(y-22), esc(p.Title), num(x-6), num(y-8), esc(p.Unit))
	g.paper(b)
	for i := range p.Line {
		g.band(b, f.X, &p.Line[i])
	}
	g.limits(b, p)
	for i := range p.Line {
		g.line(b, f.X, &p.Line[i], dashes[i%len(dashes)])
	}
	g.names(b, p)
	fmt.Fprintf(b, `<text x="%s" y="%s" text-anchor="middle">%s</text></g>`, num(x+plotW/2), num(y+plotH+32), esc(joined(f.XName, f.XUnit)))
}

func joined(name, unit string) string {
	if unit == "" {
		return name
	}
	return name + ", " + unit
}

// scale is an axis from low to high with a step between its figures.
type scale struct{ low, high, step float64 }

// scaleOf chooses an axis that holds the values with four to eight steps of 1, 2 or 5; tight keeps to the values' own ends.
func scaleOf(values []float64, tight bool) scale {
	low, high := math.Inf(1), math.Inf(-1)
	for _, v := range values {
		low, high = min(low, v), max(high, v)
	}
	if !(low < high) {
		if math.IsInf(low, 0) {
			low = 0
		}
		low, high = low-1, low+1
	}
	raw := (high - low) / 6
	power := math.Pow(10, math.Floor(math.Log10(raw)))
	step := 10 * power
	for _, s := range [...]float64{1, 2, 5} {
		if s*power >= raw*0.999 {
			step = s * power
			break
		}
	}
	if !tight {
		low, high = math.Floor(low/step+1e-9)*step, math.Ceil(high/step-1e-9)*step
	}
	return scale{low, high, step}
}

// ticks are the figures on an axis.
func (s scale) ticks() []float64 {
	var list []float64
	for k := math.Ceil(s.low/s.step - 1e-9); k*s.step <= s.high+1e-9*s.step; k++ {
		list = append(list, k*s.step)
	}
	return list
}

func (s scale) at(v float64) float64 { return (v - s.low) / (s.high - s.low) }

// num prints a measure of the drawing.
func num(v float64) string {
	t := fmt.Sprintf("%.2f", v)
	t = strings.TrimRight(strings.TrimRight(t, "0"), ".")
	if t == "-0" {
		return "0"
	}
	return t
}

// short prints a figure for a reader.
func short(v float64) string {
	t := fmt.Sprintf("%.1f", v)
	t = strings.TrimSuffix(t, ".0")
	if t == "-0" {
		return "0"
	}
	return strings.Replace(t, "-", "−", 1)
}

var escaper = strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&quot;")

func esc(s string) string { return escaper.Replace(s) }
