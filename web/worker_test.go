//go:build !wasm

package web

import (
	"encoding/json"
	"errors"
	"fmt"
	"testing"
	"time"

	"slipfit/web/wire"

	"github.com/maxence-charriere/go-app/v9/pkg/app"
	"github.com/stretchr/testify/require"
)

// host is a component that lends its context to a worker under test.
type host struct {
	app.Compo
	ctx app.Context
}

func (h *host) OnMount(ctx app.Context) { h.ctx = ctx }
func (h *host) Render() app.UI          { return app.Div() }

// bench holds a worker whose other end is the test itself.
type bench struct {
	t       *testing.T
	page    app.ClientDispatcher
	ctx     app.Context
	worker  *Worker
	receive []func(string) // one for each worker that was started
	posted  []wire.Request
	stopped int
	late    []func() // what is to be done after the time of grace
	refuse  error
	told    []string // what the calls were told, in order
}

func newBench(t *testing.T) *bench {
	h := &host{}
	b := &bench{t: t, page: app.NewClientTester(h)}
	t.Cleanup(b.page.Close)
	b.page.Consume()
	require.NotNil(t, h.ctx)
	b.ctx = h.ctx
	b.worker = NewWorker(func(receive func(string)) (Link, error) {
		if b.refuse != nil {
			return Link{}, b.refuse
		}
		b.receive = append(b.receive, receive)
		return Link{
			Post: func(message string) {
				var r wire.Request
				require.NoError(t, json.Unmarshal([]byte(message), &r))
				b.posted = append(b.posted, r)
			},
			Stop: func() { b.stopped++ },
		}, nil
	})
	b.worker.after = func(d time.Duration, do func()) {
		require.Equal(t, grace, d)
		b.late = append(b.late, do)
	}
	return b
}

// wait lets the time of grace pass.
func (b *bench) wait() {
	for _, do := range b.late {
		do()
	}
	b.late = nil
	b.page.Consume()
}

func (b *bench) call(verb string, args any) int {
	return b.worker.Call(b.ctx, verb, args, func(_ app.Context, a Answer) {
		switch {
		case !a.Done:
			b.told = append(b.told, verb+" … "+a.Progress.Note)
		case a.Err != nil:
			b.told = append(b.told, verb+" ✗ "+a.Err.Error())
		default:
			b.told = append(b.told, verb+" = "+string(a.Result))
		}
	})
}

// say is the newest worker talking.
func (b *bench) say(message string) {
	b.receive[len(b.receive)-1](message)
	b.page.Consume()
}

func (b *bench) verbs() []string {
	var verbs []string
	for _, r := range b.posted {
		if r.Stop {
			r.Verb = fmt.Sprintf("stop %d", r.ID)
		}
		verbs = append(verbs, r.Verb)
	}
	return verbs
}

func TestWorkerAnswersInOrder(t *testing.T) {
	b := newBench(t)
	b.call("first", map[string]int{"n": 1})
	b.call("second", nil)
	require.Empty(t, b.posted, "nothing is posted before the worker is ready: it would be lost")
	b.say(`{"ready":true}`)
	require.Equal(t, []string{"first"}, b.verbs(), "one at a time")
	require.JSONEq(t, `{"n":1}`, string(b.posted[0].Args))
	b.say(`{"id":1,"progress":{"done":0.5,"note":"half"}}`)
	b.say(`{"id":1,"ok":true}` + "\n" + `{"a":2}`)
	require.Equal(t, []string{"first", "second"}, b.verbs())
	b.say(`{"id":2,"ok":false,"error":{"message":"no","path":"brief"}}`)
	require.Equal(t, []string{"first … half", `first = {"a":2}`, "second ✗ no"}, b.told)
	require.Len(t, b.receive, 1)
	require.Zero(t, b.stopped)
}

func TestWorkerKeepsErrorFields(t *testing.T) {
	b := newBench(t)
	var got error
	b.worker.Call(b.ctx, "plan", nil, func(_ app.Context, a Answer) { got = a.Err })
	b.say(`{"ready":true}`)
	b.say(`{"id":1,"ok":false,"error":{"message":"no","path":"brief"}}`)
	var refusal *wire.Error
	require.ErrorAs(t, got, &refusal)
	require.JSONEq(t, `{"message":"no","path":"brief"}`, string(refusal.Detail))
}

func TestWorkerStopRunning(t *testing.T) {
	b := newBench(t)
	id := b.call("long", nil)
	b.call("next", nil)
	b.say(`{"ready":true}`)
	b.worker.Stop(id)
	require.Equal(t, []string{"long", "stop 1"}, b.verbs())
	b.say(`{"id":1,"stopping":true}`)
	b.wait()
	require.Empty(t, b.told, "one that has heard may take its time")
	b.say(`{"id":1,"ok":true}` + "\n" + `"so far"`)
	require.Equal(t, []string{`long = "so far"`}, b.told)
	require.Equal(t, []string{"long", "stop 1", "next"}, b.verbs(), "the same worker goes on")
	b.worker.Stop(id)
	b.say(`{"id":1,"stopping":true}`) // on its way while the answer was
	b.say(`{"id":2,"ok":true}` + "\n" + `2`)
	require.Equal(t, []string{`long = "so far"`, "next = 2"}, b.told)
	require.Zero(t, b.stopped)
	require.Len(t, b.receive, 1)
}

func TestWorkerStopUnheard(t *testing.T) {
	b := newBench(t)
	id := b.call("long", nil)
	b.call("next", nil)
	b.say(`{"ready":true}`)
	b.worker.Stop(id)
	require.Zero(t, b.stopped)
	b.wait()
	require.Equal(t, 1, b.stopped)
	require.Equal(t, []string{"long ✗ " + ErrStopped.Error()}, b.told)
	b.say(`{"ready":true}`)
	b.say(`{"id":2,"ok":true}` + "\n" + `2`)
	require.Equal(t, []string{"long ✗ " + ErrStopped.Error(), "next = 2"}, b.told)
}

func TestWorkerStopTwice(t *testing.T) {
	b := newBench(t)
	id := b.call("long", nil)
	waits := b.call("waits", nil)
	b.say(`{"ready":true}`)
	b.worker.Stop(waits)
	b.worker.Stop(id)
	b.say(`{"id":1,"stopping":true}`)
	b.worker.Stop(id)
	b.page.Consume()
	require.Equal(t, 1, b.stopped)
	require.Equal(t, []string{"waits ✗ " + ErrStopped.Error(), "long ✗ " + ErrStopped.Error()}, b.told)
	b.wait()
	require.Equal(t, 1, b.stopped)
	require.Len(t, b.receive, 1, "nothing waits for another worker")
}

func TestWorkerCancelHeard(t *testing.T) {
	b := newBench(t)
	id := b.call("long", nil)
	b.call("next", nil)
	b.say(`{"ready":true}`)
	b.worker.Cancel(id)
	b.worker.Cancel(id)
	require.Equal(t, []string{"long", "stop 1"}, b.verbs())
	b.say(`{"id":1,"stopping":true}`)
	b.say(`{"id":1,"ok":true}` + "\n" + `1`)
	b.say(`{"id":2,"ok":true}` + "\n" + `2`)
	b.wait()
	require.Equal(t, []string{"next = 2"}, b.told)
	require.Zero(t, b.stopped)
}

func TestWorkerCancelRunning(t *testing.T) {
	b := newBench(t)
	id := b.call("long", nil)
	b.call("next", nil)
	b.say(`{"ready":true}`)
	b.worker.Cancel(id)
	b.say(`{"id":1,"stopping":true}`)
	b.wait()
	require.Equal(t, 1, b.stopped, "nobody waits for its answer")
	require.Len(t, b.receive, 2, "another worker for the calls that wait")
	b.receive[0](`{"id":1,"ok":true}` + "\n" + `1`)
	b.page.Consume()
	require.Empty(t, b.told, "a late answer of the ended worker is not heard")
	b.say(`{"ready":true}`)
	b.say(`{"id":2,"ok":true}` + "\n" + `2`)
	require.Equal(t, []string{"next = 2"}, b.told)
	b.worker.Cancel(2)
	require.Equal(t, 1, b.stopped, "cancelling a call that is done changes nothing")
}

func TestWorkerCancelWaiting(t *testing.T) {
	b := newBench(t)
	b.call("first", nil)
	id := b.call("second", nil)
	b.call("third", nil)
	b.worker.Cancel(id)
	b.say(`{"ready":true}`)
	b.say(`{"id":1,"ok":true}` + "\n" + `1`)
	b.say(`{"id":3,"ok":true}` + "\n" + `3`)
	require.Equal(t, []string{"first = 1", "third = 3"}, b.told)
	require.Zero(t, b.stopped)
}

func TestWorkerDropsAnswerOnItsWay(t *testing.T) {
	b := newBench(t)
	id := b.call("first", nil)
	b.say(`{"ready":true}`)
	b.receive[0](`{"id":1,"progress":{"done":0.1}}`) // dispatched, not yet heard
	b.worker.Cancel(id)
	b.page.Consume()
	require.Empty(t, b.told)
}

func TestWorkerLost(t *testing.T) {
	cases := []struct{ name, message, want string }{
		{"it says so", `{"gone":"exit 2"}`, "first ✗ worker stopped: exit 2"},
		{"it talks nonsense", `{"id":`, "first ✗ worker stopped: wire: message from the worker: unexpected end of JSON input"},
		{"it answers what was not asked", `{"id":9,"ok":true}` + "\n" + `1`, "first ✗ worker stopped: answer to call 9, which is not running"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			b := newBench(t)
			b.call("first", nil)
			b.call("second", nil)
			b.say(`{"ready":true}`)
			b.say(c.message)
			require.Equal(t, []string{c.want}, b.told)
			require.Len(t, b.receive, 2, "the call that waits gets a new worker")
			b.say(`{"ready":true}`)
			b.say(`{"id":2,"ok":true}` + "\n" + `2`)
			require.Equal(t, []string{c.want, "second = 2"}, b.told)
		})
	}
}

func TestWorkerThatNeverGetsReady(t *testing.T) {
	b := newBench(t)
	b.call("first", nil)
	b.call("second", nil)
	b.say(`{"gone":"no such file"}`)
	require.Equal(t, []string{"first ✗ worker stopped: no such file", "second ✗ worker stopped: no such file"}, b.told)
	require.Len(t, b.receive, 1, "it is not started over and over")
	b.call("third", nil)
	require.Len(t, b.receive, 2, "a later call tries again")
}

func TestWorkerThatDoesNotStart(t *testing.T) {
	b := newBench(t)
	b.refuse = errors.New("blocked")
	b.call("first", nil)
	b.page.Consume()
	require.Equal(t, []string{"first ✗ worker does not start: blocked"}, b.told)
}

func TestWorkerRefusesArguments(t *testing.T) {
	b := newBench(t)
	b.call("first", func() {})
	b.page.Consume()
	require.Equal(t, []string{"first ✗ first: arguments: json: unsupported type: func()"}, b.told)
	require.Empty(t, b.receive)
}

func TestWorkerClose(t *testing.T) {
	b := newBench(t)
	b.call("first", nil)
	b.call("second", nil)
	b.say(`{"ready":true}`)
	b.worker.Close()
	b.say(`{"id":1,"ok":true}` + "\n" + `1`)
	require.Empty(t, b.told)
	require.Equal(t, 1, b.stopped)
}

func TestWorkerAnswerWithoutOutcome(t *testing.T) {
	b := newBench(t)
	b.call("first", nil)
	b.call("second", nil)
	b.say(`{"ready":true}`)
	b.say(`{"id":1}`)
	b.say(`{"id":2,"ok":false}`)
	require.Equal(t, []string{"first ✗ worker sent neither result nor error", "second ✗ worker refused without a reason"}, b.told)
}
