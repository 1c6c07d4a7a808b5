package web

import "github.com/maxence-charriere/go-app/v9/pkg/app"

// Fold is a fold-out. What it unfolds is laid out when it is first opened.
type Fold struct {
	app.Compo

	Frame   func() app.HTMLDetails // the fold-out itself, with its hooks
	Line    func() []app.UI        // what stands there while it is folded
	Inside  func() []app.UI
	Toggled func(open bool) // is told; may be nil

	opened bool
}

// Render draws the line, and what it unfolds to once it has been opened.
func (f *Fold) Render() app.UI {
	body := []app.UI{app.Summary().Body(f.Line()...)}
	if f.opened {
		body = append(body, f.Inside()...)
	}
	return f.Frame().Body(body...).OnToggle(f.onToggle)
}

func (f *Fold) onToggle(ctx app.Context, _ app.Event) {
	open := ctx.JSSrc().Get("open").Bool()
	f.opened = f.opened || open
	if f.Toggled != nil {
		f.Toggled(open)
	}
}

// fold is a fold-out of the index: its name, and a note at the far end of the line.
func fold(frame func() app.HTMLDetails, name, note string, inside func() []app.UI) app.UI {
	return &Fold{Inside: inside,
		Frame: func() app.HTMLDetails { return frame().Class("fold") },
		Line:  indexed(name, note),
	}
}

func indexed(name, note string) func() []app.UI {
	return func() []app.UI {
		return []app.UI{app.Span().Class("fold-name").Text(name), app.Span().Class("fold-note").Text(note)}
	}
}
