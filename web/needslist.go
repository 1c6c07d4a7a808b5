package web

import (
	"fmt"

	"github.com/maxence-charriere/go-app/v9/pkg/app"
)

// NeedsList is what the work asks of a machine: for each resource the floor and what is enough, with the reason to unfold.
type NeedsList struct {
	app.Compo

	Needs *Needs
}

// Render draws the list.
func (n *NeedsList) Render() app.UI {
	if n.Needs == nil {
		return blank("Nothing is asked for yet. What the work needs will stand here with its arithmetic, as it is said.")
	}
	all := n.Needs
	return app.Div().Class("needs").Body(
		app.Range(all.Needs).Slice(func(i int) app.UI {
			need := &all.Needs[i]
			return &Fold{
				Frame: func() app.HTMLDetails { return app.Details().Class("need").DataSet("resource", need.Resource) },
				Line: func() []app.UI {
					return []app.UI{
						app.Span().Class("need-name").Text(need.Title),
						app.Span().Class("need-floor").Text(need.Floor.Text),
						app.Span().Class("need-enough").Text(past(need)),
					}
				},
				Inside: func() []app.UI {
					return []app.UI{app.P().Text(need.Reason + "."), app.P().Class("hint").Text("Source: " + need.Source + ".")}
				},
			}
		}),
		app.If(len(all.Codecs) > 0, app.Ul().Class("plain").Body(
			app.Range(all.Codecs).Slice(func(i int) app.UI {
				k := &all.Codecs[i]
				return app.Li().Text("An engine that can " + k.Use + " " + k.Codec + ": " + k.Reason)
			}))),
		app.If(len(all.Assumed) > 0, app.Details().Class("fold").ID("assumed").Body(
			app.Summary().Body(app.Span().Class("fold-name").Text("Taken as usual"), app.Span().Class("fold-note").Text(answers(len(all.Assumed)))),
			app.Ul().Class("plain").Body(app.Range(all.Assumed).Slice(func(i int) app.UI { return app.Li().Text(all.Assumed[i]) })),
		)),
	)
}

func past(n *Need) string {
	if n.Enough.Text == n.Floor.Text || n.Enough.Text == "" {
		return ""
	}
	return "enough at " + n.Enough.Text
}

func answers(n int) string {
	if n == 1 {
		return "1 question not answered"
	}
	return fmt.Sprintf("%d questions not answered", n)
}
