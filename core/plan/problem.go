package plan

import (
	"cmp"
	"context"
	"slices"

	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/rule"
)

// Problem is a stock under an ask, made ready to answer questions. It changes nothing after it is made but what its Index
// remembers, so one Problem serves one goroutine.
type Problem struct {
	// Told hears now and then what a question has come to while it is searched; nil where nobody listens. It must not ask the
	// planner anything.
	Told func(Course)

	index *Index
	of    *Problem // the one that it is a part of, nil of a whole one
	ask   Ask
	said  map[string]string       // what the needs say, by field
	heard map[*rule.Rule]*hearing // what is remembered under that, by rule
	steps map[string]stepped      // rules with steps, by id

	base      build.Build // what is settled to the last detail
	fixed     int64       // price of what is settled, minor units
	settled   int64       // value points of the rules that read nothing else
	cols      []*column
	colOf     [build.Seats]int // column of a seat, −1 where it is settled
	alone     [][]*factor      // by column: rules slow to ask that hang on it alone
	pairs     [][]*factor      // by two columns, first × columns + second: the rules that hang on them, those quick to ask first
	matches   []*match         // by two columns, as pairs; nil until they are asked for
	many      []*factor        // every rule that hangs on two columns or more, quick ones first
	sums      []*total         // rules declared as sums over two columns or more
	fit       []set            // by column: live options that no sum excludes by itself; nil until they are asked for
	purse     int64            // the most the open seats may cost
	paid      bool             // whether that is what a rule leaves them
	rules     []*rule.Rule     // that are asked
	cut       []Cut            // what the rules took away before any search
	asked     int64            // how often its Index had asked a rule before it was posed
	appraised bool             // whether the factors know their largest worth

	warms   [build.Seats]*warming // by seat: what it brings into the air, made when first asked for
	din     *din                  // how loud cores are, made when first asked for
	bearing *bearing              // how much heat cores bear, made when first asked for
	watch   *watch                // over the question that is asked
	priced  *bound                // on price alone, made when first asked for
	like    *bound                // on price, of a problem much like it, whose frame is taken over; nil for none
	scratch build.Build           // with the columns a rule is asked of filled
	lone    build.Build           // the same for early queries
	view    *rule.View
}

func (x *Index) problem(ask Ask, rules []*rule.Rule) (*Problem, error) {
	if ask.Needs == nil {
		ask.Needs = &brief.Needs{}
	}
	if err := ask.check(x.stock); err != nil {
		return nil, err
	}
	p := &Problem{index: x, asked: x.checks, ask: ask, said: map[string]string{}, heard: map[*rule.Rule]*hearing{}, steps: map[string]stepped{}, watch: newWatch(context.Background(), nil)}
	p.cols = x.columns(&p.ask, &p.base)
	for s := range p.colOf {
		p.colOf[s] = -1
	}
	for i, c := range p.cols {
		p.colOf[c.seat] = i
	}
	for _, l := range p.base.Lines() {
		p.fixed += int64(l.Price())
	}
	p.scratch = p.base
	p.view = rule.NewView(&p.scratch, p.ask.Needs)
	p.prepare(rules)
	return p, nil
}

// prepare turns the rules into filters, factors and totals.
func (p *Problem) prepare(rules []*rule.Rule) {
	queries, kept := p.queries(rules)
	p.rules = kept
	var list []*factor
	for _, q := range queries {
		f := p.newFactor(q)
		list = append(list, f)
		if q.early != nil && q.early.Placed != nil {
			if wherever := p.anywhere(f); wherever != nil {
				list = append(list, wherever)
			}
		}
	}
	p.arrange(list)
	p.warms = [build.Seats]*warming{} // fewer options are live now
	p.purse = p.dearest()
	p.fit = make([]set, len(p.cols))
	for _, r := range kept {
		if left, limited := p.left(r); limited {
			p.purse, p.paid = min(p.purse, left), true
		}
		for _, t := range p.totals(r) {
			p.add(t)
		}
	}
}

// arrange sorts factors by how many columns they hang on: those that hang on one filter it, unless they are slow to ask.
func (p *Problem) arrange(list []*factor) {
	p.alone = make([][]*factor, len(p.cols))
	p.pairs = make([][]*factor, len(p.cols)*len(p.cols))
	p.many = nil
	p.matches = make([]*match, len(p.pairs))
	var wide []*factor
	dropped := 0    // how many factors have taken options out
	var since []int // by wide factor: how many had when it was settled
	filter := func(f *factor) {
		before := len(p.cut)
		p.filter(f)
		dropped += len(p.cut) - before
	}
	for _, f := range list {
		if len(p.settle(f).open) < 2 && f.cost == 0 {
			filter(f)
			continue
		}
		wide, since = append(wide, f), append(since, dropped)
	}
	for i, f := range wide {
		if since[i] < dropped {
			p.settle(f)
		}
		switch {
		case len(f.open) == 0 || len(f.open) == 1 && f.cost == 0:
			filter(f)
		case len(f.open) == 1:
			p.alone[f.open[0]] = append(p.alone[f.open[0]], f)
		default:
			p.many = append(p.many, f)
		}
	}
	slices.SortStableFunc(p.many, func(f, g *factor) int {
		return cmp.Or(cmp.Compare(f.cost, g.cost), cmp.Compare(len(f.open), len(g.open)))
	})
	for i, f := range p.many {
		f.id = i
		if len(f.open) == 2 {
			a, b := f.open[0], f.open[1]
			p.pairs[a*len(p.cols)+b] = append(p.pairs[a*len(p.cols)+b], f)
			p.pairs[b*len(p.cols)+a] = append(p.pairs[b*len(p.cols)+a], f)
		}
	}
}

// joining lists the rules that hang on two columns.
func (p *Problem) joining(a, b int) []*factor { return p.pairs[a*len(p.cols)+b] }

// filter asks a factor that hangs on at most one column: it takes out the options that the rule fails, and notes the worth
// of the others.
func (p *Problem) filter(f *factor) {
	if len(f.open) == 0 {
		w := f.ask(p, f.others)
		if w == failed {
			p.cut = append(p.cut, Cut{Rule: f.rule, Seats: f.seats})
			return
		}
		p.settled += w
		return
	}
	at := f.open[0]
	c := p.cols[at]
	before := c.live.count()
	if k := f.look(p).by[f.at[at]]; f.early == nil && k.count <= few {
		for _, alike := range k.each() {
			if o := c.live.first(alike); o >= 0 {
				c.judge(alike, f.one(p, at, o))
			}
		}
	} else {
		for o := c.live.next(0); o >= 0; o = c.live.next(o + 1) {
			switch w := f.one(p, at, o); {
			case w == failed:
				c.live.drop(o)
			case w > 0:
				c.value(o, w)
			}
		}
	}
	if dropped := before - c.live.count(); dropped > 0 {
		p.cut = append(p.cut, Cut{Rule: f.rule, Seats: build.SetOf(c.seat), Options: dropped, Empties: c.live.next(0) < 0})
	}
}

// judge takes out the live ones of some options that a rule fails, or adds what they are worth.
func (c *column) judge(alike set, worth int64) {
	switch {
	case worth == failed:
		c.live.less(alike)
	case worth > 0:
		for o := c.live.next(0); o >= 0; o = c.live.next(o + 1) {
			if alike.has(o) {
				c.value(o, worth)
			}
		}
	}
}

// value adds to what an option is worth.
func (c *column) value(o int, worth int64) {
	if c.shared {
		c.worth, c.shared = slices.Clone(c.worth), false
	}
	c.worth[o] += worth
}

// emptied reports a column without options left, or a rule that fails on what is settled.
func (p *Problem) emptied() bool {
	for _, c := range p.cols {
		if c.live.next(0) < 0 {
			return true
		}
	}
	return slices.ContainsFunc(p.cut, func(c Cut) bool { return c.Options == 0 })
}
