package web

import (
	"encoding/json"
	"strings"

	"github.com/maxence-charriere/go-app/v9/pkg/app"
)

// isMoney reports a path of the brief at which money stands: in minor units there, in whole units of the currency where it is
// asked for.
func isMoney(path string) bool { return strings.HasSuffix(path, "_minor") }

// amount asks for money.
func (d *Desk) amount(path string, q Question, hint string) app.UI {
	return d.heldBy(path, q.Asks+" In "+d.asked.Currency+".", hint,
		d.input(path, majorOf(d.brief.Text(path))).Attr("inputmode", "decimal").Class("figure").OnChange(d.onAmount(path), path))
}

func (d *Desk) onAmount(path string) app.EventHandler {
	return func(ctx app.Context, _ app.Event) { d.say(path, minorOf(ctx.JSSrc().Get("value").String())) }
}

// majorOf writes minor units as whole units with two decimals, dropped where they are nought: "260000" is "2600". What is no
// amount is left as it is.
func majorOf(minor string) string {
	if minor == "" || strings.Trim(minor, "0123456789") != "" {
		return minor
	}
	for len(minor) < 3 {
		minor = "0" + minor
	}
	whole, rest := minor[:len(minor)-2], minor[len(minor)-2:]
	if rest == "00" {
		return whole
	}
	return whole + "." + rest
}

// minorOf is majorOf the other way about; spaces between thousands are dropped. What is no amount stays a text, for the core to
// refuse, and nothing stays nothing.
func minorOf(major string) any {
	major = strings.TrimSpace(major)
	typed := strings.NewReplacer(" ", "", "\u00a0", "", "\u202f", "").Replace(major)
	whole, rest, _ := strings.Cut(strings.ReplaceAll(typed, ",", "."), ".")
	switch {
	case typed == "":
		return nil
	case whole == "" || len(rest) > 2 || strings.Trim(whole+rest, "0123456789") != "":
		return major
	}
	minor := strings.TrimLeft(whole+(rest + "00")[:2], "0")
	if minor == "" {
		minor = "0"
	}
	return json.Number(minor)
}

// inMajor tells in whole units of the currency what amount the core wants in minor ones.
func inMajor(want, currency string) string {
	words := strings.Fields(strings.Replace(want, "a whole number of minor units", "an amount in "+currency, 1))
	for i, word := range words {
		words[i] = majorOf(word)
	}
	return strings.Join(words, " ")
}
