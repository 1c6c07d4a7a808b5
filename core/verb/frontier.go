package verb

import (
	"context"

	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/format"
	"slipfit/core/unit"
)

// Frontier is what every price buys: the builds for which nothing cheaper serves as much, from the cheapest that serves every
// floor to the one that serves most within the budget.
type Frontier struct {
	format.Head
	Title       string          `json:"title"`
	Status      string          `json:"status"` // optimal: no build lies above it; feasible: one may, by as much as the gap says
	Currency    string          `json:"currency"`
	Budget      *unit.Quantity  `json:"budget,omitempty"` // before tax; left out where none was named
	Full        int64           `json:"full"`             // value points of everything asked for served to enough
	Certificate Certificate     `json:"certificate"`
	Points      []FrontierPoint `json:"points"` // the cheapest first
	Cuts        []Cut           `json:"cuts,omitempty"`
}

// FrontierPoint is a price at which more is served than at any lower one.
type FrontierPoint struct {
	Price unit.Quantity `json:"price"` // before tax
	Worth int64         `json:"worth"`
	Parts []Line        `json:"parts"` // those that the point before does not have; of the first all
	Build build.File    `json:"build"`
}

// Frontier finds the whole frontier of price and value for a brief.
func (w *Bench) Frontier(ctx context.Context, file Document, keep []string, progress Progress) (*Frontier, error) {
	said, asked, err := w.asked(file, keep)
	if err != nil {
		return nil, err
	}
	progress.tell(0, "laying out the stock")
	problem, err := w.pose(asked)
	if err != nil {
		return nil, err
	}
	const note = "looking at what every price buys"
	progress.tell(0, note)
	problem.Told = progress.counting(note, "%d prices found")
	f := problem.Frontier(ctx)
	out := &Frontier{
		Head: head("slipfit-frontier"), Title: said.Title, Status: f.Status.String(), Currency: w.Stock.Shop.Currency,
		Full: full(asked.Needs), Certificate: certificateOf(&f.Certificate), Points: []FrontierPoint{},
	}
	if asked.Needs.Budget > 0 {
		q := asked.Needs.Budget.Q()
		out.Budget = &q
	}
	var before *build.Build
	for i := range f.Points {
		p := &f.Points[i]
		p.Build.Title = said.Title
		out.Points = append(out.Points, FrontierPoint{p.Price.Q(), p.Worth, linesBeside(p.Build, before), p.Build.File()})
		before = p.Build
	}
	for _, c := range f.Cuts {
		out.Cuts = append(out.Cuts, cutOf(c))
	}
	return out, nil
}

// full is the value of everything asked for served to enough.
func full(n *brief.Needs) int64 {
	sum := int64(0)
	for i := range n.By {
		sum += int64(n.By[i].Weight) * 1000
	}
	return sum
}

// linesBeside lists the articles of a build that another, which may be nil, does not hold in the same seat as often.
func linesBeside(b, other *build.Build) []Line {
	had := map[build.Line]bool{}
	if other != nil {
		for _, l := range other.Lines() {
			had[l] = true
		}
	}
	list := []Line{}
	for _, l := range b.Lines() {
		if !had[l] {
			list = append(list, lineOf(l))
		}
	}
	return list
}
