package plan

import (
	"fmt"
	"slices"

	"slipfit/core/rule"
)

// opened is what has been found of the options of a problem. A problem that asks the same, admits no more and has no more to spend begins
// with it: no choice costs less there, and what stood and is still admitted stands.
type opened struct {
	asks    string // the rules, what the needs say to them, and what fills the seats that are no columns
	purse   int64
	shelves []*shelf  // by column
	live    []set     // by column
	floor   [][]int64 // by column and option: what a choice with it costs at least, never where none stands that the purse pays for
	best    [][]*leaf // by column and option: the cheapest choice found with it
}

// openedKept is how many of these an Index keeps, those found last.
const openedKept = 4

// asks writes down the rules that are asked of a problem, what its needs say to them but for a budget that is its purse, and what fills
// the seats that are no columns.
func (p *Problem) asks() string {
	key := fmt.Appendf(nil, "%s owned %d", p.beside(), p.base.Owned)
	var all trait
	everything := false
	for _, r := range p.rules {
		key = append(append(key, ' '), r.ID...)
		t, known := traits[r.ID]
		everything = everything || !known
		for _, f := range t.needs {
			if !(r == &rule.Budget && p.paid) && !slices.Contains(all.needs, f) {
				all.needs = append(all.needs, f)
			}
		}
	}
	return string(p.says(append(key, ' '), &all, !everything))
}

// resume begins with what the Index knows of problems that admit as much or more.
func (w *opening) resume() {
	asks := w.asks()
	for _, known := range w.index.opened {
		if known.asks != asks || known.purse < w.purse || len(known.shelves) != len(w.cols) {
			continue
		}
		if at, inside := known.within(w.Problem); inside {
			w.learn(known, at)
		}
	}
	for c := range w.cols {
		for o := range w.settled[c] {
			w.settled[c][o] = w.settled[c][o] || w.bottom(c, o)
		}
	}
}

// within finds every live option of a problem among those known of, by column and option, nil for a column of the same shelf; false where
// one is not among them.
func (k *opened) within(p *Problem) (at [][]int, inside bool) {
	at = make([][]int, len(p.cols))
	for c, col := range p.cols {
		if col.shelf == k.shelves[c] {
			if !col.live.inside(k.live[c]) {
				return nil, false
			}
			continue
		}
		if col.seat != k.shelves[c].seat || col.live.count() > few {
			return nil, false
		}
		at[c] = make([]int, len(col.options))
		for o := col.live.next(0); o >= 0; o = col.live.next(o + 1) {
			at[c][o] = slices.Index(k.shelves[c].options, col.options[o])
			if at[c][o] < 0 || !k.live[c].has(at[c][o]) {
				return nil, false
			}
		}
	}
	return at, true
}

// learn takes over what is known of options.
func (w *opening) learn(known *opened, at [][]int) {
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

// own is a choice found elsewhere as the problem sees it; nil where it does not admit an option or pay for all.
func (w *opening) own(l *leaf, at [][]int) *leaf {
	if l.price-w.fixed > w.purse {
		return nil
	}
	mine := l
	for c, o := range l.pick {
		i := o
		if at[c] != nil {
			for i = w.cols[c].live.next(0); i >= 0 && at[c][i] != o; {
				i = w.cols[c].live.next(i + 1)
			}
		}
		if i < 0 || !w.cols[c].live.has(i) {
			return nil
		}
		if i != o && mine == l {
			mine = &leaf{slices.Clone(l.pick), l.price, l.worth}
		}
		if mine != l {
			mine.pick[c] = i
		}
	}
	return mine
}

// bottom reports an option that no choice holds for less than is found.
func (w *opening) bottom(c, o int) bool { return w.floor[c][o]-w.fixed > w.limit(c, o) }

// keep has the Index keep what was found.
func (w *opening) keep() {
	k := &opened{asks: w.asks(), purse: w.purse, floor: w.floor, best: w.best}
	for c, col := range w.cols {
		k.shelves, k.live = append(k.shelves, col.shelf), append(k.live, col.live)
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
	x.opened = slices.DeleteFunc(x.opened, func(other *opened) bool {
		return other.asks == k.asks && other.purse == k.purse && slices.Equal(other.shelves, k.shelves) && slices.EqualFunc(other.live, k.live, slices.Equal)
	})
	if len(x.opened) == openedKept {
		x.opened = slices.Delete(x.opened, 0, 1)
	}
	x.opened = append(x.opened, k)
}
