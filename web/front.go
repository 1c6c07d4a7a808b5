package web

import (
	"fmt"

	"github.com/maxence-charriere/go-app/v9/pkg/app"
)

// front lays out the drawing side in two columns: what was said and what it comes to on the left, the machine and its proof
// on the right.
func (d *Desk) front() []app.UI {
	return []app.UI{
		app.Div().Class("column column-said").Body(
			region("brief", "What the customer said",
				&Conversation{Desk: d, Turn: d.heard}),
			region("needs", "What that asks for", &NeedsList{Needs: d.needs}),
			region("money", "The money", d.money()),
			region("key", "Key", key()),
			region("notes", "Notes", d.notes()),
		),
		app.Div().Class("column column-drawn").Body(
			region("views", "The machine", append([]app.UI{d.planner()}, d.views()...)...),
			region("parts", "List of parts", &PartsList{Desk: d, Proof: d.proof, Drawing: d.drawing, Trial: d.trial, Ways: d.ways, Open: d.open, Pins: d.job.Pins}),
			region("outcomes", "What the work will be like", &Outcomes{Outcome: d.outcome}),
			region("margins", "Schedule of margins", &Schedule{Desk: d, Proof: d.schedule, Rules: len(d.rules)}),
		),
	}
}

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
