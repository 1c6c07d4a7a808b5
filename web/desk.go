package web

import (
	"errors"
	"slices"
	"strings"
	"sync"
	"time"

	"github.com/maxence-charriere/go-app/v9/pkg/app"
)

// Desk is where the work lies: the job in hand and what the core has answered about it. Components show it and call its
// methods; every change redraws the page. All of it runs on the page's own goroutine.
type Desk struct {
	ctx    app.Context
	worker *Worker

	job    Job
	brief  Said // the job's brief, opened
	past   [][]byte
	future [][]byte
	today  string

	asked    *Questions
	examples []Example
	shelf    *Shelf
	rules    map[string]*Rule

	turn     int     // counts changes, so that an answer about an earlier state is known
	heard    int     // counts what changes how the conversation looks
	needs    *Needs  // nil while nothing is asked for
	faults   []Fault // of the brief
	plan     *Plan   // the last plan, until the build is changed
	proof    *Proof
	schedule *Proof // the proof as the schedule shows it, a moment after the parts: one task must not hold the page for long
	drawing  *Drawing
	outcome  *Outcome
	paper    *Paper // the one that is chosen
	leaf     int    // which that is
	trial    *Trial // what else could sit in the open seat
	ways     *Trial // how else its part could be fitted
	equals   *Equals
	open     string // seat whose trial list is open

	foreseen   bool // the prediction is unfolded
	prediction *Prediction
	weighed    bool // the balance is unfolded
	balance    *Balance

	planning int    // number of the long call that runs, 0 when none does
	doing    string // what it does
	stopping bool   // it is asked to end with what is found
	progress Answer
	why      *Why      // why nothing could be planned
	frontier *Frontier // what every price buys
	ground   string    // the brief and the settled parts that the frontier is of
	picked   int       // the point of it that is looked at
	choices  *Choices  // what is still open in the open seat
	steps    *Steps    // the next step up and down for every seat
	stepped  string    // the build that those are of
	looking  int       // number of the call that finds that, 0 when none runs
	reasons  map[string]*Why
	news     string // for the live region
	trouble  string // what went wrong last
	offer    *Job   // came with the address, waits for a word
	link     string // the job as an address, when asked for
	core     string // what computes

	keeping sync.Mutex
	store   *Store
	drawer  string // the record of the store that is this window's
	windows string // what is to be said of other windows
	unkept  string // why this browser keeps nothing
}

// newDesk returns an empty desk.
func newDesk() *Desk {
	d := &Desk{rules: map[string]*Rule{}}
	d.clear()
	return d
}

// clear puts a blank job on the desk.
func (d *Desk) clear() {
	d.brief = blankBrief()
	d.job = Job{Brief: d.brief.JSON(), Date: d.today}
	d.forget()
}

// forget drops every answer about the job.
func (d *Desk) forget() {
	d.needs, d.faults, d.plan, d.proof, d.drawing, d.paper = nil, nil, nil, nil, nil, nil
	d.schedule, d.outcome = nil, nil
	d.trial, d.ways, d.equals, d.open, d.link = nil, nil, nil, "", ""
	d.prediction, d.balance = nil, nil
	d.why, d.frontier, d.choices, d.steps = nil, nil, nil, nil
}

// blank reports a job in which nothing has been done.
func (d *Desk) blank() bool { return d.job.blank(d.brief) }

// redraw has the page drawn again.
func (d *Desk) redraw() {
	if d.ctx != nil {
		d.ctx.Dispatch(func(app.Context) {})
	}
}

// soon runs a step in a task of its own after this frame, so that the browser can draw and listen before it.
func (d *Desk) soon(step func()) {
	d.ctx.Defer(func(ctx app.Context) {
		inTaskOfItsOwn(func() { ctx.Dispatch(func(app.Context) { step() }) })
	})
}

// maxPast is how many changes can be taken back.
const maxPast = 100

// edit makes one change to the job, which can be taken back, and asks the core what comes of it.
func (d *Desk) edit(change func()) {
	before := d.job.JSON()
	change()
	d.job.Brief = d.brief.JSON()
	if string(d.job.JSON()) == string(before) {
		return
	}
	d.past = append(d.past, before)
	if len(d.past) > maxPast {
		d.past = d.past[1:]
	}
	d.future = nil
	d.changed()
}

// changed follows every change of the job.
func (d *Desk) changed() {
	d.trouble, d.link, d.why = "", "", nil
	d.heard++
	d.keep()
	d.look()
	d.redraw()
}

// undo takes the last change back; redo makes it again.
func (d *Desk) undo() { d.step(&d.past, &d.future, "Taken back.") }
func (d *Desk) redo() { d.step(&d.future, &d.past, "Made again.") }

func (d *Desk) step(from, to *[][]byte, news string) {
	if len(*from) == 0 {
		return
	}
	last := len(*from) - 1
	*to = append(*to, d.job.JSON())
	state := (*from)[last]
	*from = (*from)[:last]
	if err := d.put(state); err != nil {
		d.trouble = err.Error()
	}
	d.plan = nil
	d.news = news
	d.changed()
}

// put lays a written job on the desk.
func (d *Desk) put(data []byte) error {
	j, err := readJob(data)
	if err != nil {
		return err
	}
	brief, err := readSaid(j.Brief)
	if err != nil {
		return err
	}
	d.job, d.brief = j, brief
	return nil
}

// replace lays another job on the desk as one change.
func (d *Desk) replace(j Job) {
	d.edit(func() {
		brief, err := readSaid(j.Brief)
		if err != nil {
			d.trouble = err.Error()
			return
		}
		if j.Date == "" {
			j.Date = d.today
		}
		d.job, d.brief = j, brief
		d.forget()
	})
}

// say puts one answer into the brief.
func (d *Desk) say(path string, value any) {
	d.edit(func() { d.brief.Set(path, value) })
}

// pin settles the part of a seat, or leaves it open again.
func (d *Desk) pin(seat string) {
	d.edit(func() {
		if slices.Contains(d.job.Pins, seat) {
			d.unpin(seat)
			return
		}
		d.job.Pins = append(slices.Clone(d.job.Pins), seat)
	})
}

func (d *Desk) unpin(seat string) {
	d.job.Pins = slices.DeleteFunc(slices.Clone(d.job.Pins), func(s string) bool { return s == seat })
}

// kept lists the settled seats as the planner takes them.
func (d *Desk) kept() []string {
	var list []string
	for _, seat := range d.job.Pins {
		part := "none"
		if d.proof != nil {
			for _, l := range d.proof.Parts {
				if l.Seat == seat {
					part = l.Part
					break
				}
			}
		}
		list = append(list, seat+"="+part)
	}
	return list
}

// settled is the brief with the settled parts: what the planner goes by.
func (d *Desk) settled() string { return string(d.job.Brief) + strings.Join(d.kept(), " ") }

// keep writes the job into the browser's store, where there is one.
func (d *Desk) keep() {
	if d.store == nil || d.ctx == nil {
		return
	}
	data := d.job.kept(time.Now())
	d.ctx.Async(func() {
		d.keeping.Lock()
		defer d.keeping.Unlock()
		err := d.store.Put(d.drawer, data)
		d.ctx.Dispatch(func(app.Context) { d.unkept = whyUnkept(err) })
	})
}

// storedJob is the key of the first drawer, and begins those of the others.
const storedJob = "job"

func whyUnkept(err error) string {
	switch {
	case err == nil:
		return ""
	case errors.Is(err, ErrNoStore):
		return "This browser keeps nothing for this page: save the job as a file before you close it."
	}
	return "The job was not kept in this browser (" + err.Error() + "): save it as a file before you close the page."
}

// restore opens the store and lays on the desk what was kept there, then what came with the address. It waits for the browser.
// Last is the drawer that this window had before it was loaded anew.
func (d *Desk) restore(last, arrived string) {
	store, err := OpenStore()
	var own drawer
	if err == nil {
		if own, err = openDrawer(store, last, claimName); err != nil {
			store = nil // what is kept there is not known, so that nothing may be written over it
		}
	}
	d.ctx.Dispatch(func(ctx app.Context) {
		d.store, d.drawer, d.windows, d.unkept = store, own.key, own.notice(), whyUnkept(err)
		if err := ctx.SessionStorage().Set(drawerOfWindow, own.key); err != nil {
			d.unkept = whyUnkept(err)
		}
		if own.faulty != nil {
			d.trouble = "A job that this browser kept cannot be read, and is left as it is: " + own.faulty.Error()
		}
		if own.data != nil && d.blank() {
			if err := d.put(own.data); err != nil {
				d.trouble = "What this browser kept cannot be read: " + err.Error()
			} else {
				d.look()
			}
		}
		d.receive(arrived)
	})
}

// receive takes a job that came with the address: at once onto an empty desk, else after a word from the user.
func (d *Desk) receive(fragment string) {
	if fragment == "" {
		return
	}
	j, err := unpackJob(fragment)
	switch {
	case err != nil:
		d.trouble = "The address carries no whole job: " + err.Error()
	case d.blank():
		d.replace(j)
		d.news = "The job that came with the address is on the sheet."
	case string(j.JSON()) != string(d.job.JSON()):
		d.offer = &j
	}
	d.redraw()
}
