package scene

import (
	"strings"

	"slipfit/core/unit"
)

// Drawing says what a drawing carries besides the two views.
type Drawing struct {
	Title      string      // what it shows, for screen readers: the job or the case
	Dimensions []Dimension // clearances to dimension, tightest first
	List       bool        // the list of parts, lettered under the views
	Prefix     string      // begins every id in the drawing, so that several stand in one page; "scene" where empty
}

// Dimension is a margin whose clearance is drawn.
type Dimension struct {
	Rule, Subject string
	Label         string // in place of the millimetres; empty for those
}

// Draw draws the scene to scale in two views, onto the board and in section through the processor, as an SVG of its own.
// The same scene gives the same bytes.
func Draw(s Scene, d Drawing) []byte {
	if d.Prefix == "" {
		d.Prefix = "scene"
	}
	p := &plotter{scene: &s, drawing: d}
	p.lay()
	p.head()
	for _, l := range []look{p.onto, p.section} {
		p.view(l)
	}
	p.balloons()
	p.dimensions()
	p.legend()
	p.close("svg")
	p.WriteString("\n")
	return p.Bytes()
}

// plotter is one drawing.
type plotter struct {
	ink
	scene         *Scene
	drawing       Drawing
	onto, section look
	size          flat     // of the whole drawing
	frames        [2]flat  // outline of each view: the case and all that stands out of it
	order         [2][]int // bodies of each view, farthest first
	taken         []flat   // paper already lettered on
}

// lay places the views on the paper: side by side, feet on one line, room for balloons between and below.
func (p *plotter) lay() {
	p.onto, p.section = p.scene.look(OntoBoard), p.scene.look(Section)
	looks := [2]*look{&p.onto, &p.section}
	var whole [2]flat
	for v, l := range looks {
		whole[v] = p.extent(*l)
	}
	p.em = max((whole[0].w()+whole[1].w())/74, 5.5)
	left := 7.0 * p.em
	between := 9.0 * p.em
	x := left
	foot := 4*p.em + max(whole[0].h(), whole[1].h())
	for v, l := range looks {
		l.x, l.y = x-whole[v].x0, foot-whole[v].y1
		x += whole[v].w() + between
		p.frames[v] = p.extent(*l)
		p.order[v] = p.scene.order(*l)
	}
	p.size = flat{0, 0, x - between + left, foot + 7.5*p.em}
	if p.drawing.List {
		p.size.y1 += (float64(len(p.scene.Parts)+1)/2 + 1.5) * 1.6 * p.em
	}
}

// extent is what the shell and every body take in a view.
func (p *plotter) extent(l look) flat {
	all := flat{1e9, 1e9, -1e9, -1e9}
	for i := range p.scene.Boxes {
		b := &p.scene.Boxes[i]
		if b.solid() || b.Kind == Shell {
			f := l.onto(b)
			all = flat{min(all.x0, f.x0), min(all.y0, f.y0), max(all.x1, f.x1), max(all.y1, f.y1)}
		}
	}
	if all.x0 > all.x1 {
		return flat{0, 0, 100, 100}
	}
	return all
}

// head opens the drawing and defines its hatchings: metal cut, and boxes in each other's way.
func (p *plotter) head() {
	id := p.drawing.Prefix
	p.WriteString(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ` + num(p.size.x1) + " " + num(p.size.y1) +
		`" role="img" aria-labelledby="` + escape(id) + `-title ` + escape(id) + `-desc" class="scene" color="#1f2a36" font-family="ui-sans-serif, system-ui, sans-serif">`)
	p.open("title", "id", id+"-title")
	p.WriteString(escape(p.heading()))
	p.close("title")
	p.open("desc", "id", id+"-desc")
	p.WriteString(escape(p.description()))
	p.close("desc")
	p.WriteString("\n<defs>")
	for i, angle := range []string{"45", "-45", "60", "-60"} {
		p.hatch(id+"-cut-"+string(rune('0'+i)), angle, 0.42+0.09*float64(i/2))
	}
	p.hatch(id+"-metal", "45", 0.26)
	p.open("pattern", "id", id+"-over", "patternUnits", "userSpaceOnUse", "width", num(0.4*p.em), "height", num(0.4*p.em), "patternTransform", "rotate(45)")
	p.path("M0 0H"+num(0.4*p.em)+"M0 0V"+num(0.4*p.em), stroke{num(0.16 * p.em), ""})
	p.close("pattern")
	p.WriteString("</defs>")
	p.rect(p.size, paper, stroke{"0", ""})
}

// hatch defines a hatching of parallel lines.
func (p *plotter) hatch(id, angle string, step float64) {
	w := num(step * p.em)
	p.open("pattern", "id", id, "patternUnits", "userSpaceOnUse", "width", w, "height", w, "patternTransform", "rotate("+angle+")")
	p.path("M0 "+num(step*p.em/2)+"H"+w, p.hair())
	p.close("pattern")
}

func (p *plotter) heading() string {
	if p.drawing.Title == "" {
		return "Machine in two views"
	}
	return p.drawing.Title + ", in two views"
}

// description says in words what the drawing shows.
func (p *plotter) description() string {
	s := p.scene.title(OntoBoard) + ", and section through the processor, to scale."
	for i, l := range p.scene.Parts {
		s += " " + number(i) + ": " + l.Seat.Title() + ", " + l.Article.Title() + times(l.Count) + "."
	}
	for _, d := range p.drawing.Dimensions {
		if m, ok := p.scene.tightest(d); ok {
			a, b := p.scene.Boxes[m.A].Name, p.scene.Boxes[m.B].Name
			if gap := p.scene.Gap(m); gap < 0 {
				s += " " + a + " and " + b + " overlap by " + (-gap).Q().String() + "."
			} else {
				s += " Between " + a + " and " + b + ": " + gap.Q().String() + "."
			}
		}
	}
	for _, u := range p.scene.Unknown {
		s += " Not drawn, its sheet lacks figures: " + u + "."
	}
	return s
}

// tightest is the meeting of a dimension that leaves least.
func (s *Scene) tightest(d Dimension) (Meeting, bool) {
	var best Meeting
	found := false
	for _, m := range s.Meetings {
		if m.Rule == d.Rule && m.Subject == d.Subject && (!found || s.Gap(m) < s.Gap(best)) {
			best, found = m, true
		}
	}
	return best, found
}

// view draws one view: shell, bodies from far to near, what is hidden, the section's place and the title.
func (p *plotter) view(l look) {
	p.open("g", "class", "view")
	order := p.order[l.view]
	p.shell(l)
	for at, i := range order {
		b := &p.scene.Boxes[i]
		if l.isBefore(b) {
			continue
		}
		p.body(l, b, at)
	}
	for at, i := range order {
		b := &p.scene.Boxes[i]
		switch _, _, share := p.scene.seen(l, order, at); {
		case l.isBefore(b):
			p.phantom(l, b)
		case share < 1 && l.view == OntoBoard && b.Name != "board plate":
			p.rect(l.onto(b), "none", p.hidden(), "class", "hidden")
		}
	}
	for i := range p.scene.Boxes {
		if b := &p.scene.Boxes[i]; b.Kind == KeepOut && !b.Whole && !(l.isBefore(b) && b.Drawn) {
			p.rect(l.onto(b), "none", p.dashed(0.04, 0.12, 0.2), "class", "keep-out")
		}
	}
	f := p.frames[l.view]
	p.text((f.x0+f.x1)/2, p.foot()+3.6*p.em, 0.9, "middle", strings.ToUpper(p.scene.title(l.view)), "letter-spacing", num(0.09*p.em), "class", "view-title")
	if l.view == OntoBoard {
		p.sectionMark(l, f)
	}
	p.close("g")
}

// foot is the line the views stand on.
func (p *plotter) foot() float64 { return max(p.frames[0].y1, p.frames[1].y1) }

// shell draws the sheet metal of the case, cut.
func (p *plotter) shell(l look) {
	b, ok := p.scene.Find("case")
	if !ok {
		return
	}
	out := l.onto(&b)
	in := out.grow(-min(0.45*p.em, out.w()/20))
	ring := "M" + corner(out) + "M" + corner(in)
	p.tag("path", "d", ring, "fill", "url(#"+p.drawing.Prefix+"-metal)", "fill-rule", "evenodd", "stroke", "none")
	p.rect(out, "none", p.thick())
	p.rect(in, "none", p.thin())
}

// corner is the path round a rectangle.
func corner(f flat) string {
	return num(f.x0) + " " + num(f.y0) + "H" + num(f.x1) + "V" + num(f.y1) + "H" + num(f.x0) + "Z"
}

// sectionMark shows where the section goes through: a chain line, thick at its ends, with arrows the way it is seen.
func (p *plotter) sectionMark(l look, f flat) {
	x := l.across(p.scene.Socket[l.right])
	top, bottom := f.y0-1.6*p.em, f.y1+0.9*p.em
	p.line(x, top, x, bottom, p.chain())
	way := -1.0 // the eye stands at the front
	if !l.rightUp {
		way = 1
	}
	for _, y := range []float64{top, bottom} {
		dir := 1.0
		if y == bottom {
			dir = -1
		}
		p.line(x, y, x, y+dir*0.8*p.em, p.thick())
		p.line(x, y, x-way*1.6*p.em, y, p.thin())
		p.arrow(x, y, way, 0)
		p.text(x-way*1.9*p.em, y-dir*0+0.35*p.em, 0.95, anchorFor(-way), "A", "font-weight", "600")
	}
}

func anchorFor(way float64) string {
	if way < 0 {
		return "end"
	}
	return "start"
}

// arrow draws an arrowhead with its point at x, y, flying the way given.
func (p *plotter) arrow(x, y, dx, dy float64) {
	a, w := 0.75*p.em, 0.17*p.em
	p.tag("path", "d", "M"+num(x)+" "+num(y)+
		"L"+num(x-dx*a+dy*w)+" "+num(y-dy*a+dx*w)+
		"L"+num(x-dx*a-dy*w)+" "+num(y-dy*a-dx*w)+"Z", "fill", "currentColor")
}

// legend letters the scale bar and, where asked, the list of parts.
func (p *plotter) legend() {
	x, y := p.frames[0].x0, p.foot()+6*p.em
	p.open("g", "class", "scale")
	for i := range 10 {
		fill := "none"
		if i%2 == 0 {
			fill = "currentColor"
		}
		p.rect(flat{x + float64(i)*10, y - 0.4*p.em, x + float64(i+1)*10, y}, fill, p.thin())
	}
	p.text(x, y+1.1*p.em, 0.85, "middle", "0")
	p.text(x+100, y+1.1*p.em, 0.85, "middle", "100 mm")
	p.close("g")
	if p.drawing.List {
		p.list(x, y+3.6*p.em)
	}
}

// list letters the parts in two columns.
func (p *plotter) list(x, y float64) {
	p.open("g", "class", "parts")
	half := (len(p.scene.Parts) + 1) / 2
	column := (p.size.x1 - x) / 2
	for i, l := range p.scene.Parts {
		cx, cy := x+float64(i/half)*column, y+float64(i%half)*1.6*p.em
		p.text(cx+1.2*p.em, cy, 0.95, "end", number(i), "font-weight", "600")
		p.text(cx+2*p.em, cy, 0.95, "start", capital(l.Seat.Title())+": "+l.Article.Title()+times(l.Count))
	}
	p.close("g")
}

// number is the balloon of a line of parts.
func number(i int) string { return unit.Count(i + 1).Figure() }

// times is the count of a line, where it is more than one.
func times(n int) string {
	if n < 2 {
		return ""
	}
	return " × " + unit.Count(n).Figure()
}

func capital(s string) string {
	if s == "" || s[0] < 'a' || s[0] > 'z' {
		return s
	}
	return string(s[0]-'a'+'A') + s[1:]
}
