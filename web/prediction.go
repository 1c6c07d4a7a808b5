package web

import (
	"fmt"
	"strconv"
	"strings"

	"github.com/maxence-charriere/go-app/v9/pkg/app"
)

// Prediction is what the machine will do in every activity, before it exists.
type Prediction struct {
	Runs []Run
	Note string
}

// Run is one activity in one room.
type Run struct {
	Activity string
	Day      string
	RoomC    float64 `json:"room_c"`
	ChairM   float64 `json:"chair_m"`
	Figures  []Predicted
	Missing  []string
	Trouble  string
}

// Predicted is one figure with what it may miss by either way.
type Predicted struct {
	Name, Unit          string
	Low, Expected, High float64
}

// foresee asks for the prediction where it is unfolded.
func (d *Desk) foresee() {
	if !d.foreseen || d.prediction != nil || len(d.job.Build) == 0 {
		return
	}
	turn := d.turn
	ask(d, "predict", d.about(), func(p *Prediction) {
		if turn == d.turn {
			d.prediction = p
		}
	}, d.grieve)
}

// foretold unfolds to what the machine will do, activity by activity.
func foretold(d *Desk, p *Prediction) app.UI {
	return &Fold{
		Frame:   func() app.HTMLDetails { return app.Details().ID("prediction").Class("fold") },
		Line:    indexed("foretold", "what a meter will show, with its band"),
		Inside:  func() []app.UI { return p.view() },
		Toggled: func(open bool) { d.foreseen = open; d.foresee() },
	}
}

func (p *Prediction) view() []app.UI {
	switch {
	case p == nil:
		return []app.UI{app.P().Class("hint").Text("The prediction is being made.")}
	case p.Note != "":
		return []app.UI{app.P().Text(p.Note)}
	}
	all := []app.UI{app.P().Class("hint").Text("Expected, and between low and high: what the figure may miss by is two standard uncertainties either way.")}
	for i := range p.Runs {
		r := &p.Runs[i]
		all = append(all, fold(func() app.HTMLDetails { return app.Details().DataSet("run", r.Activity) }, r.Activity+", "+r.Day,
			fmt.Sprintf("room %s °C, chair %s m", measured(r.RoomC), measured(r.ChairM)), r.view))
	}
	return all
}

func (r *Run) view() []app.UI {
	if r.Trouble != "" {
		return []app.UI{app.P().Text(sentence(r.Trouble))}
	}
	if len(r.Missing) > 0 {
		return []app.UI{app.P().Text("Not known, for want of: " + strings.Join(r.Missing, ", ") + ".")}
	}
	t := figures{head: []string{"what", "low", "expected", "high", "unit"}}
	for _, f := range r.Figures {
		t.rows = append(t.rows, []string{f.Name, measured(f.Low), measured(f.Expected), measured(f.High), f.Unit})
	}
	return []app.UI{t.UI()}
}

// measured prints what a meter shows.
func measured(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
