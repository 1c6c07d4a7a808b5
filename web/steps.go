package web

import (
	"encoding/json"
	"fmt"
	"strings"

	"github.com/maxence-charriere/go-app/v9/pkg/app"
)

// Steps is the next step up and down for every seat of a build.
type Steps struct{ Seats []SeatSteps }

// SeatSteps is the steps of one seat.
type SeatSteps struct {
	Seat     string
	Up, Down *Stride
	Full     []string // what the seat gives that nothing serves further, or that is enough

	Unfinished bool // the search ended before it was known whether there is a step that is not told
}

// Stride is a step to another whole machine.
type Stride struct {
	Serves  string
	Costs   Quantity
	Proven  bool
	Parts   []Line
	Empties []string
	Gives   []Held // needs that are then short
	Changes []Moved
	Build   json.RawMessage
}

// of is the steps of a seat, nil where they are not known.
func (s *Steps) of(seat string) *SeatSteps {
	if s != nil {
		for i := range s.Seats {
			if s.Seats[i].Seat == seat {
				return &s.Seats[i]
			}
		}
	}
	return nil
}

// fetchSteps asks for the next step up and down for every seat.
func (d *Desk) fetchSteps() {
	a := d.about()
	a.Within = patience
	begin(d, "Finding the next step up and down", "steps", a, func(s *Steps) {
		d.steps, d.stepped = s, string(d.job.Build)
		d.news = "The next step up and down is told with every part."
	})
}

// view tells the steps of a seat, or offers to find them.
func (s *Steps) view(d *Desk, seat string) app.UI {
	if s == nil || d.stepped != string(d.job.Build) {
		return app.P().Body(app.Button().Type("button").ID("steps").Text("Find the next step up and down").
			OnClick(func(app.Context, app.Event) { d.fetchSteps() }))
	}
	one := s.of(seat)
	if one == nil {
		return app.P().ID("steps-none").Class("hint").Text("This seat is left as it is: no step is looked for.")
	}
	up := app.P().Class("step").Text("No step up: nothing serves what this seat gives further to any use.")
	if len(one.Full) > 0 {
		up = app.P().Class("step").Text("No step up: nothing serves " + strings.Join(one.Full, ", ") + " further to any use.")
	}
	down := app.P().Class("step").Text("No step down: nothing cheaper in this seat makes the machine cheaper.")
	if one.Unfinished {
		up = app.P().Class("step").Text("The search ended before a step up was found; there may be one.")
		down = app.P().Class("step").Text("The search ended before a step down was found; there may be one.")
	}
	return app.Div().Class("steps").ID("steps-told").Body(
		app.If(one.Up == nil, up).Else(one.Up.view(d, "up", "Up: "+one.Up.words()+", and "+one.Up.serves()+" goes further.")),
		app.If(one.Down == nil, down).Else(one.Down.view(d, "down", "Down: "+one.Down.words()+".")),
	)
}

func (s *Stride) serves() string {
	if s == nil {
		return ""
	}
	return s.Serves
}

// words tells what a step costs, what comes in, and what it gives up.
func (s *Stride) words() string {
	if s == nil {
		return ""
	}
	var parts []string
	for _, l := range s.Parts {
		name := l.Name
		if l.Count > 1 {
			name = fmt.Sprintf("%d × %s", l.Count, l.Name)
		}
		parts = append(parts, name)
	}
	for _, seat := range s.Empties {
		parts = append(parts, "no "+seat)
	}
	text := signed(s.Costs) + " before tax with " + strings.Join(parts, ", ")
	for i := range s.Gives {
		text += fmt.Sprintf("; it gives up %s, %s of %s", s.Gives[i].Title, s.Gives[i].Have.Text, s.Gives[i].Need.Text)
	}
	if !s.Proven {
		text += "; not proven, since the search ended early"
	}
	return text
}

// view tells a step, what changes by it, and offers its machine.
func (s *Stride) view(d *Desk, which, text string) app.UI {
	if s == nil {
		return app.Div().Hidden(true)
	}
	return app.Div().Class("step").DataSet("step", which).Body(
		app.P().Text(text),
		app.Ul().Class("plain").Body(app.Range(s.Changes).Slice(func(i int) app.UI {
			c := &s.Changes[i]
			return app.Li().Text(fmt.Sprintf("%s, %s: %s becomes %s", c.Activity, c.What, c.Before.Text, c.After.Text))
		})),
		app.Button().Type("button").ID("step-"+which).Text("Take this step").Aria("label", "Take this step "+which).
			OnClick(func(app.Context, app.Event) { d.lay(s.Build) }, which, string(s.Build)),
	)
}

// lay puts another machine for the same brief on the sheet.
func (d *Desk) lay(b json.RawMessage) {
	turn := d.turn
	d.stopLooking()
	ask(d, "prove", args{Build: b, Brief: d.job.Brief}, func(p *Proof) {
		if turn != d.turn {
			return
		}
		d.adopt(p, nil)
		d.news = "On the sheet. " + p.summary()
	}, d.grieve)
}
