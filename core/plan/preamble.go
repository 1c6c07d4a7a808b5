package plan

import (
	"slipfit/core/rule"
)

// preamble tells a reader what a written model asks, what it leaves out, and what its variables stand for.
func (m *Model) preamble(w *sheetOf, o Objective) {
	opb := w.comment == "* "
	w.note("A machine of a shop's stock: one option for every open seat.")
	switch {
	case o.Worth:
		w.note("Sought: the greatest value within the budget, in thousandths of a value point. The best build is the cheapest that")
		w.note("reaches it: the same rows, the value as one more of them, and the least price sought.")
	case o.AtLeast > 0:
		w.note("Sought: the least price, in minor units of money, of a value of at least %d thousandths of a point.", o.AtLeast)
	default:
		w.note("Sought: the least price, in minor units of money.")
	}
	switch {
	case o.Worth && opb:
		w.note("Value = %d - the optimum of this file.", m.reach(o))
	case o.Worth:
		w.note("Value = the optimum of this file + %d.", m.settled)
	case opb:
		w.note("Price = the optimum of this file + %d, which no choice goes below.", m.reach(o))
	default:
		w.note("Price = the optimum of this file + %d for what is settled.", m.fixed)
	}
	m.honesty(w)
	w.note("")
	w.note("Variables:")
	for c, at := range m.at {
		for o := range at {
			if m.live[c].has(o) {
				v := &m.vars[at[o]]
				if opb {
					w.note("x%d = %s: %s", at[o]+1, m.cols[c].seat, v.says)
				} else {
					w.note("%s: %s", v.name, v.says)
				}
			}
		}
	}
	w.note("")
}

// honesty says whether the rows hold all there is.
func (m *Model) honesty(w *sheetOf) {
	left := m.Left()
	if len(left) == 0 {
		w.note("The rows hold every rule: the optimum is the optimum of the problem.")
		return
	}
	w.note("A RELAXATION: these rules are no rows here, for they are not linear or too large to be tabulated. No build is better")
	w.note("than the optimum; where a build that stands under all rules reaches it, that build is proven the best.")
	for _, r := range left {
		w.note("  %s: %s%s", r.ID, r.Title, early(r))
	}
}

// early says what of a rule left out the rows may hold all the same.
func early(r *rule.Rule) string {
	if len(r.Early) > 0 {
		return " (what it says of one or two seats is held)"
	}
	return ""
}
