package scene

import "slipfit/core/unit"

// dimensions draws the clearances asked for, each in the view its axis lies in.
func (p *plotter) dimensions() {
	p.open("g", "class", "dimensions")
	for _, d := range p.drawing.Dimensions {
		m, ok := p.scene.tightest(d)
		if !ok {
			continue
		}
		l := p.onto
		if m.Axis != l.right && m.Axis != l.up {
			l = p.section
		}
		label := d.Label
		if label == "" {
			label = p.scene.Gap(m).Q().Figure()
		}
		p.dimension(l, m, label)
	}
	p.close("g")
}

// dimension draws one clearance: limit lines at both ends, a line between with arrows, its figure; what overlaps is
// cross-hatched.
func (p *plotter) dimension(l look, m Meeting, label string) {
	a, b := &p.scene.Boxes[m.A], &p.scene.Boxes[m.B]
	from, to := a.Hi[m.Axis], b.Lo[m.Axis]
	if m.Down {
		from, to = a.Lo[m.Axis], b.Hi[m.Axis]
	}
	across := l.up
	lying := m.Axis == l.right
	if !lying {
		across = l.right
	}
	lo, hi := max(a.Lo[across], b.Lo[across]), min(a.Hi[across], b.Hi[across])
	if lo > hi {
		lo, hi = hi, lo
	}
	if p.scene.Gap(m) < 0 && a.meets(b) {
		p.inTheWay(l, m, a, b)
	}
	at := p.freePlace(l, lo, hi, from, to, lying, label)
	p.limit(l, b, to, at, lying)
	p.limit(l, a, from, at, lying)
	p.measure(l.stretch(from, to, at, lying), lying, label)
}

// stretch is a dimension's line on the paper, from and to along its axis, at across it.
func (l look) stretch(from, to, at unit.Length, lying bool) flat {
	if lying {
		x0, x1, y := l.across(from), l.across(to), l.down(at)
		return flat{min(x0, x1), y, max(x0, x1), y}
	}
	y0, y1, x := l.down(from), l.down(to), l.across(at)
	return flat{x, min(y0, y1), x, max(y0, y1)}
}

// inTheWay cross-hatches what two boxes share.
func (p *plotter) inTheWay(l look, m Meeting, a, b *Box) {
	f := l.onto(a).common(l.onto(b))
	if f.w() > 0 && f.h() > 0 {
		p.rect(f, "url(#"+p.drawing.Prefix+"-over)", p.thick(), "class", "clash")
	}
}

// freePlace is where across its axis a dimension is drawn: the middle of what the boxes share, or the nearest place beside
// it where nothing is lettered yet.
func (p *plotter) freePlace(l look, lo, hi, from, to unit.Length, lying bool, label string) unit.Length {
	middle := (lo + hi) / 2
	step := unit.Length(0.75 * p.em * 1000)
	for n := range unit.Length(40) {
		try := middle + step*((n+1)/2)*(1-2*(n%2))
		if n > 0 && (try < lo || try > hi) {
			continue
		}
		line := l.stretch(from, to, try, lying)
		patch, _ := p.patch(line, lying, label)
		spot := flat{min(line.x0, patch.x0), min(line.y0, patch.y0), max(line.x1, patch.x1), max(line.y1, patch.y1)}.grow(0.4 * p.em)
		free := spot.x0 > 0 && spot.x1 < p.size.x1 && spot.y0 > 0
		for _, t := range p.taken {
			c := t.common(spot)
			free = free && (c.w() <= 0 || c.h() <= 0)
		}
		if free {
			return try
		}
	}
	return middle
}

// limit draws the short chain line a dimension ends at where that is a limit of the case; a part's face needs none.
func (p *plotter) limit(l look, b *Box, at, across unit.Length, lying bool) {
	if b.Kind != Wall {
		return
	}
	const half = 4
	if lying {
		x, y := l.across(at), l.down(across)
		p.line(x, y-half*p.em, x, y+half*p.em, p.chain())
		return
	}
	x, y := l.across(across), l.down(at)
	p.line(x-half*p.em, y, x+half*p.em, y, p.chain())
}

// patch is where a dimension's figure stands, and whether its arrows stand inside the line.
func (p *plotter) patch(line flat, lying bool, label string) (patch flat, inside bool) {
	w, h := p.wide(label, 0.95)+0.3*p.em, 1.05*p.em
	inside = line.w()+line.h() > 2.2*p.em
	x, y := (line.x0+line.x1)/2, (line.y0+line.y1)/2
	switch {
	case lying && inside && line.w() > w+1.8*p.em: // over the middle
		return flat{x - w/2, y - h - 0.1*p.em, x + w/2, y - 0.1*p.em}, inside
	case lying && inside:
		return flat{line.x1 + 0.3*p.em, y - h/2, line.x1 + 0.3*p.em + w, y + h/2}, inside
	case lying:
		return flat{line.x1 + 1.8*p.em, y - h/2, line.x1 + 1.8*p.em + w, y + h/2}, inside
	case inside:
		return flat{x + 0.3*p.em, y - h/2, x + 0.3*p.em + w, y + h/2}, inside
	}
	return flat{x + 0.3*p.em, line.y1 + 0.7*p.em, x + 0.3*p.em + w, line.y1 + 0.7*p.em + h}, inside
}

// measure draws the line with its arrows, from inside where there is room and from outside where there is not, and the
// figure on paper beside it.
func (p *plotter) measure(f flat, lying bool, label string) {
	patch, inside := p.patch(f, lying, label)
	dx, dy := 1.0, 0.0
	if !lying {
		dx, dy = 0, 1
	}
	if inside {
		p.line(f.x0, f.y0, f.x1, f.y1, p.thin())
		p.arrow(f.x0, f.y0, -dx, -dy)
		p.arrow(f.x1, f.y1, dx, dy)
	} else {
		tail := 1.7 * p.em
		p.line(f.x0-dx*tail, f.y0-dy*tail, f.x1+dx*tail, f.y1+dy*tail, p.thin())
		p.arrow(f.x0, f.y0, dx, dy)
		p.arrow(f.x1, f.y1, -dx, -dy)
	}
	p.rect(patch, paper, stroke{"0", ""})
	p.text((patch.x0+patch.x1)/2, patch.y1-0.2*p.em, 0.95, "middle", label, "font-weight", "600", "class", "figure")
	p.taken = append(p.taken, patch, f.grow(0.5*p.em))
}
