package verb

import (
	"slipfit/core/build"
	"slipfit/core/format"
)

// Shelf is the stock by seat, for somebody who looks for a part the customer has already, and its makers.
type Shelf struct {
	format.Head
	Makers []string    `json:"makers"`
	Seats  []ShelfSeat `json:"seats"`
}

// ShelfSeat is the parts of the stock that a seat takes.
type ShelfSeat struct {
	Seat  string      `json:"seat"`
	Title string      `json:"seat_title"`
	Parts []ShelfPart `json:"parts"`
}

// ShelfPart is one part of the stock.
type ShelfPart struct {
	ID   string `json:"part"`
	Name string `json:"name"`
}

// Shelf lists the stock by seat.
func (w *Bench) Shelf() *Shelf {
	out := &Shelf{Head: head("slipfit-shelf"), Makers: w.StockCheck().Makers}
	for s := range build.Seat(build.Seats) {
		seat := ShelfSeat{Seat: s.String(), Title: s.Title()}
		for _, ways := range w.ways(s, &build.Build{}, 1) {
			if p := ways[0].Part; p != nil {
				seat.Parts = append(seat.Parts, ShelfPart{p.Common().ID, p.Common().Title()})
			}
		}
		out.Seats = append(out.Seats, seat)
	}
	return out
}
