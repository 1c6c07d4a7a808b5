package grow_test

import (
	"math/rand/v2"
	"slices"
	"testing"

	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/rule"

	"github.com/stretchr/testify/require"
)

// hand puts machines together as a hand does that looks at one or two figures at a time, leaving the rest to the rules.
type hand struct {
	*part.Stock
	*rand.Rand
}

func pick[P any](h *hand, list []*P, fits func(*P) bool) *P {
	var kept []*P
	for _, p := range list {
		if fits(p) {
			kept = append(kept, p)
		}
	}
	if len(kept) == 0 {
		return nil
	}
	return kept[h.IntN(len(kept))]
}

// build is a machine in a layout drawn at random, nil where the stock has nothing for a seat.
func (h *hand) build() *build.Build {
	c := h.Cases[h.IntN(len(h.Cases))]
	l := &c.Layouts[h.IntN(len(c.Layouts))]
	b := &build.Build{Case: c, Layout: l, Kits: 1}
	if b.Board = pick(h, h.Boards, func(p *part.Board) bool { return slices.Contains(l.Boards, p.Form) }); b.Board == nil {
		return nil
	}
	b.Processor = pick(h, h.Processors, func(p *part.Processor) bool {
		return p.Socket == b.Board.Socket && p.Sustained.Or(0) <= b.Board.Sustained.Or(0) && slices.ContainsFunc(p.Platforms, func(f part.Platform) bool {
			return f.Chipset == b.Board.Chipset && f.Firmware.Or(0) <= b.Board.Firmware.Or(0)
		})
	})
	if b.Processor == nil {
		return nil
	}
	b.Memory = pick(h, h.Memory, func(p *part.Memory) bool {
		return p.Type == b.Board.Memory && p.Form == b.Board.Module && p.Modules.Or(0) <= b.Board.Slots.Or(0)
	})
	b.Cooler = pick(h, h.Coolers, func(p *part.Cooler) bool {
		fits := p.Air != nil && p.Air.Height.Or(0) <= l.Cooler.Or(0) || p.Liquid != nil && len(l.Radiators) > 0
		return fits && slices.Contains(p.Sockets, b.Board.Socket) && p.Rated.Or(0) >= b.Processor.Sustained.Or(0)
	})
	b.Supply = pick(h, h.Supplies, func(p *part.Supply) bool {
		return slices.Contains(l.Supply.Forms, p.Form) && p.Length.Or(0)+p.PlugBend.Or(0) <= l.Supply.Length.Or(0)
	})
	b.Graphics = pick(h, h.Graphics, func(p *part.Graphics) bool {
		return p.Length.Or(0) <= l.Card.Length.Or(0) && p.Slots.Or(0) <= l.Card.Brackets.Or(0) && p.Height.Or(0) <= l.Card.Height.Or(0)
	})
	b.Boot = build.Storage{Drive: h.Drives[h.IntN(len(h.Drives))], Count: 1}
	if b.Memory == nil || b.Cooler == nil || b.Supply == nil || b.Graphics == nil {
		return nil
	}
	if b.Cooler.Liquid != nil {
		b.Face = l.Radiators[h.IntN(len(l.Radiators))].Face
	}
	return b
}

// standing is how many of so many tries, for which the stock has a part for every seat, pass every rule.
func standing(s *part.Stock, tries int) (stand, made int) {
	h := &hand{s, rand.New(rand.NewPCG(1, 2))}
	for range tries {
		b := h.build()
		if b == nil {
			continue
		}
		made++
		if proof := rule.Prove(b, nil); proof.Stands() {
			stand++
		}
	}
	return stand, made
}

// TestMachinesStand: of the machines a hand would try from parts that were grown, none of them built-in, about as many pass
// every rule as from the built-in stock.
func TestMachinesStand(t *testing.T) {
	from := embedded(t)
	stand, made := standing(from, 3000)
	require.Positive(t, stand)
	usual := float64(stand) / float64(made)
	t.Logf("built-in: %d of %d stand", stand, made)
	for seed := range uint64(5) {
		s := grown(t, 2000, seed)
		s.Cases, s.Boards, s.Processors = s.Cases[len(from.Cases):], s.Boards[len(from.Boards):], s.Processors[len(from.Processors):]
		s.Coolers, s.Memory, s.Graphics = s.Coolers[len(from.Coolers):], s.Memory[len(from.Memory):], s.Graphics[len(from.Graphics):]
		s.Supplies, s.Drives = s.Supplies[len(from.Supplies):], s.Drives[len(from.Drives):]
		stand, made := standing(s, 3000)
		t.Logf("seed %d: %d of %d stand", seed, stand, made)
		share := float64(stand) / float64(made)
		require.Greater(t, share, usual*0.6, "seed %d", seed)
		require.Less(t, share, usual*1.6, "seed %d", seed)
	}
}
