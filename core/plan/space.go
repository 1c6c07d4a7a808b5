package plan

import (
	"fmt"
	"slices"

	"slipfit/core/rule"
)

// space is all that a problem admits. What is known of one holds of every other inside it: no choice costs less there, and what stood and
// is still admitted stands.
type space struct {
	asks    string // the rules, what the needs say to them, and what fills the seats that are no columns
	purse   int64
	shelves []*shelf // by column
	live    []set    // by column
}

func (p *Problem) space() space {
	s := space{asks: p.asks(), purse: p.purse}
	for _, col := range p.cols {
		s.shelves, s.live = append(s.shelves, col.shelf), append(s.live, col.live)
	}
	return s
}

// same reports that two admit the same.
func (s *space) same(t *space) bool {
	return s.asks == t.asks && s.purse == t.purse && slices.Equal(s.shelves, t.shelves) && slices.EqualFunc(s.live, t.live, slices.Equal)
}

// asks writes down the rules that are asked of a problem, what its needs say to them but for a budget that is its purse, and what fills
// the seats that are no columns. What they say of noise counts even where its rule is lifted, since the quietest build is looked for by it.
func (p *Problem) asks() string {
	key := fmt.Appendf(nil, "%s owned %d", p.beside(), p.base.Owned)
	all := trait{needs: slices.Clone(traits[rule.Noise.ID].needs)}
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

// places is where a space has each live option of another, by column and option; nil for a column of the same shelf.
type places [][]int

// holds finds the place of every live option of a space in one; false where the other is not inside it.
func (s *space) holds(in *space) (at places, inside bool) {
	if s.asks != in.asks || s.purse < in.purse || len(s.shelves) != len(in.shelves) {
		return nil, false
	}
	at = make(places, len(in.shelves))
	for c, shelf := range in.shelves {
		mine, live := s.shelves[c], in.live[c]
		if shelf == mine {
			if !live.inside(s.live[c]) {
				return nil, false
			}
			continue
		}
		if shelf.seat != mine.seat || live.count() > few {
			return nil, false
		}
		at[c] = make([]int, len(shelf.options))
		for o := live.next(0); o >= 0; o = live.next(o + 1) {
			at[c][o] = slices.Index(mine.options, shelf.options[o])
			if at[c][o] < 0 || !s.live[c].has(at[c][o]) {
				return nil, false
			}
		}
	}
	return at, true
}

// own is a choice found in a larger space as the problem sees it; nil where it does not admit an option or pay for all.
func (p *Problem) own(l *leaf, at places) *leaf {
	if l.price-p.fixed > p.purse {
		return nil
	}
	mine := l
	for c, o := range l.pick {
		i := o
		if at[c] != nil {
			for i = p.cols[c].live.next(0); i >= 0 && at[c][i] != o; {
				i = p.cols[c].live.next(i + 1)
			}
		}
		if i < 0 || !p.cols[c].live.has(i) {
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
