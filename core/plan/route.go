package plan

// route is one order of columns in which the options of the first are searched one by one.
type route struct {
	*search
	verdicts []verdict
}

// verdict is what a search has found of an option of a column: what all else of a choice with it costs at least, and what has
// excluded those that cost less.
type verdict struct {
	option int
	beside int64
	by     blame
}

// route begins one in the order of a bound.
func (w *opening) route(b *bound) *route {
	r := &route{search: newSearch(b, 0)}
	r.found = func(s *search) {
		l := s.leaf()
		w.note(&l)
		s.limit = l.price - w.fixed - 1
	}
	return r
}

// settle searches an option of a column, no longer than so much toil, and reports that nothing cheaper holds it than is found.
func (r *route) settle(w *opening, c, o int, toil int64) bool {
	r.only(c, o)
	r.limit, r.stop, r.open = w.limit(c, o), false, never
	r.weary = r.toil() + toil
	r.run()
	if r.open < never {
		return false
	}
	if spent := r.levels[0].spent; len(spent) > 0 {
		r.verdicts = append(r.verdicts, verdict{o, r.limit + 1 - w.cols[c].price[o], spent[0].by})
	}
	return true
}

// ruled reports an option of which nothing cheaper holds than is found, because what excluded cheaper choices with another excludes
// them too. It tries the option in what was found with that one.
func (r *route) ruled(w *opening, c, o int) bool {
	for i := range r.verdicts {
		v := &r.verdicts[i]
		if !r.tellsMore(c, o, v.option) || !r.excludes(&v.by, c, o, v.option) {
			continue
		}
		least := w.cols[c].price[o] + v.beside
		if least <= w.limit(c, o) {
			w.swap(w.best[c][v.option], c, o)
		}
		if least > w.limit(c, o) {
			return true
		}
	}
	return false
}

// routes are the usual order, and one that decides early what has been hard, nil until it is first wanted.
type routes [2]*route

// rules reports an option of a column of which nothing cheaper holds than is found, as far as the routes know already.
func (by *routes) rules(w *opening, c, o int) bool {
	for _, r := range by {
		if r != nil && (r.starting(c, o) > w.limit(c, o) || r.ruled(w, c, o)) {
			return true
		}
	}
	return false
}

// A search is broken off after the toil of a detour, or after so many times as much as it lately took, or as it was broken off after; the
// other route is then taken if that took less. The one not taken yet is thought to take unknownToil.
const (
	detour      = 40000
	unknownToil = detour / 4
	further     = 4
	lately      = 8 // how many options count
)

// settle searches an option of a column with no more toil than the cap, nought for none, by the route that has lately taken the least. One
// that was broken off counts twice.
func (by *routes) settle(w *opening, c, o int, cap int64) bool {
	var most routesToil
	for all := int64(0); ; {
		toil := &w.toil[c]
		i := 0
		if toil[1] < toil[0] {
			i = 1
		}
		if by[i] == nil {
			usual := by[0].bound
			by[i] = w.route(usual.p.frameFor(usual.weights, usual.p.hardFirst(c), usual.limit))
		}
		most[i] = max(detour, further*most[i], further*toil[i])
		room := most[i]
		if cap > 0 {
			room = min(room, cap-all)
		}
		before := by[i].toil()
		settled := by[i].settle(w, c, o, room)
		took := by[i].toil() - before
		if all += took; !settled {
			took *= 2
		}
		toil[i] += (took - toil[i]) / lately
		if settled || w.watch.ended || cap > 0 && all >= cap {
			return settled
		}
	}
}

// routesToil is what options have taken lately by each route.
type routesToil [len(routes{})]int64
