package predict_test

import (
	"math/rand/v2"
	"slices"
	"testing"

	"slipfit/catalog"
	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/unit"

	"github.com/stretchr/testify/require"
)

func stock(t testing.TB) *part.Stock {
	t.Helper()
	s, err := catalog.Embedded()
	require.NoError(t, err)
	return s
}

// maker draws builds of the catalog that go together as far as air and heat are concerned: a board the layout takes, a
// processor and a cooler of its socket, a radiator on a mount of its size, fans in places of theirs. Whether the rest fits
// is left to chance: more builds than those that stand.
type maker struct {
	*rand.Rand
	stock *part.Stock
}

func newMaker(t testing.TB, seed uint64) maker {
	return maker{rand.New(rand.NewPCG(seed, 5)), stock(t)}
}

func pick[T any](m maker, list []T) T { return list[m.IntN(len(list))] }

func keep[T any](list []T, ok func(T) bool) []T {
	var out []T
	for _, x := range list {
		if ok(x) {
			out = append(out, x)
		}
	}
	return out
}

func (m maker) build() *build.Build {
	for {
		if b := m.try(); b != nil {
			return b
		}
	}
}

func (m maker) try() *build.Build {
	var b build.Build
	b.Case = pick(m, m.stock.Cases)
	b.Layout = &b.Case.Layouts[m.IntN(len(b.Case.Layouts))]
	if b.Layout.Plate != nil {
		b.Plate = m.IntN(int(b.Layout.Plate.Steps) + 1)
	}
	boards := keep(m.stock.Boards, func(x *part.Board) bool { return slices.Contains(b.Layout.Boards, x.Form) })
	b.Board = pick(m, boards)
	b.Processor = pick(m, keep(m.stock.Processors, func(x *part.Processor) bool { return x.Socket == b.Board.Socket }))
	coolers := keep(m.stock.Coolers, func(x *part.Cooler) bool {
		return slices.Contains(x.Sockets, b.Board.Socket) && (x.Liquid != nil && len(m.mounts(x, b.Layout)) > 0 ||
			x.Air != nil && x.Air.Height.Or(0) <= b.Layout.Cooler.Or(0)-b.Shift())
	})
	if len(coolers) == 0 {
		return nil
	}
	b.Cooler = pick(m, coolers)
	if b.Cooler.Liquid != nil {
		b.Face = pick(m, m.mounts(b.Cooler, b.Layout)).Face
	}
	b.Memory, b.Kits = pick(m, m.stock.Memory), 1+m.IntN(2)
	if m.IntN(6) > 0 {
		cards := keep(m.stock.Graphics, func(x *part.Graphics) bool {
			return x.Length.Or(0) <= b.Layout.Card.Length.Or(0) && x.Thickness.Or(0) <= b.Layout.Card.Thickness.Or(0)+b.Shift()
		})
		if len(cards) > 0 {
			b.Graphics = pick(m, cards)
		}
	}
	supplies := keep(m.stock.Supplies, func(x *part.Supply) bool { return slices.Contains(b.Layout.Supply.Forms, x.Form) })
	b.Supply = pick(m, supplies)
	b.Boot = build.Storage{Drive: pick(m, m.stock.Drives), Count: 1}
	if m.IntN(2) == 0 {
		b.Archive = build.Storage{Drive: pick(m, m.stock.Drives), Count: 1 + m.IntN(3)}
	}
	if len(b.Layout.FanPlaces) > 0 && m.IntN(2) == 0 {
		place := pick(m, b.Layout.FanPlaces)
		fans := keep(m.stock.Fans, func(x *part.Fan) bool { return slices.Contains(place.FanSizes, x.Size.Or(0)) })
		if len(fans) > 0 {
			b.Fans = []build.FanSet{{Fan: pick(m, fans), Count: 1 + m.IntN(int(place.Fans.Or(1))), Face: place.Face}}
		}
	}
	if m.IntN(4) == 0 {
		b.Cards = []build.CardSet{{Card: pick(m, m.stock.Cards), Count: 1}}
	}
	return &b
}

// mounts lists the places of a layout that take a cooler's radiator.
func (m maker) mounts(k *part.Cooler, l *part.Layout) []part.RadiatorMount {
	return keep(l.Radiators, func(r part.RadiatorMount) bool {
		return slices.Contains(r.FanSizes, k.Liquid.FanSize.Or(0)) && k.Liquid.Sections.Or(9) <= r.Fans.Or(0)
	})
}

func (m maker) needs() *brief.Needs {
	share := func() unit.Share { return unit.Share(m.IntN(100_001)) }
	var n brief.Needs
	for range 1 + m.IntN(2) {
		n.Loads = append(n.Loads, brief.Load{
			Activity: "work", Processor: share(), Graphics: share(), Memory: share(), Drives: share(), Hours: 1000,
		})
	}
	n.Place.Room.Set(unit.Temperature(15_000 + m.IntN(12_000)))
	n.Place.Hottest.Set(unit.Temperature(25_000 + m.IntN(15_000)))
	n.Place.Altitude.Set(unit.Whole(m.IntN(2_500)))
	return &n
}
