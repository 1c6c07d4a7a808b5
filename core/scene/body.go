package scene

import (
	"math"
	"strings"

	"slipfit/core/unit"
)

// body draws one part as it looks in a view, with as much of its nature as tells it from others.
func (p *plotter) body(l look, b *Box, at int) {
	f := l.onto(b)
	if l.isCut(b) {
		p.cutBody(f, b, at)
		return
	}
	s := p.thin()
	if b.Name == "main board" || b.Name == "graphics card" || b.Name == "power supply" || b.Name == "radiator" {
		s = p.thick()
	}
	p.rect(f, paper, s)
	switch {
	case b.Kind == Fan && b.Name != "cooler fan":
		p.fan(f, b.Faces == l.toward)
	case b.Name == "cooler fan":
		p.fan(f, false)
	case b.Kind == Radiator:
		p.lines(f, 0.45*p.em, f.h() > f.w())
	case b.Name == "cooler fins":
		p.lines(f, 0.4*p.em, l.view == OntoBoard && l.right == X)
	case b.Name == "cold plate and pump" && l.view == OntoBoard:
		p.rounds(f, 0.48, 0.3)
	case b.Name == "heat-sink", b.Name == "heat-sink at the edge":
		p.lines(f, 0.3*p.em, f.w() > f.h())
	case b.Name == "power supply":
		p.rounds(f.grow(-0.5*p.em), 0.42, 0.1)
	case b.Name == "graphics card":
		p.cardBody(l, f)
	case b.Name == "main board" && l.view == OntoBoard:
		p.holes(l, b)
	}
}

// cutBody draws a part that the section goes through: thin things black, hollow ones crossed, others hatched.
func (p *plotter) cutBody(f flat, b *Box, at int) {
	hatch := "url(#" + p.drawing.Prefix + "-cut-" + string(rune('0'+(b.Line+at)%4)) + ")"
	if b.Kind == Board {
		p.rect(f, "currentColor", p.hair())
		return
	}
	p.rect(f, paper, p.thick())
	switch {
	case b.Kind == Fan:
		p.fan(f, false)
	case b.Kind == Radiator, b.Name == "cooler fins":
		p.lines(f, 0.5*p.em, f.w() > f.h() == (b.Kind == Radiator))
	case b.Name == "cooler base": // plate and heat pipes
		p.pipes(f, hatch)
	default:
		p.rect(f, hatch, p.thick())
	}
}

// pipes draws a cooler's base: the plate on the processor, hatched, and the pipes to the fins. The plate lies on the side of
// the board.
func (p *plotter) pipes(f flat, hatch string) {
	plate, pipes := f, f
	switch board, up := p.section.across(p.scene.Rise), p.scene.Up; {
	case up == Z:
		plate.y0 = f.y1 - 0.3*f.h()
		pipes.y1 = plate.y0
	case board >= f.x1-0.01:
		plate.x0 = f.x1 - 0.3*f.w()
		pipes.x1 = plate.x0
	default:
		plate.x1 = f.x0 + 0.3*f.w()
		pipes.x0 = plate.x1
	}
	p.rect(plate, hatch, p.thin())
	p.lines(pipes, (f.h()+f.w())/14, p.scene.Up == Z)
}

// phantom draws a part that lies just before the section: memory, the cooler's fan.
func (p *plotter) phantom(l look, b *Box) {
	if b.Kind == Board || b.Drawn || b.Lo[l.toward]-l.cut > 90*mm {
		return
	}
	p.rect(l.onto(b), "none", p.before(), "class", "before")
}

// lines draws fine parallel lines across a rectangle, upright or lying.
func (p *plotter) lines(f flat, step float64, upright bool) {
	var d strings.Builder
	if upright {
		for x := f.x0 + step; x < f.x1-step/3; x += step {
			d.WriteString("M" + num(x) + " " + num(f.y0) + "V" + num(f.y1))
		}
	} else {
		for y := f.y0 + step; y < f.y1-step/3; y += step {
			d.WriteString("M" + num(f.x0) + " " + num(y) + "H" + num(f.x1))
		}
	}
	p.path(d.String(), p.hair())
}

// fan draws a fan: rotor, hub and blades as one looks along its axis, a crossed frame from the side.
func (p *plotter) fan(f flat, along bool) {
	if !along {
		p.path("M"+num(f.x0)+" "+num(f.y0)+"L"+num(f.x1)+" "+num(f.y1)+"M"+num(f.x1)+" "+num(f.y0)+"L"+num(f.x0)+" "+num(f.y1), p.hair())
		return
	}
	p.rounds(f, 0.47, 0.17)
	r := min(f.w(), f.h())
	cx, cy := (f.x0+f.x1)/2, (f.y0+f.y1)/2
	var d strings.Builder
	const blades = 7
	for i := range blades {
		a := 2 * math.Pi * float64(i) / blades
		x0, y0 := cx+float64(0.17*r*math.Cos(a)), cy+float64(0.17*r*math.Sin(a))
		x1, y1 := cx+float64(0.46*r*math.Cos(a+0.75)), cy+float64(0.46*r*math.Sin(a+0.75))
		d.WriteString("M" + num(x0) + " " + num(y0) + "A" + num(0.38*r) + " " + num(0.38*r) + " 0 0 1 " + num(x1) + " " + num(y1))
	}
	p.path(d.String(), p.hair())
}

// rounds draws two circles in the middle of a rectangle, their radii as shares of its lesser side.
func (p *plotter) rounds(f flat, outer, inner float64) {
	r := min(f.w(), f.h())
	if r <= 0 {
		return
	}
	x, y := (f.x0+f.x1)/2, (f.y0+f.y1)/2
	p.circle(x, y, outer*r, "none", p.hair())
	p.circle(x, y, inner*r, "none", p.hair())
}

// cardBody draws a card's board, its cooler's edge and its bracket.
func (p *plotter) cardBody(l look, f flat) {
	if l.view != OntoBoard || f.h() > f.w()/2 {
		p.rect(f.grow(-0.5*p.em), "none", p.hair())
		return
	}
	// on edge: the board's line at its back, towards the processor
	y := f.y0 + 2.4
	if l.down(p.scene.Socket[Y]) > f.y1 {
		y = f.y1 - 2.4
	}
	p.line(f.x0, y, f.x1, y, p.thin())
	p.lines(flat{f.x0 + 12, min(y, f.y0) + 3, f.x1 - 6, f.y1 - 2}, 0.55*p.em, true)
}

// boardHoles are the mounting holes of each form in the frame's y and x from the row A-B-C. Source: microATX
// specification 1.2, figure 2, and public CAD models (reference sheet, section 1.2).
var boardHoles = []struct {
	forms string
	y, v  unit.Length
}{
	{"atx", -124460, 0}, {"micro-atx", -45720, 0}, {"atx micro-atx mini-itx", 0, 0}, {"atx micro-atx mini-itx", 157480, 22860},
	{"atx", -124460, 154940}, {"atx micro-atx mini-itx", 0, 154940}, {"atx micro-atx mini-itx", 157480, 154940},
	{"atx", -124460, 227330}, {"atx micro-atx", 0, 227330}, {"atx micro-atx", 157480, 227330}, {"micro-atx", -66040, 154940},
}

// holes draws the board's mounting holes that lie on it.
func (p *plotter) holes(l look, b *Box) {
	for _, h := range boardHoles {
		x := h.v + holesToPanel
		if !hasForm(h.forms, p.scene.Form) || x+2*mm > b.Hi[X] {
			continue
		}
		at := Point{x, h.y, 0}
		f := l.onto(&Box{Lo: at, Hi: at})
		p.circle(f.x0, f.y0, 1.98, "none", p.thin())
		p.circle(f.x0, f.y0, 3.6, "none", p.hair())
	}
}

func hasForm(forms, form string) bool {
	for _, f := range strings.Fields(forms) {
		if f == form {
			return true
		}
	}
	return false
}
