package web

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"github.com/maxence-charriere/go-app/v9/pkg/app"
)

// TrialList is every part that could sit in a seat: what it changes in the price, and whether the machine then stands or
// which rule says no. Above it stand the ways to fit the part that sits there.
type TrialList struct {
	app.Compo

	Desk    *Desk
	Trial   *Trial
	Ways    *Trial
	Equals  *Equals
	Choices *Choices
	Steps   *Steps
	Looking bool // it is being found what is still open
	Reasons int  // how many reasons are told, so that a new one is drawn
	Seat    string

	laying
	unfolded bool // what does not stand is shown
}

// triedSlice is how many parts of the list come in one frame.
const triedSlice = 12

// OnMount and OnUpdate let the parts in.
func (t *TrialList) OnMount(ctx app.Context)  { t.more(ctx, t.count, triedSlice, nil) }
func (t *TrialList) OnUpdate(ctx app.Context) { t.more(ctx, t.count, triedSlice, nil) }

// count is the length of the longer list: both are let in side by side.
func (t *TrialList) count() int {
	if t.Trial == nil || t.Trial.Seat != t.Seat {
		return 0
	}
	return len(t.Trial.Parts)
}

// Render draws the list: what stands first, cheapest first.
func (t *TrialList) Render() app.UI {
	if t.Trial == nil || t.Trial.Seat != t.Seat {
		return app.P().Class("hint").Text("Each part is being tried in the machine.")
	}
	parts := slices.Clone(t.Trial.Parts)
	slices.SortStableFunc(parts, func(a, b Tried) int { return cmp.Compare(a.Change.Figure, b.Change.Figure) })
	var stand, fail []Tried
	for _, p := range parts {
		if p.Stands {
			stand = append(stand, p)
		} else {
			fail = append(fail, p)
		}
	}
	if len(stand) == 0 {
		t.unfolded = true
	}
	inside := []app.UI{}
	if t.unfolded {
		inside = append(inside, t.list(fail))
	}
	return app.Div().Class("trial").ID("trial").DataSet("seat", t.Seat).
		DataSet("laid", strconv.FormatBool(t.shown(len(parts), triedSlice) == len(parts))).Body(
		t.fitting(),
		app.If(t.Trial.Now != "", app.Div().Body(t.Equals.view(t.Desk), app.If(t.Desk.about().Brief != nil, t.Steps.view(t.Desk, t.Seat)))),
		app.H3().Text("All the shop has for the seat, tried in this machine: "+t.Trial.SeatTitle),
		app.P().Class("hint").Text(counted(len(stand), "stands", "stand")+", "+counted(len(fail), "does not", "do not")+". The figure is the change of price before tax."),
		t.openNote(),
		t.list(stand),
		app.Details().Class("fold").ID("trial-fails").Open(t.unfolded).Body(append([]app.UI{
			app.Summary().Body(app.Span().Class("fold-name").Text("Does not stand"), app.Span().Class("fold-note").Text(fmt.Sprint(len(fail))))},
			inside...)...,
		).OnToggle(t.onUnfold),
		app.Button().Type("button").Text("Close the list").OnClick(t.onClose),
	)
}

func (t *TrialList) onClose(ctx app.Context, _ app.Event) {
	seat := t.Desk.open
	t.Desk.shut()
	t.Desk.redraw()
	t.Desk.ctx.Defer(func(app.Context) { focus("change-" + seat) })
}

// onUnfold shows what does not stand, from its beginning.
func (t *TrialList) onUnfold(ctx app.Context, _ app.Event) {
	open := ctx.JSSrc().Get("open").Bool()
	if open && !t.unfolded {
		t.laid = 0
		t.more(ctx, t.count, triedSlice, nil)
	}
	t.unfolded = open
}

func (t *TrialList) list(parts []Tried) app.UI {
	parts = parts[:t.shown(len(parts), triedSlice)]
	return app.Ul().Class("tried-list").Body(app.Range(parts).Slice(func(i int) app.UI { return t.row(parts[i]) }))
}

func (t *TrialList) row(p Tried) app.UI {
	sits := p.Part == t.Trial.Now
	verdict := "snug"
	if !p.Stands {
		verdict = "clash"
	}
	name := p.Name
	if p.Part == "" {
		name = "leave it out"
	}
	whole, state := t.open(p)
	return app.Li().Class("tried").DataSet("part", p.Part).DataSet("stands", fmt.Sprint(p.Stands)).DataSet("fails", p.Fails).DataSet("open", state).Body(
		swatch(verdict),
		app.Span().Class("tried-name").Text(name),
		app.Span().Class("tried-whole").Text(whole),
		app.Span().Class("tried-price").Text(signed(p.Change)),
		app.If(sits, app.Span().Class("tried-here").Text("in it now")).
			Else(app.Button().Type("button").Text("put in").Aria("label", "Put in "+name).OnClick(t.onChoose(p), t.Seat, p.Part, p.Count, p.Face, p.Layout, p.Plate)),
		app.If(p.Why != "", app.P().Class("tried-why").Text(p.Fails+": "+p.Why+".")),
		t.reason(p, state),
	)
}

// signed writes a change of price with its sign.
func signed(q Quantity) string {
	if q.Figure > 0 {
		return "+" + q.Text
	}
	return q.Text
}

func (t *TrialList) onChoose(p Tried) app.EventHandler {
	return func(app.Context, app.Event) { t.Desk.choose(t.Seat, p) }
}

// fitting lists the ways to fit the part that sits there.
func (t *TrialList) fitting() app.UI {
	if t.Ways == nil || t.Ways.Seat != t.Seat || len(t.Ways.Parts) < 2 {
		return app.Div().Hidden(true)
	}
	ways := t.Ways.Parts
	return app.Div().Class("ways").Body(
		app.H3().Text("How it is fitted"),
		app.Ul().Class("tried-list").Body(app.Range(ways).Slice(func(i int) app.UI {
			p := ways[i]
			verdict := "snug"
			if !p.Stands {
				verdict = "clash"
			}
			return app.Li().Class("tried").DataSet("way", p.way()).DataSet("stands", fmt.Sprint(p.Stands)).Body(
				swatch(verdict),
				app.Span().Class("tried-name").Text(p.way()),
				app.Span().Class("tried-price").Text(""),
				app.If(p.Sits, app.Span().Class("tried-here").Text("as it is now")).
					Else(app.Button().Type("button").Text("fit it so").Aria("label", "Fit it: "+p.way()).OnClick(t.onChoose(p), t.Seat, p.Part, p.Count, p.Face, p.Layout, p.Plate)),
				app.If(p.Why != "", app.P().Class("tried-why").Text(p.Fails+": "+p.Why+".")),
			)
		})),
	)
}

// way says in words how a part is fitted.
func (t *Tried) way() string {
	var words []string
	if t.LayoutName != "" {
		words = append(words, t.LayoutName)
	}
	if t.Layout != "" {
		words = append(words, fmt.Sprintf("plate at position %d", t.Plate))
	}
	switch {
	case t.Face != "" && t.Count > 1:
		words = append(words, fmt.Sprintf("%d on the %s", t.Count, t.Face))
	case t.Face != "":
		words = append(words, "on the "+t.Face)
	}
	return strings.Join(words, ", ")
}
