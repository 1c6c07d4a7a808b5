package web

import (
	"fmt"
	"slices"
	"strings"

	"github.com/maxence-charriere/go-app/v9/pkg/app"
)

// Balance is what limits each activity on a build, and what the next step up would buy.
type Balance struct{ Activities []Balanced }

// Balanced is one activity, resource by resource.
type Balanced struct {
	Activity string
	Rows     []Held
	Tight    *Held `json:"limited_by"`
	Step     *Step

	Unfinished bool // the search ended before the next step up was known
}

// Held is what a build has of a resource against what the work needs.
type Held struct {
	Title, Seat, Verdict, Why string
	Have, Need, Enough        Quantity
}

// Step is the cheapest part that goes further in what limits an activity.
type Step struct {
	Seat, From string
	To         Instead
	Also       *Instead // has to change with it
	Have       Quantity
	Costs      Quantity
	Changes    []Moved
}

// Instead is another filling of a seat.
type Instead struct {
	Part, Name, Face, Layout string
	Count, Plate             int
}

// Moved is one outcome before and after.
type Moved struct {
	Activity, What string
	Before, After  Amount
}

// weigh asks for the balance where it is unfolded.
func (d *Desk) weigh() {
	if !d.weighed || d.balance != nil || len(d.job.Build) == 0 || d.about().Brief == nil {
		return
	}
	turn := d.turn
	ask(d, "balance", d.about(), func(b *Balance) {
		if turn == d.turn {
			d.balance = b
		}
	}, d.grieve)
}

// limits unfolds to what limits each activity.
func limits(d *Desk, b *Balance) app.UI {
	return &Fold{
		Frame:   func() app.HTMLDetails { return app.Details().ID("balance").Class("fold") },
		Line:    indexed("what limits it", "and what the next step up buys and costs"),
		Inside:  func() []app.UI { return b.view(d) },
		Toggled: func(open bool) { d.weighed = open; d.weigh() },
	}
}

func (b *Balance) view(d *Desk) []app.UI {
	if b == nil {
		return []app.UI{app.P().Class("hint").Text("What the machine has is being held against the work.")}
	}
	var all []app.UI
	for i := range b.Activities {
		all = append(all, b.Activities[i].view(d))
	}
	return all
}

func (a *Balanced) view(d *Desk) app.UI {
	note := "all of it is enough"
	if a.Tight != nil {
		note = "limited by " + a.Tight.Title
	}
	t := figures{head: []string{"what", "has", "needs", "enough", "verdict"}}
	for i := range a.Rows {
		r := &a.Rows[i]
		t.rows = append(t.rows, []string{r.Title, r.Have.Text, r.Need.Text, r.Enough.Text, r.Verdict})
	}
	return fold(func() app.HTMLDetails { return app.Details().DataSet("balance", a.Activity) }, a.Activity, note, func() []app.UI {
		var all []app.UI
		if a.Tight != nil {
			all = append(all, app.P().Class("limit").Text(sentence(a.Tight.Why)))
		}
		if a.Step != nil {
			all = append(all, a.Step.view(d))
		}
		if a.Unfinished {
			all = append(all, app.P().Class("hint").Text("The search ended early: there may be a step up that costs less, or one where none is told."))
		}
		return append(all, t.UI())
	})
}

// view tells the step in words. One that moves a single seat can be taken at once.
func (s *Step) view(d *Desk) app.UI {
	text := fmt.Sprintf("Next step up: %s, with %s, for %s more before tax.", s.To.Name, s.Have.Text, s.Costs.Text)
	if s.From != "" {
		text = fmt.Sprintf("Next step up: %s instead of %s, with %s, for %s more before tax.", s.To.Name, s.From, s.Have.Text, s.Costs.Text)
	}
	if s.Also != nil {
		text += " " + s.Also.Name + " has to come with it."
	}
	return app.Div().Class("step").DataSet("part", s.To.Part).Body(
		app.P().Text(text),
		app.Ul().Class("plain").Body(app.Range(s.Changes).Slice(func(i int) app.UI {
			c := &s.Changes[i]
			return app.Li().Text(fmt.Sprintf("%s, %s: %s becomes %s", c.Activity, c.What, c.Before.Text, c.After.Text))
		})),
		app.If(s.Also == nil, app.Button().Type("button").Text("Take this step").
			OnClick(func(app.Context, app.Event) { d.fill(s.Seat, s.To) }, s.Seat, s.To.Part, s.To.Count, s.To.Face)),
	)
}

// Equals is the parts of other makers that do the same in a build, the nearest first.
type Equals struct {
	Seat       string
	Name       string
	Parts      []Equal
	Unfinished bool // not every part was tried
}

// Equal is one of them.
type Equal struct {
	Instead
	Costs Quantity
	Apart float64 `json:"apart_percent"`
	What  string
	Liked bool
}

// view lists the equals of the part in the open seat.
func (e *Equals) view(d *Desk) app.UI {
	if e == nil {
		return app.P().Body(app.Button().Type("button").ID("equals").Text("Find its equal of another maker").
			OnClick(func(app.Context, app.Event) { d.fetchEquals() }))
	}
	unfinished := "The search ended before every part of the seat was tried: others may do the same."
	switch {
	case len(e.Parts) == 0 && e.Unfinished:
		return app.P().ID("equals-unfinished").Class("hint").Text(unfinished)
	case len(e.Parts) == 0:
		return app.P().ID("equals-none").Class("hint").Text("No other maker’s part does the same here: each would move a verdict, or an outcome by more than 3 %.")
	}
	return app.Div().Class("equals").Body(
		app.H3().Text("Does the same, of another maker"),
		app.Ul().Class("tried-list").Body(app.Range(e.Parts).Slice(func(i int) app.UI {
			p := &e.Parts[i]
			why := slices.DeleteFunc([]string{p.apart(), p.liked()}, func(s string) bool { return s == "" })
			return app.Li().Class("tried").DataSet("equal", p.Part).Body(
				swatch("snug"),
				app.Span().Class("tried-name").Text(p.Name),
				app.Span().Class("tried-price").Text(signed(p.Costs)),
				app.Button().Type("button").Text("put in").Aria("label", "Put in its equal, "+p.Name).
					OnClick(func(app.Context, app.Event) { d.fill(e.Seat, p.Instead) }, e.Seat, p.Part, p.Count, p.Face),
				app.P().Class("tried-why").Text(strings.Join(why, " ")),
			)
		})),
		app.If(e.Unfinished, app.P().ID("equals-unfinished").Class("hint").Text(unfinished)),
	)
}

func (e *Equal) apart() string {
	if e.What == "" {
		return "No outcome moves."
	}
	return fmt.Sprintf("What moves most is %s, by %.1f %%.", e.What, e.Apart)
}

func (e *Equal) liked() string {
	if e.Liked {
		return "Of a maker they like."
	}
	return ""
}
