package verb

import (
	"math"

	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/format"
	"slipfit/core/predict"
	"slipfit/core/sheet"
)

// Prediction is what a build will do in every activity of a brief, before it exists.
type Prediction struct {
	format.Head
	Title string `json:"title,omitempty"`
	Runs  []Run  `json:"runs"`
	Note  string `json:"note,omitempty"` // why there is nothing to predict
}

// Run is one activity in one room.
type Run struct {
	Activity string      `json:"activity"`
	Day      string      `json:"day"`
	RoomC    float64     `json:"room_c"`
	ChairM   float64     `json:"chair_m"`
	Figures  []Predicted `json:"figures,omitempty"`
	Missing  []string    `json:"missing,omitempty"` // figures no sheet states, without which nothing is known
	Trouble  string      `json:"trouble,omitempty"` // why the machine does not come to rest
}

// Predicted is one figure with what it may miss by either way, two standard uncertainties.
type Predicted struct {
	Name     string  `json:"name"`
	Unit     string  `json:"unit"`
	Low      float64 `json:"low"`
	Expected float64 `json:"expected"`
	High     float64 `json:"high"`
	Rule     string  `json:"rule,omitempty"` // the rule that judges it
}

// Predict tells watts, temperatures, speeds and sound of a build in every activity of a brief, with everything at work and
// at rest, each with its band.
func (w *Bench) Predict(file Document, asked *Document) (*Prediction, error) {
	b, n, _, err := w.read(file, asked)
	if err != nil {
		return nil, err
	}
	return predictionOf(b, n), nil
}

func predictionOf(b *build.Build, n *brief.Needs) *Prediction {
	out := &Prediction{Head: head("slipfit-prediction"), Title: b.Title}
	var p predict.Predictor
	f := p.Forecast(b, n)
	if f == nil {
		out.Note = sheet.NoForecast
		return out
	}
	for _, r := range f.Told() {
		out.Runs = append(out.Runs, runOf(r))
	}
	return out
}

func runOf(r *predict.Run) Run {
	out := Run{Activity: r.Load.Activity, Day: r.Day.String(), RoomC: r.RoomC, ChairM: r.ChairM, Missing: r.Missing}
	if r.Err != nil {
		out.Trouble = r.Err.Error()
	}
	if len(r.Missing) > 0 || r.Err != nil {
		return out
	}
	for _, f := range r.Figures() {
		out.Figures = append(out.Figures, Predicted{f.Name, f.Unit, tenth(f.Low), tenth(f.Expected), tenth(f.High), f.Rule})
	}
	return out
}

// tenth rounds to what a meter shows.
func tenth(v float64) float64 { return math.Round(v*10) / 10 }
