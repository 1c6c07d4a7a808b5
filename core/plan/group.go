package plan

import "slices"

// groupLook is the effort an option is given in its group before that is split.
const groupLook = 512

// group settles some options of one column together, with so much effort for each where there is a cap. Where a problem holds no
// others in that column, and of the other columns what a choice of use may have, rules of three columns can say more of the other
// two. It splits those that are left by what such a rule can tell apart, and begins again with each lot.
func (w *opening) group(p *Problem, c int, options []int, cap int64) {
	live := make([]set, len(p.cols))
	for q, col := range p.cols {
		live[q] = slices.Clone(col.live)
	}
	for before := p.count(); ; before = p.count() {
		clear(live[c])
		for _, o := range options {
			live[c].add(o)
		}
		p = p.within(live)
		if p == nil {
			for _, o := range options {
				w.settled[c][o] = true
			}
			return
		}
		b := p.frameFor(weights{perMinor: 1}, c)
		limit := int64(0)
		for _, o := range options {
			most := w.limit(c, o)
			w.settled[c][o] = b.starting(c, o) > most
			limit = max(limit, most)
		}
		open := func() bool {
			options = slices.DeleteFunc(options, func(o int) bool { return w.settled[c][o] })
			return len(options) > 0 && !w.watch.ended
		}
		if !open() {
			return
		}
		if p.count()*10 < before*9 {
			live = b.useful(limit)
			continue
		}
		lots := p.lots(c, options)
		if len(lots) == 1 {
			w.each(b, c, cap)
			return
		}
		w.each(b, c, groupLook)
		if !open() {
			return
		}
		for _, lot := range lots {
			lot = slices.DeleteFunc(lot, func(o int) bool { return w.settled[c][o] })
			if len(lot) > 0 {
				w.group(p, c, lot, cap)
			}
		}
		return
	}
}

// lots sorts options of a column by what the rule of three columns or more sees of them that tells the fewest apart.
func (p *Problem) lots(c int, options []int) [][]int {
	best := [][]int{options}
	for _, f := range p.many {
		if f.columns>>c&1 == 0 || len(f.open) < 3 {
			continue
		}
		of := f.look(p).by[f.at[c]].of
		var lots [][]int
		for _, o := range options {
			at := slices.IndexFunc(lots, func(lot []int) bool { return of[lot[0]] == of[o] })
			if at < 0 {
				at, lots = len(lots), append(lots, nil)
			}
			lots[at] = append(lots[at], o)
		}
		if len(lots) > 1 && (len(best) == 1 || len(lots) < len(best)) {
			best = lots
		}
	}
	return best
}
