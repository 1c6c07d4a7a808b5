package web

import (
	"encoding/json"
	"errors"
	"fmt"
	"strconv"

	"slipfit/web/wire"

	"github.com/maxence-charriere/go-app/v9/pkg/app"
)

// args is what the page sends with a verb.
type args struct {
	Build json.RawMessage `json:"build,omitempty"`
	Brief json.RawMessage `json:"brief,omitempty"`
	For   string          `json:"for,omitempty"`
	Keep  []string        `json:"keep,omitempty"`
	Seat  string          `json:"seat,omitempty"`
	Rule  string          `json:"rule,omitempty"`
	Do    *change         `json:"do,omitempty"`
	Stamp *stamp          `json:"stamp,omitempty"`
	// Within is how long a search may take, in milliseconds; 0 has no bound. The worker heeds it.
	Within int `json:"within_ms,omitempty"`
}

type change struct {
	Seat   string `json:"seat"`
	Part   string `json:"part"`
	Count  int    `json:"count,omitempty"`
	Face   string `json:"face,omitempty"`
	Layout string `json:"layout,omitempty"`
	Plate  int    `json:"plate,omitempty"`
	Owned  bool   `json:"owned,omitempty"`
}

type stamp struct{ Number, Revision, Date string }

// ask calls a verb and hands its answer on as a T. An error, and an answer that is no T, go to failed.
func ask[T any](d *Desk, verb string, with any, then func(*T), failed func(error)) int {
	return d.worker.Call(d.ctx, verb, with, func(_ app.Context, a Answer) {
		if !a.Done {
			if d.planning != 0 {
				d.progress = a
			}
			return
		}
		d.soon(func() { deliver(verb, a, then, failed) })
	})
}

// deliver reads an answer and hands it on.
func deliver[T any](verb string, a Answer, then func(*T), failed func(error)) {
	if a.Err != nil {
		failed(a.Err)
		return
	}
	out := new(T)
	if err := json.Unmarshal(a.Result, out); err != nil {
		failed(fmt.Errorf("answer to %s: %w", verb, err))
		return
	}
	then(out)
}

// grieve tells the user what went wrong.
func (d *Desk) grieve(err error) { d.trouble = err.Error() }

// faultsOf lists the faults of a file that an error names.
func faultsOf(err error) []Fault {
	var refused *wire.Error
	if !errors.As(err, &refused) {
		return nil
	}
	var detail struct{ Errors []Fault }
	if json.Unmarshal(refused.Detail, &detail) != nil {
		return nil
	}
	return detail.Errors
}

// prepare asks for what the page needs once.
func (d *Desk) prepare() {
	ask(d, "version", nil, func(v *struct{ Go string }) { d.core = "slipfit core, " + v.Go }, func(err error) { d.core = fmt.Sprintf("none: %v", err) })
	ask(d, "questions", nil, func(q *Questions) { d.asked = q; d.heard++ }, d.grieve)
	ask(d, "examples", nil, func(list *[]Example) { d.examples = *list; d.heard++ }, d.grieve)
}

// look asks the core about the job as it stands: what the brief asks for, and whether the build serves it.
func (d *Desk) look() {
	d.turn++
	turn := d.turn
	if d.worker == nil {
		return
	}
	if d.brief.Count("activities") == 0 {
		d.needs, d.faults = nil, nil
	} else {
		ask(d, "needs", args{Brief: d.job.Brief}, func(n *Needs) {
			if turn == d.turn {
				d.needs, d.faults = n, nil
				d.heard++
			}
		}, func(err error) {
			if turn != d.turn {
				return
			}
			d.blame(err)
		})
	}
	if len(d.job.Build) == 0 {
		d.proof, d.schedule, d.drawing, d.outcome, d.paper, d.plan = nil, nil, nil, nil, nil, nil
		return
	}
	ask(d, "prove", d.about(), func(p *Proof) {
		if turn == d.turn {
			d.show(p)
		}
	}, func(err error) {
		if turn == d.turn && d.faults == nil {
			d.grieve(err)
		}
	})
}

// about is the build with its brief, which is left out while it says nothing.
func (d *Desk) about() args {
	a := args{Build: d.job.Build}
	if d.brief.Count("activities") > 0 {
		a.Brief = d.job.Brief
	}
	return a
}

// show takes a proof of the build in hand, and has it drawn and its paper drawn up.
func (d *Desk) show(p *Proof) {
	d.proof = p
	if at := d.frontier.of(p); at >= 0 {
		d.picked = at
	}
	turn := d.turn
	d.soon(func() {
		if turn == d.turn {
			d.schedule = p
		}
	})
	ask(d, "draw", d.about(), func(drawing *Drawing) {
		if turn == d.turn {
			d.drawing = drawing
		}
	}, d.grieve)
	if about := d.about(); about.Brief != nil {
		ask(d, "outcome", about, func(o *Outcome) {
			if turn == d.turn {
				d.outcome = o
			}
		}, d.grieve)
	} else {
		d.outcome = nil
	}
	d.fetchPaper()
	d.prediction, d.balance = nil, nil
	d.foresee()
	d.weigh()
	if d.open != "" {
		d.try(d.open)
	}
}

// adopt makes the build of a proof the build in hand; it is one change with what is done to the brief beside it, if anything.
func (d *Desk) adopt(p *Proof, beside func()) {
	d.past = append(d.past, d.job.JSON())
	d.future, d.plan, d.why, d.trouble, d.link = nil, nil, nil, "", ""
	d.job.Build = p.Build
	if beside != nil {
		beside()
		d.job.Brief = d.brief.JSON()
		d.heard++
	}
	d.turn++
	d.keep()
	d.show(p)
	d.redraw()
}

// try opens the list of what else could sit in a seat.
func (d *Desk) try(seat string) {
	d.open = seat
	d.stopLooking()
	a := d.about()
	a.Seat = seat
	turn := d.turn
	ask(d, "try", a, func(t *Trial) {
		if turn == d.turn && d.open == seat {
			d.trial = t
		}
	}, d.grieve)
	d.equals = nil
	ask(d, "ways", a, func(t *Trial) {
		if turn == d.turn && d.open == seat {
			d.ways = t
		}
	}, d.grieve)
	d.lookOpen(atOnce)
}

// shut closes the list.
func (d *Desk) shut() {
	d.stopLooking()
	d.open, d.trial, d.ways, d.equals = "", nil, nil, nil
}

// fetchEquals asks for the parts of other makers that do the same as the one in the open seat.
func (d *Desk) fetchEquals() {
	a, turn, seat := d.about(), d.turn, d.open
	a.Seat = seat
	ask(d, "equals", a, func(e *Equals) {
		if turn == d.turn && d.open == seat {
			d.equals = e
		}
	}, d.grieve)
}

// choose puts a part of the list into its seat.
func (d *Desk) choose(seat string, t Tried) {
	d.do(change{seat, t.Part, t.Count, t.Face, t.Layout, t.Plate, false}, nil)
}

// fill puts another filling into a seat.
func (d *Desk) fill(seat string, i Instead) {
	d.do(change{seat, i.Part, i.Count, i.Face, i.Layout, i.Plate, false}, nil)
}

// own says that the customer has a part of the build already, or that they have not, in the build and in the brief.
func (d *Desk) own(l Line) {
	d.do(change{Seat: l.Seat, Part: l.Part, Owned: !l.Owned}, func() {
		for i := d.brief.Count("owned") - 1; i >= 0; i-- {
			if d.brief.Text(fmt.Sprintf("owned[%d].seat", i)) == l.Seat {
				d.brief.Remove("owned", i)
			}
		}
		if !l.Owned {
			has := map[string]any{"seat": l.Seat, "part": l.Part}
			if l.Count > 1 {
				has["count"] = json.Number(strconv.Itoa(l.Count))
			}
			d.brief.Add("owned", has)
		}
	})
}

// do has the core make one change to the build.
func (d *Desk) do(c change, beside func()) {
	d.stopLooking()
	a := d.about()
	a.Do = &c
	turn := d.turn
	ask(d, "change", a, func(p *Proof) {
		if turn != d.turn {
			return
		}
		d.adopt(p, beside)
		d.news = p.summary()
	}, d.grieve)
}

// explain asks for the text of a rule.
func (d *Desk) explain(id string) {
	if d.rules[id] != nil {
		return
	}
	ask(d, "rules", args{Rule: id}, func(answer *struct{ Rules []Rule }) {
		if len(answer.Rules) == 1 {
			d.rules[id] = &answer.Rules[0]
		}
	}, d.grieve)
}

// fetchShelf asks for the stock by seat.
func (d *Desk) fetchShelf() {
	if d.shelf == nil {
		ask(d, "shelf", nil, func(s *Shelf) { d.shelf = s; d.heard++ }, d.grieve)
	}
}

// summary says in one sentence what a proof comes to.
func (p *Proof) summary() string {
	failing := 0
	for i := range p.Margins {
		if p.Margins[i].fails() {
			failing++
		}
	}
	switch failing {
	case 0:
		return fmt.Sprintf("%d margins, all hold; %s %s with tax.", len(p.Margins), p.Currency, p.Sum.Gross.Text)
	case 1:
		return fmt.Sprintf("1 of %d margins does not hold; %s %s with tax.", len(p.Margins), p.Currency, p.Sum.Gross.Text)
	}
	return fmt.Sprintf("%d of %d margins do not hold; %s %s with tax.", failing, len(p.Margins), p.Currency, p.Sum.Gross.Text)
}
