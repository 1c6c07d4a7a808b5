package scene

import (
	"cmp"
	"slices"

	"slipfit/core/unit"
)

// View is a way of looking at a scene.
type View uint8

// The views drawn: onto the board, and a section through the processor seen from the front.
const (
	OntoBoard View = iota
	Section
)

// look is a view's projection: the axes that run to the right, up and towards the eye, each with its sign.
type look struct {
	view              View
	right, up, toward Axis
	rightUp, upUp     bool        // whether the axis itself runs that way
	x, y              float64     // where the frame's origin lies on the paper
	cut               unit.Length // for a section: the plane on the axis towards the eye
}

func (s *Scene) look(v View) look {
	l := look{view: v, right: X, up: Y, toward: Z, rightUp: !s.Over, upUp: !s.Over}
	if v == OntoBoard {
		if s.Up == X {
			l.right, l.rightUp, l.up, l.upUp = Y, true, X, false
		}
		return l
	}
	l = look{view: v, right: Z, up: Y, toward: X, rightUp: s.Over, upUp: !s.Over, cut: s.Socket[X]}
	switch s.Up {
	case X:
		l.up, l.upUp, l.toward, l.cut = X, false, Y, s.Socket[Y]
	case Z:
		l.right, l.rightUp, l.up, l.upUp = Y, true, Z, true
	}
	return l
}

// Title is what stands under the view.
func (s *Scene) title(v View) string {
	switch {
	case v == Section && s.Up == X:
		return "Section A–A from the rear"
	case v == Section:
		return "Section A–A from the front"
	case s.Up == Z:
		return "From above, lid off"
	case s.Over, s.Up == X:
		return "Right side, panel off"
	}
	return "Left side, panel off"
}

// float is a length in millimetres.
func float(l unit.Length) float64 { return float64(l) / 1000 }

// onto gives a box's outline on the paper.
func (l look) onto(b *Box) flat {
	x0, x1 := l.across(b.Lo[l.right]), l.across(b.Hi[l.right])
	y0, y1 := l.down(b.Lo[l.up]), l.down(b.Hi[l.up])
	return flat{min(x0, x1), min(y0, y1), max(x0, x1), max(y0, y1)}
}

func (l look) across(v unit.Length) float64 {
	if l.rightUp {
		return l.x + float(v)
	}
	return l.x - float(v)
}

func (l look) down(v unit.Length) float64 {
	if l.upUp {
		return l.y - float(v)
	}
	return l.y + float(v)
}

// isCut reports a box that the section goes through.
func (l look) isCut(b *Box) bool {
	return l.view == Section && b.Lo[l.toward] < l.cut && b.Hi[l.toward] > l.cut
}

// isBefore reports a box between the eye and the section.
func (l look) isBefore(b *Box) bool { return l.view == Section && b.Lo[l.toward] >= l.cut }

// front is how near a box comes to the eye; what is cut ends at the section.
func (l look) front(b *Box) unit.Length {
	if l.isCut(b) {
		return l.cut
	}
	return b.Hi[l.toward]
}

// solid reports boxes that are drawn as bodies.
func (b *Box) solid() bool {
	return b.Kind == Board || b.Kind == Part || b.Kind == Fan || b.Kind == Radiator
}

// order lists the bodies of a view, farthest first.
func (s *Scene) order(l look) []int {
	var list []int
	for i := range s.Boxes {
		if s.Boxes[i].solid() {
			list = append(list, i)
		}
	}
	slices.SortStableFunc(list, func(a, b int) int {
		return cmp.Or(cmp.Compare(l.front(&s.Boxes[a]), l.front(&s.Boxes[b])), cmp.Compare(a, b))
	})
	return list
}

// seen samples a body's outline and returns how much of it no nearer body covers, from 0 to 1, and the point of that which
// lies freest of other outlines; of a body that is hidden, a corner.
func (s *Scene) seen(l look, order []int, at int) (x, y, share float64) {
	me := l.onto(&s.Boxes[order[at]])
	const n = 11
	best, open := -1.0, 0
	x, y = me.x0+0.12*me.w(), me.y0+0.12*me.h()
	for i := range n {
		for j := range n {
			px := me.x0 + float64(me.w()*(float64(i)+0.5)/n)
			py := me.y0 + float64(me.h()*(float64(j)+0.5)/n)
			if s.covered(l, order[at+1:], px, py) {
				continue
			}
			open++
			if d := s.free(l, order, at, px, py); d > best {
				best, x, y = d, px, py
			}
		}
	}
	return x, y, float64(open) / (n * n)
}

// free is how far a point of a body is from its outline and from those of nearer bodies.
func (s *Scene) free(l look, order []int, at int, x, y float64) float64 {
	me := l.onto(&s.Boxes[order[at]])
	d := min(x-me.x0, me.x1-x, y-me.y0, me.y1-y)
	for _, i := range order[at+1:] {
		if b := &s.Boxes[i]; !l.isBefore(b) {
			f := l.onto(b)
			d = min(d, max(f.x0-x, x-f.x1, f.y0-y, y-f.y1))
		}
	}
	return d
}

// covered reports a point that one of the bodies hides.
func (s *Scene) covered(l look, nearer []int, x, y float64) bool {
	for _, i := range nearer {
		if b := &s.Boxes[i]; !l.isBefore(b) && l.onto(b).has(x, y) {
			return true
		}
	}
	return false
}
