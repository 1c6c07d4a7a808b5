package plan

import (
	"fmt"

	"slipfit/core/predict"
)

// learnt is what searches found out of cores by a query. Problems of an Index share it that say the same of what the query asks.
type learnt struct {
	cores   map[heardPick][]predict.Heard
	choirs  map[heardPick]*choir     // of cores with some supplies: all, or a group
	coolers map[coolerPick][]float64 // how loud, by option; NaN where it was not asked
	worked  map[int32][]coolerPick   // the same by processor
	bears   map[corePick][]int64     // heat, mW by activity asked, never where there is no limit
}

// learntKept is how many queries an Index keeps that of under one saying of the needs: past it, it starts anew.
const learntKept = 16

// learnt is what was found out by a query so far.
func (x *Index) learnt(p *Problem, q *query) *learnt {
	key := p.settledFor(fmt.Append(append(x.key[:0], q.rule.ID...), " early ", q.nth, q.besides), q)
	x.key = key
	h := p.hearing(q.rule)
	l := h.learnt[string(key)]
	if l == nil {
		if len(h.learnt) == learntKept {
			clear(h.learnt)
		}
		l = &learnt{map[heardPick][]predict.Heard{}, map[heardPick]*choir{}, map[coolerPick][]float64{}, map[int32][]coolerPick{}, map[corePick][]int64{}}
		h.learnt[string(key)] = l
	}
	return l
}
