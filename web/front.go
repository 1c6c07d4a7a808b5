package web

import (
	"fmt"

	"github.com/maxence-charriere/go-app/v9/pkg/app"
)

// front lays out the drawing side in two columns: what was said and what it comes to on the left, the machine and its proof
// on the right. The first so many areas are filled in, counted as they are laid; the others show their heading.
func (d *Desk) front(laid int) []app.UI {
	area := func(place int, name, title string, body func() []app.UI) app.UI {
		if place >= laid {
			return region(name, title)
		}
		return region(name, title, body()...)
	}
	one := func(ui func() app.UI) func() []app.UI { return func() []app.UI { return []app.UI{ui()} } }
	return []app.UI{
		app.Div().Class("column column-said").Body(
			area(0, "brief", "What the customer said", one(func() app.UI { return &Conversation{Desk: d, Turn: d.heard} })),
			area(3, "needs", "What that asks for", one(func() app.UI { return &NeedsList{Needs: d.needs} })),
			area(5, "money", "The money", one(d.money)),
			area(7, "key", "Key", one(key)),
			area(8, "notes", "Notes", one(d.notes)),
		),
		app.Div().Class("column column-drawn").Body(
			area(1, "views", "The machine", func() []app.UI { return append([]app.UI{d.planner()}, d.views()...) }),
			area(2, "parts", "List of parts", one(func() app.UI {
				return &PartsList{Desk: d, Proof: d.proof, Drawing: d.drawing, Trial: d.trial, Ways: d.ways, Equals: d.equals, Open: d.open, Pins: d.job.Pins}
			})),
			area(4, "outcomes", "What the work will be like", one(func() app.UI { return &Outcomes{Desk: d, Outcome: d.outcome, Balance: d.balance} })),
			area(6, "margins", "Schedule of margins", one(func() app.UI {
				return &Schedule{Desk: d, Proof: d.schedule, Rules: len(d.rules), Prediction: d.prediction}
			})),
		),
	}
}

// areas is how many areas the front has.
const areas = 9

// planner is the controls that fill the seats, and how far they are.
func (d *Desk) planner() app.UI {
	nothing := d.brief.Count("activities") == 0
	if d.planning != 0 {
		note := d.progress.Progress.Note
		if note == "" {
			note = "planning"
		}
		return app.Div().Class("planner").Body(
			app.Label().For("progress").Text("Filling the seats: "+note),
			app.Progress().ID("progress").Max(1),
			app.Button().Type("button").ID("stop-plan").Text("Stop").OnClick(d.onStop),
		)
	}
	return app.Div().Class("planner").Body(
		app.Button().Type("button").Class("main").ID("plan-least").Text("Plan: the least price").Disabled(nothing).OnClick(d.onLeast),
		app.Button().Type("button").Class("main").ID("plan-best").Text("Plan: the most within the budget").
			Disabled(nothing || d.brief.Get("budget_minor") == nil).OnClick(d.onBest),
		d.verdictOfPlan(),
	)
}

func (d *Desk) onLeast(app.Context, app.Event) { d.makePlan("least") }
func (d *Desk) onBest(app.Context, app.Event)  { d.makePlan("best") }
func (d *Desk) onStop(app.Context, app.Event)  { d.stopPlan() }
func (d *Desk) onUndo(app.Context, app.Event)  { d.undo() }
func (d *Desk) onRedo(app.Context, app.Event)  { d.redo() }

// verdictOfPlan says what stands behind the last plan, or why there was none.
func (d *Desk) verdictOfPlan() app.UI {
	p := d.plan
	if p == nil {
		return app.P().Hidden(true)
	}
	c := &p.Certificate
	what := "the least price"
	if p.For == "best" {
		what = "the most served within the budget"
	}
	switch {
	case p.Status == "optimal":
		return app.P().Class("proven").ID("proven").Text(fmt.Sprintf("Proven: %s among %s ways to fill the seats.", what, c.Combinations))
	case p.Proof != nil:
		return app.P().Class("proven").ID("proven").Text(fmt.Sprintf("Not proven: another machine may be up to %s cheaper or serve %d points more.", c.GapPrice.Text, c.GapWorth))
	}
	return app.Div().Class("proven").ID("proven").Body(
		app.P().Text("No machine of this stock can do it. What takes most away, before any search:"),
		app.Ul().Class("plain").Body(app.Range(p.Cuts).Slice(func(i int) app.UI {
			cut := &p.Cuts[i]
			name := "nothing that goes with the rest"
			if cut.Title != "" {
				name = cut.Rule + ": " + cut.Title
			}
			return app.Li().Text(fmt.Sprintf("%s (%s)", name, joined(cut.Seats)))
		})),
	)
}

func joined(list []string) string {
	out := ""
	for i, s := range list {
		if i > 0 {
			out += ", "
		}
		out += s
	}
	return out
}

func (d *Desk) notes() app.UI {
	return app.Ol().Class("notes").Body(
		app.Li().Text("Dimensions in millimetres unless said otherwise."),
		app.Li().Text("Figures are those of the data sheets. Where one is missing the margin is unknown, and says which."),
		app.Li().Text("Nothing on this sheet leaves this device unless you save, share or print it."),
	)
}
