package predict

import (
	"math"

	"slipfit/core/air"
	"slipfit/core/sound"
)

// Standard uncertainties of what this package assumes. Common practice.
const (
	openingU = 0.20 // of every opening's loss, all together
	betaU    = 0.10 // of where a part breathes
	ownFlowU = 0.20 // of what a part's own fans draw through a panel
)

// Spread gives every figure of a run its band: each input of the air network and each assumption is moved by its standard
// uncertainty both ways, the changes are added as squares, upward and downward apart, and what the reading itself misses by
// joins them; two standard uncertainties are the band. A run that did not come to rest has none.
func (r *Run) Spread() *Run {
	if r.spread || r.Err != nil || len(r.Missing) > 0 {
		return r
	}
	r.spread = true
	f := r.forecast
	m, p := &f.model, f.predictor
	m.duty(r)
	if m.solve(&p.solver, &p.result, mainsLine(&f.needs.Place)) != nil {
		return r // it came to rest before, so it does now
	}
	var at []*Band
	var kinds []figure
	r.each(func(b *Band, k figure) { at, kinds = append(at, b), append(kinds, k) })
	up, down := make([]float64, len(at)), make([]float64, len(at))
	m.own(r, at, up, down, kinds)

	var moved [2][]float64
	see := func(above, below *air.Machine) error {
		for i, c := range [...]*air.Machine{above, below} {
			moved[i] = m.figures(moved[i][:0], r, c, p)
			if moved[i] == nil {
				return nil // one side does not come to rest: the other input moves speak for the band
			}
		}
		for i, b := range at {
			rise := max(0, moved[0][i]-b.Expected, moved[1][i]-b.Expected)
			fall := min(0, moved[0][i]-b.Expected, moved[1][i]-b.Expected)
			up[i] += rise * rise
			down[i] += fall * fall
		}
		return nil
	}
	base := m.air
	_ = base.Varied(air.SuggestedTolerances(), see)
	assumed(&base, see)
	for i, b := range at {
		b.Low, b.High = b.Expected-2*math.Sqrt(down[i]), b.Expected+2*math.Sqrt(up[i])
		if kinds[i] == loudness {
			b.Low = max(0, b.Low)
		}
	}
	return r
}

// figures solves a varied machine and lists its figures; nil where it does not come to rest.
func (m *model) figures(list []float64, of *Run, in *air.Machine, p *Predictor) []float64 {
	if p.solver.Solve(in, &p.result) != nil {
		return nil
	}
	moved := Run{Load: of.Load, RoomC: of.RoomC, AltitudeM: of.AltitudeM, ChairM: of.ChairM, forecast: of.forecast}
	m.read(&moved, in, &p.result, of.forecast)
	moved.each(func(b *Band, _ figure) { list = append(list, b.Expected) })
	return list
}

// assumed moves what this package assumes.
func assumed(m *air.Machine, see func(above, below *air.Machine) error) {
	vary := func(change func(*air.Machine, float64)) {
		above, below := clone(m), clone(m)
		change(&above, 1)
		change(&below, -1)
		_ = see(&above, &below)
	}
	vary(func(c *air.Machine, sign float64) {
		for i := range c.Paths {
			c.Paths[i].SharedImpedance *= 1 + sign*openingU
		}
		for z := range c.Zones {
			c.Zones[z].LeakImpedance *= 1 + sign*openingU
		}
	})
	vary(func(c *air.Machine, sign float64) {
		for k := range c.Consumers {
			if c.Consumers[k].Medium == air.ToZoneAir {
				c.Consumers[k].Beta = min(1, max(0, c.Consumers[k].Beta+sign*betaU))
			}
		}
	})
	for i := range m.Paths {
		if m.Paths[i].OwnOf > 0 {
			vary(func(c *air.Machine, sign float64) { c.Paths[i].Fans.Fan.FreeM3PerS *= 1 + sign*ownFlowU })
		}
	}
}

func clone(m *air.Machine) air.Machine {
	c := *m
	c.Zones = append([]air.Zone(nil), m.Zones...)
	c.Paths = append([]air.Path(nil), m.Paths...)
	c.Consumers = append([]air.Consumer(nil), m.Consumers...)
	return c
}

// own adds what the air network knows nothing of: the sensor of a temperature, sources and meter of a level, the supply's
// efficiency, the resistance and the draw of drives and converters.
func (m *model) own(r *Run, at []*Band, up, down []float64, kinds []figure) {
	add := func(b *Band, u float64) {
		for i := range at {
			if at[i] == b {
				up[i] += u * u
				down[i] += u * u
			}
		}
	}
	t := air.SuggestedTolerances()
	fanU := math.Sqrt(sourceUDB*sourceUDB + meterUDB*meterUDB + math.Pow(sound.SpeedExponent/math.Ln10*speedUShare, 2))
	for i := range at {
		u := 0.0
		switch kinds[i] {
		case temperature:
			u = t.SensorK
		case loudness:
			u = fanU
			if at[i] == &r.PowerDBA || at[i] == &r.ChairDBA {
				u = r.levelU
			}
		}
		up[i], down[i] = u*u, u*u
	}
	share, u := m.supply.efficiency(r.DCW.Expected, mainsLine(&r.forecast.needs.Place))
	if share > 0 {
		add(&r.WallW, r.WallW.Expected*u/share)
		add(&r.LossW, r.WallW.Expected*u/share)
		add(&r.YearKWh, r.YearKWh.Expected*u/share)
		add(&r.YearCost, r.YearCost.Expected*u/share)
	}
	sink := math.Hypot(t.ResistanceShare, t.PowerShare)
	for i := range r.Drives {
		add(&r.Drives[i].TempC, (r.Drives[i].TempC.Expected-r.Drives[i].InletC.Expected)*sink)
	}
	add(&r.Board.TempC, (r.Board.TempC.Expected-r.Board.InletC.Expected)*t.ResistanceShare)
}
