package verb

import (
	"context"
	"fmt"
	"strings"

	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/format"
	"slipfit/core/plan"
	"slipfit/core/unit"
)

// PlanAsk is what a plan seeks beside the brief.
type PlanAsk struct {
	For  string   // one of Seekings
	Keep []string // "seat=part", settled choices
}

// Plan is the planner's answer with the proof of its build.
type Plan struct {
	format.Head
	Title       string      `json:"title"`
	For         string      `json:"for"`
	Status      string      `json:"status"`
	Certificate Certificate `json:"certificate"`
	// Reached is what was sought: the case's volume (small), or the level at the chair to a tenth of a dB(A) (quiet).
	Reached *unit.Quantity `json:"reached,omitempty"`
	Proof   *Proof         `json:"proof,omitempty"` // nil where no build was found
	Cuts    []Cut          `json:"cuts,omitempty"`
	Build   *build.File    `json:"build,omitempty"`
}

// Certificate is what stands behind a plan.
type Certificate struct {
	Combinations string        `json:"combinations"` // ways of filling the seats that the answer speaks for
	Nodes        int64         `json:"nodes"`        // partial builds looked at
	Checks       int64         `json:"checks"`       // times a rule was asked
	RootPrice    unit.Quantity `json:"root_price"`
	RootWorth    int64         `json:"root_worth"`
	GapPrice     unit.Quantity `json:"gap_price"` // how much cheaper another build might still be
	GapWorth     int64         `json:"gap_worth"` // how much more value another build might still serve

	GapVolume *unit.Quantity `json:"gap_volume,omitempty"` // of small: how much smaller the case of another build might still be
	GapNoise  *unit.Quantity `json:"gap_noise,omitempty"`  // of quiet: how much less another build might still be heard
}

// Cut is what one rule took away before any search, told where nothing could be planned.
type Cut struct {
	Rule    string   `json:"rule,omitempty"`
	Title   string   `json:"title,omitempty"`
	Seats   []string `json:"seats"`
	Options int      `json:"options"`
	Empties bool     `json:"empties,omitempty"`
}

// Seekings are what a plan can seek, each among the builds that serve every floor within the budget: the least price, the most
// value, the lowest level at the chair, the smallest case.
func Seekings() []string { return []string{"least", "best", "quiet", "small"} }

// Plan finds the build for a brief that is the best by what is sought.
func (w *Bench) Plan(ctx context.Context, file Document, ask PlanAsk, progress Progress) (*Plan, error) {
	said, asked, err := w.asked(file, ask.Keep)
	if err != nil {
		return nil, err
	}
	if ask.For == "" {
		ask.For = Seekings()[0]
	}
	progress.tell(0, "laying out the stock")
	problem, err := w.pose(asked)
	if err != nil {
		return nil, err
	}
	progress.tell(0, "searching")
	problem.Told = progress.seeking(ask.For, asked.Needs)
	var a plan.Answer
	switch ask.For {
	case "least":
		a = problem.Least(ctx)
	case "best":
		a = problem.Best(ctx)
	case "quiet":
		a = problem.Quiet(ctx)
	case "small":
		a = problem.Small(ctx)
	default:
		return nil, fmt.Errorf("cannot plan for %q; want %s", ask.For, strings.Join(Seekings(), " or "))
	}
	out := w.planned(ctx, said, ask.For, &a, asked.Needs)
	if a.Build != nil {
		out.reach(&a)
	}
	return out, nil
}

// reach tells what was sought and reached, and what it may still miss.
func (p *Plan) reach(a *plan.Answer) {
	c := &a.Certificate
	switch p.For {
	case "quiet":
		reached, gap := (c.Final.Noise + c.Gap.Noise).Q(), c.Gap.Noise.Q()
		p.Reached, p.Certificate.GapNoise = &reached, &gap
	case "small":
		gap := c.Gap.Volume.Q()
		p.Certificate.GapVolume = &gap
		if volume, stated := a.Build.Case.Volume.Get(); stated {
			reached := volume.Q()
			p.Reached = &reached
		}
	}
}

func (w *Bench) planned(ctx context.Context, said *brief.Brief, seeking string, a *plan.Answer, needs *brief.Needs) *Plan {
	out := &Plan{Head: head("slipfit-plan"), Title: said.Title, For: seeking, Status: a.Status.String()}
	out.Certificate = certificateOf(&a.Certificate)
	for _, cut := range a.Cuts {
		out.Cuts = append(out.Cuts, cutOf(cut))
	}
	if a.Build != nil {
		a.Build.Title = said.Title
		out.Proof = w.proof(ctx, a.Build, needs, said.Budget.Or(0))
		f := a.Build.File()
		out.Build = &f
	}
	return out
}

func certificateOf(c *plan.Certificate) Certificate {
	out := Certificate{
		Combinations: "0", Nodes: c.Nodes, Checks: c.Checks, RootPrice: c.Root.Price.Q(), RootWorth: c.Root.Worth,
		GapPrice: c.Gap.Price.Q(), GapWorth: c.Gap.Worth,
	}
	if c.Combinations != nil {
		out.Combinations = c.Combinations.String()
	}
	return out
}

func cutOf(c plan.Cut) Cut {
	out := Cut{Options: c.Options, Empties: c.Empties}
	if c.Rule != nil {
		out.Rule, out.Title = c.Rule.ID, c.Rule.Title
	}
	for s := range build.Seat(build.Seats) {
		if c.Seats.Has(s) {
			out.Seats = append(out.Seats, s.Title())
		}
	}
	return out
}

// settled turns what the customer owns and "seat=part" choices into the planner's.
func settled(owned []brief.Owned, keep []string) ([]plan.Choice, error) {
	var list []plan.Choice
	for _, o := range owned {
		seat, ok := build.Named(o.Seat)
		if !ok {
			return nil, fmt.Errorf("owned: no seat %q", o.Seat)
		}
		list = append(list, plan.Choice{Seat: seat, Part: o.Part, Count: o.Count, Owned: true})
	}
	for _, k := range keep {
		name, id, ok := strings.Cut(k, "=")
		seat, known := build.Named(name)
		if !ok || !known {
			return nil, fmt.Errorf("keep %q: want SEAT=PART, with a seat such as graphics", k)
		}
		if id == "none" {
			id = ""
		}
		list = append(list, plan.Choice{Seat: seat, Part: id})
	}
	return list, nil
}
