package web

import (
	"html"
	"strconv"
	"strings"

	"github.com/maxence-charriere/go-app/v9/pkg/app"
)

// shape is a piece of SVG. A drawing goes into the page as one text: node by node it would take the browser many times as
// long. Nothing in it can have the keyboard.
type shape struct{ tag, attributes, inside string }

// svg returns an SVG element with attributes given as name, value, name, value. Style sheets select it by its data
// attributes.
func svg(tag string, attributes ...string) shape {
	var b strings.Builder
	if tag == "svg" {
		b.WriteString(` xmlns="http://www.w3.org/2000/svg"`)
	}
	for i := 0; i+1 < len(attributes); i += 2 {
		b.WriteString(" " + attributes[i] + `="` + html.EscapeString(attributes[i+1]) + `"`)
	}
	return shape{tag: tag, attributes: b.String()}
}

// Body puts shapes into the element.
func (s shape) Body(inside ...shape) shape {
	var b strings.Builder
	for _, i := range inside {
		b.WriteString(i.String())
	}
	s.inside = b.String()
	return s
}

// Text letters the element.
func (s shape) Text(text string) shape {
	s.inside = html.EscapeString(text)
	return s
}

// String writes the element down; the zero shape is nothing.
func (s shape) String() string {
	if s.tag == "" {
		return ""
	}
	return "<" + s.tag + s.attributes + ">" + s.inside + "</" + s.tag + ">"
}

// UI puts the drawing into the page.
func (s shape) UI() app.UI { return app.Raw(s.String()) }

// when is the shape, or nothing.
func when(condition bool, s shape) shape {
	if condition {
		return s
	}
	return shape{}
}

// percent writes a share, 0 to 1, as a length of its container.
func percent(share float64) string {
	return strconv.FormatFloat(100*share, 'f', 2, 64) + "%"
}
