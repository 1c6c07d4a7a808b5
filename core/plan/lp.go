package plan

import (
	"fmt"
	"strings"
)

// width is where a line of a written model is broken.
const width = 200

// LP writes the model in the text form of linear programs that solvers read widely: an objective, rows, and the variables that
// are 0 or 1. Prices are in minor units of money, value in thousandths of a weight's point. The comments in front say what the
// variables stand for, which rules are left out, and what to add to the optimum.
func (m *Model) LP(o Objective) []byte {
	var w sheetOf
	w.comment = `\ `
	m.preamble(&w, o)
	if o.Worth {
		w.line("Maximize")
	} else {
		w.line("Minimize")
	}
	w.begin(" " + aim(o) + ":")
	for v := range m.vars {
		if k := m.weight(v, o); k != 0 {
			w.term(k, m.vars[v].name)
		}
	}
	w.end()
	w.line("Subject To")
	for i, r := range m.asked(o) {
		m.lpRow(&w, i, r)
	}
	w.line("Binary")
	w.begin("")
	for c, at := range m.at {
		for o := range at {
			if m.live[c].has(o) {
				w.word(m.vars[at[o]].name)
			}
		}
	}
	w.end()
	w.line("End")
	return []byte(w.String())
}

// lpRow writes a row, with its signs turned where most are negative.
func (m *Model) lpRow(w *sheetOf, i int, r row) {
	sign, relation := int64(1), ">="
	if r.falling() {
		sign, relation = -1, "<="
	}
	if r.exactly {
		relation = "="
	}
	w.begin(fmt.Sprintf(" %s_%d:", symbol(r.name), i))
	if len(r.terms) == 0 {
		w.word("0 nothing") // a row of no terms, which some readers will not have
	}
	for _, t := range r.terms {
		w.term(sign*t.k, m.vars[t.v].name)
	}
	w.word(fmt.Sprintf("%s %d", relation, sign*r.least))
	w.end()
}

// falling reports a row of more negative terms than positive ones.
func (r *row) falling() bool {
	n := 0
	for _, t := range r.terms {
		if t.k < 0 {
			n++
		}
	}
	return 2*n > len(r.terms)
}

// sheetOf is a text written line by line, broken where lines grow long.
type sheetOf struct {
	strings.Builder
	comment string // what a comment begins with
	at      int    // characters on the line begun
	whole   bool   // lines are not broken
}

func (w *sheetOf) line(text string) {
	w.WriteString(text)
	w.WriteByte('\n')
}

func (w *sheetOf) note(format string, args ...any) {
	w.line(strings.TrimRight(w.comment+fmt.Sprintf(format, args...), " "))
}

func (w *sheetOf) begin(text string) {
	w.WriteString(text)
	w.at = len(text)
}

func (w *sheetOf) word(text string) {
	if !w.whole && w.at+1+len(text) > width {
		w.WriteString("\n ")
		w.at = 1
	}
	if w.at > 0 {
		w.WriteByte(' ')
	}
	w.WriteString(text)
	w.at += 1 + len(text)
}

// term writes a signed term; a coefficient of one is not spelt out.
func (w *sheetOf) term(k int64, name string) {
	sign := "+"
	if k < 0 {
		sign, k = "-", -k
	}
	if k == 1 {
		w.word(sign + " " + name)
		return
	}
	w.word(fmt.Sprintf("%s %d %s", sign, k, name))
}

func (w *sheetOf) end() { w.WriteByte('\n') }
