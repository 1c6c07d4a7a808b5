package verb

import (
	"context"
	"fmt"

	"slipfit/core/balance"
	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/format"
	"slipfit/core/unit"
)

// Balance is where a build is short of the work, right, or past it.
type Balance struct {
	format.Head
	Title      string            `json:"title,omitempty"`
	Activities []BalanceActivity `json:"activities"`
	Idle       *Idle             `json:"idle"`
	Assumed    []string          `json:"assumed,omitempty"`
}

// BalanceActivity is one activity's balance.
type BalanceActivity struct {
	Name    string       `json:"activity"`
	Figures []Figure     `json:"outcome"`
	Rows    []BalanceRow `json:"rows"`
	Tight   *BalanceRow  `json:"limited_by,omitempty"` // left out where everything is enough
	Step    *Step        `json:"step,omitempty"`       // what the next step up of that would buy

	Unfinished bool `json:"unfinished,omitempty"` // ended before the next step up was known: there may be one, or one that costs less
}

// BalanceRow is have against need for one resource.
type BalanceRow struct {
	Resource string        `json:"resource"`
	Title    string        `json:"title"`
	Seat     string        `json:"seat"`
	Have     unit.Quantity `json:"have"`
	Need     unit.Quantity `json:"need"`
	Enough   unit.Quantity `json:"enough"`
	Ratio    float64       `json:"ratio"` // have ÷ need
	Verdict  string        `json:"verdict"`
	Why      string        `json:"why"`
}

// Step is the cheapest part that goes further in what limits an activity.
type Step struct {
	Seat    string        `json:"seat"`
	From    string        `json:"from,omitempty"`
	To      Instead       `json:"to"`
	Also    *Instead      `json:"also,omitempty"` // a supply or cooler that has to change with it
	Have    unit.Quantity `json:"have"`
	Costs   unit.Quantity `json:"costs"`
	Changes []Moved       `json:"changes"`
}

// Instead is another filling of a seat.
type Instead struct {
	ID     string        `json:"part"` // empty for the empty seat
	Name   string        `json:"name"`
	Count  int           `json:"count,omitempty"`
	Face   string        `json:"face,omitempty"`
	Layout string        `json:"layout,omitempty"`
	Plate  int           `json:"plate,omitempty"`
	Price  unit.Quantity `json:"price"`
}

// Moved is one outcome before and after.
type Moved struct {
	Activity string `json:"activity"`
	What     string `json:"what"`
	Before   Amount `json:"before"`
	After    Amount `json:"after"`
}

// Idle is the money of a build that buys nothing the brief asks for: in total against the cheapest build that serves the same
// needs, and part by part against the cheapest that would keep every verdict in its place. The parts need not add up to the
// total; package balance says why.
type Idle struct {
	Price    unit.Quantity  `json:"price"`
	Searched bool           `json:"searched"`        // whether the planner was asked; otherwise only parts and together are told
	Proven   bool           `json:"proven"`          // whether least is the least there is
	Least    *unit.Quantity `json:"least,omitempty"` // price of the cheapest build found
	Bound    *unit.Quantity `json:"bound,omitempty"` // no build that serves costs less
	Total    *unit.Quantity `json:"total,omitempty"` // price − least
	AtMost   *unit.Quantity `json:"at_most,omitempty"`
	Together unit.Quantity  `json:"together"` // what single swaps save, made one after another
	Parts    []Wasted       `json:"parts"`
	Cheapest *build.File    `json:"cheapest,omitempty"`

	Unfinished bool `json:"unfinished,omitempty"` // ended before every part was looked at: more may be saved than parts and together say
}

// Wasted is what one part costs over the cheapest that would keep every verdict in its place.
type Wasted struct {
	Seat    string        `json:"seat"`
	Title   string        `json:"seat_title"`
	Part    string        `json:"name"`
	Price   unit.Quantity `json:"price"`
	Instead Instead       `json:"instead"`
	Saves   unit.Quantity `json:"saves"`
	Worth   int64         `json:"worth"`   // value points that the dearer part serves more
	Nothing bool          `json:"nothing"` // the money buys neither value nor any outcome
	Buys    []Moved       `json:"buys,omitempty"`
}

// Balance tells where a build is short of a brief, right, or past it. The planner looks for the cheapest build that serves
// until ctx ends.
func (w *Bench) Balance(ctx context.Context, file, asked Document, progress Progress) (*Balance, error) {
	said, err := brief.Read(asked.Name, asked.Data)
	if err != nil {
		return nil, err
	}
	b, err := build.Read(file.Name, file.Data, w.Stock)
	if err != nil {
		return nil, err
	}
	n := said.Needs(w.Stock)
	out := &Balance{Head: head("slipfit-balance"), Title: b.Title, Assumed: n.Assumed}
	progress.tell(0, "weighing every activity")
	sheet := balance.Of(ctx, b, said, w.Stock)
	for i := range sheet.Activities {
		out.Activities = append(out.Activities, balanceOf(&sheet.Activities[i]))
	}
	progress.tell(0, "looking for the cheapest build that serves")
	idle, err := balance.IdleOf(ctx, b, n, w.known(), progress.seeking("least", n))
	if err != nil {
		return nil, err
	}
	out.Idle = idleOf(idle)
	return out, nil
}

func balanceOf(a *balance.Activity) BalanceActivity {
	out := BalanceActivity{Name: a.Name, Unfinished: a.Unfinished}
	for i := range a.Figures {
		out.Figures = append(out.Figures, figureOf(&a.Figures[i]))
	}
	for i := range a.Rows {
		out.Rows = append(out.Rows, rowOf(&a.Rows[i]))
	}
	if a.Tight != nil {
		row := rowOf(a.Tight)
		out.Tight = &row
	}
	if s := a.Step; s != nil {
		out.Step = &Step{s.Seat.String(), s.From, insteadOf(s.To), nil, s.Have, s.Costs.Q(), changesOf(s.Changes)}
		if s.Also != nil {
			also := insteadOf(*s.Also)
			out.Step.Also = &also
		}
	}
	return out
}

func rowOf(r *balance.Row) BalanceRow {
	return BalanceRow{r.Resource.String(), r.Resource.Title(), r.Seat.Title(), r.Have, r.Need, r.Enough, float64(r.Ratio) / 1000, r.Verdict.String(), r.Why}
}

func insteadOf(o build.Option) Instead {
	out := Instead{ID: o.ID(), Name: "nothing", Face: string(o.Face), Plate: o.Plate, Price: o.Price().Q()}
	if o.Part != nil {
		out.Name, out.Count = o.Part.Common().Title(), max(o.Count, 1)
	}
	if o.Layout != nil {
		out.Layout = o.Layout.ID
	}
	return out
}

func changesOf(list []balance.Change) []Moved {
	var out []Moved
	for i := range list {
		before, after := figureOf(&list[i].Before), figureOf(&list[i].After)
		out = append(out, Moved{before.Activity, before.What, before.Expected, after.Expected})
	}
	return out
}

// partsIdle is the idle money part by part alone, without asking the planner, as far as it is found before ctx ends.
func (w *Bench) partsIdle(ctx context.Context, b *build.Build, n *brief.Needs) *Idle {
	return idleOf(balance.Parts(ctx, b, n, w.Stock))
}

func idleOf(i *balance.Idle) *Idle {
	out := &Idle{Price: i.Price.Q(), Searched: i.Searched, Proven: i.Proven, Together: i.Together.Q(), Parts: []Wasted{}, Unfinished: i.Unfinished}
	money := func(m unit.Money) *unit.Quantity { q := m.Q(); return &q }
	if i.Searched {
		out.Bound, out.AtMost = money(i.Bound), money(i.Price-i.Bound)
	}
	if i.Found {
		out.Least, out.Total = money(i.Least), money(i.Total)
		f := i.Cheapest.File()
		out.Cheapest = &f
	}
	for _, p := range i.Parts {
		out.Parts = append(out.Parts, Wasted{p.Seat.String(), p.Seat.Title(), p.Part, p.Price.Q(), insteadOf(p.Instead), p.Saves.Q(), max(p.Worth, 0), p.Nothing(), reversed(changesOf(p.Changes))})
	}
	return out
}

// reversed tells changes from the cheaper part to the dearer one: what the money buys.
func reversed(list []Moved) []Moved {
	for i := range list {
		list[i].Before, list[i].After = list[i].After, list[i].Before
	}
	return list
}

// Equals is the parts of other makers that do the same in a build.
type Equals struct {
	format.Head
	Seat  string  `json:"seat"`
	Title string  `json:"seat_title"`
	Part  string  `json:"name"`  // what sits there now
	Parts []Equal `json:"parts"` // the nearest first

	Unfinished bool `json:"unfinished,omitempty"` // ended before every part was looked at: there may be more
}

// Equal is one of them.
type Equal struct {
	Instead
	Costs unit.Quantity `json:"costs"`           // price of the build with it less the price without
	Apart float64       `json:"apart_percent"`   // how far the outcome that moves most moves
	What  string        `json:"what,omitempty"`  // that outcome
	Liked bool          `json:"liked,omitempty"` // its maker is one the customer likes
}

// Equals lists the parts of other makers that keep every verdict of a build and every outcome within 3 %, as far as they are found
// before ctx ends.
func (w *Bench) Equals(ctx context.Context, file Document, asked *Document, seatName string, progress Progress) (*Equals, error) {
	seat, ok := build.Named(seatName)
	if !ok {
		return nil, fmt.Errorf("no seat %q", seatName)
	}
	b, n, _, err := w.read(file, asked)
	if err != nil {
		return nil, err
	}
	const note = "trying every other part of the seat"
	progress.tell(0, note)
	list, complete, err := balance.Equals(ctx, b, n, w.Stock, seat, progress.counting(note, "%d found"))
	if err != nil {
		return nil, err
	}
	out := &Equals{Head: head("slipfit-equals"), Seat: seat.String(), Title: seat.Title(), Parts: []Equal{}, Unfinished: !complete}
	for _, l := range b.Lines() {
		if l.Seat == seat {
			out.Part = l.Article.Title()
		}
	}
	for _, e := range list {
		out.Parts = append(out.Parts, Equal{insteadOf(e.Option), e.Costs.Q(), float64(e.Apart) / 10, e.What, e.Liked})
	}
	return out, nil
}
