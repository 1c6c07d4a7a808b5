package verb

import (
	"context"

	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/format"
	"slipfit/core/rule"
	"slipfit/core/sheet"
	"slipfit/core/unit"
)

// Proof is every margin of a build, tightest first, with its parts and price.
type Proof struct {
	format.Head
	Title    string         `json:"title,omitempty"`
	Stands   bool           `json:"stands"`
	Counts   map[string]int `json:"counts"`
	Currency string         `json:"currency"`
	Price    unit.Quantity  `json:"price"`
	Sum      Sum            `json:"sum"`
	Worth    int64          `json:"worth"`
	Layout   string         `json:"layout,omitempty"`
	Parts    []Line         `json:"parts"`
	Margins  []Margin       `json:"margins"`
	Idle     *Idle          `json:"idle,omitempty"`    // money that buys nothing the brief asks for; left out without a brief
	Assumed  []string       `json:"assumed,omitempty"` // what was not said and taken instead
	Build    build.File     `json:"build"`
	// Prediction is what the machine will do; only prove tells it.
	Prediction *Prediction `json:"prediction,omitempty"`
}

// Prove checks a build file under the needs of a brief, or only for going together where there is no brief. Money that buys nothing
// is looked for until ctx ends.
func (w *Bench) Prove(ctx context.Context, file Document, asked *Document) (*Proof, error) {
	b, n, budget, err := w.read(file, asked)
	if err != nil {
		return nil, err
	}
	out := w.proof(ctx, b, n, budget)
	out.Prediction = predictionOf(b, n)
	return out, nil
}

// Sum is what the customer pays for a build, tax included, against what they can spend.
type Sum struct {
	Net    unit.Quantity  `json:"net"`
	Rate   unit.Quantity  `json:"tax_rate"`
	Tax    unit.Quantity  `json:"tax"`
	Gross  unit.Quantity  `json:"gross"`
	Budget *unit.Quantity `json:"budget,omitempty"` // left out where none was named
	Left   *unit.Quantity `json:"left,omitempty"`   // budget less gross
}

func (w *Bench) sum(b *build.Build, budget unit.Money) Sum {
	total := sheet.TotalOf(b, &w.Stock.Shop)
	out := Sum{Net: total.Net.Q(), Rate: w.Stock.Shop.Tax.Q(), Tax: total.Tax.Q(), Gross: total.Gross.Q()}
	if budget > 0 {
		named, left := budget.Q(), (budget - total.Gross).Q()
		out.Budget, out.Left = &named, &left
	}
	return out
}

// read reads a build and, where there is one, the needs and the budget of a brief.
func (w *Bench) read(file Document, asked *Document) (*build.Build, *brief.Needs, unit.Money, error) {
	b, err := build.Read(file.Name, file.Data, w.Stock)
	if err != nil {
		return nil, nil, 0, err
	}
	if asked == nil {
		return b, nil, 0, nil
	}
	said, err := brief.Read(asked.Name, asked.Data)
	if err != nil {
		return nil, nil, 0, err
	}
	return b, said.Needs(w.Stock), said.Budget.Or(0), nil
}

func (w *Bench) proof(ctx context.Context, b *build.Build, n *brief.Needs, budget unit.Money) *Proof {
	p := rule.Prove(b, n)
	out := &Proof{
		Head: head("slipfit-proof"), Title: b.Title, Stands: p.Stands(), Worth: p.Worth,
		Currency: w.Stock.Shop.Currency, Price: b.Price().Q(), Sum: w.sum(b, budget), Counts: map[string]int{}, Build: b.File(),
	}
	if b.Layout != nil {
		out.Layout = b.Layout.Name
	}
	for _, l := range b.Lines() {
		out.Parts = append(out.Parts, lineOf(l))
	}
	if n != nil {
		out.Idle, out.Assumed = w.partsIdle(ctx, b, n), n.Assumed
	}
	for i := range p.Margins {
		m := marginOf(&p.Margins[i])
		out.Margins = append(out.Margins, m)
		out.Counts[m.Verdict]++
	}
	return out
}

func lineOf(l build.Line) Line {
	return Line{l.Seat.String(), l.Seat.Title(), l.Article.ID, l.Article.Title(), l.Count, l.Price().Q(), l.Owned}
}
