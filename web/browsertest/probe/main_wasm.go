// A page for the tests: it gives them the browser half of package web to call, and shows rulers to look at.
package main

import (
	"encoding/json"
	"fmt"
	"sync"
	"syscall/js"

	"slipfit/web"

	"github.com/maxence-charriere/go-app/v9/pkg/app"
)

func main() {
	app.RouteWithRegexp("^/.*$", &probe{})
	app.RunWhenOnBrowser()
}

type probe struct {
	app.Compo

	worker *web.Worker
	notes  []string
}

// OnMount puts the function probe(what, a, b) into the page; it returns a promise of a text.
func (p *probe) OnMount(ctx app.Context) {
	p.worker = web.NewWorker(web.BrowserWorker(ctx.ResolveStaticResource("/web/worker.js")))
	js.Global().Set("probe", js.FuncOf(func(_ js.Value, args []js.Value) any {
		var texts [3]string
		for i, a := range args {
			texts[i] = a.String()
		}
		return js.Global().Get("Promise").New(js.FuncOf(func(_ js.Value, settle []js.Value) any {
			ctx.Dispatch(func(ctx app.Context) {
				p.do(ctx, texts, func(result string, err error) {
					if err != nil {
						settle[1].Invoke(err.Error())
						return
					}
					settle[0].Invoke(result)
				})
			})
			return nil
		}))
	}))
}

func (p *probe) do(ctx app.Context, texts [3]string, then func(string, error)) {
	what, a, b := texts[0], texts[1], texts[2]
	switch what {
	case "call":
		p.notes = nil
		p.worker.Call(ctx, a, json.RawMessage(b), func(_ app.Context, answer web.Answer) {
			if !answer.Done {
				p.notes = append(p.notes, answer.Progress.Note)
				return
			}
			then(fmt.Sprintf("%s %q", answer.Result, p.notes), answer.Err)
		})
	case "call and stop": // once it has begun
		var id int
		stop := sync.OnceFunc(func() { p.worker.Stop(id) })
		id = p.worker.Call(ctx, a, nil, func(_ app.Context, answer web.Answer) {
			if answer.Done {
				then(string(answer.Result), answer.Err)
				return
			}
			stop()
		})
	case "call and cancel": // once it has begun, then make a second call
		var id int
		id = p.worker.Call(ctx, a, nil, func(ctx app.Context, answer web.Answer) {
			p.worker.Cancel(id)
			p.worker.Call(ctx, "echo", json.RawMessage(b), func(_ app.Context, answer web.Answer) {
				if answer.Done {
					then(string(answer.Result), answer.Err)
				}
			})
		})
	default:
		ctx.Async(func() { then(store(what, a, b)) })
	}
}

func store(what, a, b string) (string, error) {
	switch what {
	case "save":
		web.SaveFile(a, "text/plain", []byte(b))
		return "", nil
	case "open":
		name, data, err := web.OpenFile(a)
		return name + ": " + string(data), err
	}
	s, err := web.OpenStore()
	if err != nil {
		return "", err
	}
	switch what {
	case "put":
		return "", s.Put(a, []byte(b))
	case "get":
		value, found, err := s.Get(a)
		return fmt.Sprintf("%v %s", found, value), err
	case "delete":
		return "", s.Delete(a)
	case "list":
		keys, err := s.List(a)
		return fmt.Sprintf("%q", keys), err
	}
	return "", fmt.Errorf("the probe cannot %s", what)
}

// Render shows one ruler of each verdict.
func (p *probe) Render() app.UI {
	mm := func(v float64) web.Mark { return web.Mark{At: v, Text: fmt.Sprintf("%g mm", v), Known: true} }
	return app.Div().Class("desk").Body(
		web.Hatches(),
		web.Sheet("front", false, app.H1().ID("side-title").Text("Rulers"), app.Div().Class("region").Body(
			&web.Ruler{Title: "Graphics length", Have: mm(315), Need: mm(336), Margin: "−21 mm", Verdict: "clash",
				Why: "The card is longer than the bay behind the front radiator."},
			&web.Ruler{Title: "Cooler height", Have: mm(158), Need: mm(165), Margin: "−7 mm", Verdict: "short"},
			&web.Ruler{Title: "Supply length", Have: mm(180), Need: mm(160), Margin: "+20 mm", Verdict: "snug"},
			&web.Ruler{Title: "Steady load", Have: web.Mark{At: 1000, Text: "1000 W", Known: true},
				Need: web.Mark{At: 420, Text: "420 W", Known: true}, Margin: "+580 W", Verdict: "loose"},
			&web.Ruler{Title: "Memory under the cooler", Need: mm(44), Verdict: "unknown",
				Why: "The cooler’s data sheet does not give its height above the first slot."},
		)),
	)
}
