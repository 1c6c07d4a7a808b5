package plan

import "slices"

// opened is what has been found of the options of a space.
type opened struct {
	space
	floor [][]int64 // by column and option: what a choice with it costs at least, never where none stands that the purse pays for
	best  [][]*leaf // by column and option: the cheapest choice found with it
}

// openedKept is how many of these an Index keeps, those found last.
const openedKept = 4

// resume begins with what the Index knows of problems that admit as much or more.
func (w *opening) resume() {
	w.space = w.Problem.space()
	for _, known := range w.index.opened {
		if at, inside := known.holds(&w.space); inside {
			w.learn(known, at)
		}
	}
	for c := range w.cols {
		for o := range w.settled[c] {
			w.settled[c][o] = w.settled[c][o] || w.bottom(c, o)
		}
	}
}

// learn takes over what is known of options.
func (w *opening) learn(known *opened, at places) {
	seen := map[*leaf]bool{}
	for c, col := range w.cols {
		for o := col.live.next(0); o >= 0; o = col.live.next(o + 1) {
			i := o
			if at[c] != nil {
				i = at[c][o]
			}
			w.floor[c][o] = max(w.floor[c][o], known.floor[c][i])
			if l := known.best[c][i]; l != nil && !seen[l] {
				seen[l] = true
				if mine := w.own(l, at); mine != nil {
					w.note(mine)
				}
			}
		}
	}
}

// bottom reports an option that no choice holds for less than is found.
func (w *opening) bottom(c, o int) bool { return w.floor[c][o]-w.fixed > w.limit(c, o) }

// keep has the Index keep what was found.
func (w *opening) keep() {
	k := &opened{w.space, w.floor, w.best}
	for c, col := range w.cols {
		for o := col.live.next(0); o >= 0; o = col.live.next(o + 1) {
			if w.settled[c][o] {
				least := int64(never)
				if limit := w.limit(c, o); limit < w.purse {
					least = w.fixed + limit + 1
				}
				k.floor[c][o] = max(k.floor[c][o], least)
			}
		}
	}
	x := w.index
	x.opened = slices.DeleteFunc(x.opened, func(other *opened) bool { return other.same(&k.space) })
	if len(x.opened) == openedKept {
		x.opened = slices.Delete(x.opened, 0, 1)
	}
	x.opened = append(x.opened, k)
}
