package web

import "github.com/maxence-charriere/go-app/v9/pkg/app"

// Idle is the money of a build that buys nothing the brief asks for.
type Idle struct {
	Together   Quantity // what single swaps save, made one after another
	Parts      []Wasted
	Unfinished bool // not every part was looked at
}

// Wasted is what one part costs over the cheapest that would keep every verdict in its place.
type Wasted struct {
	Seat      string
	SeatTitle string `json:"seat_title"`
	Instead   struct {
		ID   string `json:"part"`
		Name string
	}
	Saves   Quantity
	Nothing bool // the money buys neither value nor any outcome
}

// of is what a seat's part wastes, nil where it wastes nothing.
func (i *Idle) of(seat string) *Wasted {
	if i != nil {
		for n := range i.Parts {
			if i.Parts[n].Seat == seat {
				return &i.Parts[n]
			}
		}
	}
	return nil
}

// view lists the parts that cost more than the work asks.
func (i *Idle) view() app.UI {
	if i == nil {
		return app.Div().Hidden(true)
	}
	unfinished := "The search ended before every part was looked at: more may be had cheaper with every verdict kept."
	switch {
	case len(i.Parts) == 0 && i.Unfinished:
		return app.P().Class("idle").ID("idle-unfinished").Text(unfinished)
	case len(i.Parts) == 0:
		return app.P().Class("idle").Text("No part could be had cheaper without a verdict moving.")
	}
	return app.Div().Class("idle").Body(
		app.H3().Text("Could be saved, and every verdict kept: "+i.Together.Text),
		app.Ul().Class("plain").Body(app.Range(i.Parts).Slice(func(n int) app.UI {
			w := &i.Parts[n]
			buys := ", and buys comfort past the floor"
			if w.Nothing {
				buys = ", and buys nothing"
			}
			instead := w.Instead.Name
			if w.Instead.ID == "" {
				instead = "doing without"
			}
			return app.Li().DataSet("seat", w.Seat).Text(w.SeatTitle + ": " + w.Saves.Text + " more than " + instead + buys + ".")
		})),
		app.If(i.Unfinished, app.P().ID("idle-unfinished").Class("hint").Text(unfinished)),
	)
}
