package web

import (
	"encoding/json"
	"errors"
	"fmt"
	"sync"
	"time"

	"slipfit/web/wire"

	"github.com/maxence-charriere/go-app/v9/pkg/app"
)

// Answer is what a call has come to: still running with Progress, or Done with either Result or Err.
type Answer struct {
	Done     bool
	Progress wire.Progress
	Result   json.RawMessage
	Err      error // a *wire.Error when the worker itself refused
}

// Link is one running worker. Post hands it a message; Stop ends it at once, whatever it is doing.
type Link struct {
	Post func(message string)
	Stop func()
}

// Start begins a worker whose messages go to receive, one after the other.
type Start func(receive func(message string)) (Link, error)

// ErrStopped is what a call comes to that was stopped before anything was found.
var ErrStopped = errors.New("stopped before anything was found")

// grace is how long a worker may take to hear that it is to stop, or to end a call that nobody waits for.
const grace = 2 * time.Second

// Worker runs verbs away from the page's own thread, one at a time, in the order they were asked for. The worker is started by
// the first call and lives until Close, with what it remembers from call to call. A call that runs is stopped by a word to the
// worker; one that does not hear it is ended, and the next call starts another.
type Worker struct {
	start Start
	after func(time.Duration, func()) // time.AfterFunc, but in tests

	mu      sync.Mutex
	link    *Link
	turn    int  // counts workers, so that a late message from an ended one is known
	ready   bool // the worker has said so
	lastID  int
	running *call
	waiting []*call
}

type call struct {
	request wire.Request
	ctx     app.Context
	then    func(app.Context, Answer)
	dropped bool
	asked   bool // the worker has been asked to stop it
	heard   bool // the worker has heard that
}

// NewWorker returns a worker that start will begin when it is first needed.
func NewWorker(start Start) *Worker {
	return &Worker{start: start, after: func(d time.Duration, do func()) { time.AfterFunc(d, do) }}
}

// Call asks for a verb with args (anything encoding/json can write; nil for none) and returns the number to
// cancel it by. Then runs on the goroutine of the page, through ctx.Dispatch: for each progress, and once
// with Done set. It does not run any more when the component of ctx has gone.
func (w *Worker) Call(ctx app.Context, verb string, args any, then func(app.Context, Answer)) int {
	w.mu.Lock()
	defer w.mu.Unlock()
	w.lastID++
	c := &call{request: wire.Request{ID: w.lastID, Verb: verb}, ctx: ctx, then: then}
	if args != nil {
		data, err := json.Marshal(args)
		if err != nil {
			w.tell(c, Answer{Done: true, Err: fmt.Errorf("%s: arguments: %w", verb, err)})
			return c.request.ID
		}
		c.request.Args = data
	}
	w.waiting = append(w.waiting, c)
	w.advance()
	return c.request.ID
}

// Stop ends the call with this number early: it is answered with what is found so far, or with ErrStopped where it has not begun
// or the worker does not hear. Stopped once more, it ends at once. It does nothing when the call is done.
func (w *Worker) Stop(id int) {
	w.mu.Lock()
	defer w.mu.Unlock()
	if c := w.running; c != nil && c.request.ID == id {
		if c.asked {
			w.giveUp(c)
			return
		}
		w.askToStop(c, func() bool { return c.heard })
		return
	}
	for i, c := range w.waiting {
		if c.request.ID == id {
			w.waiting = append(w.waiting[:i], w.waiting[i+1:]...)
			w.tell(c, Answer{Done: true, Err: ErrStopped})
			return
		}
	}
}

// askToStop has the worker stop the call that runs, and ends it after the time of grace unless that is to be spared then.
func (w *Worker) askToStop(c *call, spared func() bool) {
	if !c.asked {
		c.asked = true
		w.link.Post(wire.Encode(wire.Request{ID: c.request.ID, Stop: true}))
	}
	w.after(grace, func() {
		w.mu.Lock()
		defer w.mu.Unlock()
		if w.running == c && !spared() {
			w.giveUp(c)
		}
	})
}

// giveUp ends the worker with the call that it runs.
func (w *Worker) giveUp(c *call) {
	w.end()
	w.tell(c, Answer{Done: true, Err: ErrStopped})
	w.advance()
}

// Cancel drops the call with this number: then does not run again. It does nothing when the call is done.
func (w *Worker) Cancel(id int) {
	w.mu.Lock()
	defer w.mu.Unlock()
	if c := w.running; c != nil && c.request.ID == id {
		c.dropped = true
		w.askToStop(c, func() bool { return false })
		return
	}
	for i, c := range w.waiting {
		if c.request.ID == id {
			c.dropped = true
			w.waiting = append(w.waiting[:i], w.waiting[i+1:]...)
			return
		}
	}
}

// Close ends the worker and drops every call. A later call starts a new one.
func (w *Worker) Close() {
	w.mu.Lock()
	defer w.mu.Unlock()
	for _, c := range w.waiting {
		c.dropped = true
	}
	w.waiting = nil
	if w.running != nil {
		w.running.dropped = true
	}
	w.end()
}

// advance starts a worker if none runs, and hands it the next call if it is ready for one.
func (w *Worker) advance() {
	if w.running != nil || len(w.waiting) == 0 {
		return
	}
	if w.link == nil {
		w.turn++
		turn := w.turn
		link, err := w.start(func(message string) { w.receive(turn, message) })
		if err != nil {
			w.refuse(fmt.Errorf("worker does not start: %w", err))
			return
		}
		w.link = &link
	}
	if !w.ready {
		return
	}
	w.running, w.waiting = w.waiting[0], w.waiting[1:]
	w.link.Post(wire.Encode(w.running.request))
}

func (w *Worker) receive(turn int, message string) {
	w.mu.Lock()
	defer w.mu.Unlock()
	if turn != w.turn || w.link == nil {
		return
	}
	m, err := wire.Read(message)
	switch {
	case err != nil:
		w.lost(err)
	case m.Gone != "":
		w.lost(errors.New(m.Gone))
	case m.Ready:
		w.ready = true
		w.advance()
	case m.Stopping && (w.running == nil || m.ID != w.running.request.ID): // its answer was on the way already
	case w.running == nil || m.ID != w.running.request.ID:
		w.lost(fmt.Errorf("answer to call %d, which is not running", m.ID))
	case m.Stopping:
		w.running.heard = true
	case m.Progress != nil:
		w.tell(w.running, Answer{Progress: *m.Progress})
	default:
		done := w.running
		w.running = nil
		w.tell(done, outcome(m))
		w.advance()
	}
}

func outcome(m wire.Message) Answer {
	switch {
	case m.OK == nil:
		return Answer{Done: true, Err: errors.New("worker sent neither result nor error")}
	case *m.OK:
		return Answer{Done: true, Result: m.Result}
	case m.Error == nil:
		return Answer{Done: true, Err: errors.New("worker refused without a reason")}
	}
	return Answer{Done: true, Err: m.Error}
}

// lost deals with a worker that has ended by itself or talks nonsense. The call it was at fails and the
// others get a new worker; one that never got ready would fail again, so then all of them fail.
func (w *Worker) lost(why error) {
	err := fmt.Errorf("worker stopped: %w", why)
	if !w.ready {
		w.end()
		w.refuse(err)
		return
	}
	failed := w.running
	w.end()
	if failed != nil {
		w.tell(failed, Answer{Done: true, Err: err})
	}
	w.advance()
}

func (w *Worker) refuse(err error) {
	for _, c := range w.waiting {
		w.tell(c, Answer{Done: true, Err: err})
	}
	w.waiting = nil
}

func (w *Worker) end() {
	if w.link != nil {
		w.link.Stop()
	}
	w.link, w.ready, w.running = nil, false, nil
}

func (w *Worker) tell(c *call, a Answer) {
	c.ctx.Dispatch(func(ctx app.Context) {
		w.mu.Lock()
		dropped := c.dropped
		w.mu.Unlock()
		if !dropped {
			c.then(ctx, a)
		}
	})
}
