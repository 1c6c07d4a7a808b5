package web

import (
	"slices"
	"strings"

	"github.com/maxence-charriere/go-app/v9/pkg/app"
)

// Choices is what is still open in a seat under the brief and the settled parts.
type Choices struct{ Seats []SeatChoices }

// SeatChoices is what can go into one seat.
type SeatChoices struct {
	Seat  string
	Parts []Choice
}

// Choice is a part in a seat and what comes of it: optimal where a whole machine holds it, from that price on; infeasible where
// none does; else it was not settled in time.
type Choice struct {
	Part  string
	State string
	Price *Quantity
}

// of is what comes of a part in a seat, nil where that is not known.
func (c *Choices) of(seat, part string) *Choice {
	if c != nil {
		for i := range c.Seats {
			if c.Seats[i].Seat != seat {
				continue
			}
			for j := range c.Seats[i].Parts {
				if p := &c.Seats[i].Parts[j]; p.Part == part {
					return p
				}
			}
		}
	}
	return nil
}

// unsettled is how many parts were not settled in time.
func (c *Choices) unsettled() int {
	n := 0
	if c != nil {
		for i := range c.Seats {
			for j := range c.Seats[i].Parts {
				if s := c.Seats[i].Parts[j].State; s != "optimal" && s != "infeasible" {
					n++
				}
			}
		}
	}
	return n
}

// How long what is still open in a seat may be looked for, in milliseconds: as soon as its list is opened, and where somebody waits
// for it.
const (
	atOnce   = 3_000
	awaiting = 60_000
)

// lookOpen finds which parts of the open seat some whole machine can hold, and from what price on.
func (d *Desk) lookOpen(within int) {
	d.choices, d.reasons = nil, nil
	if d.about().Brief == nil {
		return
	}
	turn, seat := d.turn, d.open
	d.looking = ask(d, "choices", args{Brief: d.job.Brief, Seat: seat, Keep: d.keptBeside(seat), Within: within}, func(c *Choices) {
		d.looking = 0
		if turn == d.turn && d.open == seat {
			d.choices = c
		}
	}, func(err error) {
		d.looking = 0
		d.grieve(err)
	})
}

// stopLooking ends that, so that something else need not wait for it.
func (d *Desk) stopLooking() {
	if d.looking != 0 {
		d.worker.Cancel(d.looking)
		d.looking = 0
	}
}

// keptBeside lists the settled seats but one as the planner takes them.
func (d *Desk) keptBeside(seat string) []string {
	return slices.DeleteFunc(d.kept(), func(keep string) bool { return strings.HasPrefix(keep, seat+"=") })
}

// with is the settled seats with a part in one of them.
func (d *Desk) with(seat, part string) []string {
	if part == "" {
		part = "none"
	}
	return append(d.keptBeside(seat), seat+"="+part)
}

// askReason asks why no machine can hold a part.
func (d *Desk) askReason(seat, part string) {
	begin(d, "Finding what stands in the way", "why", args{Brief: d.job.Brief, Keep: d.with(seat, part), Within: patience}, func(y *Why) {
		if d.reasons == nil {
			d.reasons = map[string]*Why{}
		}
		d.reasons[part] = y
		d.news = "Why no machine can hold it is listed with it."
	})
}

// openNote says how far it is known what is open, above a list of parts.
func (t *TrialList) openNote() app.UI {
	switch {
	case t.Looking:
		return app.P().Class("hint").ID("open-looking").Text("It is being found which of them some whole machine for this brief can hold, and from what price on.")
	case t.Choices == nil:
		return app.P().Hidden(true)
	case t.Choices.unsettled() > 0:
		return app.P().Class("hint").ID("open-unsettled").Body(
			app.Span().Text("“From” is the least price before tax of a whole machine with it. Not all was settled in time. "),
			app.Button().Type("button").ID("look-longer").Text("Look longer").OnClick(t.onLonger))
	}
	return app.P().Class("hint").ID("open-settled").Text("“From” is the least price before tax of a whole machine for this brief with it. All of it is proven.")
}

func (t *TrialList) onLonger(app.Context, app.Event) { t.Desk.lookOpen(awaiting) }

// open tells what comes of a part in a whole machine: the least price of one, that there is none, or that it is not known.
func (t *TrialList) open(p Tried) (text, state string) {
	c := t.Choices.of(t.Seat, p.Part)
	switch {
	case c == nil:
		return "", ""
	case c.State == "optimal":
		return "from " + c.Price.Text, "open"
	case c.State == "infeasible":
		return "in no machine", "closed"
	case c.Price != nil:
		return "from " + c.Price.Text + " or less", "open"
	}
	return "not settled", ""
}

// reason explains a part that no machine can hold, or offers to plan with one that another machine can.
func (t *TrialList) reason(p Tried, state string) app.UI {
	d := t.Desk
	name := p.Name
	if p.Part == "" {
		name = "leaving it out"
	}
	switch y := d.reasons[p.Part]; {
	case state == "closed" && y != nil:
		return app.Div().Class("tried-why").DataSet("reason", p.Part).Body(y.asks()...)
	case state == "closed":
		return app.P().Class("tried-do").Body(app.Button().Type("button").Text("Why in none?").
			Aria("label", "Why in no machine: "+name).OnClick(func(app.Context, app.Event) { d.askReason(t.Seat, p.Part) }, t.Seat, p.Part))
	case state == "open" && !p.Stands:
		return app.P().Class("tried-do").Body(app.Button().Type("button").Text("Plan with it").
			Aria("label", "Plan a machine with "+name).OnClick(func(app.Context, app.Event) { d.makePlan("least", d.with(t.Seat, p.Part)) }, t.Seat, p.Part))
	}
	return app.P().Hidden(true)
}
