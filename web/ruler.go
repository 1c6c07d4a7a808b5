package web

import (
	"math"
	"strconv"

	"slipfit/core/unit"

	"github.com/maxence-charriere/go-app/v9/pkg/app"
)

// Mark is one figure on a ruler: where it lies, and how it is printed, with its unit. The zero Mark is an
// unknown figure.
type Mark struct {
	At    float64
	Text  string
	Known bool
}

// Ruler shows a margin: what a build has and what the work needs on one scale that begins at zero, and what
// is between them in the fill of the verdict. Every word and figure is the core's own.
type Ruler struct {
	app.Compo

	Title   string
	Have    Mark
	Need    Mark
	Margin  string // have − need, printed with its sign and unit; empty when unknown
	Verdict string // clash, short, snug, loose or unknown
	Low     Mark   // of a prediction: what a meter may show
	High    Mark
	Why     string // one sentence
}

// Render draws the ruler. The drawing is silent to a screen reader: all it shows also stands there as text.
func (r *Ruler) Render() app.UI {
	return app.Div().Class("ruler").DataSet("verdict", r.Verdict).Body(
		app.P().Class("ruler-title").Body(
			app.Span().Text(r.Title),
			app.Span().Class("ruler-verdict").Body(swatch(r.Verdict), app.Span().Text(r.Verdict)),
		),
		r.draw().UI(),
		app.P().Class("ruler-figures").Body(
			figure("have", r.Have.Text), figure("need", r.Need.Text), figure("margin", r.Margin),
		),
		app.If(r.High.Known, app.P().Class("ruler-why").Text("A meter may show from "+r.Low.Text+" to "+r.High.Text+".")),
		app.If(r.Why != "", app.P().Class("ruler-why").Text(r.Why)),
	)
}

func figure(name, text string) app.UI {
	if text == "" {
		text = "not known"
	}
	return app.Span().Body(app.Span().Class("name").Text(name), app.Text(" "), app.Span().Class("figure").Text(text))
}

// The parts of a ruler, in CSS pixels from its top. Along the ruler every length is a share of its width.
const (
	rulerHeight = "52"
	needY       = "9"
	haveY       = "16"
	haveHeight  = "12"
	bandY       = "31"
	scaleY      = "34"
	tickEndY    = "39.5"
	numberY     = "49"
)

// blankRuler draws a ruler that measures nothing yet.
func blankRuler() app.UI { return rulerDrawing(scale{}.draw()).UI() }

func rulerDrawing(parts ...shape) shape {
	return svg("svg", "data-part", "ruler", "width", "100%", "height", rulerHeight, "aria-hidden", "true", "focusable", "false").
		Body(parts...)
}

func (r *Ruler) draw() shape {
	s := scaleFor(max(r.Have.At, r.Need.At, r.High.At))
	have, need := s.share(r.Have), s.share(r.Need)
	return rulerDrawing(
		s.draw(),
		when(r.Need.Known, dimension(need)),
		when(r.Have.Known,
			svg("rect", "data-part", "have", "x", "0", "y", haveY, "width", percent(have), "height", haveHeight,
				"fill", "none", "stroke", "currentColor")),
		svg("rect", "data-part", "between", "x", percent(math.Min(have, need)), "y", haveY,
			"width", percent(math.Abs(have-need)), "height", haveHeight, "fill", fill(r.Verdict),
			"stroke", "currentColor", "stroke-dasharray", outline(r.Verdict)),
		when(r.High.Known, band(s.share(r.Low), s.share(r.High))),
	)
}

// band draws what a predicted figure may lie between: a bar with a stroke at either end, across the ruler.
func band(low, high float64) shape {
	stroke := func(at float64) shape {
		return svg("line", "x1", percent(at), "y1", haveY, "x2", percent(at), "y2", scaleY, "stroke", "currentColor", "stroke-width", "1.5")
	}
	return svg("g", "data-part", "band").Body(stroke(low), stroke(high),
		svg("line", "x1", percent(low), "y1", bandY, "x2", percent(high), "y2", bandY, "stroke", "currentColor", "stroke-width", "3"))
}

// dimension draws the need as a dimension line from zero, with its extension line down through the ruler.
func dimension(need float64) shape {
	end := percent(need)
	return svg("g", "data-part", "need").Body(
		svg("line", "x1", "0", "y1", needY, "x2", end, "y2", needY, "stroke", "currentColor"),
		svg("line", "x1", end, "y1", "3", "x2", end, "y2", scaleY, "stroke", "currentColor"),
		svg("line", "x1", "0.5", "y1", "3", "x2", "0.5", "y2", scaleY, "stroke", "currentColor"),
		svg("path", "d", "M0.5 9l8 -2.4v4.8z", "fill", "currentColor"),
		svg("svg", "x", end, "y", "0", "overflow", "visible").Body(
			svg("path", "d", "M-0.5 9l-8 -2.4v4.8z", "fill", "currentColor")),
	)
}

// scale is the graduation of one ruler: from zero in steps of 1, 2 or 5 times a power of ten.
type scale struct{ top, step float64 }

func scaleFor(largest float64) scale {
	if !(largest > 0) || math.IsInf(largest, 0) {
		return scale{}
	}
	step := math.Pow(10, math.Floor(math.Log10(largest)))
	for _, divide := range []float64{5, 2} {
		if largest/(step/divide) <= 8 {
			step /= divide
			break
		}
	}
	return scale{top: largest * 1.04, step: step}
}

// share places a mark between 0 and 1. An unknown figure, and one below zero, lies at the end of the ruler
// where it claims the least.
func (s scale) share(m Mark) float64 {
	if s.top == 0 || !m.Known || m.At <= 0 {
		return 0
	}
	return m.At / s.top
}

// draw graduates the scale. One that measures nothing yet has ten divisions and no numbers.
func (s scale) draw() shape {
	parts := []shape{svg("line", "x1", "0", "y1", scaleY, "x2", "100%", "y2", scaleY, "stroke", "currentColor")}
	tick := func(at string) shape {
		return svg("line", "x1", at, "y1", scaleY, "x2", at, "y2", tickEndY, "stroke", "currentColor")
	}
	if s.top == 0 {
		for i := range 11 {
			parts = append(parts, tick(percent(float64(i)/10)))
		}
		return svg("g", "data-part", "scale").Body(parts...)
	}
	decimals := max(0, int(-math.Floor(math.Log10(s.step))))
	for i := range int(s.top/s.step) + 1 {
		value := float64(i) * s.step
		at, anchor := percent(value/s.top), "middle"
		switch {
		case i == 0:
			anchor = "start"
		case value > 0.97*s.top:
			anchor = "end"
		}
		number := strconv.FormatFloat(value, 'f', decimals, 64)
		if decimals == 0 {
			number = unit.Group(number)
		}
		parts = append(parts, tick(at), svg("text", "x", at, "y", numberY, "text-anchor", anchor, "fill", "currentColor").Text(number))
	}
	return svg("g", "data-part", "scale").Body(parts...)
}
