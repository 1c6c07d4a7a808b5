package chart

import (
	"fmt"
	"slices"
	"strings"
)

// grid is a panel's plot at its place in the drawing.
type grid struct {
	x, y       float64 // of its upper left corner
	w, h       float64
	across, up scale
}

func (g *grid) px(v float64) float64 { return g.x + float64(g.w*g.across.at(v)) }
func (g *grid) py(v float64) float64 { return g.y + g.h - float64(g.h*g.up.at(v)) }

// paper draws graph paper: fine lines at fifths of a step, firmer ones at the steps, figures along both axes.
func (g *grid) paper(b *strings.Builder) {
	fine := func(s scale, line func(v float64)) {
		for _, v := range (scale{s.low, s.high, s.step / 5}).ticks() {
			line(v)
		}
	}
	b.WriteString(`<g class="chart-grid" stroke="currentColor" fill="none" stroke-width="0.4" stroke-opacity="0.14"><path d="`)
	fine(g.across, func(v float64) { fmt.Fprintf(b, "M%s %sV%s", num(g.px(v)), num(g.y), num(g.y+g.h)) })
	fine(g.up, func(v float64) { fmt.Fprintf(b, "M%s %sH%s", num(g.x), num(g.py(v)), num(g.x+g.w)) })
	b.WriteString(`"/><path stroke-opacity="0.32" d="`)
	for _, v := range g.across.ticks() {
		fmt.Fprintf(b, "M%s %sV%s", num(g.px(v)), num(g.y), num(g.y+g.h))
	}
	for _, v := range g.up.ticks() {
		fmt.Fprintf(b, "M%s %sH%s", num(g.x), num(g.py(v)), num(g.x+g.w))
	}
	fmt.Fprintf(b, `"/><path stroke-opacity="1" stroke-width="0.9" d="M%s %sV%sH%s"/></g>`, num(g.x), num(g.y), num(g.y+g.h), num(g.x+g.w))
	b.WriteString(`<g class="chart-scale" font-size="10">`)
	for _, v := range g.across.ticks() {
		fmt.Fprintf(b, `<text x="%s" y="%s" text-anchor="middle">%s</text>`, num(g.px(v)), num(g.y+g.h+14), short(v))
	}
	for _, v := range g.up.ticks() {
		fmt.Fprintf(b, `<text x="%s" y="%s" text-anchor="end">%s</text>`, num(g.x-6), num(g.py(v)+3.5), short(v))
	}
	b.WriteString(`</g>`)
}

// band draws what a line may miss by.
func (g *grid) band(b *strings.Builder, x []float64, l *Line) {
	if len(l.Low) != len(x) || len(l.High) != len(x) || len(x) == 0 {
		return
	}
	b.WriteString(`<path class="chart-band" fill="currentColor" fill-opacity="0.07" d="`)
	for i := range x {
		fmt.Fprintf(b, "%s%s %s", letter(i), num(g.px(x[i])), num(g.py(l.High[i])))
	}
	for i := len(x) - 1; i >= 0; i-- {
		fmt.Fprintf(b, "L%s %s", num(g.px(x[i])), num(g.py(l.Low[i])))
	}
	b.WriteString(`Z"/>`)
}

func (g *grid) line(b *strings.Builder, x []float64, l *Line, dash string) {
	if len(l.Mid) != len(x) || len(x) == 0 {
		return
	}
	b.WriteString(`<path class="chart-line" fill="none" stroke="currentColor" stroke-width="1.5" stroke-linejoin="round"`)
	if dash != "" {
		fmt.Fprintf(b, ` stroke-dasharray="%s"`, dash)
	}
	b.WriteString(` d="`)
	for i := range x {
		fmt.Fprintf(b, "%s%s %s", letter(i), num(g.px(x[i])), num(g.py(l.Mid[i])))
	}
	b.WriteString(`"/>`)
}

func letter(i int) string {
	if i == 0 {
		return "M"
	}
	return "L"
}

// limits draws each limit once, with its names over it.
func (g *grid) limits(b *strings.Builder, p *Panel) {
	for i := range p.Line {
		l := &p.Line[i]
		same := func(o Line) bool { return o.LimitName != "" && o.Limit == l.Limit }
		if l.LimitName == "" || slices.ContainsFunc(p.Line[:i], same) {
			continue
		}
		var names []string
		for _, o := range p.Line {
			if same(o) && !slices.Contains(names, o.LimitName) {
				names = append(names, o.LimitName)
			}
		}
		y := g.py(l.Limit)
		fmt.Fprintf(b, `<path class="chart-limit" fill="none" stroke="currentColor" stroke-width="0.9" d="M%s %sH%s"/><text class="chart-limit" font-size="9" x="%s" y="%s">%s</text>`,
			num(g.x), num(y), num(g.x+g.w), num(g.x+4), num(y-3), esc(strings.Join(names, ", ")))
	}
}

// names writes each line's name beside its end, with a thin lead where names had to move apart.
func (g *grid) names(b *strings.Builder, p *Panel) {
	type name struct {
		end, y float64
		text   string
	}
	var list []name
	for _, l := range p.Line {
		if n := len(l.Mid); n > 0 {
			y := g.py(l.Mid[n-1])
			list = append(list, name{y, y, l.Name})
		}
	}
	slices.SortStableFunc(list, func(a, b name) int {
		switch {
		case a.end < b.end:
			return -1
		case a.end > b.end:
			return 1
		}
		return 0
	})
	for i := range list {
		if i > 0 {
			list[i].y = max(list[i].y, list[i-1].y+minGap)
		}
	}
	for i, floor := len(list)-1, g.y+g.h+4; i >= 0; i-- {
		list[i].y = min(list[i].y, floor)
		floor = list[i].y - minGap
	}
	right := g.x + g.w
	for _, n := range list {
		fmt.Fprintf(b, `<path fill="none" stroke="currentColor" stroke-width="0.5" d="M%s %sL%s %s"/><text class="chart-name" font-size="10" x="%s" y="%s">%s</text>`,
			num(right), num(n.end), num(right+9), num(n.y), num(right+12), num(n.y+3.5), esc(n.text))
	}
}
