package main

import (
	"fmt"
	"io"
	"os"
	"strings"
	"unicode/utf8"

	"slipfit/core/sheet"
	"slipfit/core/unit"
	"slipfit/core/verb"
)

// columns people read: a terminal of 80.
const columns = 80

// colourful reports whether out is a terminal whose user has not asked for plain text (NO_COLOR).
func colourful(out io.Writer) bool { return os.Getenv("NO_COLOR") == "" && terminal(out) }

// terminal reports whether out is a terminal that heeds control sequences.
func terminal(out io.Writer) bool {
	f, ok := out.(*os.File)
	if !ok || os.Getenv("TERM") == "dumb" {
		return false
	}
	info, err := f.Stat()
	return err == nil && info.Mode()&os.ModeCharDevice != 0
}

// emphasis on a terminal: failures stand out by weight and underline, not by a traffic-light colour.
func (k *call) strong(s string) string { return k.escape("1", s) }
func (k *call) fails(s string) string  { return k.escape("1;4", s) }

func (k *call) escape(code, s string) string {
	if !k.colour {
		return s
	}
	return "\x1b[" + code + "m" + s + "\x1b[0m"
}

func (k *call) printf(format string, args ...any) { fmt.Fprintf(k.out, format, args...) }

// paragraph prints a text wrapped behind a lead; further lines stand under the first.
func (k *call) paragraph(lead, text string) {
	width := utf8.RuneCountInString(lead)
	for _, line := range sheet.Wrap(text, columns-width) {
		k.printf("%s%s\n", lead, line)
		lead = strings.Repeat(" ", width)
	}
}

// cell pads to a width counted in runes.
func cell(s string, width int) string {
	return s + strings.Repeat(" ", max(width-utf8.RuneCountInString(s), 0))
}

func right(s string, width int) string {
	return strings.Repeat(" ", max(width-utf8.RuneCountInString(s), 0)) + s
}

// parts prints the lines of a build with its price.
func (k *call) parts(lines []verb.Line, price, currency string) {
	for _, l := range lines {
		name := l.Name
		if l.Count > 1 {
			name = fmt.Sprintf("%d × %s", l.Count, name)
		}
		if l.Owned {
			name += " (owned)"
		}
		wrapped := sheet.Wrap(name, 42)
		k.printf("  %s %s %s\n", cell(l.Title, 23), cell(wrapped[0], 42), right(l.Price.Figure(), 10))
		for _, more := range wrapped[1:] {
			k.printf("  %s %s\n", cell("", 23), more)
		}
	}
	k.printf("  %s %s\n", cell("", 23), k.strong(cell("before tax, "+currency, 42)+" "+right(price, 10)))
}

// margins prints a table of margins: verdict, rule and subject, have, need, have − need; and why, where it does not hold
// or advises, or where every reason is asked for.
func (k *call) margins(list []verb.Margin, every bool) {
	const name, figure = 29, 12
	k.printf("  %s %s %s %s %s\n", cell("verdict", 7), cell("rule", name), right("have", figure), right("need", figure), right("margin", figure))
	for _, m := range list {
		have, need, diff := m.Have.String(), m.Need.String(), m.Diff.String()
		switch {
		case m.Verdict == "unknown":
			have, need, diff = "?", "?", "?"
		case m.Have.Kind == unit.Yes:
			diff = ""
		}
		failing := !m.Advice && m.Verdict != "snug" && m.Verdict != "loose"
		word := m.Verdict
		if m.Advice && m.Diff.N < 0 && m.Verdict == "snug" {
			word = "advice"
		}
		what := m.Rule
		if m.Subject != "" {
			what += ": " + m.Subject
		}
		lines := sheet.Wrap(what, name)
		row := fmt.Sprintf("%s %s %s %s %s", cell(word, 7), cell(lines[0], name), right(have, figure), right(need, figure), right(diff, figure))
		if failing {
			row = k.fails(row)
		}
		k.printf("  %s\n", strings.TrimRight(row, " "))
		for _, more := range lines[1:] {
			k.printf("          %s\n", more)
		}
		if failing || every || word == "advice" {
			k.paragraph("            ", m.Why)
		}
	}
}
