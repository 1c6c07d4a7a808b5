package plan

import (
	"slices"

	"slipfit/core/build"
	"slipfit/core/predict"
	"slipfit/core/rule"
)

// query is a rule asked of some columns: of all it reads, or, early, of a few with every other seat empty. An early one of all
// it reads is asked for the sake of what it remembers.
type query struct {
	rule  *rule.Rule
	cols  []int // in column order
	seats build.Set
	early *rule.Early
	nth   int          // which of the rule's early ones it is
	base  *build.Build // for an early query: what is settled in its seats
	value bool         // whether it may find some

	besides predict.Besides   // what other seats bring at least, where it is early, and at most
	fed     *predict.Supplies // for an early query that leaves the supply open: those it may be; of one that always does all there are, nil until it is asked

	asks int      // how often the rule was asked
	sums []*total // sums that suffice for the rule; nil until it is asked often, or where there are none
}

// often is how many times a rule is asked before the sums that suffice for it are laid out.
const often = 64

// sufficing lays out the sums that suffice for a rule asked of all it reads; none where there are none, or where it may find value.
func (p *Problem) sufficing(q *query) []*total {
	if q.early != nil || q.value {
		return nil
	}
	var list []*total
	switch {
	case q.rule.Purse != nil:
		list = append(list, p.newPrices(q.rule))
	case q.rule.Sum != nil:
		list = append(list, p.newTotal(q.rule, q.rule.Sum, theRule, q.cols))
	case q.rule.Suffices != nil:
		for i, sum := range q.rule.Suffices(p.ask.Needs) {
			list = append(list, p.newTotal(q.rule, &sum, sufficient-i, q.cols))
		}
	}
	return list
}

// balances reports a choice of which every figure is known that the sums read which suffice for a rule, and none of them is negative.
func (q *query) balances(options []int) bool {
	for _, t := range q.sums {
		left, known := t.base, t.base < lavish/2
		for i, c := range q.cols {
			net := t.net[c][options[i]]
			left, known = left+net, known && net < lavish
		}
		if left < 0 || !known {
			return false
		}
	}
	return true
}

// failed is the worth of a query that does not let the build stand.
const failed = -1

// whole asks a rule of all it reads.
func (p *Problem) whole(r *rule.Rule) *query {
	t, known := traits[r.ID]
	seats := build.SetOf(r.Reads...)
	return &query{rule: r, cols: p.columnsOf(seats), seats: seats, value: t.serves || !known}
}

// soon asks a rule of a few seats, all others empty; with some supplies, of any of these.
func (p *Problem) soon(r *rule.Rule, nth int, fed *predict.Supplies) *query {
	e := &r.Early[nth]
	q := &query{rule: r, seats: build.SetOf(e.Seats...), early: e, nth: nth, fed: fed}
	if fed != nil {
		q.seats &^= build.SetOf(build.Supply)
	}
	q.cols = p.columnsOf(q.seats)
	if q.whichever() && p.colOf[build.Supply] < 0 {
		q.seats |= build.SetOf(build.Supply)
	}
	base := p.base
	for s := range build.Seat(build.Seats) {
		if !q.seats.Has(s) {
			base.Clear(s)
		}
	}
	q.base = &base
	return q
}

// whichever reports an early query that asks of whichever supply there may be.
func (q *query) whichever() bool {
	return q.early != nil && q.early.AnySupply && !slices.Contains(q.early.Seats, build.Supply)
}

// columnsOf lists the columns of seats, in column order.
func (p *Problem) columnsOf(seats build.Set) []int {
	list := make([]int, 0, len(p.cols))
	for c, col := range p.cols {
		if seats.Has(col.seat) {
			list = append(list, c)
		}
	}
	return list
}

// run asks a query with options decided in its columns: the value points it finds, or failed.
func (p *Problem) run(q *query, options []int) int64 {
	if q.asks++; q.asks == often {
		q.sums = p.sufficing(q)
	}
	p.hold(q, options)
	if q.early != nil {
		if p.view.FailsEarly(q.rule, *q.early, q.besides) {
			return failed
		}
		return 0
	}
	if p.view.Holds(q.rule, q.besides) {
		return 0
	}
	worth := int64(0)
	margins := p.view.Run(q.rule)
	for i := range margins {
		if m := &margins[i]; !m.Advice && !m.Passes() {
			return failed
		}
		worth += margins[i].Worth
	}
	return worth
}

// hold fills the build that a query is asked of.
func (p *Problem) hold(q *query, options []int) {
	p.index.checks++
	p.watch.poll(weight(q))
	b := &p.scratch
	if q.early != nil {
		p.lone = *q.base
		b = &p.lone
	}
	for i, o := range options {
		b.Set(p.cols[q.cols[i]].options[o])
	}
	p.view.Build = b
}

// queries lists what is asked: every rule that judges and is not lifted, the early ones first. A rule lifted that
// others lean on silences all early queries.
func (p *Problem) queries(rules []*rule.Rule) (list []*query, kept []*rule.Rule) {
	early := true
	for _, r := range rules {
		if slices.Contains(p.ask.Lift, r.ID) {
			early = early && r.Group != rule.Fit && r.Group != rule.Mate && r.Group != rule.Feed
			continue
		}
		if t, known := traits[r.ID]; !known || t.judges {
			kept = append(kept, r)
		}
	}
	for _, r := range kept {
		w := p.whole(r)
		for i := range r.Early {
			if r.Early[i].AnyFans && p.colOf[build.Fans] < 0 {
				continue // which they are is settled
			}
			if q := p.soon(r, i, nil); early && (len(q.cols) < len(w.cols) || q.early.Fails != nil) && (r.Early[i].Leans == nil || !slices.Contains(p.ask.Lift, r.Early[i].Leans.ID)) {
				list = append(list, q)
			}
		}
		list = append(list, w)
	}
	return list, kept
}
