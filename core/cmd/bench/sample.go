package main

import (
	"context"
	"fmt"
	"io/fs"
	"math/big"
	"runtime"
	"slices"
	"strings"
	"time"

	"slipfit/catalog"
	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/plan"
	"slipfit/core/rule"
	"slipfit/core/unit"
	"slipfit/testdata/briefs"
)

// sample is one question asked once.
type sample struct {
	Measure string  `json:"measure"`
	Column  int     `json:"column"` // size of stock in parts; 0 is the catalog
	Seed    uint64  `json:"seed"`
	Brief   string  `json:"brief"`
	Lean    bool    `json:"lean"` // without the rules that predict air and sound
	Figure  int64   `json:"figure"`
	Proven  bool    `json:"proven"`
	Found   bool    `json:"found"` // a build, or whatever else was asked for
	Gap     float64 `json:"gap"`   // where unproven: how much better another may be, a share of what was found

	Price  unit.Money `json:"price"`
	Worth  int64      `json:"worth"`
	Nodes  int64      `json:"nodes"`
	Checks int64      `json:"checks"`
	Digits int        `json:"digits"` // of the number of combinations the answer speaks for
}

// order is a brief and what it needs of a stock.
type order struct {
	name  string
	needs *brief.Needs
}

// orders reads the example briefs.
func orders(stock *part.Stock) ([]order, error) {
	names, err := fs.Glob(briefs.Files, "*.brief.json")
	if err != nil {
		return nil, err
	}
	var list []order
	for _, name := range names {
		data, err := briefs.Files.ReadFile(name)
		if err != nil {
			return nil, err
		}
		b, err := brief.Read(name, data)
		if err != nil {
			return nil, err
		}
		list = append(list, order{strings.TrimSuffix(name, ".brief.json"), b.Needs(stock)})
	}
	return list, nil
}

// predictions are the rules that predict air and sound of a whole build, which the planner asks last.
func predictions() []string {
	var list []string
	for _, r := range rule.All {
		if r.Group == rule.Cool && r != &rule.CoolerRating {
			list = append(list, r.ID)
		}
	}
	return list
}

// measure asks everything of every stock, and tells what it comes to.
func (set *setting) measure(tell func(line) error) error {
	generic, err := catalog.Embedded()
	if err != nil {
		return err
	}
	for _, column := range set.sizes {
		if err := set.column(generic, column, tell); err != nil {
			return err
		}
	}
	return nil
}

// column asks every brief of the stocks of one size. The briefs go round the seeds, so that a column broken off has asked of all.
func (set *setting) column(generic *part.Stock, column int, tell func(line) error) error {
	seeds := set.seeds
	if column == 0 {
		seeds = 1
	}
	all, err := orders(generic)
	if err != nil {
		return err
	}
	at := stocked{Column: column, Of: len(all) * seeds}
	end := time.Now().Add(set.patience)
	for i := 0; i < at.Of && time.Now().Before(end); i++ {
		nth := i % len(all)
		seed := uint64(1 + (nth+i/len(all))%seeds)
		stock, err := sized(generic, column, seed)
		if err != nil {
			return err
		}
		list, err := orders(stock)
		if err != nil {
			return err
		}
		at.Parts, at.Asked = len(stock.Articles()), at.Asked+1
		if err := tell(line{Stock: &at}); err != nil {
			return err
		}
		for _, lean := range []bool{false, true} {
			if set.four && lean {
				continue
			}
			d := &desk{setting: set, tell: tell, stock: stock, like: sample{Column: column, Seed: seed, Brief: list[nth].name, Lean: lean}, ask: plan.Ask{Needs: list[nth].needs}}
			if lean {
				d.ask.Lift = predictions()
			}
			if err := d.sit(); err != nil {
				return fmt.Errorf("%s on %d parts of seed %d: %w", list[nth].name, at.Parts, seed, err)
			}
		}
	}
	return nil
}

// desk is where one brief is asked of one stock.
type desk struct {
	*setting
	tell    func(line) error
	stock   *part.Stock
	ask     plan.Ask
	like    sample // what all its samples say
	samples []sample
}

// sit asks every question of the brief.
func (d *desk) sit() error {
	runtime.GC()
	if _, _, err := d.plan(leastNew, nil, d.ask, (*plan.Problem).Least); err != nil {
		return err
	}
	if _, _, err := d.plan(bestNew, nil, d.ask, (*plan.Problem).Best); err != nil {
		return err
	}
	x, err := d.poorer()
	if err != nil {
		return err
	}
	least, _, err := d.plan(leastKept, x, d.ask, (*plan.Problem).Least)
	if err != nil {
		return err
	}
	if _, _, err := d.plan(bestKept, x, d.ask, (*plan.Problem).Best); err != nil {
		return err
	}
	if err := d.agree(); err != nil {
		return err
	}
	if err := d.weigh(x); err != nil {
		return err
	}
	if _, _, err := d.plan(tight, x, d.tightly(), (*plan.Problem).Best); err != nil {
		return err
	}
	if least.Build != nil {
		processor := plan.Choice{Seat: build.Processor, Part: least.Build.Processor.ID}
		memory := plan.Choice{Seat: build.Memory, Part: least.Build.Memory.ID, Count: least.Build.Kits}
		if err := d.open(open, x, processor); err != nil {
			return err
		}
		if !d.four {
			if err := d.open(openMore, x, processor, memory); err != nil {
				return err
			}
		}
	}
	if d.four {
		return nil
	}
	if _, _, err := d.plan(small, x, d.ask, (*plan.Problem).Small); err != nil {
		return err
	}
	if d.like.Column <= frontierTo {
		if err := d.frontier(x); err != nil {
			return err
		}
	}
	if d.like.Column <= conflictTo && (least.Status == plan.Optimal || least.Status == plan.Infeasible) {
		return d.explain(x, least.Price)
	}
	return nil
}

// poorer is an index that has answered the brief with a tenth less to spend, of which what was proven does not hold with more.
func (d *desk) poorer() (*plan.Index, error) {
	needs := *d.ask.Needs
	needs.Budget -= needs.Budget / 10
	ask := d.ask
	ask.Needs = &needs
	x := plan.NewIndex(d.stock)
	for _, question := range []func(*plan.Problem, context.Context) plan.Answer{(*plan.Problem).Least, (*plan.Problem).Best} {
		p, err := x.Problem(ask)
		if err != nil {
			return nil, err
		}
		question(p, within(d.deadline))
	}
	return x, nil
}

// plan asks one question of an index, or of a new one that is laid out in the measured time.
func (d *desk) plan(name string, x *plan.Index, ask plan.Ask, question func(*plan.Problem, context.Context) plan.Answer) (plan.Answer, *plan.Index, error) {
	start, err := d.begin(name)
	if err != nil {
		return plan.Answer{}, nil, err
	}
	if x == nil {
		x = plan.NewIndex(d.stock)
	}
	p, err := x.Problem(ask)
	if err != nil {
		return plan.Answer{}, nil, err
	}
	a := question(p, within(d.deadline))
	s := d.sample(name, time.Since(start))
	s.Proven, s.Found = a.Status == plan.Optimal || a.Status == plan.Infeasible, a.Build != nil
	s.Price, s.Worth = a.Price, a.Worth
	s.certified(&a.Certificate)
	if a.Build != nil && !s.Proven {
		volume := unit.Millilitre(0)
		if name == small {
			volume = a.Build.Case.Volume.Or(0)
		}
		s.Gap = max(share(int64(a.Certificate.Gap.Price), int64(a.Price)), share(a.Certificate.Gap.Worth, a.Worth), share(int64(a.Certificate.Gap.Volume), int64(volume)))
	}
	return a, x, d.end(s)
}

// begin tells that a question is about to be asked, and takes the time.
func (d *desk) begin(name string) (time.Time, error) {
	s := d.sample(name, 0)
	err := d.tell(line{Asking: &s})
	return time.Now(), err
}

// end notes a sample and tells of it.
func (d *desk) end(s sample) error {
	d.samples = append(d.samples, s)
	return d.tell(line{Got: &s})
}

// sample begins a sample of this desk.
func (d *desk) sample(name string, took time.Duration) sample {
	s := d.like
	s.Measure, s.Figure = name, int64(took)
	return s
}

// certified notes what a certificate says.
func (s *sample) certified(c *plan.Certificate) {
	s.Nodes, s.Checks = c.Nodes, c.Checks
	if c.Combinations != nil && c.Combinations.Cmp(big.NewInt(0)) > 0 {
		s.Digits = len(c.Combinations.String())
	}
}

// agree fails where a new and a kept index have proven different answers to the same question.
func (d *desk) agree() error {
	for i := range d.samples {
		for j := range d.samples[:i] {
			s, t := &d.samples[i], &d.samples[j]
			if strings.TrimSuffix(s.Measure, "kept") != strings.TrimSuffix(t.Measure, "new") || !s.Proven || !t.Proven {
				continue
			}
			if s.Price != t.Price || s.Worth != t.Worth {
				return fmt.Errorf("%s finds %s serving %d, %s finds %s serving %d", s.Measure, s.Price, s.Worth, t.Measure, t.Price, t.Worth)
			}
		}
	}
	return nil
}

// weigh notes what is held in memory with an index that has answered.
func (d *desk) weigh(x *plan.Index) error {
	var m runtime.MemStats
	runtime.GC()
	runtime.ReadMemStats(&m)
	runtime.KeepAlive(x)
	s := d.sample(weight, 0)
	s.Figure, s.Proven, s.Found = int64(m.HeapAlloc), true, true
	return d.end(s)
}

// tightly wishes for one of the smallest cases: the smallest tenth of those that state their volume.
func (d *desk) tightly() plan.Ask {
	var volumes []unit.Millilitre
	for _, c := range d.stock.Cases {
		if v, stated := c.Volume.Get(); stated {
			volumes = append(volumes, v)
		}
	}
	needs := *d.ask.Needs
	if len(volumes) > 0 {
		slices.Sort(volumes)
		most := volumes[len(volumes)/10]
		needs.Wish.Volume.Set(min(most, needs.Wish.Volume.Or(most)))
	}
	ask := d.ask
	ask.Needs = &needs
	return ask
}

// open asks what is open in every seat once some parts are clicked.
func (d *desk) open(name string, x *plan.Index, clicked ...plan.Choice) error {
	ask := d.ask
	ask.Keep = clicked
	start, err := d.begin(name)
	if err != nil {
		return err
	}
	p, err := x.Problem(ask)
	if err != nil {
		return err
	}
	ways := p.Open(within(d.deadline))
	s := d.sample(name, time.Since(start))
	s.Found = true
	left := 0
	for i := range ways {
		if ways[i].State != plan.Optimal && ways[i].State != plan.Infeasible {
			left++
		}
	}
	s.Proven, s.Gap = left == 0, share(int64(left), int64(len(ways)))
	return d.end(s)
}

// frontier asks what every price buys.
func (d *desk) frontier(x *plan.Index) error {
	start, err := d.begin(frontier)
	if err != nil {
		return err
	}
	p, err := x.Problem(d.ask)
	if err != nil {
		return err
	}
	f := p.Frontier(within(d.deadline))
	s := d.sample(frontier, time.Since(start))
	s.certified(&f.Certificate)
	s.Proven, s.Found = f.Status == plan.Optimal || f.Status == plan.Infeasible, len(f.Points) > 0
	if n := len(f.Points); n > 0 {
		s.Price, s.Worth = f.Points[0].Price, f.Points[n-1].Worth
		s.Gap = max(share(f.Certificate.Gap.Worth, s.Worth), share(int64(f.Certificate.Gap.Price), int64(s.Price)))
	}
	return d.end(s)
}

// explain asks why a brief cannot be met and what mends it. One that can be is given a budget a tenth below the least price.
func (d *desk) explain(x *plan.Index, least unit.Money) error {
	ask := d.ask
	if least > 0 {
		needs := *d.ask.Needs
		needs.Budget = least - least/10
		ask.Needs = &needs
	}
	start, err := d.begin(conflict)
	if err != nil {
		return err
	}
	why, err := x.WhyNot(within(d.deadline), ask, nil)
	if err := d.explained(conflict, start, len(why.Demands) > 0, !why.Unfinished, err); err != nil {
		return err
	}
	if start, err = d.begin(repairs); err != nil {
		return err
	}
	list, complete, err := x.Repairs(within(d.deadline), ask, 2, nil)
	return d.explained(repairs, start, len(list) > 0, complete, err)
}

// explained notes an explanation, which ends with an error where time is up before anything is known.
func (d *desk) explained(name string, start time.Time, found, complete bool, err error) error {
	took := time.Since(start)
	if err != nil && took < d.deadline {
		return err
	}
	s := d.sample(name, took)
	s.Proven, s.Found = complete && err == nil, err == nil && (found || complete)
	return d.end(s)
}

// share is a part of a whole; nought of nothing.
func share(part, whole int64) float64 {
	if whole <= 0 {
		return 0
	}
	return float64(part) / float64(whole)
}
