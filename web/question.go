package web

import (
	"strings"

	"slipfit/core/unit"

	"github.com/maxence-charriere/go-app/v9/pkg/app"
)

// fieldID is the id of the control for the answer at a path.
func fieldID(path string) string {
	return "said-" + strings.Map(func(r rune) rune {
		if r == '.' || r == '[' || r == ']' {
			return '-'
		}
		return r
	}, path)
}

// heldBy lays out a control under its label, with what is taken where it stays empty, and what is wrong with what stands
// there.
func (d *Desk) heldBy(path, label, hint string, control app.UI) app.UI {
	fault := d.fault(path)
	return app.Div().Class("asked").DataSet("path", path).Body(
		app.Label().For(fieldID(path)).Text(label),
		control,
		app.If(fault != "", app.P().Class("fault").ID(fieldID(path)+"-fault").Text(fault)).
			ElseIf(hint != "", app.P().Class("hint").ID(fieldID(path)+"-hint").Text(hint)),
	)
}

// question draws one question of the conversation for the answer at a path.
func (d *Desk) question(path string, q Question) app.UI {
	said := d.brief.Text(path)
	hint := ""
	if said == "" {
		hint = q.unsaid()
	}
	switch {
	case len(q.Choices) > 0:
		return d.heldBy(path, q.Asks, hint, d.choice(path, said, q.Choices, q.Choices))
	case q.YesNo:
		return d.heldBy(path, q.Asks, hint, d.choice(path, said, []string{"true", "false"}, []string{"yes", "no"}))
	}
	if unit.InMinor(path) {
		return d.amount(path, q, hint)
	}
	return d.heldBy(path, q.Asks, hint, d.figure(path))
}

// unsaid says what is taken where a question is not answered.
func (q *Question) unsaid() string {
	switch {
	case q.Usual == "":
		return ""
	case q.High == q.Usual || q.High == "":
		return "Not said: " + q.Usual + " is taken."
	}
	return "Not said: " + q.Usual + " is taken, with room for " + q.High + "."
}

// choice draws a choice among words; the first is that nothing was said.
func (d *Desk) choice(path, said string, values, words []string) app.UI {
	return app.Select().ID(fieldID(path)).DataSet("path", path).Body(
		app.Option().Value("").Text("I don’t know").Selected(said == ""),
		app.Range(values).Slice(func(i int) app.UI {
			return app.Option().Value(values[i]).Text(words[i]).Selected(values[i] == said)
		}),
	).OnChange(d.onChoice(path), path)
}

func (d *Desk) onChoice(path string) app.EventHandler {
	return func(ctx app.Context, _ app.Event) {
		switch v := ctx.JSSrc().Get("value").String(); v {
		case "":
			d.say(path, nil)
		case "true", "false":
			d.say(path, v == "true")
		default:
			d.say(path, v)
		}
	}
}

// figure draws a field for a number.
func (d *Desk) figure(path string) app.UI {
	return d.input(path, d.brief.Text(path)).Attr("inputmode", "decimal").Class("figure").
		OnChange(d.onFigure(path), path)
}

func (d *Desk) onFigure(path string) app.EventHandler {
	return func(ctx app.Context, _ app.Event) { d.say(path, number(ctx.JSSrc().Get("value").String())) }
}

// words draws a field for a text.
func (d *Desk) words(path string) app.UI {
	return d.input(path, d.brief.Text(path)).OnChange(d.onWords(path), path)
}

func (d *Desk) onWords(path string) app.EventHandler {
	return func(ctx app.Context, _ app.Event) {
		if v := strings.TrimSpace(ctx.JSSrc().Get("value").String()); v != "" {
			d.say(path, v)
		} else {
			d.say(path, nil)
		}
	}
}

func (d *Desk) input(path, value string) app.HTMLInput {
	in := app.Input().ID(fieldID(path)).Type("text").DataSet("path", path).AutoComplete(false).Value(value)
	if d.fault(path) != "" {
		in = in.Aria("invalid", "true").Aria("describedby", fieldID(path)+"-fault")
	}
	return in
}

// lines draws a field for a list of texts, one a line, or parted by commas where they are short.
func (d *Desk) lines(path string, rows int) app.UI {
	return app.Textarea().ID(fieldID(path)).DataSet("path", path).Rows(rows).
		Attr("value", strings.Join(d.brief.Words(path), "\n")).OnChange(d.onLines(path, "\n"), path)
}

func (d *Desk) list(path string) app.UI {
	return d.input(path, strings.Join(d.brief.Words(path), ", ")).OnChange(d.onLines(path, ","), path)
}

func (d *Desk) onLines(path, between string) app.EventHandler {
	return func(ctx app.Context, _ app.Event) {
		var list []any
		for _, line := range strings.Split(ctx.JSSrc().Get("value").String(), between) {
			if line = strings.TrimSpace(line); line != "" {
				list = append(list, line)
			}
		}
		if list == nil {
			d.say(path, nil)
			return
		}
		d.say(path, list)
	}
}
