package scene

import (
	"bytes"
	"math"
	"strconv"
	"strings"
)

// ink writes SVG in millimetres. It uses presentation attributes and classes, never inline styles, so that a drawing looks
// right as a file of its own and obeys a page's style sheet where it has one. Colours are the page's: ink is currentColor.
type ink struct {
	bytes.Buffer
	em float64 // height of the lettering, mm
}

// num prints a coordinate with at most two decimals.
func num(v float64) string {
	r := math.Round(v*100) / 100
	if r == 0 {
		return "0"
	}
	return strconv.FormatFloat(r, 'f', -1, 64)
}

// tag writes an element with attributes given as name, value, name, value.
func (k *ink) tag(name string, attributes ...string) {
	k.open(name, attributes...)
	k.Truncate(k.Len() - 1)
	k.WriteString("/>")
}

// open writes the start of an element.
func (k *ink) open(name string, attributes ...string) {
	k.WriteString("\n<" + name)
	for i := 0; i+1 < len(attributes); i += 2 {
		k.WriteString(" " + attributes[i] + `="` + escape(attributes[i+1]) + `"`)
	}
	k.WriteString(">")
}

func (k *ink) close(name string) { k.WriteString("</" + name + ">") }

var escaper = strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&quot;")

func escape(s string) string { return escaper.Replace(s) }

// Line widths and kinds after ISO 128-2: continuous, dashed for what is hidden, long-dashed dotted for limits and centre
// lines, long-dashed double-dotted for what lies before a cut.
type stroke struct{ width, dash string }

func (k *ink) thick() stroke  { return stroke{num(0.12 * k.em), ""} }
func (k *ink) thin() stroke   { return stroke{num(0.06 * k.em), ""} }
func (k *ink) hair() stroke   { return stroke{num(0.03 * k.em), ""} }
func (k *ink) hidden() stroke { return k.dashed(0.05, 0.45, 0.25) }
func (k *ink) chain() stroke  { return k.dashed(0.06, 1.3, 0.25, 0.12, 0.25) }
func (k *ink) before() stroke { return k.dashed(0.05, 1.1, 0.22, 0.12, 0.22, 0.12, 0.22) }

// dashed is a stroke whose width and dashes are shares of the lettering.
func (k *ink) dashed(width float64, dashes ...float64) stroke {
	var list []string
	for _, d := range dashes {
		list = append(list, num(d*k.em))
	}
	return stroke{num(width * k.em), strings.Join(list, " ")}
}

func (s stroke) attributes() []string {
	a := []string{"stroke", "currentColor", "stroke-width", s.width}
	if s.dash != "" {
		a = append(a, "stroke-dasharray", s.dash)
	}
	return a
}

const paper = "#f4efe2"

// flat is a rectangle on the paper; y runs down.
type flat struct{ x0, y0, x1, y1 float64 }

func (f flat) w() float64 { return f.x1 - f.x0 }
func (f flat) h() float64 { return f.y1 - f.y0 }

// grow moves every side out by so much.
func (f flat) grow(by float64) flat { return flat{f.x0 - by, f.y0 - by, f.x1 + by, f.y1 + by} }

func (f flat) has(x, y float64) bool { return x > f.x0 && x < f.x1 && y > f.y0 && y < f.y1 }

// common is what two rectangles share; empty where w or h is not positive.
func (f flat) common(g flat) flat {
	return flat{max(f.x0, g.x0), max(f.y0, g.y0), min(f.x1, g.x1), min(f.y1, g.y1)}
}

// rect draws a rectangle filled with paper, a pattern or nothing.
func (k *ink) rect(f flat, fill string, s stroke, more ...string) {
	a := append([]string{"x", num(f.x0), "y", num(f.y0), "width", num(f.w()), "height", num(f.h()), "fill", fill}, s.attributes()...)
	if fill == paper {
		a = append(a, "class", "paper")
	}
	k.tag("rect", append(a, more...)...)
}

func (k *ink) line(x0, y0, x1, y1 float64, s stroke) {
	k.tag("path", append([]string{"d", "M" + num(x0) + " " + num(y0) + "L" + num(x1) + " " + num(y1), "fill", "none"}, s.attributes()...)...)
}

func (k *ink) path(d string, s stroke) {
	k.tag("path", append([]string{"d", d, "fill", "none"}, s.attributes()...)...)
}

func (k *ink) circle(x, y, r float64, fill string, s stroke) {
	a := append([]string{"cx", num(x), "cy", num(y), "r", num(r), "fill", fill}, s.attributes()...)
	if fill == paper {
		a = append(a, "class", "paper")
	}
	k.tag("circle", a...)
}

// text letters a line; anchor is start, middle or end.
func (k *ink) text(x, y, size float64, anchor, s string, more ...string) {
	k.open("text", append([]string{"x", num(x), "y", num(y), "font-size", num(size * k.em), "text-anchor", anchor, "fill", "currentColor"}, more...)...)
	k.WriteString(escape(s))
	k.close("text")
}

// wide is about how wide a line of lettering is, in the same unit as size × em.
func (k *ink) wide(s string, size float64) float64 {
	return 0.56 * size * k.em * float64(len([]rune(s)))
}
