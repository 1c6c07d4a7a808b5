package verb

import (
	"context"

	"slipfit/core/balance"
	"slipfit/core/build"
	"slipfit/core/format"
	"slipfit/core/unit"
)

// Steps is the next step up and down for every seat of a build.
type Steps struct {
	format.Head
	Title string      `json:"title,omitempty"`
	Seats []SeatSteps `json:"seats"`
}

// SeatSteps is the steps of one seat.
type SeatSteps struct {
	Seat  string   `json:"seat"`
	Title string   `json:"seat_title"`
	Part  string   `json:"name"` // what sits there
	Up    *Stride  `json:"up,omitempty"`
	Down  *Stride  `json:"down,omitempty"`
	Full  []string `json:"full,omitempty"` // what the seat gives that nothing serves further, or that is enough

	Unfinished bool `json:"unfinished,omitempty"` // ended before it was known whether there is a step that is not told
}

// Stride is a step to another whole build.
type Stride struct {
	Serves  string        `json:"serves,omitempty"` // of a step up: what is served further
	Costs   unit.Quantity `json:"costs"`            // price of the build less that of the one stepped from
	Proven  bool          `json:"proven"`           // no build does the same for less
	Parts   []Line        `json:"parts"`            // that come in
	Empties []string      `json:"empties,omitempty"`
	Gives   []BalanceRow  `json:"gives,omitempty"` // of a step down: needs that are then short
	Changes []Moved       `json:"changes,omitempty"`
	Build   build.File    `json:"build"`
}

// Steps finds, for every seat of a build, the cheapest way to serve its resources further, and the next cheaper filling.
func (w *Bench) Steps(ctx context.Context, file, asked Document, progress Progress) (*Steps, error) {
	b, n, _, err := w.read(file, &asked)
	if err != nil {
		return nil, err
	}
	const note = "looking for a step up and down in every seat"
	progress.tell(0, note)
	list, err := balance.Steps(ctx, b, n, w.known(), progress.counting(note, ""))
	if err != nil {
		return nil, err
	}
	out := &Steps{Head: head("slipfit-steps"), Title: b.Title, Seats: []SeatSteps{}}
	for i := range list {
		s := &list[i]
		one := SeatSteps{Seat: s.Seat.String(), Title: s.Seat.Title(), Part: s.Part, Full: s.Full, Unfinished: s.Unfinished, Up: strideOf(s.Up, b), Down: strideOf(s.Down, b)}
		if one.Up != nil {
			one.Up.Serves = s.Up.Resource.Title()
		}
		out.Seats = append(out.Seats, one)
	}
	return out, nil
}

func strideOf(s *balance.Stride, from *build.Build) *Stride {
	if s == nil {
		return nil
	}
	s.Build.Title = from.Title
	out := &Stride{Costs: s.Costs.Q(), Proven: s.Proven, Parts: linesBeside(s.Build, from), Changes: changesOf(s.Changes), Build: s.Build.File()}
	for _, seat := range s.Changed {
		if !s.Build.Filled(seat) {
			out.Empties = append(out.Empties, seat.Title())
		}
	}
	for i := range s.Gives {
		out.Gives = append(out.Gives, rowOf(&s.Gives[i]))
	}
	return out
}
