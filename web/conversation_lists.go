package web

import (
	"encoding/json"
	"fmt"
	"strings"

	"github.com/maxence-charriere/go-app/v9/pkg/app"
)

// screens lists the screens that were named, each with its figures.
func (c *Conversation) screens(q Question) app.UI {
	d := c.Desk
	count := d.brief.Count("screens")
	return app.FieldSet().Class("list").Body(
		app.Legend().Text(q.Asks),
		app.If(count == 0, app.P().Class("hint").Text("Not said: "+q.Usual+" is taken.")),
		app.Range(make([]struct{}, count)).Slice(func(i int) app.UI {
			path := fmt.Sprintf("screens[%d]", i)
			return app.Div().Class("row").Body(
				d.heldBy(path+".width_px", "Pixels wide", "", d.figure(path+".width_px")),
				d.heldBy(path+".height_px", "Pixels high", "", d.figure(path+".height_px")),
				d.heldBy(path+".refresh_hz", "Pictures a second", "", d.figure(path+".refresh_hz")),
				d.heldBy(path+".bits_per_colour", "Bits a colour", "", d.figure(path+".bits_per_colour")),
				d.heldBy(path+".count", "How many", "", d.figure(path+".count")),
				d.heldBy(path+".owned", "Theirs already?", "", d.choice(path+".owned", d.brief.Text(path+".owned"), []string{"true", "false"}, []string{"yes", "no"})),
				app.Button().Type("button").Text("Take it out").OnClick(c.onRemove("screens", i), path),
			)
		}),
		app.Button().ID("add-screen").Type("button").Text("Add a screen").OnClick(c.onAddScreen),
	)
}

func (c *Conversation) onAddScreen(app.Context, app.Event) {
	d := c.Desk
	whole := func(n string) any { return json.Number(n) }
	d.edit(func() {
		d.brief.Add("screens", map[string]any{"width_px": whole("2560"), "height_px": whole("1440"),
			"refresh_hz": whole("60"), "bits_per_colour": whole("8"), "count": whole("1")})
	})
}

// owned lists the parts the customer has already.
func (c *Conversation) owned() app.UI {
	d := c.Desk
	count := d.brief.Count("owned")
	return app.Details().Class("fold").ID("around-owned").Body(
		app.Summary().Body(app.Span().Class("fold-name").Text("What they have already"), app.Span().Class("fold-note").Text(parts(count))),
		app.Div().Class("questions").Body(
			app.Range(make([]struct{}, count)).Slice(func(i int) app.UI {
				path := fmt.Sprintf("owned[%d]", i)
				return app.Div().Class("row").Body(
					app.P().Text(d.owned(path)),
					app.Button().Type("button").Text("Take it out").OnClick(c.onRemove("owned", i), path),
				)
			}),
			app.If(d.shelf == nil,
				app.Button().ID("show-shelf").Type("button").Text("Name a part they have").OnClick(c.onShelf)).
				Else(c.pick()),
		),
	).OnToggle(c.onOwnedFold)
}

// owned names a part the customer has already, and how many of it.
func (d *Desk) owned(path string) string {
	name := d.shelf.name(d.brief.Text(path+".seat"), d.brief.Text(path+".part"))
	if n := d.brief.Text(path + ".count"); n != "" {
		name += ", " + n + " of it"
	}
	return name
}

func parts(n int) string {
	switch n {
	case 0:
		return "nothing"
	case 1:
		return "1 part"
	}
	return fmt.Sprintf("%d parts", n)
}

// pick offers the stock by seat.
func (c *Conversation) pick() app.UI {
	d := c.Desk
	var seats []app.UI
	if d.shelf != nil {
		for _, s := range d.shelf.Seats {
			seats = append(seats, app.OptGroup().Label(s.SeatTitle).Body(
				app.Range(s.Parts).Slice(func(i int) app.UI {
					return app.Option().Value(s.Seat + "=" + s.Parts[i].Part).Text(s.Parts[i].Name)
				})))
		}
	}
	return app.Div().Class("asked").Body(
		app.Label().For("owned-part").Text("A part of the shop’s list that they have, and that should be used"),
		app.Select().ID("owned-part").Body(append([]app.UI{app.Option().Value("").Text("Choose a part").Selected(c.has == "")}, seats...)...).
			OnChange(c.onHas),
		app.Button().ID("add-owned").Type("button").Text("They have it").Disabled(c.has == "").OnClick(c.onOwned),
	)
}

func (c *Conversation) onShelf(app.Context, app.Event) { c.Desk.fetchShelf() }

func (c *Conversation) onOwnedFold(ctx app.Context, _ app.Event) {
	if ctx.JSSrc().Get("open").Bool() {
		c.Desk.fetchShelf()
	}
}

func (c *Conversation) onHas(ctx app.Context, _ app.Event) { c.has = ctx.JSSrc().Get("value").String() }

func (c *Conversation) onOwned(app.Context, app.Event) {
	seat, part, _ := strings.Cut(c.has, "=")
	d := c.Desk
	c.has = ""
	d.edit(func() { d.brief.Add("owned", map[string]any{"seat": seat, "part": part}) })
}

// name is what a seat and a part of the stock for it are called; their ids where the stock is not at hand.
func (s *Shelf) name(seat, part string) string {
	if s != nil {
		for _, of := range s.Seats {
			if of.Seat != seat {
				continue
			}
			for _, p := range of.Parts {
				if p.Part == part {
					return of.SeatTitle + ": " + p.Name
				}
			}
		}
	}
	return seat + ": " + part
}
