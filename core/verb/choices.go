package verb

import (
	"context"
	"fmt"

	"slipfit/core/build"
	"slipfit/core/format"
	"slipfit/core/plan"
	"slipfit/core/unit"
)

// Choices says what is still open in every seat under a brief and the choices made.
type Choices struct {
	format.Head
	Title string        `json:"title"`
	Seats []SeatChoices `json:"seats"`
}

// SeatChoices is what can go into one seat.
type SeatChoices struct {
	Seat  string   `json:"seat"`
	Title string   `json:"seat_title"`
	Parts []Choice `json:"parts"`
}

// Choice is a part in a seat and what comes of it.
type Choice struct {
	Part  string         `json:"part"` // empty leaves the seat empty
	Name  string         `json:"name"`
	State string         `json:"state"`           // optimal: possible, from that price on; infeasible: in no build; else not settled in time
	Price *unit.Quantity `json:"price,omitempty"` // of the cheapest whole build with it, before tax
}

// Choices finds for every part of a seat, or of every open seat, whether a build with it stands and what the cheapest costs.
func (w *Bench) Choices(ctx context.Context, file Document, seat string, keep []string, progress Progress) (*Choices, error) {
	said, ask, err := w.asked(file, keep)
	if err != nil {
		return nil, err
	}
	var only []build.Seat
	if seat != "" {
		s, ok := build.Named(seat)
		if !ok {
			return nil, fmt.Errorf("no seat %q; a seat is such as graphics", seat)
		}
		only = append(only, s)
	}
	progress.tell(0, "laying out the stock")
	problem, err := w.pose(ask)
	if err != nil {
		return nil, err
	}
	problem.Told = progress.counting("looking at every part", "")
	out := &Choices{Head: head("slipfit-choices"), Title: said.Title}
	for _, way := range problem.Open(ctx, only...) {
		if n := len(out.Seats); n == 0 || out.Seats[n-1].Seat != way.Seat.String() {
			out.Seats = append(out.Seats, SeatChoices{Seat: way.Seat.String(), Title: way.Seat.Title()})
		}
		c := Choice{State: way.State.String(), Name: "nothing"}
		if way.Part != nil {
			c.Part, c.Name = way.Part.ID, way.Part.Title()
		}
		if way.State == plan.Optimal || way.State == plan.Feasible {
			q := way.Price.Q()
			c.Price = &q
		}
		at := &out.Seats[len(out.Seats)-1]
		at.Parts = append(at.Parts, c)
	}
	return out, nil
}
