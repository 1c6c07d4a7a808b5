package plan

import (
	"slices"

	"slipfit/core/rule"
)

// strain is how hard the options of a shelf are on a rule, by the figures of which it says that more is harder or easier: of two that are
// alike but for these, one that has no less of any harder figure and no more of any easier one fails wherever the other does.
type strain struct {
	alike   *classes // by everything else that the rule sees
	figures []int64  // of one option after the other: the more, the harder; unstated and nowhere as they are
	each    int      // how many figures an option has
	seen    *classes // by everything
	harder  []set    // by class of that: the options that are no easier; nil until they are asked for
}

// straining is what is known of how hard options are on a factor.
type straining struct {
	*strain // nil where its rule does not say
	known   bool
}

// strain is how hard options of a column are on a factor; nil where its rule does not say.
func (f *factor) strain(p *Problem, c int) *strain {
	if f.look(p).on == nil {
		f.on = make([]straining, len(f.cols))
	}
	on := &f.on[f.at[c]]
	if !on.known {
		*on = straining{f.strains(p, p.cols[c]), true}
	}
	return on.strain
}

func (f *factor) strains(p *Problem, col *column) *strain {
	if f.early == nil || !slices.Contains(f.early.Warmer, col.seat) {
		return col.strain(p.stepped(f.rule))
	}
	brings := p.index.brings(p, col)
	return newStrain(col.alike(), f.by[f.at[p.colOf[col.seat]]], brings)
}

// newStrain is how hard options are on a rule by figures that it sees, those of one option after the other.
func newStrain(alike, seen *classes, figures []int64) *strain {
	return &strain{alike: alike, figures: figures, each: len(figures) / max(1, len(seen.of)), seen: seen, harder: make([]set, seen.count)}
}

// noEasier reports an option of a column that a factor fails wherever it fails another.
func (f *factor) noEasier(p *Problem, c, o, than int) bool {
	if on := f.strain(p, c); on != nil {
		return on.noEasier(o, than)
	}
	return f.alike(p, c, o, than)
}

// excluded is the options of a column that a factor fails wherever it fails one; nil where it tells too many kinds apart.
func (f *factor) excluded(p *Problem, c, o int) set {
	if on := f.strain(p, c); on != nil {
		return on.over(o)
	}
	return f.by[f.at[c]].members(o)
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
	c.strains[r.key] = nil
	reads := fieldSet(t.fields...)
	var others []*aspect
	var signed [][]int64
	for _, a := range c.all() {
		if !a.under.inside(reads) {
			continue
		}
		sign := a.strains(r.Rule)
		if a = c.seen(a, reads, r.steps); sign == 0 {
			others = append(others, a)
		} else {
			signed = append(signed, c.signed(a, sign))
		}
	}
	if len(signed) > 0 {
		var figures []int64
		for o := range c.options {
			for _, list := range signed {
				figures = append(figures, list[o])
			}
		}
		c.strains[r.key] = newStrain(c.sorted(others), c.classify(r), figures)
	}
	return c.strains[r.key]
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
	kinds := c.sort(a).of
	for o, kind := range kinds {
		if list[o] = a.first[kind]; list[o] != unstated && list[o] != nowhere {
			list[o] *= sign
		}
	}
	return list
}

// noEasier reports an option that fails by the rule wherever another does.
func (s *strain) noEasier(o, than int) bool {
	if s.alike.of[o] != s.alike.of[than] {
		return false
	}
	mine, its := s.figures[o*s.each:][:s.each], s.figures[than*s.each:]
	for i, x := range mine {
		y := its[i]
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
