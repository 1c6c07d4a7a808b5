package rule

import (
	"fmt"
	"math"

	"slipfit/core/brief"
	"slipfit/core/predict"
	"slipfit/core/unit"
)

// forecast is what the build is predicted to do; nil where it has not enough in it. Rules that ask for the same build and
// needs on one view share its runs.
func (v *View) forecast() *predict.Forecast { return v.predictor().Forecast(v.Build, v.Needs) }

func (v *View) predictor() *predict.Predictor {
	if v.predict == nil {
		v.predict = new(predict.Predictor)
	}
	return v.predict
}

// finder adds a margin: find or advise.
type finder func(subject string, have, need unit.Quantity, why func() string) *Margin

// predicted adds a margin that rests on a run. Figures that the run or the part lacks make it unknown, and so does a machine
// that does not come to rest.
func (v *View) predicted(add finder, subject string, r *predict.Run, missing []string, have, need unit.Quantity, band func() Band, why func() string) {
	v.missing = append(append(v.missing, r.Missing...), missing...)
	v.unsolved = r.Err
	if m := add(subject, have, need, why); m.Verdict != Unknown {
		m.band = band
	}
}

// under adds a margin of a predicted figure that is to stay under a limit: have is the limit, need what is predicted, rounded
// up.
func (v *View) under(add finder, subject string, r *predict.Run, missing []string, limit unit.Quantity, figure func() predict.Band, why func() string) {
	need := unit.Quantity{N: up(figure().Expected), Kind: limit.Kind}
	v.predicted(add, subject, r, missing, limit, need, func() Band {
		r.Spread()
		b := figure()
		return Band{
			Low: unit.Quantity{N: up(b.Low), Kind: limit.Kind}, Expected: need, High: unit.Quantity{N: up(b.High), Kind: limit.Kind},
			OfNeed: true,
		}
	}, why)
}

// temperature adds a margin of a part's limit over its predicted temperature.
func (v *View) temperature(add finder, subject string, r *predict.Run, p *predict.Part) {
	limit := unit.Temperature(math.Floor(p.LimitC * 1000)).Q()
	v.under(add, subject, r, p.Missing, limit, func() predict.Band { return p.TempC }, func() string {
		r.Spread()
		text := fmt.Sprintf("%s: %s comes to %s (%s) in a room of %s; what cools it is at %s", r.Load.Activity, p.Name,
			degrees(p.TempC.Expected), ends(p.TempC, degrees), degrees(r.RoomC), degrees(p.InletC.Expected))
		if p.Bare != "" {
			text += ": bare in " + p.Bare + ", whose board brings no heat-sink for it"
		}
		return text
	})
}

// up and down round a figure to thousandths on the safe side; what is closer to a thousandth than a solver can tell counts
// as it.
func up(x float64) int64   { return int64(math.Ceil(x*1000 - 1e-4)) }
func down(x float64) int64 { return int64(math.Floor(x*1000 + 1e-4)) }

func degrees(x float64) string  { return unit.Temperature(math.Round(x * 1000)).Q().String() }
func wattage(x float64) string  { return unit.Power(math.Round(x * 1000)).Q().String() }
func perCent(x float64) string  { return unit.Share(math.Round(x * 100_000)).Q().String() }
func airflow(x float64) string  { return unit.Flow(math.Round(x * 1000)).Q().String() }
func loudness(x float64) string { return unit.Sound(math.Round(x * 1000)).Q().String() }

// ends tells the two ends of a band.
func ends(b predict.Band, text func(float64) string) string {
	return text(b.Low) + " to " + text(b.High)
}

// asked runs a function on every activity of the brief on the day temperatures are judged on, or on everything at work where
// there is no brief.
func (v *View) asked(see func(f *predict.Forecast, r *predict.Run)) []Margin {
	f := v.forecast()
	if f == nil {
		return nil
	}
	for i := range f.Asked() {
		see(f, f.Run(i, f.Day()))
	}
	return v.margins
}

// named reports whether the brief names activities.
func named(n *brief.Needs) bool { return len(n.Loads) > 0 }
