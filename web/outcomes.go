package web

import (
	"math"

	"github.com/maxence-charriere/go-app/v9/pkg/app"
)

// Outcome is what each activity will be like on a build.
type Outcome struct{ Figures []Figure }

// Figure is one outcome in the customer's terms, with its band.
type Figure struct {
	Activity string
	What     string
	Unit     string // of the figures
	Want     *Amount
	Low      Amount
	Expected Amount
	High     Amount
	SetBy    string `json:"set_by"`
	Verdict  string
	Why      string
	Band     string
	Source   string
}

// Amount is a figure as a person reads it.
type Amount struct {
	Figure float64
	Text   string
}

// Outcomes tells what the work will be like on the machine: for each activity what is expected, the band it may lie in, and
// what the customer asked for.
type Outcomes struct {
	app.Compo

	Desk    *Desk
	Outcome *Outcome
	Balance *Balance
}

// Render draws the outcomes, activity by activity.
func (o *Outcomes) Render() app.UI {
	if o.Outcome == nil {
		return blank("No machine yet. How long the work takes on it will stand here, each figure with the band it may lie in.")
	}
	var all []app.UI
	activity := ""
	for i := range o.Outcome.Figures {
		f := &o.Outcome.Figures[i]
		if f.Activity != activity {
			activity = f.Activity
			all = append(all, app.H3().Text(activity))
		}
		all = append(all, f.view())
	}
	return app.Div().Class("outcomes").Body(append(all, limits(o.Desk, o.Balance))...)
}

func (f *Figure) view() app.UI {
	band, scale := "Without a band", "Scale in "+f.Unit+"."
	if f.Low.Text != f.High.Text {
		band = "From " + f.Low.Text + " to " + f.High.Text
	}
	if f.Want != nil {
		scale = "Asked for: " + f.Want.Text + ". " + scale
	}
	return &Fold{
		Frame: func() app.HTMLDetails { return app.Details().Class("outcome").DataSet("what", f.What) },
		Line: func() []app.UI {
			return []app.UI{
				app.Span().Class("outcome-what").Text(f.What),
				app.Span().Class("outcome-expected").Text(f.Expected.Text),
				app.Span().Class("ruler-verdict").Body(swatch(f.Verdict), app.Span().Text(f.Verdict)),
			}
		},
		Inside: func() []app.UI {
			return []app.UI{
				app.P().Text(sentence(f.Why)),
				app.P().Class("hint").Text(band + ": " + f.Band + ". Source: " + f.Source + "."),
				f.draw().UI(),
				app.P().Class("hint").Text(scale),
			}
		},
	}
}

// draw draws the band with its expected value on the scale of a ruler, and what was asked for as a dimension.
func (f *Figure) draw() shape {
	largest := f.High.Figure
	if f.Want != nil {
		largest = math.Max(largest, f.Want.Figure)
	}
	s := scaleFor(largest)
	at := func(v float64) float64 { return s.share(Mark{At: v, Known: true}) }
	wanted := shape{}
	if f.Want != nil {
		wanted = dimension(at(f.Want.Figure))
	}
	low, high, expected := at(f.Low.Figure), at(f.High.Figure), percent(at(f.Expected.Figure))
	return rulerDrawing(s.draw(), wanted,
		svg("rect", "data-part", "band", "x", percent(low), "y", haveY, "width", percent(math.Max(0, high-low)), "height", haveHeight,
			"fill", "none", "stroke", "currentColor", "stroke-dasharray", "4 2"),
		svg("line", "data-part", "expected", "x1", expected, "y1", haveY, "x2", expected, "y2", scaleY, "stroke", "currentColor", "stroke-width", "3"))
}
