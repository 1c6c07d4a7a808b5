package predict

import (
	"fmt"

	"slipfit/core/brief"
	"slipfit/core/chart"
	"slipfit/core/unit"
)

// Series is runs of one build along one quantity, spread.
type Series struct {
	Name string // of the quantity: room temperature, share of the load
	Unit string
	X    []float64
	Runs []*Run
}

// AgainstRoom solves a load, by its place in Loads, in rooms from one temperature to another, both included.
func (f *Forecast) AgainstRoom(load int, fromC, toC float64, steps int) Series {
	s := Series{Name: "room", Unit: "°C"}
	for i := range steps + 1 {
		room := fromC + (toC-fromC)*float64(i)/float64(max(1, steps))
		s.add(room, f.run(f.loads[load], room, 0, 0))
	}
	return s
}

// AgainstLoad solves shares of a load, by its place in Loads, from rest to all of it, in the room of a day.
func (f *Forecast) AgainstLoad(load int, day Day, steps int) Series {
	s := Series{Name: "share of the load", Unit: "%"}
	room := roomC(f.needs, day)
	for i := range steps + 1 {
		of := f.loads[load]
		part := func(x unit.Share) unit.Share { return x * unit.Share(i) / unit.Share(max(1, steps)) }
		of.Processor, of.Graphics, of.Memory, of.Drives = part(of.Processor), part(of.Graphics), part(of.Memory), part(of.Drives)
		s.add(100*float64(i)/float64(max(1, steps)), f.run(of, room, 0, 0))
	}
	return s
}

func (s *Series) add(x float64, r *Run) {
	s.X, s.Runs = append(s.X, x), append(s.Runs, r.Spread())
}

// Trouble is what keeps the series from being drawn: a figure no sheet states, or a run that did not come to rest.
func (s *Series) Trouble() error {
	for i, r := range s.Runs {
		switch {
		case len(r.Missing) > 0:
			return fmt.Errorf("the data sheet does not state %s", r.Missing[0])
		case r.Err != nil:
			return fmt.Errorf("%s %g %s: %w", s.Name, s.X[i], s.Unit, r.Err)
		}
	}
	return nil
}

// Figure is the series as panels: temperatures with their limits, the level at the chair with the level wished for, speeds, and
// power at the wall.
func (s *Series) Figure(id, title string, place *brief.Place) (chart.Figure, error) {
	f := chart.Figure{ID: id, Title: title, XName: s.Name, XUnit: s.Unit, X: s.X}
	if err := s.Trouble(); err != nil {
		return f, err
	}
	if len(s.Runs) == 0 {
		return f, fmt.Errorf("%s: no runs", title)
	}
	first := s.Runs[0]
	warm := chart.Panel{Title: "Temperatures", Unit: "°C"}
	for i := range first.Parts {
		p := &first.Parts[i]
		l := s.line(p.Seat.Title(), func(r *Run) Band { return r.Parts[i].TempC })
		l.Limit, l.LimitName = p.LimitC, "limit of the "+p.Seat.Title()
		warm.Line = append(warm.Line, l)
	}
	for i := range first.Drives {
		if len(first.Drives[i].Missing) == 0 {
			warm.Line = append(warm.Line, s.line(first.Drives[i].Seat.Title(), func(r *Run) Band { return r.Drives[i].TempC }))
		}
	}
	for i := range first.Zones {
		warm.Line = append(warm.Line, s.line("air, "+first.Zones[i].Name, func(r *Run) Band { return r.Zones[i].AirC }))
	}
	loud := chart.Panel{Title: fmt.Sprintf("Level at the chair, %.2g m", first.ChairM), Unit: "dB(A)", Zero: true}
	if len(first.Unheard) == 0 {
		l := s.line("machine", func(r *Run) Band { return r.ChairDBA })
		if wish, ok := place.Noise.Get(); ok {
			l.Limit, l.LimitName = float64(wish)/1000, "wished for"
		}
		loud.Line = append(loud.Line, l)
	}
	fast := chart.Panel{Title: "Fans, share of full speed", Unit: "%", Zero: true}
	speed := func(name string, of func(r *Run) *Fan) {
		full := max(1, of(first).FullRPM)
		l := s.line(name, func(r *Run) Band { return of(r).RPM })
		for i := range l.Mid {
			l.Mid[i] = 100 * l.Mid[i] / full
		}
		l.Low, l.High = nil, nil
		fast.Line = append(fast.Line, l)
	}
	for i := range first.Fans {
		speed(first.Fans[i].Name, func(r *Run) *Fan { return &r.Fans[i] })
	}
	for i := range first.Cooling {
		speed(first.Cooling[i].Name, func(r *Run) *Fan { return &r.Cooling[i] })
	}
	power := chart.Panel{Title: "Power", Unit: "W", Zero: true, Line: []chart.Line{
		s.line("from the mains", func(r *Run) Band { return r.WallW }),
		s.line("to the parts", func(r *Run) Band { return r.DCW }),
	}}
	for _, p := range [...]chart.Panel{warm, loud, fast, power} {
		if len(p.Line) > 0 {
			f.Panel = append(f.Panel, p)
		}
	}
	return f, nil
}

func (s *Series) line(name string, of func(*Run) Band) chart.Line {
	l := chart.Line{Name: name}
	for _, r := range s.Runs {
		b := of(r)
		l.Mid, l.Low, l.High = append(l.Mid, b.Expected), append(l.Low, b.Low), append(l.High, b.High)
	}
	return l
}
