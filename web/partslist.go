package web

import (
	"fmt"
	"slices"
	"strconv"

	"github.com/maxence-charriere/go-app/v9/pkg/app"
)

// PartsList is the list of parts with the numbers of the drawing, each with its price as a bar to scale, and what can be
// done about it.
type PartsList struct {
	app.Compo

	Desk    *Desk
	Proof   *Proof
	Drawing *Drawing
	Trial   *Trial
	Ways    *Trial
	Equals  *Equals
	Choices *Choices
	Steps   *Steps
	Looking bool
	Reasons int
	Open    string // seat whose trial list is open
	Pins    []string

	laying
}

// partsSlice is how many rows of the list come in one frame.
const partsSlice = 5

// OnMount and OnUpdate let the rows in.
func (p *PartsList) OnMount(ctx app.Context)  { p.more(ctx, p.count, partsSlice, nil) }
func (p *PartsList) OnUpdate(ctx app.Context) { p.more(ctx, p.count, partsSlice, nil) }

func (p *PartsList) count() int {
	if p.Proof == nil {
		return 0
	}
	return len(p.Proof.Parts)
}

// seats that have nothing in them but may be filled, each with the name of its part.
var spare = [...]struct{ seat, title string }{
	{"graphics", "graphics card"}, {"cache", "cache drive"}, {"archive", "archive drive"},
	{"fans", "fans"}, {"cards", "cards and adapters"}, {"ups", "uninterruptible supply"},
}

// Render draws the list.
func (p *PartsList) Render() app.UI {
	if p.Proof == nil {
		return blank("No parts yet. They will be listed here by the numbers of the drawing, each price drawn to scale.")
	}
	top := 0.0
	for _, l := range p.Proof.Parts {
		top = max(top, l.Price.Figure)
	}
	rows := []app.UI{}
	filled := map[string]bool{}
	shown := p.shown(len(p.Proof.Parts), partsSlice)
	for _, l := range p.Proof.Parts {
		filled[l.Seat] = true
	}
	for i, l := range p.Proof.Parts[:shown] {
		first := i == 0 || p.Proof.Parts[i-1].Seat != l.Seat
		rows = append(rows, p.row(l, top, first))
		if i+1 == len(p.Proof.Parts) || p.Proof.Parts[i+1].Seat != l.Seat {
			rows = append(rows, p.fold(l))
		}
	}
	var empty []app.UI
	for _, s := range spare {
		if !filled[s.seat] {
			empty = append(empty, app.Button().Type("button").ID("change-"+s.seat).Text("add "+s.title).
				Aria("expanded", strconv.FormatBool(p.Open == s.seat)).OnClick(p.onOpen(s.seat), s.seat))
		}
	}
	return app.Div().Class("parts").DataSet("laid", strconv.FormatBool(shown == len(p.Proof.Parts))).Body(
		app.Ol().Class("parts-list").Body(rows...),
		app.Div().Class("spare").Body(append([]app.UI{app.Span().Text("Not in it:")}, empty...)...),
		app.Div().Body(p.spareFold(filled)),
	)
}

// row is one part: its number in the drawing, seat, name and price, and its controls.
func (p *PartsList) row(l Line, top float64, first bool) app.UI {
	number := ""
	if n := p.Drawing.number(l); n > 0 {
		number = strconv.Itoa(n)
	}
	name := l.Name
	if l.Count > 1 {
		name = fmt.Sprintf("%d × %s", l.Count, l.Name)
	}
	price := l.Price.Text
	if l.Owned {
		price = "theirs"
	}
	share := 0.0
	if top > 0 {
		share = l.Price.Figure / top
	}
	idle := 0.0
	if w := p.Proof.Idle.of(l.Seat); w != nil && w.Nothing && first && top > 0 {
		idle = min(w.Saves.Figure/top, share)
	}
	return app.Li().Class("part").DataSet("seat", l.Seat).DataSet("part", l.Part).Body(
		app.Span().Class("balloon").DataSet("drawn", strconv.FormatBool(number != "")).Text(number),
		app.Span().Class("part-seat").Text(l.SeatTitle),
		p.name(l, name, first),
		priceBar(share, idle),
		app.Span().Class("part-price").Text(price),
		app.Span().Class("part-state").Text(p.state(l)),
	)
}

// priceBar draws a price to the scale of the dearest part; what of it buys nothing is hatched as loose.
func priceBar(share, idle float64) app.UI {
	return svg("svg", "data-part", "price", "width", "100%", "height", "10", "aria-hidden", "true", "focusable", "false").Body(
		svg("line", "x1", "0", "y1", "9.5", "x2", "100%", "y2", "9.5", "stroke", "currentColor", "stroke-width", "0.5"),
		svg("rect", "x", "0", "y", "1", "width", percent(share-idle), "height", "8.5", "fill", "url(#hatch-snug)", "stroke", "currentColor"),
		when(idle > 0, svg("rect", "data-part", "idle", "x", percent(share-idle), "y", "1", "width", percent(idle), "height", "8.5",
			"fill", "url(#hatch-loose)", "stroke", "currentColor")),
	).UI()
}

// name is the part's name, which opens what can be done about it; services are the shop's own and are not changed here.
func (p *PartsList) name(l Line, name string, first bool) app.UI {
	if l.Seat == "services" || !first {
		return app.Span().Class("part-name").Text(name)
	}
	return app.Button().Type("button").Class("part-name").ID("change-"+l.Seat).Text(name).
		Aria("label", name+": change the "+l.SeatTitle).Aria("expanded", strconv.FormatBool(p.Open == l.Seat)).OnClick(p.onOpen(l.Seat), l.Seat)
}

// state says of a part that planning keeps it.
func (p *PartsList) state(l Line) string {
	if slices.Contains(p.Pins, l.Seat) {
		return "kept"
	}
	return ""
}

// toggles settle the part of the open seat.
func (p *PartsList) toggles(l Line) app.UI {
	return app.Div().Class("part-do").Body(
		app.Button().Type("button").Class("toggle").ID("pin-"+l.Seat).Text("Keep it when planning").
			Aria("pressed", strconv.FormatBool(slices.Contains(p.Pins, l.Seat))).OnClick(p.onPin(l.Seat), l.Seat),
		app.Button().Type("button").Class("toggle").ID("own-"+l.Seat).Text("They have it already").
			Aria("pressed", strconv.FormatBool(l.Owned)).OnClick(p.onOwn(l), l.Seat, l.Part, l.Count, l.Owned),
	)
}

func (p *PartsList) onOpen(seat string) app.EventHandler {
	return func(app.Context, app.Event) {
		d := p.Desk
		if d.open == seat {
			d.shut()
		} else {
			d.shut()
			d.try(seat)
		}
		d.redraw()
	}
}

func (p *PartsList) onPin(seat string) app.EventHandler {
	return func(app.Context, app.Event) { p.Desk.pin(seat) }
}

func (p *PartsList) onOwn(l Line) app.EventHandler {
	return func(app.Context, app.Event) { p.Desk.own(l) }
}

// fold is what can be done about the part whose seat is open: its toggles and the trial list.
func (p *PartsList) fold(l Line) app.UI {
	seat := l.Seat
	if p.Open != seat {
		return app.Li().Class("part-fold").Hidden(true)
	}
	return app.Li().Class("part-fold").Body(p.toggles(l), p.trial(seat))
}

// spareFold is the trial list of a seat that is empty.
func (p *PartsList) spareFold(filled map[string]bool) app.UI {
	if p.Open == "" || filled[p.Open] {
		return app.Div().Hidden(true)
	}
	return p.trial(p.Open)
}

func (p *PartsList) trial(seat string) app.UI {
	return &TrialList{Desk: p.Desk, Trial: p.Trial, Ways: p.Ways, Equals: p.Equals, Choices: p.Choices, Steps: p.Steps, Looking: p.Looking, Reasons: p.Reasons, Seat: seat}
}
