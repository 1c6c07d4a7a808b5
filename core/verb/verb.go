// Package verb is what slipfit can be asked to do, one file a verb. The command line prints a verb's answer, the page's
// worker hands it on as JSON: the numbers are the same because the answer is.
package verb

import (
	"encoding/json"
	"fmt"

	"slipfit/core/format"
	"slipfit/core/part"
	"slipfit/core/plan"
	"slipfit/core/rule"
	"slipfit/core/unit"
)

// Version of the answers' JSON.
const Version = 1

// Document is a file as somebody handed it over: its name, for errors, and its bytes.
type Document struct {
	Name string
	Data []byte
}

// Margin is a margin of a proof as answers carry it.
type Margin struct {
	Rule    string         `json:"rule"`
	Group   string         `json:"group"`
	Title   string         `json:"title"`
	Subject string         `json:"subject,omitempty"`
	Have    unit.Quantity  `json:"have"`
	Need    unit.Quantity  `json:"need"`
	Diff    unit.Quantity  `json:"diff"`
	Enough  *unit.Quantity `json:"enough,omitempty"`
	Verdict string         `json:"verdict"`
	Advice  bool           `json:"advice,omitempty"`
	Missing []string       `json:"missing,omitempty"`
	Band    *Band          `json:"band,omitempty"` // of a prediction: what a meter may show
	Why     string         `json:"why"`
}

// Band is what a predicted figure may miss by, two standard uncertainties either way.
type Band struct {
	Low      unit.Quantity `json:"low"`
	Expected unit.Quantity `json:"expected"`
	High     unit.Quantity `json:"high"`
	OfNeed   bool          `json:"of_need,omitempty"` // the need is predicted, not what the build has
}

func marginOf(m *rule.Margin) Margin {
	out := Margin{
		Rule: m.Rule.ID, Group: m.Rule.Group.String(), Title: m.Rule.Title, Subject: m.Subject,
		Have: m.Have, Need: m.Need, Diff: m.Diff(), Verdict: m.Verdict.String(),
		Advice: m.Advice, Missing: m.Missing, Why: m.Why(),
	}
	if m.Capped {
		enough := m.Enough
		out.Enough = &enough
	}
	if b, predicted := m.Band(); predicted {
		out.Band = &Band{b.Low, b.Expected, b.High, b.OfNeed}
	}
	return out
}

// Line is one article of a build as answers carry it.
type Line struct {
	Seat  string        `json:"seat"`
	Title string        `json:"seat_title"`
	ID    string        `json:"part"`
	Name  string        `json:"name"`
	Count int           `json:"count"`
	Price unit.Quantity `json:"price"`
	Owned bool          `json:"owned,omitempty"`
}

// JSON prints an answer: indented, fields in declared order.
func JSON(answer any) []byte {
	out, err := json.MarshalIndent(answer, "", "  ")
	if err != nil {
		panic(fmt.Sprintf("verb: answer %T does not print: %v", answer, err))
	}
	return append(out, '\n')
}

func head(kind string) format.Head { return format.Head{Kind: kind, Version: Version} }

// Bench is what a verb works with: a shop's stock, and what the planner remembers of it from one question to the next. The stock
// must not change once something has been planned. A Bench serves one goroutine at a time.
type Bench struct {
	Stock *part.Stock

	index *plan.Index // nil until something is planned
}

// known is the stock as the planner has it laid out.
func (w *Bench) known() *plan.Index {
	if w.index == nil {
		w.index = plan.NewIndex(w.Stock)
	}
	return w.index
}

// pose asks the planner.
func (w *Bench) pose(ask plan.Ask) (*plan.Problem, error) { return w.known().Problem(ask) }
