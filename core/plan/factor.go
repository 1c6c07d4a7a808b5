package plan

import (
	"slices"

	"slipfit/core/build"
	"slipfit/core/rule"
)

// factor is a query over several columns of a problem. It remembers what it found by the classes of its options, so that a
// rule is asked once for all choices it cannot tell apart.
type factor struct {
	*query
	*sight
	anywhere *anywhere          // of an early query asked before its Places are decided; else nil
	*twins                      // of an early query that can be asked of a group of supplies; else nil
	open     []int              // its columns with several options left
	at       [build.Seats]int   // by column: its place among those the query reads
	columns  uint32             // its open columns, a bit to each
	id       int                // its place among the problem's factors of several columns, −1 for one of a single column
	others   []int              // by place: the one option of a column that has no other
	failures [build.Seats]int32 // by column: how often it has failed in searches that decide that first
	cost     int                // how slow it is to ask: nought for figures compared, more for heat and noise predicted
	lastly   int                // its last open column in the order of search, which settles its worth
	most     []int64            // the largest worth each option of that column can reach; nil where it is never worth anything
}

// appraiseTo is the most choices an option of a factor is looked through for.
const appraiseTo = 1 << 12

func (p *Problem) newFactor(q *query) *factor {
	f := &factor{query: q, cost: cost(q), sight: &sight{}}
	for i, c := range q.cols {
		f.at[c] = i
	}
	if q.early != nil && q.early.AnySupply && q.fed == nil && !q.whichever() && p.colOf[build.Supply] >= 0 {
		f.twins = &twins{}
	}
	return f
}

// apartFrom is how many columns a rule reads from which it is taken to see every option apart: few choices of so many are alike.
const apartFrom = 10

// sight is how a rule sees the options of its columns, and what it has found by that. It is made when the rule is first
// asked.
type sight struct {
	by    []*classes
	on    []straining // by place: how hard options are on the rule, as far as that was asked; nil where it was not
	seen  *memory
	place *placing // of an early query with Places; else nil
}

// look makes the sight of a factor.
func (f *factor) look(p *Problem) *sight {
	if f.seen == nil {
		f.besides = p.posed().besides(f.query)
		sees := p.stepped(f.rule)
		f.by = make([]*classes, len(f.cols))
		for i, c := range f.cols {
			k := p.cols[c].apart()
			switch {
			case f.early != nil && slices.Contains(f.early.Places, p.cols[c].seat):
				k = p.cols[c].classify(p.stepped(&rule.DriveSlots))
			case f.early != nil && slices.Contains(f.early.Kinds, p.cols[c].seat):
				k = p.cols[c].byKind()
			case f.early != nil || len(f.cols) < apartFrom:
				k = p.cols[c].classify(sees)
			}
			f.by[i] = k
		}
		if f.anywhere != nil {
			f.seen = newMemory(f.by, false)
		} else if f.early != nil && f.early.Placed != nil {
			f.place = p.placing(f)
			f.seen = p.index.memory(p, f.query, f.place.by)
		} else {
			f.seen = p.index.memory(p, f.query, f.by)
		}
	}
	return f.sight
}

// settle finds out which of a factor's columns still matter.
func (p *Problem) settle(f *factor) *factor {
	idle := p.idle(f.query)
	n := len(f.cols)
	room := make([]int, 2*n)
	f.id, f.open, f.columns, f.others = -1, room[n:n], 0, room[:n]
	for i, c := range f.cols {
		live := p.cols[c].live
		first := live.next(0)
		f.others[i] = max(first, 0)
		if !idle.Has(p.cols[c].seat) && (first < 0 || f.differs(i, live)) {
			f.open = append(f.open, c)
			f.columns |= 1 << c
		}
	}
	for i, c := range f.open {
		if i == 0 || p.cols[c].turn > p.cols[f.lastly].turn {
			f.lastly = c
		}
	}
	return f
}

// differs reports that the factor, as far as it has looked, may tell some live options of its column at a place apart.
func (f *factor) differs(i int, live set) bool {
	if f.seen != nil && f.by[i].count == 1 {
		return false
	}
	first := live.next(0)
	for o := live.next(first + 1); o >= 0; o = live.next(o + 1) {
		if f.seen == nil || f.by[i].of[o] != f.by[i].of[first] {
			return true
		}
	}
	return false
}

// idle is the seats of a query that do not matter because one that decides before them is filled.
func (p *Problem) idle(q *query) build.Set {
	if q.early != nil {
		return 0
	}
	for i, s := range q.rule.First {
		filled, empty := p.base.Filled(s), false
		if c := p.colOf[s]; c >= 0 {
			filled, empty = p.cols[c].filled()
		}
		switch {
		case filled && empty:
			return 0
		case filled:
			return build.SetOf(q.rule.First[i+1:]...)
		}
	}
	return 0
}

// filled reports whether some live option fills the seat, and whether some leaves it empty.
func (c *column) filled() (filled, empty bool) {
	for o := c.live.next(0); o >= 0 && !(filled && empty); o = c.live.next(o + 1) {
		filled = filled || c.options[o].Part != nil
		empty = empty || c.options[o].Part == nil
	}
	return filled, empty
}

// cost is how slow a query is to ask: nought for figures that are compared, 1 for parts predicted in the open, 2 for a
// case with its core, 3 for a whole build.
func cost(q *query) int {
	switch {
	case q.rule.Group != rule.Cool || q.rule == &rule.CoolerRating:
		return 0
	case q.early == nil:
		return 3
	case q.early.Fails != nil:
		return 2
	}
	return 1
}

// weight is how much work it is to ask a query.
func weight(q *query) int {
	if cost(q) > 0 {
		return predicting
	}
	return asking
}

// ask returns the worth of a choice of the factor's columns, or failed.
func (f *factor) ask(p *Problem, options []int) int64 {
	if f.sums != nil && f.balances(options) || !f.concerns(p, options) {
		return 0
	}
	if f.anywhere != nil && !f.anywhere.worth() {
		return 0
	}
	s := f.look(p)
	by, seen := s.by, options
	if s.place != nil {
		var room [build.Seats + 1]int
		by, seen = s.place.by, append(append(room[:0], options...), s.place.of(p, f.query, options))
	}
	return s.seen.recall(by, seen, func() int64 {
		if f.anywhere != nil {
			return f.anywhere.ask(p, options)
		}
		if f.early == nil && len(f.rule.First) > 0 {
			return f.heed(p, options)
		}
		return p.run(f.query, options)
	})
}

// concerns reports a choice in whose layout of the case an early query may fail.
func (f *factor) concerns(p *Problem, options []int) bool {
	if f.early == nil || f.early.Layouts == nil {
		return true
	}
	if c := p.colOf[build.Case]; c >= 0 {
		return f.early.Layouts(p.cols[c].options[options[f.at[c]]].Layout)
	}
	return f.early.Layouts(p.base.Layout)
}

// heed asks of a choice with the same option wherever it does not matter, for a seat is filled that decides before.
func (f *factor) heed(p *Problem, options []int) int64 {
	var room [build.Seats]int
	heeded := room[:copy(room[:], options)]
	decided := false
	for _, s := range f.rule.First {
		switch c := p.colOf[s]; {
		case c < 0:
			decided = decided || p.base.Filled(s)
		case decided:
			heeded[f.at[c]] = 0
		default:
			decided = p.cols[c].options[options[f.at[c]]].Part != nil
		}
	}
	return f.seen.recall(f.by, heeded, func() int64 { return p.run(f.query, options) })
}

// one asks the factor of its only open column.
func (f *factor) one(p *Problem, c, o int) int64 {
	var room [build.Seats]int
	list := room[:copy(room[:], f.others)]
	list[f.at[c]] = o
	return f.ask(p, list)
}

// two asks the factor of its two open columns.
func (f *factor) two(p *Problem, c, o, q, j int) int64 {
	var room [build.Seats]int
	list := room[:copy(room[:], f.others)]
	list[f.at[c]], list[f.at[q]] = o, j
	return f.ask(p, list)
}

// appraise finds the largest worth the factor reaches by the options of its last column. Of a factor too large to be looked
// through that is what all it can serve is worth.
func (f *factor) appraise(p *Problem) {
	f.most = nil
	if !f.value {
		return
	}
	t := traits[f.rule.ID]
	f.look(p)
	col := p.cols[f.lastly]
	k := f.by[f.at[f.lastly]]
	most := slices.Repeat([]int64{failed}, k.count)
	valued := false
	options := slices.Clone(f.others)
	for _, o := range k.living(col) {
		options[f.at[f.lastly]] = o
		rest := slices.DeleteFunc(slices.Clone(f.open), func(c int) bool { return c == f.lastly })
		if len(f.rule.First) > 0 && f.rule.First[0] == col.seat && col.options[o].Part != nil {
			rest = nil // it decides alone
		}
		most[k.of[o]] = f.highest(p, options, rest, p.fully(&t))
		valued = valued || most[k.of[o]] > 0
	}
	if !valued {
		return
	}
	f.most = make([]int64, len(col.options))
	for o := range f.most {
		f.most[o] = max(0, most[k.of[o]])
	}
}

// highest is the largest worth of the factor with some of its columns still to be decided; no more than so much where there are
// too many ways, or where the context has ended.
func (f *factor) highest(p *Problem, options, rest []int, cap int64) int64 {
	live := make([][]int, len(rest)) // by column: an option of each class that has a live one
	n := 1
	for i, c := range rest {
		live[i] = f.by[f.at[c]].living(p.cols[c])
		n *= len(live[i])
	}
	if p.watch.poll(min(n, appraiseTo)); n > appraiseTo || p.watch.ended {
		return cap
	}
	most := int64(failed)
	var walk func(i int)
	walk = func(i int) {
		if i == len(rest) {
			most = max(most, f.ask(p, options))
			if p.watch.ended {
				most = cap
			}
			return
		}
		for _, o := range live[i] {
			options[f.at[rest[i]]] = o
			if walk(i + 1); most >= cap {
				return
			}
		}
	}
	walk(0)
	return most
}

// fully is what all the resources that a rule names are worth when they are served in full.
func (p *Problem) fully(t *trait) int64 {
	if t.resources == nil {
		return p.enough()
	}
	sum := int64(0)
	for _, r := range t.resources {
		sum += int64(p.ask.Needs.By[r].Weight) * 1000
	}
	return sum
}

// living lists a live option of each class that has one.
func (k *classes) living(c *column) []int {
	var list []int
	seen := make([]bool, k.count)
	for o := c.live.next(0); o >= 0; o = c.live.next(o + 1) {
		if !seen[k.of[o]] {
			seen[k.of[o]] = true
			list = append(list, o)
		}
	}
	return list
}
