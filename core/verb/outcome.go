package verb

import (
	"slipfit/core/format"
	"slipfit/core/outcome"
	"slipfit/core/rule"
)

// Outcome is what each activity of a brief will be like on a build.
type Outcome struct {
	format.Head
	Title   string           `json:"title,omitempty"`
	Figures []Figure         `json:"figures"`
	Storage *outcome.Storage `json:"storage"`
	Assumed []string         `json:"assumed,omitempty"` // what was not said and taken instead
}

// Figure is one outcome in the customer's terms, with its band and the arithmetic behind it.
type Figure struct {
	Activity string   `json:"activity"`
	What     string   `json:"what"`
	Unit     string   `json:"unit"`
	Want     *Amount  `json:"want,omitempty"` // left out where the brief asks nothing
	Low      Amount   `json:"low"`
	Expected Amount   `json:"expected"`
	High     Amount   `json:"high"`
	SetBy    string   `json:"set_by"` // what sets it: a resource, or the encoding engine
	Verdict  string   `json:"verdict"`
	Missing  []string `json:"missing,omitempty"`
	Why      string   `json:"why"`
	Band     string   `json:"band"` // what the band rests on
	Source   string   `json:"source"`
}

// Amount is a figure with the words a person reads.
type Amount struct {
	Figure float64 `json:"figure"`
	Text   string  `json:"text"`
}

// Outcome tells what each activity of a brief will be like on a build.
func (w *Bench) Outcome(file, asked Document) (*Outcome, error) {
	b, n, _, err := w.read(file, &asked)
	if err != nil {
		return nil, err
	}
	out := &Outcome{Head: head("slipfit-outcome"), Title: b.Title, Storage: outcome.StorageOf(n, b), Assumed: n.Assumed}
	for _, f := range outcome.Figures(b, n, &w.Stock.Calibration) {
		out.Figures = append(out.Figures, figureOf(&f))
	}
	return out, nil
}

func figureOf(f *outcome.Figure) Figure {
	amount := func(milli int64) Amount { return Amount{float64(milli) / 1000, outcome.Say(milli, f.Unit)} }
	out := Figure{
		Activity: f.Activity, What: f.What, Unit: f.Unit.Many, Low: amount(f.Low), Expected: amount(f.Expected), High: amount(f.High),
		SetBy: f.By, Verdict: f.Verdict.String(), Missing: f.Missing, Why: f.Why, Band: f.Band, Source: f.Source,
	}
	if f.Want > 0 {
		want := amount(f.Want)
		out.Want = &want
	}
	if f.Verdict == rule.Unknown {
		out.Low.Text, out.Expected.Text, out.High.Text = "not known", "not known", "not known"
	}
	return out
}
