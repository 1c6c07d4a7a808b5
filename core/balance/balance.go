// Package balance says where a build is short of the work, where it is right and where money buys nothing: have against need
// for every activity, what limits each, what the next step up would buy, idle money part by part and in total, and the equals
// of a part from other makers. It asks the rules, the outcome models and the planner; it has no rule or formula of its own.
package balance

import (
	"cmp"
	"context"
	"slices"
	"strings"

	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/outcome"
	"slipfit/core/part"
	"slipfit/core/rule"
	"slipfit/core/unit"
)

// Sheet is the balance of a build under a brief.
type Sheet struct {
	Activities []Activity
	Figures    []outcome.Figure // every outcome, of every activity
}

// Activity is one activity's balance when it is done, with what goes on at once beside it.
type Activity struct {
	Name    string
	Rows    []Row
	Figures []outcome.Figure // its outcomes
	Tight   *Row             // what limits it: served the smallest part of the way to enough; nil where everything is enough
	Step    *Step            // what the next step up of that would buy; nil where nothing in the stock goes further

	// Unfinished tells that ctx ended before the next step up was known: another may cost less, or, where none is told, there may
	// be one.
	Unfinished bool
}

// Row is have against need for one resource.
type Row struct {
	Resource brief.Resource
	Seat     build.Seat // seat whose part gives it
	Have     unit.Quantity
	Need     unit.Quantity
	Enough   unit.Quantity
	Ratio    int64 // have ÷ need, thousandths; at most a million
	Verdict  rule.Verdict
	Why      string
}

// Step is the cheapest part that goes further in a resource and leaves the build standing.
type Step struct {
	Seat    build.Seat
	From    string // title of what sits there, empty where nothing does
	To      build.Option
	Also    *build.Option // a supply or cooler that has to change with it; nil where the part alone will do
	Have    unit.Quantity // of the resource with it
	Costs   unit.Money    // price of the build with it less the price without
	Changes []Change      // outcomes that change with it
}

// Change is one outcome before and after.
type Change struct{ Before, After outcome.Figure }

// Of balances a build under a brief. The next steps up are looked for until ctx ends.
func Of(ctx context.Context, b *build.Build, said *brief.Brief, stock *part.Stock) Sheet {
	needs := said.Needs(stock)
	s := Sheet{Figures: outcome.Figures(b, needs, &stock.Calibration)}
	for i, alone := range said.Alone(stock) {
		a := Activity{Name: alone.Activity, Rows: rows(b, alone.Needs)}
		for _, f := range s.Figures {
			if f.Activity == alone.Activity && first(said, i) {
				a.Figures = append(a.Figures, f)
			}
		}
		if m, ok := rule.Tightest(b, alone.Needs); ok {
			if row, is := rowOf(&m, b, alone.Needs); is {
				a.Tight = &row
				a.Step, a.Unfinished = next(ctx, b, needs, stock, row)
			}
		}
		s.Activities = append(s.Activities, a)
	}
	return s
}

// first reports that no activity before the i-th has its name, so that outcomes are told once.
func first(said *brief.Brief, i int) bool {
	return !slices.ContainsFunc(said.Activities[:i], func(a brief.Activity) bool { return a.Name() == said.Activities[i].Name() })
}

// rows is have against need for every resource that needs ask, tightest first.
func rows(b *build.Build, n *brief.Needs) []Row {
	var list []Row
	p := rule.Prove(b, n)
	for i := range p.Margins {
		if row, ok := rowOf(&p.Margins[i], b, n); ok {
			list = append(list, row)
		}
	}
	slices.SortStableFunc(list, func(a, b Row) int { return cmp.Compare(a.Ratio, b.Ratio) })
	return list
}

// rowOf is a margin of serving as a row, with why the need is what it is where the rule tells of what it has alone; ok is false for
// any other margin.
func rowOf(m *rule.Margin, b *build.Build, n *brief.Needs) (row Row, ok bool) {
	for r := range brief.Resource(brief.Resources) {
		if m.Capped && r.Title() == m.Subject {
			const top = 1_000_000
			ratio := int64(top)
			if m.Need.N > 0 && m.Have.N < top*m.Need.N/1000 {
				ratio = m.Have.N * 1000 / m.Need.N
			}
			why := m.Why()
			if reason := n.By[r].Reason; !strings.Contains(why, reason) {
				why += "; " + reason
			}
			return Row{r, seatOf(r, b), m.Have, m.Need, m.Enough, ratio, m.Verdict, why}, true
		}
	}
	return Row{}, false
}

// seatOf is the seat whose part gives a resource on a build.
func seatOf(r brief.Resource, b *build.Build) build.Seat {
	on := func(s build.Seat) build.Seat {
		if b.Filled(s) {
			return s
		}
		return build.Boot
	}
	switch r {
	case brief.SingleWork, brief.AllWork, brief.Threads:
		return build.Processor
	case brief.MemorySize, brief.MemoryRate, brief.Channels:
		return build.Memory
	case brief.DrawWork, brief.ComputeWork, brief.GraphicsMemory, brief.GraphicsRate:
		return build.Graphics
	case brief.CacheSize, brief.CacheWrite:
		return on(build.Cache)
	case brief.ArchiveSize, brief.ArchiveWrite:
		return on(build.Archive)
	case brief.BootSize, brief.BootRead, brief.Endurance:
		return build.Boot
	}
	return build.Board // network and ports
}

// companions is the seats whose parts may change with a stronger one, and near how many of the parts next in price are tried
// with them.
var companions = [...]build.Seat{build.Supply, build.Cooler}

const nearest = 8

// next is the cheapest way to go further in a row's resource by another part in its seat, alone or, where none goes in alone,
// with another supply or cooler: the build stands as well as before, whatever the budget says, and no need is served less. Where
// ctx ends before that is known it is the cheapest found.
func next(ctx context.Context, b *build.Build, n *brief.Needs, stock *part.Stock, row Row) (best *Step, unfinished bool) {
	free := *n
	free.Budget = 0
	now := rule.Prove(b, &free)
	before := verdictsOf(&now)
	have := func(b *build.Build) int64 { return outcome.Of(b, &free).By[row.Resource] }
	at := have(b)
	goes := func(other *build.Build) bool {
		p := rule.Prove(other, &free)
		return before.keep(&p) && p.Worth >= now.Worth
	}
	step := func(other *build.Build, o build.Option, also *build.Option) *Step {
		return &Step{Seat: row.Seat, From: title(b, row.Seat), To: o, Also: also, Have: unit.Quantity{N: have(other), Kind: row.Resource.Kind()},
			Costs: other.Price() - b.Price(), Changes: changes(b, other, n, stock)}
	}
	var further []build.Option
	for _, o := range cheapestFirst(options(stock, b, row.Seat)) {
		if ctx.Err() != nil {
			return nil, true
		}
		other := with(b, o)
		if o.Part == nil || have(other) <= at {
			continue
		}
		if goes(other) {
			return step(other, o, nil), false
		}
		further = append(further, o)
	}
	for _, o := range further[:min(nearest, len(further))] {
		for _, s := range companions {
			for _, also := range cheapestFirst(options(stock, b, s)) {
				other := with(with(b, o), also)
				if best != nil && other.Price()-b.Price() >= best.Costs {
					break
				}
				if ctx.Err() != nil {
					return best, true
				}
				if goes(other) {
					best = step(other, o, &also)
					break
				}
			}
		}
	}
	return best, false
}

// cheapestFirst orders options by price, and those of a price as they were.
func cheapestFirst(list []build.Option) []build.Option {
	slices.SortStableFunc(list, func(x, y build.Option) int { return cmp.Compare(x.Price(), y.Price()) })
	return list
}

// changes lists the outcomes that differ by more than a hundredth between two builds.
func changes(before, after *build.Build, n *brief.Needs, stock *part.Stock) []Change {
	var list []Change
	was, is := outcome.Figures(before, n, &stock.Calibration), outcome.Figures(after, n, &stock.Calibration)
	for i := range min(len(was), len(is)) {
		if was[i].What == is[i].What && apart(was[i].Expected, is[i].Expected) > 10 {
			list = append(list, Change{was[i], is[i]})
		}
	}
	return list
}

// apart is how far two figures are from each other, in thousandths of the first.
func apart(a, b int64) int64 {
	if a == b {
		return 0
	}
	return max(a-b, b-a) * 1000 / max(a, 1)
}

// title is what sits in a seat, empty where nothing does.
func title(b *build.Build, s build.Seat) string {
	for _, l := range b.Lines() {
		if l.Seat == s {
			return l.Article.Title()
		}
	}
	return ""
}
