package scene

import (
	"cmp"
	"slices"

	"slipfit/core/build"
)

// balloon points from a number to a part.
type balloon struct {
	line int
	x, y float64 // where on the part it points
	side float64 // the column its number stands in
	foot float64 // where down that column
}

// balloons numbers the parts, each where most of it is seen.
func (p *plotter) balloons() {
	var columns [4][]balloon
	for line := range p.scene.Parts {
		b, view, ok := p.point(line)
		if !ok {
			continue
		}
		f := p.frames[view]
		c := 2 * view
		if b.x > (f.x0+f.x1)/2 {
			c++
		}
		columns[c] = append(columns[c], b)
	}
	for c := 0; c < len(columns); c += 2 {
		columns[c], columns[c+1] = share(columns[c], columns[c+1])
	}
	p.open("g", "class", "balloons")
	for c, list := range columns {
		f := p.frames[c/2]
		side := f.x0 - 3*p.em
		if c%2 == 1 {
			side = f.x1 + 3*p.em
		}
		p.column(list, side, f)
	}
	p.close("g")
}

// share moves balloons from the fuller column to the other, those that point nearest to it, until neither has many more.
func share(left, right []balloon) ([]balloon, []balloon) {
	byX := func(a, b balloon) int { return cmp.Compare(a.x, b.x) }
	slices.SortStableFunc(left, byX)
	slices.SortStableFunc(right, byX)
	for len(left) > len(right)+2 {
		last := len(left) - 1
		left, right = left[:last], append([]balloon{left[last]}, right...)
	}
	for len(right) > len(left)+2 {
		left, right = append(left, right[0]), right[1:]
	}
	return left, right
}

// point finds the spot of a part to point at, and the view.
func (p *plotter) point(line int) (best balloon, view int, ok bool) {
	if p.scene.Parts[line].Seat == build.Case { // its wall
		f := p.frames[OntoBoard]
		if b, found := p.scene.Find("case"); found {
			f = p.onto.onto(&b)
		}
		return balloon{line: line, x: f.x0 + 0.2*p.em, y: f.y1 - 0.06*f.h()}, 0, true
	}
	most := -1.0
	for v, l := range []look{p.onto, p.section} {
		for at, i := range p.order[v] {
			b := &p.scene.Boxes[i]
			if b.Line != line || l.isBefore(b) {
				continue
			}
			x, y, share := p.scene.seen(l, p.order[v], at)
			f := l.onto(b)
			area := share * f.w() * f.h()
			if v == 1 {
				area *= 0.6 // rather in the first view
			}
			if area > most {
				best, view, ok, most = balloon{line: line, x: x, y: y}, v, true, area
			}
		}
	}
	return best, view, ok
}

// column letters the balloons of one side, spread so that none touches another, in the order of what they point at.
func (p *plotter) column(list []balloon, side float64, f flat) {
	slices.SortStableFunc(list, func(a, b balloon) int { return cmp.Compare(a.y, b.y) })
	step := 3.1 * p.em
	for i := range list {
		list[i].side, list[i].foot = side, list[i].y
		if i > 0 {
			list[i].foot = max(list[i].foot, list[i-1].foot+step)
		}
	}
	limit := f.y1 + p.em
	for i := len(list) - 1; i >= 0; i-- {
		list[i].foot = min(list[i].foot, limit)
		limit = list[i].foot - step
	}
	r := 1.15 * p.em
	for _, b := range list {
		toward := 1.0
		if b.x < b.side {
			toward = -1
		}
		p.line(b.side+toward*r, b.foot, b.x, b.y, p.thin())
		p.circle(b.x, b.y, 0.2*p.em, "currentColor", p.hair())
		p.circle(b.side, b.foot, r, paper, p.thin())
		p.taken = append(p.taken, flat{b.side, b.foot, b.side, b.foot}.grow(r))
		p.text(b.side, b.foot+0.38*p.em, 1.05, "middle", number(b.line), "font-weight", "600")
	}
}
