package sheet

import (
	"fmt"

	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/rule"
	"slipfit/core/unit"
)

// Job is what a paper is made for.
type Job struct {
	Stock    *part.Stock
	Build    *build.Build
	Needs    *brief.Needs // nil where there is no brief
	For      string       // who the customer is; empty where not said
	Said     []string     // what the customer said, in their words
	Budget   unit.Money   // what they can spend in all, tax included; 0 where not said
	Number   string
	Revision string
	Date     string
}

// Quote is the priced offer: what the machine is for, its parts, labour, tax and total, what it was proven against, and
// the cautions that apply. It is not an order; the last block is for signing.
func Quote(j *Job) *Paper {
	p := j.paper("Quote")
	if len(j.Said) > 0 {
		p.Blocks = append(p.Blocks, Block{Heading: "What you told us", Notes: j.Said})
	}
	p.Blocks = append(p.Blocks, Block{Heading: "The machine", Table: j.parts()}, Block{Heading: "The sum", Table: j.money()})
	if waits := j.waits(); len(waits) > 0 {
		p.Blocks = append(p.Blocks, Block{Heading: "Delivery", Notes: waits})
	}
	proof := rule.Prove(j.Build, j.Needs)
	if served := served(&proof); served != nil {
		p.Blocks = append(p.Blocks, Block{Heading: "What it gives against what the work asks", Table: served})
	}
	p.Blocks = append(p.Blocks, j.work()...)
	p.Blocks = append(p.Blocks,
		Block{Heading: "Proven on paper", Text: proven(&proof), Notes: open(&proof)},
		Block{Heading: "Cautions", Notes: j.cautions()},
		Block{Heading: "Agreed", Sign: []string{"For the shop", "Customer", "Date"}})
	return p
}

func (j *Job) paper(title string) *Paper {
	return &Paper{Title: title, Job: j.Build.Title, For: j.For, Number: j.Number, Revision: j.Revision, Date: j.Date, Shop: j.Stock.Shop.Name}
}

// Total is what the customer pays: the parts, less those owned, with tax.
type Total struct{ Net, Tax, Gross unit.Money }

// TotalOf adds a build up. Tax is rounded half up to the minor unit, once, on the net sum.
func TotalOf(b *build.Build, shop *part.Shop) Total {
	net := b.Price()
	const whole = 100_000 // a Share of 100 per cent
	tax := (net*unit.Money(shop.Tax)*2 + whole) / (2 * whole)
	return Total{net, tax, net + tax}
}

func (j *Job) parts() *Table {
	t := &Table{Columns: []Column{{"For", false}, {"Part", false}, {"Number", true}, {j.Stock.Shop.Currency, true}}}
	for _, l := range j.Build.Lines() {
		price := l.Price().String()
		if l.Owned {
			price = "yours already"
		}
		t.Rows = append(t.Rows, Row{Cells: []string{l.Seat.Title(), l.Article.Title(), fmt.Sprint(l.Count), price}})
	}
	return t
}

func (j *Job) money() *Table {
	sum := TotalOf(j.Build, &j.Stock.Shop)
	t := &Table{Columns: []Column{{"", false}, {j.Stock.Shop.Currency, true}}}
	t.Rows = append(t.Rows,
		Row{Cells: []string{"Parts and labour before tax", sum.Net.String()}},
		Row{Cells: []string{"Sales tax " + j.Stock.Shop.Tax.Q().String(), sum.Tax.String()}},
		Row{Cells: []string{"Total", sum.Gross.String()}, Strong: true})
	if j.Budget > 0 {
		left := j.Budget - sum.Gross
		t.Rows = append(t.Rows, Row{Cells: []string{"Your budget", j.Budget.String()}}, Row{Cells: []string{"Left of it", left.String()}})
	}
	return t
}

// waits names what is not on the shelf.
func (j *Job) waits() []string {
	var notes []string
	for _, l := range j.Build.Lines() {
		if l.Owned || int(l.Article.Stock) >= l.Count {
			continue
		}
		when := "delivery time not known"
		if days, ok := l.Article.Lead.Get(); ok {
			when = fmt.Sprintf("%d working days", days)
		}
		notes = append(notes, fmt.Sprintf("%s: %d wanted, %d on the shelf; %s", l.Article.Title(), l.Count, l.Article.Stock, when))
	}
	return notes
}

// served is the margins of the brief's needs; nil where nothing was asked.
func served(p *rule.Proof) *Table {
	t := &Table{Columns: []Column{{"Resource", false}, {"It has", true}, {"The work asks", true}, {"More buys nothing past", true}}}
	for i := range p.Margins {
		m := &p.Margins[i]
		if m.Rule.Group != rule.Serve || !m.Capped {
			continue
		}
		t.Rows = append(t.Rows, Row{Cells: []string{m.Subject, m.Have.String(), m.Need.String(), m.Enough.String()}})
	}
	if len(t.Rows) == 0 {
		return nil
	}
	return t
}

func proven(p *rule.Proof) string {
	stand, fail := 0, 0
	for i := range p.Margins {
		if p.Margins[i].Passes() || p.Margins[i].Advice {
			stand++
		} else {
			fail++
		}
	}
	if fail == 0 {
		return fmt.Sprintf("%d margins were checked from the makers' data sheets: fit, connections, power and what the work asks. All of them hold.", stand)
	}
	return fmt.Sprintf("%d margins were checked and %d of them do not hold. This machine must not be built as it stands:", stand+fail, fail)
}

// open is one line for every margin that does not hold and every advice that applies.
func open(p *rule.Proof) []string {
	var notes []string
	for i := range p.Margins {
		m := &p.Margins[i]
		switch {
		case m.Rule == &rule.Cautions: // they stand under a heading of their own
		case m.Advice && m.Diff().N < 0:
			notes = append(notes, "Advice: "+m.Why())
		case !m.Advice && !m.Passes():
			notes = append(notes, m.Verdict.String()+": "+m.Rule.Title+": "+m.Why())
		}
	}
	return notes
}

// cautions are the usual ones of the trade that apply to the build. Local codes and licensed practice come first.
func (j *Job) cautions() []string {
	var notes []string
	v := rule.NewView(j.Build, j.Needs)
	for _, m := range v.Run(&rule.Cautions) {
		notes = append(notes, m.Subject+": "+m.Why())
	}
	return notes
}
