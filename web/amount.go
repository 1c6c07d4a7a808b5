package web

import (
	"encoding/json"
	"strings"

	"slipfit/core/unit"

	"github.com/maxence-charriere/go-app/v9/pkg/app"
)

// amount asks for money.
func (d *Desk) amount(path string, q Question, hint string) app.UI {
	return d.heldBy(path, q.Asks+" In "+d.asked.Currency+".", hint,
		d.input(path, unit.MajorOf(d.brief.Text(path))).Attr("inputmode", "decimal").Class("figure").OnChange(d.onAmount(path), path))
}

func (d *Desk) onAmount(path string) app.EventHandler {
	return func(ctx app.Context, _ app.Event) { d.say(path, minorOf(ctx.JSSrc().Get("value").String())) }
}

// minorOf reads an amount. What is none stays a text, for the core to refuse, and nothing stays nothing.
func minorOf(typed string) any {
	typed = strings.TrimSpace(typed)
	minor, ok := unit.MinorOf(typed)
	switch {
	case typed == "":
		return nil
	case !ok:
		return typed
	}
	return json.Number(minor)
}
