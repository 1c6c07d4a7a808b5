package plan

import (
	"slices"

	"slipfit/core/rule"
)

// strain is how hard the options of a shelf are on a rule, by the figures of which it says that more is harder or easier: of two that are
// alike but for these, one that has no less of any harder figure and no more of any easier one fails wherever the other does.
type strain struct {
	alike   *classes  // by everything else that the rule sees
	figures [][]int64 // by figure and option: the more, the harder; unstated and nowhere as they are
	seen    *classes  // by everything
	harder  []set     // by class of that: the options that are no easier; nil until they are asked for
}

// strain is how hard options are on a rule; nil where it does not say.
func (c *shelf) strain(r stepped) *strain {
	t, known := traits[r.ID]
	if !known || len(r.Harder)+len(r.Easier) == 0 || slices.Contains(r.Filled, c.seat) {
		return nil
	}
	if s, made := c.strains[r.key]; made {
		return s
	}
	s := &strain{alike: c.alike(), seen: c.classify(r)}
	reads := fieldSet(t.fields...)
	for _, a := range c.all() {
		if !a.under.inside(reads) {
			continue
		}
		sign := a.strains(r.Rule)
		if a = c.seen(a, reads, r.steps); sign == 0 {
			s.alike = c.both(s.alike, c.sort(a))
			continue
		}
		s.figures = append(s.figures, c.signed(a, sign))
	}
	s.harder = make([]set, s.seen.count)
	if len(s.figures) == 0 {
		s = nil
	}
	c.strains[r.key] = s
	return s
}

// strains is 1 for a figure or count of which a rule says that more is harder, −1 for one of which less is, else nought.
func (a *aspect) strains(r *rule.Rule) int64 {
	if a.decide == nil && a.figure == nil {
		return 0
	}
	switch {
	case slices.Contains(r.Harder, a.name()):
		return 1
	case slices.Contains(r.Easier, a.name()):
		return -1
	}
	return 0
}

// name is the field of an aspect that is a single one, by its type; empty of any other.
func (a *aspect) name() string {
	if a.decide != nil {
		return fields[a.under.next(0)]
	}
	if a.path == nil {
		return ""
	}
	return fields[a.field]
}

// signed is a figure of every option times a sign.
func (c *shelf) signed(a *aspect, sign int64) []int64 {
	list := make([]int64, len(c.options))
	var values []int64
	if a.decide == nil {
		read := a.read()
		for _, v := range a.of.values {
			values = append(values, read(v))
		}
	}
	for o := range list {
		x := int64(0)
		if a.decide != nil {
			x = a.decide(&c.options[o])
		} else {
			x = values[a.of.at[o]]
		}
		if list[o] = x; x != unstated && x != nowhere {
			list[o] = sign * x
		}
	}
	return list
}

// noEasier reports an option that fails by the rule wherever another does.
func (s *strain) noEasier(o, than int) bool {
	if s.alike.of[o] != s.alike.of[than] {
		return false
	}
	for _, f := range s.figures {
		x, y := f[o], f[than]
		if x < y || x != y && (y == unstated || y == nowhere) {
			return false
		}
	}
	return true
}

// over is the options that fail by the rule wherever one does.
func (s *strain) over(than int) set {
	of := &s.harder[s.seen.of[than]]
	if *of == nil {
		*of = make(set, words(len(s.seen.of)))
		for o := range s.seen.of {
			if s.noEasier(o, than) {
				(*of).add(o)
			}
		}
	}
	return *of
}
