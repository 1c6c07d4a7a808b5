package predict

import "slipfit/core/build"

// Figure is one predicted figure of a run as a person reads it, with its band.
type Figure struct {
	Name string // of what: graphics card, air, case
	Unit string // W, °C, %, rpm, m³/h, dB(A), kWh
	Rule string // id of the rule that judges it
	Band
}

// Figures lists what a run predicts, watts first, each with its band; none where a sheet lacks a figure without which
// nothing is known, or where the machine did not come to rest.
func (r *Run) Figures() []Figure {
	if len(r.Missing) > 0 || r.Err != nil {
		return nil
	}
	var list []Figure
	r.Spread()
	add := func(name, unit, rule string, b Band) {
		list = append(list, Figure{name, unit, rule, b})
	}
	for _, p := range r.Parts {
		add(p.Name+", power", "W", "held-power", p.HeldW)
	}
	add("out of the supply", "W", "activity-load", r.DCW)
	add("from the mains", "W", "room", r.WallW)
	for _, p := range r.Parts {
		rule := "processor-heat"
		if p.Seat == build.Graphics {
			rule = "graphics-heat"
		}
		add(p.Name+", temperature", "°C", rule, p.TempC)
		add(p.Name+", speed kept", "%", "held-power", Band{Low: 100 * p.Kept.Low, Expected: 100 * p.Kept.Expected, High: 100 * p.Kept.High})
	}
	for _, d := range r.Drives {
		if len(d.Missing) == 0 {
			add(d.Name, "°C", "drive-heat", d.TempC)
		}
	}
	if len(r.Board.Missing) == 0 {
		add(r.Board.Name, "°C", "board-heat", r.Board.TempC)
	}
	for _, z := range r.Zones {
		add("air, "+z.Name, "°C", "case-air", z.AirC)
	}
	if r.CoolantC.Expected > 0 {
		add("coolant into the radiator", "°C", "processor-heat", r.CoolantC)
	}
	for _, fans := range [][]Fan{r.Fans, r.Cooling} {
		for _, f := range fans {
			add(f.Name, "rpm", "fan-speed", f.RPM)
		}
	}
	add("air drawn in", "m³/h", "case-air", r.InM3H)
	if len(r.Unheard) == 0 {
		add("level at the chair", "dB(A)", "noise", r.ChairDBA)
	}
	if r.Load.Hours > 0 {
		add("energy a year", "kWh", "supply-efficiency", r.YearKWh)
	}
	return list
}

// Told lists the runs that papers and answers tell: every activity, everything at work and at rest, on an ordinary day and
// on the day that temperatures are judged on, where that is another.
func (f *Forecast) Told() []*Run {
	var list []*Run
	for i := range f.Loads() {
		list = append(list, f.Run(i, Ordinary))
		if f.Day() != Ordinary {
			list = append(list, f.Run(i, f.Day()))
		}
	}
	return list
}
