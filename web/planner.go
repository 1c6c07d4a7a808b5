package web

import (
	"errors"
	"fmt"
	"strings"

	"slipfit/core/unit"

	"github.com/maxence-charriere/go-app/v9/pkg/app"
)

// aims are what the planner can seek, as the core names them, on their buttons, and as a proof tells them.
var aims = [...]struct{ name, button, proven string }{
	{"least", "the least price", "the least price"},
	{"best", "the most within the budget", "the most served within the budget"},
	{"quiet", "the least noise", "the least heard at the chair"},
	{"small", "the smallest case", "the smallest case"},
}

// patience is how long a plan may be sought before the best found so far is told, with what it may miss.
const patience = 30_000

// planner is the controls that fill the seats, and how far they are.
func (d *Desk) planner() app.UI {
	if d.planning != 0 {
		text, stop := d.doing, "Stop"
		if note := d.progress.Progress.Note; note != "" {
			text += ": " + note
		}
		if d.stopping {
			text, stop = d.doing+": ending with what is found", "Stop at once"
		}
		return app.Div().Class("planner").Body(
			app.Label().For("progress").Text(text),
			app.Progress().ID("progress").Max(1),
			app.Button().Type("button").ID("stop-plan").Text(stop).OnClick(d.onStop),
		)
	}
	nothing := d.brief.Count("activities") == 0
	buttons := []app.UI{app.Span().Class("planner-for").Text("Plan for")}
	for _, aim := range aims {
		off := nothing || aim.name == "best" && d.brief.Get("budget_minor") == nil
		buttons = append(buttons, app.Button().Type("button").Class("main").ID("plan-"+aim.name).Text(aim.button).
			Aria("label", "Plan for "+aim.button).Disabled(off).OnClick(d.onPlan(aim.name), aim.name))
	}
	buttons = append(buttons, app.Button().Type("button").ID("plan-frontier").Text("Draw what every price buys").Disabled(nothing).OnClick(d.onFrontier))
	return app.Div().Class("planner").Body(append(buttons, d.verdictOfPlan(), d.conflict())...)
}

func (d *Desk) onPlan(seeking string) app.EventHandler {
	return func(app.Context, app.Event) { d.makePlan(seeking, d.kept()) }
}

func (d *Desk) onStop(app.Context, app.Event) { d.stop() }
func (d *Desk) onUndo(app.Context, app.Event) { d.undo() }
func (d *Desk) onRedo(app.Context, app.Event) { d.redo() }

// begin asks for something that may take long: one at a time, with its progress shown, until it is there or is stopped.
func begin[T any](d *Desk, doing, verb string, with args, then func(*T)) {
	if d.planning != 0 {
		return
	}
	d.stopLooking()
	d.trouble, d.news, d.progress, d.doing = "", doing+".", Answer{}, doing
	turn := d.turn
	d.planning = ask(d, verb, with, func(answer *T) {
		d.planning, d.stopping = 0, false
		if turn != d.turn {
			d.news = "The job was changed meanwhile: ask again."
			return
		}
		then(answer)
	}, func(err error) {
		d.planning, d.stopping, d.news = 0, false, ""
		if errors.Is(err, ErrStopped) {
			d.news = doing + " was stopped."
			return
		}
		d.blame(err)
	})
	d.redraw()
}

// stop ends what takes too long with what is found so far, and asked once more at once.
func (d *Desk) stop() {
	if d.planning != 0 {
		d.stopping = true
		d.worker.Stop(d.planning)
		d.redraw()
	}
}

// makePlan has the planner fill the seats that are not settled.
func (d *Desk) makePlan(seeking string, keep []string) {
	begin(d, "Filling the seats", "plan", args{Brief: d.job.Brief, For: seeking, Keep: keep, Within: patience}, func(p *Plan) {
		d.why = nil
		if p.Proof == nil {
			d.plan = p
			d.news = "No machine was found."
			if p.Status == "infeasible" {
				d.explainConflict(keep)
			}
			return
		}
		d.adopt(p.Proof, nil)
		d.complete(p.Proof)
		d.plan = p
		d.news = "Planned. " + d.proof.summary()
	})
}

// complete looks for the money that buys nothing where the search that found a build was ended before that was looked for.
func (d *Desk) complete(found *Proof) {
	if found.Idle == nil || !found.Idle.Unfinished {
		return
	}
	turn := d.turn
	ask(d, "prove", d.about(), func(p *Proof) {
		if turn == d.turn {
			whole := *d.proof
			whole.Idle = p.Idle
			d.proof = &whole
		}
	}, d.grieve)
}

// verdictOfPlan says what stands behind the last plan.
func (d *Desk) verdictOfPlan() app.UI {
	p := d.plan
	if p == nil {
		return app.P().Hidden(true)
	}
	c := &p.Certificate
	what := ""
	for _, aim := range aims {
		if aim.name == p.For {
			what = aim.proven
		}
	}
	if p.Reached != nil {
		what += ", " + p.Reached.Text + ", at the least price"
	}
	text := ""
	switch {
	case p.Status == "optimal":
		text = fmt.Sprintf("Proven: %s among %s ways to fill the seats.", what, unit.Group(c.Combinations))
	case p.Proof != nil:
		text = "The search ended before it was proven: another machine may be " + c.missing() + "."
	case p.Status == "infeasible":
		text = fmt.Sprintf("No machine of this stock can do it: %s ways to fill the seats are ruled out.", unit.Group(c.Combinations))
	default:
		text = "The search ended before a machine was found; there may be one."
	}
	return app.P().Class("proven").ID("proven").Text(text)
}

// missing says how much better another machine may still be.
func (c *Certificate) missing() string {
	var list []string
	if c.GapVolume != nil && c.GapVolume.Figure > 0 {
		list = append(list, "up to "+c.GapVolume.Text+" smaller")
	}
	if c.GapNoise != nil && c.GapNoise.Figure > 0 {
		list = append(list, "up to "+c.GapNoise.Text+" quieter")
	}
	if c.GapPrice.Figure > 0 {
		list = append(list, "up to "+c.GapPrice.Text+" cheaper")
	}
	if c.GapWorth > 0 || len(list) == 0 {
		list = append(list, fmt.Sprintf("worth up to %d points more", c.GapWorth))
	}
	return strings.Join(list, ", or ")
}
