package balance

import (
	"context"

	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/plan"
	"slipfit/core/rule"
	"slipfit/core/unit"
)

// SeatSteps is the next step up and down from a seat of a build. Both lead to whole builds that prove.
type SeatSteps struct {
	Seat build.Seat
	Part string   // title of what sits there
	Up   *Stride  // nil where nothing of the seat can be served further
	Down *Stride  // nil where nothing cheaper in the seat makes the build cheaper, whatever is given up
	Full []string // resources of the seat that are served to enough already, or that nothing in the stock serves further

	// Unfinished tells that ctx ended before it was known whether there is a step that is not told.
	Unfinished bool
}

// Stride is a step to another whole build.
type Stride struct {
	Resource brief.Resource // of a step up: what is served further
	Build    *build.Build
	Costs    unit.Money   // price of the build less that of the one stepped from
	Proven   bool         // whether no build does the same for less
	Changed  []build.Seat // seats that hold something else
	Gives    []Row        // of a step down: needs that are then short
	Changes  []Change     // outcomes that change
}

// Steps tells for each filled seat of a build the cheapest way to serve its resources further, and the next cheaper filling with
// which a build stands; where none does, the next cheaper one and what it gives up. Everything else is served at least as far,
// other seats may change. Seats with parts the customer owns are left alone. The budget is not asked. Told, which may be nil, hears
// which share of the seats has been looked at.
func Steps(ctx context.Context, b *build.Build, n *brief.Needs, x *plan.Index, told func(plan.Course)) ([]SeatSteps, error) {
	ask := plan.Ask{Needs: n, Keep: owned(b)}
	var list []SeatSteps
	for s := range build.Seat(build.Seats) {
		if !b.Filled(s) || b.Owned.Has(s) || s == build.Services {
			continue
		}
		if told != nil {
			told(plan.Course{Done: float64(s) / float64(build.Services)})
		}
		step := SeatSteps{Seat: s, Part: title(b, s)}
		var own []brief.Resource
		have := plan.Serving(b, n)
		for r := range brief.Resource(brief.Resources) {
			if have[r] < 0 || seatOf(r, b) != s {
				continue
			}
			own = append(own, r)
			a, err := x.Further(ctx, ask, b, r, s)
			switch {
			case err != nil:
				return nil, err
			case a.Status == plan.Unknown:
				step.Unfinished = true
			case a.Build == nil:
				step.Full = append(step.Full, r.Title())
			case step.Up == nil || a.Price-b.Price() < step.Up.Costs:
				step.Up = stride(b, &a, n, x.Stock())
				step.Up.Resource = r
			}
		}
		for _, giving := range [...]bool{false, true} {
			if step.Down != nil || giving && len(own) == 0 {
				continue
			}
			a, err := x.Cheaper(ctx, ask, b, s, own, giving)
			if err != nil {
				return nil, err
			}
			step.Unfinished = step.Unfinished || a.Status == plan.Unknown
			if a.Build != nil {
				step.Down = stride(b, &a, n, x.Stock())
				step.Down.Gives = short(a.Build, n)
			}
		}
		list = append(list, step)
	}
	return list, nil
}

func stride(b *build.Build, a *plan.Answer, n *brief.Needs, stock *part.Stock) *Stride {
	return &Stride{Build: a.Build, Costs: a.Price - b.Price(), Proven: a.Status == plan.Optimal,
		Changed: changed(b, a.Build), Changes: changes(b, a.Build, n, stock)}
}

// changed lists the seats in which two builds differ.
func changed(a, b *build.Build) []build.Seat {
	var list []build.Seat
	for s := range build.Seat(build.Seats) {
		if lines(a, s) != lines(b, s) {
			list = append(list, s)
		}
	}
	return list
}

// lines tells what sits in a seat and how often.
func lines(b *build.Build, s build.Seat) string {
	text := ""
	for _, l := range b.Lines() {
		if l.Seat == s {
			text += l.Article.ID + " × " + unit.Count(l.Count).String() + "; "
		}
	}
	return text
}

// short lists the needs of a build that are not served to their floors.
func short(b *build.Build, n *brief.Needs) []Row {
	var list []Row
	for _, r := range rows(b, n) {
		if r.Verdict == rule.Short {
			list = append(list, r)
		}
	}
	return list
}
