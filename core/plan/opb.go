package plan

import "fmt"

// OPB writes the model as the pseudo-boolean solvers read it: an objective to be made least, of no negative coefficient, then
// a row a line. The optimum is what a choice costs above the cheapest option of every seat, or what it misses of the most that
// every seat and rule could be worth alone.
func (m *Model) OPB(o Objective) []byte {
	rows := m.asked(o)
	w := sheetOf{comment: "* ", whole: true}
	w.line(fmt.Sprintf("* #variable= %d #constraint= %d", len(m.vars), len(rows)))
	m.preamble(&w, o)
	w.begin("min:")
	for _, t := range m.missed(o) {
		w.opbTerm(t)
	}
	w.word(";")
	w.end()
	for _, r := range rows {
		w.begin("")
		for _, t := range r.terms {
			w.opbTerm(t)
		}
		if len(r.terms) == 0 {
			w.opbTerm(term{0, 0})
		}
		relation := ">="
		if r.exactly {
			relation = "="
		}
		w.word(fmt.Sprintf("%s %d ;", relation, r.least))
		w.end()
	}
	return []byte(w.String())
}

func (w *sheetOf) opbTerm(t term) { w.word(fmt.Sprintf("%+d x%d", t.k, t.v+1)) }

// missed is the objective as a sum to be made least, nothing in it negative: how far each span lies above the least it could
// cost, or behind the most it could be worth.
func (m *Model) missed(o Objective) []term {
	var list []term
	for _, s := range m.sets {
		ideal := m.ideal(s, o)
		for v := s.from; v < s.to; v++ {
			k := m.weight(v, o) - ideal
			if o.Worth {
				k = -k
			}
			if k > 0 {
				list = append(list, term{v, k})
			}
		}
	}
	return list
}

// ideal is the least that a span can cost, or the most it can be worth.
func (m *Model) ideal(s span, o Objective) int64 {
	best := m.weight(s.from, o)
	for v := s.from; v < s.to; v++ {
		if k := m.weight(v, o); o.Worth == (k > best) && k != best {
			best = k
		}
	}
	return best
}

// reach is the price or the value of a choice that misses nothing.
func (m *Model) reach(o Objective) int64 {
	n := m.fixed
	if o.Worth {
		n = m.settled
	}
	for _, s := range m.sets {
		n += m.ideal(s, o)
	}
	return n
}
