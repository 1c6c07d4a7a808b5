package plan

import (
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
	rules []*rule.Rule

	base      build.Build // what is settled to the last detail
	fixed     int64       // price of what is settled, minor units
	settled   int64       // value points of the rules that read nothing else
	cols      []*column
	colOf     [build.Seats]int // column of a seat, −1 where it is settled
	tables    tables           // allowed pairs
	many      []*factor        // rules that read three columns or more, and pairs that are worth something
	sums      []*total         // rules declared as sums over two columns or more
	cut       []Cut            // what the rules took away before any search
	checks    int64
	appraised bool // whether the factors know their largest worth

	scratch build.Build
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
	for _, r := range rules {
		t, known := traits[r.ID]
		if (!known || t.judges) && !slices.Contains(ask.Lift, r.ID) {
			p.rules = append(p.rules, r)
		}
	}
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
	p.prepare()
	return p, nil
}

// reads lists the columns a rule looks at, in column order.
func (p *Problem) reads(r *rule.Rule) []int {
	var list []int
	for _, s := range r.Reads {
		if i := p.colOf[s]; i >= 0 && !slices.Contains(list, i) {
			list = append(list, i)
		}
	}
	slices.Sort(list)
	return list
}

// put places an option of a column into the scratch build.
func (p *Problem) put(col, option int) {
	p.scratch.Set(p.cols[col].options[option])
}

// failed is the worth of a rule that does not let the build stand.
const failed = -1

// run checks a rule on the scratch build: the value points it finds, or failed.
func (p *Problem) run(r *rule.Rule) int64 {
	p.checks++
	worth := int64(0)
	margins := p.view.Run(r)
	for i := range margins {
		if m := &margins[i]; !m.Advice && !m.Passes() {
			return failed
		}
		worth += margins[i].Worth
	}
	return worth
}

// prepare turns the rules into filters, tables, factors and totals.
func (p *Problem) prepare() {
	var two, more []*rule.Rule
	for _, r := range p.rules {
		switch cols := p.reads(r); len(cols) {
		case 0:
			w := p.run(r)
			if w == failed {
				p.cut = append(p.cut, Cut{Rule: r, Seats: build.SetOf(r.Reads...)})
				continue
			}
			p.settled += w
		case 1:
			p.filter(r, cols[0])
		case 2:
			two = append(two, r)
		default:
			more = append(more, r)
		}
	}
	p.tables = newTables(p.cols)
	for _, r := range two {
		p.tabulate(r)
	}
	p.close()
	for _, r := range more {
		p.many = append(p.many, p.newFactor(r))
	}
	for _, r := range p.rules {
		if cols := p.reads(r); r.Sum != nil && len(cols) > 1 {
			p.sums = append(p.sums, p.newTotal(r, cols))
		}
	}
}

// filter takes out the options that a rule fails on their own, and notes the worth of the others.
func (p *Problem) filter(r *rule.Rule, col int) {
	c := p.cols[col]
	k := p.classify(r, col)
	found := make([]int64, len(k.first))
	for i, o := range k.first {
		p.put(col, o)
		found[i] = p.run(r)
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
		p.cut = append(p.cut, Cut{Rule: r, Seats: build.SetOf(c.seat), Options: dropped, Empties: c.live.next(0) < 0})
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
