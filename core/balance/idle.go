package balance

import (
	"cmp"
	"context"
	"slices"

	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/plan"
	"slipfit/core/rule"
	"slipfit/core/unit"
)

// Idle is the money of a build that buys nothing the brief asks for.
//
// In total it is the price of the build less the price of the cheapest build of the same stock that serves every floor of the
// same needs, with the parts the customer owns in both. Part by part it is, for each seat by itself, the price of its part
// less that of the cheapest other filling of that seat that keeps every verdict of this build. The two are different
// questions: swaps can exclude one another (a smaller board and a card that needs a long case), and several parts changed at
// once can save what no single swap does. So the parts' figures need not add up to the total; Together is what single swaps
// save when they are made one after another, the dearest first, and lies between the dearest swap and the total.
//
// The planner buys one kind of screen. Where a build has several, the cheapest is looked for among builds of one kind and among
// those with the screens it has.
//
// What is past a floor is not always wasted: a part that is told as idle may serve a need further on its way to enough.
// Worth and Changes say what that money buys.
type Idle struct {
	Price    unit.Money
	Least    unit.Money   // price of the cheapest build found that serves the same needs
	Bound    unit.Money   // no build that serves them costs less; Least where that is proven
	Total    unit.Money   // Price − Least; negative where this build is cheaper than any that serves
	Searched bool         // whether the planner was asked; otherwise only Together and Parts are told
	Found    bool         // whether the planner found a build; otherwise only Bound holds
	Proven   bool         // whether Least is proven
	Cheapest *build.Build // the cheapest build found
	Together unit.Money
	Parts    []Wasted // by seat, those that save anything, the most first

	// Unfinished tells that ctx ended before every part was looked at: more may be saved than Parts and Together say.
	Unfinished bool
}

// Wasted is what one part costs over the cheapest that would keep every verdict in its place.
type Wasted struct {
	Seat    build.Seat
	Part    string       // title of what sits there
	Price   unit.Money   // of everything in the seat
	Instead build.Option // the cheapest filling that keeps every verdict
	Saves   unit.Money
	Worth   int64    // value points that the dearer part serves more
	Changes []Change // outcomes that are better with the part (before) than with the one instead (after)
}

// Nothing reports money that buys neither value nor any outcome.
func (w *Wasted) Nothing() bool { return w.Worth <= 0 && len(w.Changes) == 0 }

// IdleOf tells the idle money of a build under needs. The planner looks for the cheapest build until ctx ends; told, which may be
// nil, hears how far it is.
func IdleOf(ctx context.Context, b *build.Build, n *brief.Needs, x *plan.Index, told func(plan.Course)) (*Idle, error) {
	i := Parts(ctx, b, n, x.Stock())
	least, bound, proven, err := leastOf(ctx, n, owned(b), x, told)
	if err != nil {
		return nil, err
	}
	if len(b.Screens) > 1 {
		other, otherBound, otherProven, err := leastWithScreens(ctx, b, n, x, told)
		if err != nil {
			return nil, err
		}
		if other != nil && (least == nil || other.Price() < least.Price()) {
			least = other
		}
		bound, proven = min(bound, otherBound), proven && otherProven
		free := *n
		free.Budget = 0
		if p := rule.Prove(b, &free); p.Stands() && (least == nil || b.Price() < least.Price()) {
			least, proven = b, false
		}
	}
	i.Searched, i.Bound = true, bound
	if least != nil {
		i.Found, i.Least, i.Cheapest, i.Proven = true, least.Price(), least, proven
		i.Total = i.Price - i.Least
	}
	return i, nil
}

// leastOf is the cheapest build that serves needs whatever the budget, nil where none was found; no build costs less than bound.
func leastOf(ctx context.Context, n *brief.Needs, keep []plan.Choice, x *plan.Index, told func(plan.Course)) (least *build.Build, bound unit.Money, proven bool, err error) {
	problem, err := x.Problem(plan.Ask{Needs: n, Keep: keep, Lift: []string{rule.Budget.ID}})
	if err != nil {
		return nil, 0, false, err
	}
	problem.Told = told
	a := problem.Least(ctx)
	return a.Build, a.Certificate.Final.Price, a.Status == plan.Optimal, nil
}

// leastWithScreens is the cheapest build around the screens that a build has. The planner buys one kind of screen, so that where
// several kinds stand it is asked for the machine that feeds them as if they were the customer's own: with any input, which no
// build around them undercuts, and where those do not feed them in truth through DisplayPort alone, which proves nothing.
func leastWithScreens(ctx context.Context, b *build.Build, n *brief.Needs, x *plan.Index, told func(plan.Course)) (least *build.Build, bound unit.Money, proven bool, err error) {
	screens := seatPrice(b, build.Screens)
	for _, input := range [...]string{"", "dp"} {
		theirs := *n
		theirs.Screens = slices.DeleteFunc(slices.Clone(n.Screens), func(s brief.Screen) bool { return !s.Owned })
		for _, s := range b.Screens {
			m := s.Monitor
			theirs.Screens = append(theirs.Screens, brief.Screen{Width: int(m.Width.Or(0)), Height: int(m.Height.Or(0)), Refresh: int(m.Refresh.Or(0)),
				Bits: int(m.Depth.Or(0)), Count: s.Count, Owned: true, Input: input})
		}
		found, under, optimal, err := leastOf(ctx, &theirs, owned(b), x, told)
		if err != nil {
			return nil, 0, false, err
		}
		if input == "" {
			bound, proven = under+screens, optimal
		}
		if found == nil {
			continue
		}
		found.Screens = slices.Clone(b.Screens)
		if p := rule.Prove(found, n); p.Stands() {
			return found, bound, proven && input == "", nil
		}
	}
	return nil, bound, false, nil
}

// Parts tells idle money part by part alone, without asking the planner, until ctx ends.
func Parts(ctx context.Context, b *build.Build, n *brief.Needs, stock *part.Stock) *Idle {
	i := &Idle{Price: b.Price(), Parts: swaps(ctx, b, n, stock)}
	i.Together = i.Price - swapped(ctx, b, n, stock, i.Parts).Price()
	i.Unfinished = ctx.Err() != nil
	return i
}

// owned settles the seats whose parts the customer has already.
func owned(b *build.Build) []plan.Choice {
	var keep []plan.Choice
	for _, l := range b.Lines() {
		if b.Owned.Has(l.Seat) && l.Seat.Single() {
			keep = append(keep, plan.Choice{Seat: l.Seat, Part: l.Article.ID, Count: l.Count, Owned: true})
		}
	}
	return keep
}

// swaps is the cheapest filling of each seat by itself that keeps every verdict of a build, those that save anything, the most
// first, as far as they are found before ctx ends. Parts the customer owns save nothing.
func swaps(ctx context.Context, b *build.Build, n *brief.Needs, stock *part.Stock) []Wasted {
	proof := rule.Prove(b, n)
	before := verdictsOf(&proof)
	var list []Wasted
	for s := range build.Seat(build.Seats) {
		if !b.Filled(s) || b.Owned.Has(s) {
			continue
		}
		if o, worth, ok := cheapest(ctx, b, n, stock, s, before); ok {
			other := with(b, o)
			list = append(list, Wasted{s, title(b, s), seatPrice(b, s), o, b.Price() - other.Price(), worth, bought(changes(b, other, n, stock))})
		}
	}
	slices.SortStableFunc(list, func(x, y Wasted) int { return cmp.Compare(y.Saves, x.Saves) })
	return list
}

// cheapest is the cheapest filling of a seat below its price that keeps every verdict; of several at that price the one that
// serves most. lost is the worth that goes with the dearer part. Where ctx ends, none may be found that is there.
func cheapest(ctx context.Context, b *build.Build, n *brief.Needs, stock *part.Stock, s build.Seat, before verdicts) (best build.Option, lost int64, ok bool) {
	rules, view := reading(s), rule.NewView(b, n)
	was, _ := before.swap(view, b, rules)
	now := seatPrice(b, s)
	cheaper := slices.DeleteFunc(options(stock, b, s), func(o build.Option) bool { return o.Price() >= now })
	for _, o := range cheapestFirst(cheaper) {
		if ok && o.Price() > best.Price() || ctx.Err() != nil {
			break
		}
		if worth, keeps := before.swap(view, with(b, o), rules); keeps && (!ok || was-worth < lost) {
			best, lost, ok = o, was-worth, true
		}
	}
	return best, lost, ok
}

// bought leaves of changes from a dearer part to a cheaper one those that the dearer is better in.
func bought(list []Change) []Change {
	return slices.DeleteFunc(list, func(c Change) bool {
		if c.Before.Unit.Time {
			return c.Before.Expected >= c.After.Expected
		}
		return c.Before.Expected <= c.After.Expected
	})
}

// swapped is a build after single swaps one after another, the one that saves most first, until none saves or ctx ends; list is
// those of the build as it is.
func swapped(ctx context.Context, b *build.Build, n *brief.Needs, stock *part.Stock, list []Wasted) *build.Build {
	for len(list) > 0 {
		b = with(b, list[0].Instead)
		list = swaps(ctx, b, n, stock)
	}
	return b
}

// seatPrice is what everything in a seat costs.
func seatPrice(b *build.Build, s build.Seat) unit.Money {
	var sum unit.Money
	for _, l := range b.Lines() {
		if l.Seat == s {
			sum += l.Price()
		}
	}
	return sum
}
