package web

import (
	"encoding/json"
	"fmt"
	"strings"

	"github.com/maxence-charriere/go-app/v9/pkg/app"
)

// Why is why nothing can be planned, and what to give up.
type Why struct {
	Stands     bool
	Asks       []string
	Loose      bool // some of what is asked may not be in the way: the search ended before that was known
	Repairs    []Repair
	Unfinished bool
}

// Repair is a smallest set of demands whose giving up lets a machine stand.
type Repair struct {
	Drops  []Drop
	Price  Quantity
	Proven bool // no machine that meets the rest costs less
	Above  Quantity
	Build  json.RawMessage
}

// Drop is a demand that is given up: with the answer of the brief that asks it, or the seat whose choice it is.
type Drop struct{ Asks, Path, Seat string }

// explainConflict asks why nothing can be planned.
func (d *Desk) explainConflict(keep []string) {
	begin(d, "Finding what stands in the way", "why", args{Brief: d.job.Brief, Keep: keep, Within: patience}, func(y *Why) {
		d.why = y
		d.news = "What stands in the way is listed, with what to give up."
	})
}

// conflict tells why nothing could be planned, and offers what to give up.
func (d *Desk) conflict() app.UI {
	if d.why == nil {
		return app.Div().Hidden(true)
	}
	return app.Div().Class("conflict").ID("conflict").Role("group").Aria("label", "Why nothing can be planned").Body(
		append(d.why.asks(), d.why.ways(func(r *Repair) { d.mend(r) }))...)
}

// asks tells in sentences what cannot all be met.
func (y *Why) asks() []app.UI {
	text := ""
	switch {
	case y.Stands:
		text = "A machine stands that meets everything asked."
	case len(y.Asks) == 0 && y.Unfinished && !y.Loose:
		text = "The search ended before it was known what stands in the way, if anything does."
	case len(y.Asks) == 0 && y.Loose:
		text = "Not all that is asked can be met. The search ended before it was known what stands in the way."
	case len(y.Asks) == 0:
		text = "Nothing that is asked stands in the way: this stock holds no machine that goes together."
	case y.Loose:
		text = "These cannot all be met. The search ended before it was known which of them are in the way; some may not be:"
	case len(y.Asks) == 1:
		text = "One thing asked cannot be met:"
	default:
		text = "These cannot all be met; without any one of them the rest can:"
	}
	return []app.UI{app.P().Text(text), app.Ul().Class("plain").Body(app.Range(y.Asks).Slice(func(i int) app.UI {
		return app.Li().Text(y.Asks[i])
	}))}
}

// ways lists what to give up, each with a control that does it.
func (y *Why) ways(mend func(*Repair)) app.UI {
	if len(y.Asks) == 0 {
		return app.Div().Hidden(true)
	}
	if len(y.Repairs) == 0 {
		text := "Giving up two of all that is asked is not enough."
		if y.Unfinished {
			text = "The search ended before it was found what to give up."
		}
		return app.P().Text(text)
	}
	return app.Div().Body(
		app.H3().Text("Ways out, the least first"),
		app.Ol().Class("repairs").Body(app.Range(y.Repairs).Slice(func(i int) app.UI {
			r := &y.Repairs[i]
			return app.Li().Class("repair").Body(
				app.P().Text(r.says()),
				app.Button().Type("button").ID(fmt.Sprintf("repair-%d", i)).Text(r.does()).Aria("label", r.does()+": "+r.says()).
					OnClick(func(app.Context, app.Event) { mend(r) }, r.says()),
			)
		})),
		app.If(y.Unfinished, app.P().Class("hint").ID("repairs-unfinished").Text("The search ended early: the list may not be complete; something else may be given up instead.")),
	)
}

// says tells a repair in a sentence.
func (r *Repair) says() string {
	var asks []string
	for _, d := range r.Drops {
		short, _, _ := strings.Cut(d.Asks, ": ") // its reason is told above
		asks = append(asks, short)
	}
	text := "Give up " + strings.Join(asks, ", and ") + ": a machine for " + r.Price.Text + " before tax"
	if r.Above.Figure > 0 {
		text += ", " + r.Above.Text + " above what can be spent"
	}
	if !r.Proven {
		text += ", perhaps for less"
	}
	return text + "."
}

// does names the control that applies a repair.
func (r *Repair) does() string {
	for _, d := range r.Drops {
		if d.Path == "budget_minor" {
			return "Spend that much"
		}
	}
	return "Do without"
}

// mend applies a repair: its machine is laid on the sheet, the answers and choices it gives up are taken out of the brief and
// left open. What follows from the work stays in the brief, and the schedule then shows it short.
func (d *Desk) mend(r *Repair) {
	turn := d.turn
	ask(d, "prove", args{Build: r.Build, Brief: d.job.Brief}, func(p *Proof) {
		if turn != d.turn {
			return
		}
		d.adopt(p, func() {
			for _, drop := range r.Drops {
				d.give(drop, p)
			}
		})
		d.look()
		d.news = "Done. " + p.summary()
	}, d.grieve)
}

// give takes a demand out of the job; of the budget, that the machine may cost what it does.
func (d *Desk) give(drop Drop, p *Proof) {
	switch {
	case drop.Path == "budget_minor":
		d.brief.Set(drop.Path, json.Number(fmt.Sprintf("%.0f", p.Sum.Gross.Figure)))
	case drop.Path != "":
		d.brief.Set(drop.Path, nil)
	case drop.Seat != "":
		d.unpin(drop.Seat)
		for i := d.brief.Count("owned") - 1; i >= 0; i-- {
			if d.brief.Text(fmt.Sprintf("owned[%d].seat", i)) == drop.Seat {
				d.brief.Remove("owned", i)
			}
		}
	}
}
