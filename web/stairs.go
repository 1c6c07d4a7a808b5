package web

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"

	"slipfit/core/chart"
	"slipfit/core/unit"

	"github.com/maxence-charriere/go-app/v9/pkg/app"
)

// Frontier is what every price buys.
type Frontier struct {
	Status      string
	Currency    string
	Budget      *Quantity
	Full        int64
	Certificate Certificate
	Points      []FrontierPoint
}

// FrontierPoint is a price at which more is served than at any lower one.
type FrontierPoint struct {
	Price Quantity
	Worth int64
	Parts []Line // those that the point before does not have
	Build json.RawMessage
}

func (d *Desk) onFrontier(app.Context, app.Event) {
	ground, keep := d.settled(), d.kept()
	begin(d, "Finding what every price buys", "frontier", args{Brief: d.job.Brief, Keep: keep, Within: patience}, func(f *Frontier) {
		d.why = nil
		if len(f.Points) == 0 {
			d.frontier, d.news = nil, "No machine was found."
			d.plan = &Plan{Status: f.Status, Certificate: f.Certificate}
			if f.Status == "infeasible" {
				d.explainConflict(keep)
			}
			return
		}
		d.frontier, d.ground, d.picked = f, ground, len(f.Points)-1
		if at := f.of(d.proof); at >= 0 {
			d.picked = at
		}
		d.news = "Drawn: " + counted(len(f.Points), "price", "prices") + " at which more is served."
	})
}

// of is the point of the machine in hand; −1 where it is of none.
func (f *Frontier) of(p *Proof) int {
	if f == nil || p == nil {
		return -1
	}
	return slices.IndexFunc(f.Points, func(x FrontierPoint) bool { return x.Price == p.Price })
}

// stairs is the drawing of what every price buys, while it is of the brief in hand.
func (d *Desk) stairs() app.UI {
	if d.frontier == nil || d.ground != d.settled() {
		return app.Div().Hidden(true)
	}
	return &StairsView{Desk: d, Frontier: d.frontier, Picked: d.picked}
}

// StairsView draws what every price buys. A press on the drawing lays the machine of the nearest point on the sheet; the slider
// goes from point to point, and the button below does the same for the one it stands on.
type StairsView struct {
	app.Compo

	Desk     *Desk
	Frontier *Frontier
	Picked   int
}

// sizes of the drawing, for a wide window and for a narrow one.
var stairsSizes = [...]struct {
	name          string
	width, height float64
}{{"wide", 640, 270}, {"narrow", 330, 240}}

func (v *StairsView) chart(size int) chart.Stairs {
	f := v.Frontier
	s := chart.Stairs{ID: "stairs-" + stairsSizes[size].name, Title: "What every price buys", Marked: v.Picked,
		XName: "price before tax", XUnit: f.Currency, YName: "of all that is asked for, served", YUnit: "%",
		Width: stairsSizes[size].width, Height: stairsSizes[size].height}
	for i := range f.Points {
		p := &f.Points[i]
		s.X, s.Y = append(s.X, p.Price.Figure/100), append(s.Y, f.served(p.Worth))
	}
	first, last := &f.Points[0], &f.Points[len(f.Points)-1]
	s.Desc = fmt.Sprintf("%s at which more is served than for less, from %s, which serves %.1f %%, to %s, which serves %.1f %%.",
		counted(len(f.Points), "price", "prices"), first.Price.Text, f.served(first.Worth), last.Price.Text, f.served(last.Worth))
	return s
}

// served is value in per cent of everything asked for.
func (f *Frontier) served(worth int64) float64 { return float64(worth) * 100 / float64(max(f.Full, 1)) }

// Render draws the stairs.
func (v *StairsView) Render() app.UI {
	figures := []app.UI{}
	for i := range stairsSizes {
		s := v.chart(i)
		figures = append(figures, app.Div().Class("stairs-drawn").DataSet("size", stairsSizes[i].name).
			Body(app.Raw(s.Draw())).OnClick(v.onPress(i), i))
	}
	f := v.Frontier
	p := &f.Points[v.Picked]
	text := fmt.Sprintf("%s before tax serves %.1f %% of all that is asked for.", p.Price.Text, f.served(p.Worth))
	return app.Figure().Class("stairs").ID("stairs").DataSet("points", fmt.Sprint(len(f.Points))).Body(
		app.H3().Text("What every price buys"),
		app.Div().Body(figures...),
		app.Div().Class("stairs-pick").Body(
			app.Label().For("stairs-at").Text("Go from price to price"),
			app.Input().ID("stairs-at").Type("range").Min(0).Max(len(f.Points)-1).Step(1).Value(v.Picked).
				Aria("valuetext", text).OnInput(v.onSlide),
		),
		app.P().ID("stairs-text").Text(text),
		app.P().Class("hint").Text(v.comesIn()),
		app.Div().Class("stairs-do").Body(
			app.Button().Type("button").Class("main").ID("stairs-lay").Text("Lay this machine on the sheet").OnClick(v.onLay),
			app.Button().Type("button").ID("stairs-close").Text("Put the drawing away").OnClick(v.onClose),
		),
		app.P().Class("proven").Text(v.proven()),
	)
}

// comesIn says what the point's machine has that the one before has not.
func (v *StairsView) comesIn() string {
	p := &v.Frontier.Points[v.Picked]
	if v.Picked == 0 {
		return "This is the cheapest machine that does the work."
	}
	var names []string
	for _, l := range p.Parts {
		name := l.Name
		if l.Count > 1 {
			name = fmt.Sprintf("%d × %s", l.Count, l.Name)
		}
		names = append(names, name)
	}
	if len(names) == 0 {
		return "A part less than at the price before."
	}
	return "Against the price before, in comes: " + strings.Join(names, ", ") + "."
}

func (v *StairsView) proven() string {
	f := v.Frontier
	if f.Status == "optimal" {
		return fmt.Sprintf("Proven: %s; no other machine among %s ways to fill the seats serves more for its price.", counted(len(f.Points), "price", "prices"), unit.Group(f.Certificate.Combinations))
	}
	return fmt.Sprintf("The search ended before it was proven: another machine may serve up to %.1f %% more than what is drawn at its price.", f.served(f.Certificate.GapWorth))
}

func (v *StairsView) onSlide(ctx app.Context, _ app.Event) {
	v.pick(ctx.JSSrc().Get("valueAsNumber").Int())
}

// pick looks at a point.
func (v *StairsView) pick(at int) {
	if at >= 0 && at < len(v.Frontier.Points) {
		v.Picked, v.Desk.picked = at, at
	}
}

// onPress lays the machine of the point nearest to the pointer on the sheet.
func (v *StairsView) onPress(size int) app.EventHandler {
	return func(ctx app.Context, e app.Event) {
		drawing := ctx.JSSrc().Call("querySelector", "svg").Call("getBoundingClientRect")
		scale := stairsSizes[size].width / drawing.Get("width").Float()
		s := v.chart(size)
		at := s.Nearest((e.Get("clientX").Float()-drawing.Get("left").Float())*scale, (e.Get("clientY").Float()-drawing.Get("top").Float())*scale)
		v.pick(at)
		v.lay()
	}
}

func (v *StairsView) onLay(app.Context, app.Event) { v.lay() }

// lay puts the machine of the point that is looked at on the sheet.
func (v *StairsView) lay() { v.Desk.lay(v.Frontier.Points[v.Picked].Build) }

func (v *StairsView) onClose(app.Context, app.Event) {
	v.Desk.frontier = nil
	v.Desk.redraw()
	v.Desk.ctx.Defer(func(app.Context) { focus("plan-frontier") })
}
