package plan

import (
	"cmp"
	"slices"

	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/rule"
)

// Problem is a stock under an ask, made ready to answer questions. It changes nothing after New but its own memory of
// checks made, so one Problem serves one goroutine.
type Problem struct {
	stock *part.Stock
	ask   Ask

	base      build.Build // what is settled to the last detail
	fixed     int64       // price of what is settled, minor units
	settled   int64       // value points of the rules that read nothing else
	cols      []*column
	colOf     [build.Seats]int // column of a seat, −1 where it is settled
	tables    tables           // allowed pairs
	many      []*factor        // rules that read three columns or more, and pairs that are worth something
	sums      []*total         // rules declared as sums over two columns or more
	purse     int64            // the most the open seats may cost
	cut       []Cut            // what the rules took away before any search
	checks    int64
	appraised bool // whether the factors know their largest worth

	priced  *bound      // on price alone, made when first asked for
	scratch build.Build // with the columns a rule is asked of filled
	lone    build.Build // the same for early queries
	view    *rule.View
}

// New makes a problem ready. It fails where the ask names parts that the stock does not have.
func New(stock *part.Stock, ask Ask) (*Problem, error) {
	return newProblem(stock, ask, rule.All)
}

func newProblem(stock *part.Stock, ask Ask, rules []*rule.Rule) (*Problem, error) {
	if ask.Needs == nil {
		ask.Needs = &brief.Needs{}
	}
	if err := ask.check(stock); err != nil {
		return nil, err
	}
	p := &Problem{stock: stock, ask: ask}
	p.cols = columns(stock, &p.ask, &p.base)
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

// prepare turns the rules into filters, tables, factors and totals.
func (p *Problem) prepare(rules []*rule.Rule) {
	queries, kept := p.queries(rules)
	slices.SortStableFunc(queries, func(a, b *query) int { return cmp.Compare(slowAsked(a), slowAsked(b)) })
	p.tables = newTables(p.cols)
	var two, more []*query
	for _, q := range queries {
		switch len(q.cols) {
		case 0:
			w := p.run(q, nil)
			if w == failed {
				p.cut = append(p.cut, Cut{Rule: q.rule, Seats: q.seats})
				continue
			}
			p.settled += w
		case 1:
			p.filter(q)
		case 2:
			two = append(two, q)
		default:
			more = append(more, q)
		}
	}
	for i, q := range two {
		if i > 0 && slowAsked(q) > slowAsked(two[i-1]) {
			p.close() // what the others leave is all that the slow ones are asked of
		}
		p.tabulate(q)
	}
	p.close()
	for _, q := range more {
		p.many = append(p.many, p.newFactor(q))
	}
	p.arrange()
	p.purse = p.dearest()
	for _, r := range kept {
		if cols := p.columnsOf(r.Reads); r.Sum != nil && len(cols) > 1 {
			p.add(p.newTotal(r, cols))
		}
	}
}

// arrange sorts the factors, those quick to ask first, and notes by which column each is settled.
func (p *Problem) arrange() {
	slices.SortStableFunc(p.many, func(f, g *factor) int {
		return cmp.Or(cmp.Compare(slow(f), slow(g)), cmp.Compare(len(f.cols), len(g.cols)))
	})
	for _, f := range p.many {
		for _, s := range sequence {
			if c := p.colOf[s]; c >= 0 && f.has(c) {
				f.lastly = c
			}
		}
	}
}

// slow is 1 for a factor that predicts heat or noise of a whole build.
func slow(f *factor) int {
	if f.early == nil {
		return slowAsked(f.query)
	}
	return 0
}

// slowAsked is 1 for a query of a rule that predicts heat or noise.
func slowAsked(q *query) int {
	if q.rule.Group == rule.Cool && (q.early == nil || q.early.Fails == nil) {
		return 1
	}
	return 0
}

// filter takes out the options that a rule fails on their own, and notes the worth of the others.
func (p *Problem) filter(q *query) {
	col := q.cols[0]
	c := p.cols[col]
	k := p.classify(q.rule, col)
	found := make([]int64, len(k.first))
	for _, o := range k.living(c) {
		found[k.of[o]] = p.run(q, []int{o})
	}
	dropped := 0
	for o := c.live.next(0); o >= 0; o = c.live.next(o + 1) {
		w := found[k.of[o]]
		if w == failed {
			c.live.drop(o)
			dropped++
			continue
		}
		c.worth[o] += w
	}
	p.scratch = p.base
	if dropped > 0 {
		p.cut = append(p.cut, Cut{Rule: q.rule, Seats: build.SetOf(c.seat), Options: dropped, Empties: c.live.next(0) < 0})
	}
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
