package verb

import (
	"context"
	"errors"

	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/format"
	"slipfit/core/plan"
	"slipfit/core/unit"
)

// Why says why nothing can be planned, and what to give up so that something can.
type Why struct {
	format.Head
	Title   string   `json:"title"`
	Stands  bool     `json:"stands"`               // a build stands: there is nothing to explain
	Asks    []string `json:"asks,omitempty"`       // demands that cannot all be met; with any one of them given up, the rest can
	Loose   bool     `json:"loose,omitempty"`      // ended before the fewest such demands were found: some of them may not be in the way, and all may where none is told
	Cuts    []Cut    `json:"cuts,omitempty"`       // what the rules take away under these demands alone, heaviest first
	Repairs []Repair `json:"repairs,omitempty"`    // fewest demands first, then by price
	Unknown bool     `json:"unfinished,omitempty"` // ended before all repairs were found, or, where no demand is told, before any was
}

// Repair is a smallest set of demands whose giving up lets a build stand.
type Repair struct {
	Drops  []Drop        `json:"drops"`
	Price  unit.Quantity `json:"price"`  // of the cheapest build found that meets all other demands, before tax
	Proven bool          `json:"proven"` // no such build costs less
	Above  unit.Quantity `json:"above"`  // how far that lies above the budget asked
	Build  *build.File   `json:"build"`
}

// Drop is a demand that a repair gives up.
type Drop struct {
	Asks string `json:"asks"`
	Path string `json:"path,omitempty"` // of the answer in the brief that asks it; left out where it follows from the work
	Seat string `json:"seat,omitempty"` // whose choice is given up
}

func dropOf(d *plan.Demand) Drop {
	out := Drop{Asks: d.Text, Path: d.Path}
	for s := range build.Seat(build.Seats) {
		if d.Kept.Has(s) {
			out.Seat = s.String()
		}
	}
	return out
}

// together is how many demands a repair gives up at most.
const together = 2

// Why explains a brief that nothing can be planned for. Demands a repair gives up are at most two.
func (w *Bench) Why(ctx context.Context, file Document, keep []string, progress Progress) (*Why, error) {
	said, ask, err := w.asked(file, keep)
	if err != nil {
		return nil, err
	}
	out := &Why{Head: head("slipfit-why"), Title: said.Title}
	note := "finding what cannot go together"
	progress.tell(0, note)
	conflict, err := w.known().WhyNot(ctx, ask, progress.counting(note, "down to %d"))
	switch {
	case errors.Is(err, plan.ErrStands):
		out.Stands = true
		return out, nil
	case err != nil && ctx.Err() != nil:
		out.Unknown = true
		return out, nil
	case err != nil:
		return nil, err
	}
	if out.Loose = conflict.Unfinished; !out.Loose || len(conflict.Demands) < len(plan.Demands(w.Stock, ask)) {
		for i := range conflict.Demands {
			out.Asks = append(out.Asks, conflict.Demands[i].Text)
		}
	}
	for _, c := range conflict.Cuts {
		out.Cuts = append(out.Cuts, cutOf(c))
	}
	if len(conflict.Demands) == 0 {
		return out, nil // nothing that is asked stands in the way
	}
	note = "finding what to give up"
	progress.tell(0, note)
	repairs, complete, err := w.known().Repairs(ctx, ask, together, progress.counting(note, "%d found"))
	if err != nil {
		return nil, err
	}
	out.Unknown = !complete
	for i := range repairs {
		r := &repairs[i]
		r.Answer.Build.Title = said.Title
		f := r.Answer.Build.File()
		one := Repair{Price: r.Answer.Price.Q(), Proven: r.Answer.Status == plan.Optimal, Above: r.Above.Q(), Build: &f}
		for j := range r.Drops {
			one.Drops = append(one.Drops, dropOf(&r.Drops[j]))
		}
		out.Repairs = append(out.Repairs, one)
	}
	return out, nil
}

// asked reads a brief and settled choices as the planner takes them.
func (w *Bench) asked(file Document, keep []string) (*brief.Brief, plan.Ask, error) {
	said, err := brief.Read(file.Name, file.Data)
	if err != nil {
		return nil, plan.Ask{}, err
	}
	choices, err := settled(said.Owned, keep)
	if err != nil {
		return nil, plan.Ask{}, err
	}
	return said, plan.Ask{Needs: said.Needs(w.Stock), Keep: choices}, nil
}
