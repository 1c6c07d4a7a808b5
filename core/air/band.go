package air

import (
	"math"
	"slices"
)

// Band is a prediction with what it may miss by: two standard uncertainties either way.
type Band struct {
	Low, Expected, High float64
}

// coverage is the factor k of the band: about 95 % for many independent inputs.
const coverage = 2.0

// Tolerances are the standard uncertainties of the inputs. All inputs are taken as independent: every part's power,
// every part's and radiator's resistance, every fan group's flow, and the room, each on its own.
type Tolerances struct {
	SensorK         float64 // of every temperature reading, K
	ResistanceShare float64 // of every consumer's resistance and every radiator's 1/UA
	FanFlowShare    float64 // of every fan group: its curve moves as if its speed were off by this share
	PowerShare      float64 // of every consumer's power and every zone's heat
	RoomK           float64
}

// SuggestedTolerances are the shop's usual ones (common practice): sensor ±1 K, die, paste and sink ±10 %, fan flow ±5 %,
// power ±5 %, room ±0.5 K.
func SuggestedTolerances() Tolerances {
	return Tolerances{SensorK: 1, ResistanceShare: 0.10, FanFlowShare: 0.05, PowerShare: 0.05, RoomK: 0.5}
}

// Bands are the bands of a machine's predictions, parallel to the slices of its Result.
type Bands struct {
	ZoneAirC, OutletC            []Band
	PathFlowM3PerS, PathRPM      []Band
	CoolantHotC                  []Band
	ConsumerC, HotspotC          []Band
	ConsumerRPM, HeldW           []Band
	FanPowerW, HeatInW, CarriedW Band
}

// SolveWithBands solves a machine and propagates the tolerances to first order: each input is moved by its standard
// uncertainty up and down, the changes of every prediction are added as squares, upward and downward apart (held power
// can only fall short), and the sensor's own uncertainty joins every temperature that is read by one.
func SolveWithBands(m Machine, t Tolerances) (Result, Bands, error) {
	var (
		s      Solver
		r, off Result
	)
	if err := s.Solve(&m, &r); err != nil {
		return r, Bands{}, err
	}
	expected := predictions(&r, nil)
	up, down := make([]float64, len(expected)), make([]float64, len(expected))
	if t.SensorK != 0 {
		for i, p := range sensed(&r) {
			if p {
				up[i], down[i] = t.SensorK*t.SensorK, t.SensorK*t.SensorK
			}
		}
	}
	var moved [2][]float64
	err := m.Varied(t, func(above, below *Machine) error {
		for i, c := range [...]*Machine{above, below} {
			if err := s.Solve(c, &off); err != nil {
				return err
			}
			moved[i] = predictions(&off, moved[i][:0])
		}
		for i, y := range expected {
			rise := max(0, moved[0][i]-y, moved[1][i]-y)
			fall := min(0, moved[0][i]-y, moved[1][i]-y)
			up[i] += rise * rise
			down[i] += fall * fall
		}
		return nil
	})
	if err != nil {
		return r, Bands{}, err
	}
	return r, bandsOf(&r, expected, up, down), nil
}

// Varied shows every input of the machine moved by its standard uncertainty, up and down, in a fixed order. The machines
// are valid until see returns; its error ends the round.
func (m *Machine) Varied(t Tolerances, see func(above, below *Machine) error) error {
	for _, change := range m.inputs(t) {
		above, below := m.copy(), m.copy()
		change(&above, 1)
		change(&below, -1)
		if err := see(&above, &below); err != nil {
			return err
		}
	}
	return nil
}

func (m *Machine) copy() Machine {
	c := *m
	c.Zones, c.Paths, c.Consumers = slices.Clone(m.Zones), slices.Clone(m.Paths), slices.Clone(m.Consumers)
	return c
}

// inputs lists the changes of one standard uncertainty each, in a fixed order.
func (m *Machine) inputs(t Tolerances) []func(*Machine, float64) {
	var list []func(*Machine, float64)
	add := func(u float64, change func(*Machine, float64)) {
		if u != 0 {
			list = append(list, change)
		}
	}
	add(t.RoomK, func(c *Machine, sign float64) { c.RoomC += sign * t.RoomK })
	for z := range m.Zones {
		add(t.PowerShare*m.Zones[z].HeatW, func(c *Machine, sign float64) { c.Zones[z].HeatW *= 1 + sign*t.PowerShare })
	}
	for i := range m.Paths {
		if m.Paths[i].Fans.Count > 0 {
			add(t.FanFlowShare, func(c *Machine, sign float64) {
				f := &c.Paths[i].Fans.Fan
				share := 1 + sign*t.FanFlowShare
				f.FreeM3PerS *= share
				f.ShutoffPa *= share * share
			})
		}
		if m.Paths[i].Radiator.Sections > 0 {
			add(t.ResistanceShare, func(c *Machine, sign float64) { c.Paths[i].Radiator.UAWPerK /= 1 + sign*t.ResistanceShare })
		}
	}
	for k := range m.Consumers {
		add(t.PowerShare*m.Consumers[k].PowerW, func(c *Machine, sign float64) { c.Consumers[k].PowerW *= 1 + sign*t.PowerShare })
		add(t.ResistanceShare, func(c *Machine, sign float64) {
			c.Consumers[k].RFixKPerW *= 1 + sign*t.ResistanceShare
			c.Consumers[k].RFlowKPerW *= 1 + sign*t.ResistanceShare
		})
	}
	return list
}

// predictions lists every prediction of a result in one fixed order; bandsOf takes them apart in the same order.
func predictions(r *Result, list []float64) []float64 {
	for i := range r.Zones {
		list = append(list, r.Zones[i].AirC, r.Zones[i].OutletC)
	}
	for i := range r.Paths {
		list = append(list, r.Paths[i].FlowM3PerS, r.Paths[i].RPM)
	}
	for i := range r.Loops {
		list = append(list, r.Loops[i].HotC)
	}
	for i := range r.Consumers {
		c := &r.Consumers[i]
		list = append(list, c.TempC, c.HotspotC, c.RPM, c.HeldW)
	}
	return append(list, r.FanPowerW, r.HeatInW, r.CarriedW)
}

// sensed says which predictions are temperatures, in the order of predictions.
func sensed(r *Result) []bool {
	var list []bool
	for range r.Zones {
		list = append(list, true, true)
	}
	for range r.Paths {
		list = append(list, false, false)
	}
	for range r.Loops {
		list = append(list, true)
	}
	for range r.Consumers {
		list = append(list, true, true, false, false)
	}
	return append(list, false, false, false)
}

func bandsOf(r *Result, expected, up, down []float64) Bands {
	at := 0
	next := func() Band {
		y := expected[at]
		b := Band{Low: y - coverage*math.Sqrt(down[at]), Expected: y, High: y + coverage*math.Sqrt(up[at])}
		at++
		return b
	}
	var b Bands
	for range r.Zones {
		b.ZoneAirC, b.OutletC = append(b.ZoneAirC, next()), append(b.OutletC, next())
	}
	for range r.Paths {
		b.PathFlowM3PerS, b.PathRPM = append(b.PathFlowM3PerS, next()), append(b.PathRPM, next())
	}
	for range r.Loops {
		b.CoolantHotC = append(b.CoolantHotC, next())
	}
	for range r.Consumers {
		b.ConsumerC, b.HotspotC = append(b.ConsumerC, next()), append(b.HotspotC, next())
		b.ConsumerRPM, b.HeldW = append(b.ConsumerRPM, next()), append(b.HeldW, next())
	}
	b.FanPowerW, b.HeatInW, b.CarriedW = next(), next(), next()
	return b
}
