package sheet

import (
	"fmt"
	"strings"

	"slipfit/core/brief"
	"slipfit/core/chart"
	"slipfit/core/predict"
)

// NoForecast says why there is nothing to predict.
const NoForecast = "A forecast needs a case, a board, a processor, a cooler that hangs somewhere, and a supply."

// Forecast is what the machine will do before it exists: a table of watts, temperatures, speeds and sound for each
// activity, every figure with its band, and graphs against the room and the load. The bench accepts the machine by it.
func Forecast(j *Job) (*Paper, error) {
	p := j.paper("Forecast")
	needs := j.Needs
	if needs == nil {
		needs = &brief.Needs{}
	}
	var predictor predict.Predictor
	f := predictor.Forecast(j.Build, needs)
	if f == nil {
		p.Blocks = append(p.Blocks, Block{Heading: "Nothing to predict", Text: NoForecast})
		return p, nil
	}
	p.Blocks = append(p.Blocks, Block{Heading: "How to read it", Text: "Each figure is what is expected, with the low and the high " +
		"end that a meter may show: two standard uncertainties of the sheets, the paste, the fans and the room either way. " +
		"Measure after a quarter of an hour in which nothing drifts by more than a degree."})
	for _, r := range f.Told() {
		p.Blocks = append(p.Blocks, runBlock(r))
	}
	graphs, err := graphs(f, needs)
	if err != nil {
		return nil, err
	}
	p.Blocks = append(p.Blocks, graphs...)
	p.Blocks = append(p.Blocks, Block{Heading: "Cautions", Notes: j.cautions()})
	return p, nil
}

func runBlock(r *predict.Run) Block {
	b := Block{Heading: fmt.Sprintf("%s, %s, room %.3g °C", r.Load.Activity, r.Day, r.RoomC)}
	switch {
	case len(r.Missing) > 0:
		b.Text = "Not known: the data sheets do not state " + strings.Join(r.Missing, ", ") + "."
		return b
	case r.Err != nil:
		b.Text = "Not known: the machine does not come to rest in the model (" + r.Err.Error() + ")."
		return b
	}
	b.Table = &Table{Columns: []Column{{"", false}, {"expected", true}, {"low", true}, {"high", true}, {"", false}}}
	for _, f := range r.Figures() {
		b.Table.Rows = append(b.Table.Rows, Row{Cells: []string{f.Name, figure(f.Expected), figure(f.Low), figure(f.High), f.Unit}})
	}
	return b
}

// figure prints what a meter shows: tenths below a thousand.
func figure(v float64) string {
	if v >= 1000 || v <= -1000 {
		return fmt.Sprintf("%.0f", v)
	}
	return fmt.Sprintf("%.1f", v)
}

// graphs draws the heaviest duty against the room and against the load; none where a sheet lacks a figure, which the
// tables say.
func graphs(f *predict.Forecast, needs *brief.Needs) ([]Block, error) {
	hardest := len(f.Loads()) - 2 // everything at work stands before the machine at rest
	var list []Block
	for _, g := range []struct {
		id, title string
		series    predict.Series
	}{
		{"against-room", "Everything at work, against the room", f.AgainstRoom(hardest, 15, 40, 10)},
		{"against-load", "Against the load, " + f.Day().String(), f.AgainstLoad(hardest, f.Day(), 10)},
	} {
		if g.series.Trouble() != nil {
			continue
		}
		drawn, err := g.series.Figure(g.id, g.title, &needs.Place)
		if err != nil {
			return nil, fmt.Errorf("graph %s: %w", g.id, err)
		}
		list = append(list, Block{Heading: g.title, Drawing: chart.Lines(drawn)})
	}
	return list, nil
}
