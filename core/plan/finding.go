package plan

import (
	"slices"

	"slipfit/core/build"
)

// finding is a choice that stood in some problem of an Index.
type finding struct {
	beside  string   // what filled the seats that were no columns
	shelves []*shelf // by column
	pick    []int
}

// findings is how many choices an Index remembers, those found last; tried how many of them a question asks all rules of.
const (
	findings = 128
	tried    = 16
)

// remember keeps a choice found for later questions to the Index, which may begin with it.
func (p *Problem) remember(l *leaf) {
	x := p.index
	f := finding{beside: p.beside(), pick: l.pick}
	for _, c := range p.cols {
		f.shelves = append(f.shelves, c.shelf)
	}
	at := slices.IndexFunc(x.found, func(g finding) bool {
		return slices.Equal(g.pick, f.pick) && g.beside == f.beside && slices.Equal(g.shelves, f.shelves)
	})
	switch {
	case at >= 0:
		x.found = slices.Delete(x.found, at, at+1)
	case len(x.found) == findings:
		x.found = slices.Delete(x.found, 0, 1)
	}
	x.found = append(x.found, f)
}

// beside writes down what fills the seats that are no columns.
func (p *Problem) beside() string {
	text := ""
	for _, s := range [...]build.Seat{build.Fans, build.Cards, build.Screens} {
		if p.colOf[s] < 0 {
			text += p.settledIn(s) + ","
		}
	}
	return text
}

// known finds among the choices that the Index remembers the one that stands in the problem and comes first by an order, any where
// that is nil; nil where none stands of the first few.
func (p *Problem) known(before func(l, than *leaf) bool) *leaf {
	list := p.remembered()
	if before != nil {
		slices.SortStableFunc(list, func(l, than *leaf) int {
			switch {
			case before(l, than):
				return -1
			case before(than, l):
				return 1
			}
			return 0
		})
	}
	for _, l := range list[:min(len(list), tried)] {
		if p.admits(l) {
			return l
		}
	}
	return nil
}

// remembered lists the choices that the Index remembers as a problem sees them, the last one first.
func (p *Problem) remembered() (list []*leaf) {
	if len(p.index.found) == 0 || p.emptied() {
		return nil
	}
	beside := p.beside()
	for i := len(p.index.found) - 1; i >= 0; i-- {
		f := &p.index.found[i]
		if f.beside != beside || len(f.pick) != len(p.cols) {
			continue
		}
		if l := p.having(f); l != nil {
			list = append(list, l)
		}
	}
	return list
}

// having is a choice as a problem sees it; nil where it lacks an option, or the purse does not pay for it.
func (p *Problem) having(f *finding) *leaf {
	l := &leaf{pick: f.pick, price: p.fixed, worth: p.settled}
	for c, col := range p.cols {
		o := f.pick[c]
		if col.shelf != f.shelves[c] || !col.live.has(o) {
			return nil
		}
		l.price += col.price[o]
		l.worth += col.worth[o]
	}
	if l.price-p.fixed > p.purse {
		return nil
	}
	for _, x := range p.many {
		if x.value {
			worth := x.of(p, l)
			if worth == failed {
				return nil
			}
			l.worth += worth
		}
	}
	return l
}

// admits reports that every rule lets a choice of live options stand. Early queries say no more of a whole choice than their rules.
func (p *Problem) admits(l *leaf) bool {
	for c, o := range l.pick {
		if !p.stands(c, o) {
			return false
		}
	}
	return !slices.ContainsFunc(p.many, func(f *factor) bool { return f.early == nil && f.of(p, l) == failed })
}

// of asks the factor of a choice.
func (f *factor) of(p *Problem, l *leaf) int64 {
	var room [build.Seats]int
	options := room[:0]
	for _, c := range f.cols {
		options = append(options, l.pick[c])
	}
	p.watch.poll(asking)
	return f.ask(p, options)
}
