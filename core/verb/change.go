package verb

import (
	"context"
	"fmt"
	"reflect"

	"slipfit/core/build"
)

// Change is one thing about a build done otherwise: the part in a seat, how it is fitted, or whose it is.
type Change struct {
	Seat   string `json:"seat"`
	Part   string `json:"part"`            // empty to leave the seat empty
	Count  int    `json:"count,omitempty"` // how many; 0 for as many as sit there, or as are offered first
	Face   string `json:"face,omitempty"`
	Layout string `json:"layout,omitempty"`
	Plate  int    `json:"plate,omitempty"`
	Owned  bool   `json:"owned,omitempty"` // the customer has the part already
}

// Change makes one change to a build and proves what comes of it; the build itself is in the proof. A part is fitted as the
// change says, which must be one of the ways that Try or Ways offer. Where the part sits there already and the change does not
// say how it is fitted, it stays as it is fitted.
func (w *Bench) Change(ctx context.Context, file Document, asked *Document, c Change) (*Proof, error) {
	seat, ok := build.Named(c.Seat)
	if !ok {
		return nil, fmt.Errorf("no seat %q", c.Seat)
	}
	b, n, budget, err := w.read(file, asked)
	if err != nil {
		return nil, err
	}
	if c.Part != sitting(b, seat) || c.Count != 0 || c.Face != "" || c.Layout != "" {
		count := pieces(b, seat)
		if c.Count > 0 {
			count = c.Count
		}
		o, ok := find(w.ways(seat, b, count), c)
		if !ok {
			return nil, fmt.Errorf("%s: the stock has no part %q that is fitted so", seat.Title(), c.Part)
		}
		b.Set(o)
	}
	b.Owned &^= build.SetOf(seat)
	if c.Owned {
		b.Owned |= build.SetOf(seat)
	}
	return w.proof(ctx, b, n, budget), nil
}

func find(all [][]build.Option, c Change) (build.Option, bool) {
	for _, ways := range all {
		for _, o := range ways {
			if o.ID() == c.Part && string(o.Face) == c.Face && o.Plate == c.Plate && (c.Count == 0 || o.Count == c.Count) && (o.Layout == nil || o.Layout.ID == c.Layout) {
				return o, true
			}
		}
	}
	return build.Option{}, false
}

// Ways is every way of fitting the part that sits in a seat: each layout and plate position of a case, each face for a
// radiator, each number of fans on each face. It is empty where nothing sits there or there is no choice.
func (w *Bench) Ways(file Document, asked *Document, seatName string) (*Trial, error) {
	seat, ok := build.Named(seatName)
	if !ok {
		return nil, fmt.Errorf("no seat %q", seatName)
	}
	b, n, _, err := w.read(file, asked)
	if err != nil {
		return nil, err
	}
	out := &Trial{Head: head("slipfit-trial"), Seat: seat.String(), Title: seat.Title(), Now: sitting(b, seat)}
	before, sits := b.Price(), b.File()
	for _, ways := range w.ways(seat, b, pieces(b, seat)) {
		if ways[0].ID() != out.Now || out.Now == "" || len(ways) < 2 {
			continue
		}
		for _, o := range ways {
			way := try(b, n, []build.Option{o}, before)
			way.Sits = reflect.DeepEqual(b.File(), sits)
			out.Parts = append(out.Parts, way)
		}
	}
	return out, nil
}

// sitting is the id of the first article in a seat, empty where there is none.
func sitting(b *build.Build, seat build.Seat) string {
	for _, l := range b.Lines() {
		if l.Seat == seat {
			return l.Article.ID
		}
	}
	return ""
}
