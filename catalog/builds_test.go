package catalog_test

import (
	"math/rand"
	"slices"
	"testing"

	"slipfit/catalog"
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/rule"
	"slipfit/core/unit"

	"github.com/stretchr/testify/require"
)

// sampler puts machines together as a hand does that looks at one or two figures at a time, leaving the rest to the rules.
type sampler struct {
	*part.Stock
	*rand.Rand
}

func pick[P any](s *sampler, list []*P, fits func(*P) bool) *P {
	var kept []*P
	for _, p := range list {
		if fits(p) {
			kept = append(kept, p)
		}
	}
	if len(kept) == 0 {
		return nil
	}
	return kept[s.Intn(len(kept))]
}

func runs(p *part.Processor, b *part.Board) bool {
	return p.Socket == b.Socket && p.Sustained.Or(0) <= b.Sustained.Or(0) && slices.ContainsFunc(p.Platforms, func(f part.Platform) bool {
		return f.Chipset == b.Chipset && f.Firmware.Or(0) <= b.Firmware.Or(0)
	})
}

// build is a machine in the layout, nil where the stock has nothing for a seat.
func (s *sampler) build(c *part.Case, l *part.Layout) *build.Build {
	b := &build.Build{Case: c, Layout: l, Kits: 1}
	if l.Plate != nil {
		b.Plate = s.Intn(int(l.Plate.Steps) + 1)
	}
	if b.Board = pick(s, s.Boards, func(p *part.Board) bool { return slices.Contains(l.Boards, p.Form) }); b.Board == nil {
		return nil
	}
	if b.Processor = pick(s, s.Processors, func(p *part.Processor) bool { return runs(p, b.Board) }); b.Processor == nil {
		return nil
	}
	b.Memory = pick(s, s.Memory, func(p *part.Memory) bool {
		return p.Type == b.Board.Memory && p.Form == b.Board.Module && p.Modules.Or(0) <= b.Board.Slots.Or(0)
	})
	b.Cooler = pick(s, s.Coolers, func(p *part.Cooler) bool {
		fits := p.Air != nil && p.Air.Height.Or(0) <= l.Cooler.Or(0) || p.Liquid != nil && len(l.Radiators) > 0
		return fits && slices.Contains(p.Sockets, b.Board.Socket) && p.Rated.Or(0) >= b.Processor.Sustained.Or(0)
	})
	b.Supply = pick(s, s.Supplies, func(p *part.Supply) bool {
		return slices.Contains(l.Supply.Forms, p.Form) && p.Length.Or(0)+p.PlugBend.Or(0) <= l.Supply.Length.Or(0)
	})
	b.Boot = build.Storage{Drive: pick(s, s.Drives, func(*part.Drive) bool { return true }), Count: 1}
	if b.Memory == nil || b.Cooler == nil || b.Supply == nil || b.Boot.Drive == nil {
		return nil
	}
	if b.Cooler.Liquid != nil {
		b.Face = l.Radiators[s.Intn(len(l.Radiators))].Face
	}
	if b.Processor.Graphics == nil || s.Intn(4) > 0 {
		b.Graphics = pick(s, s.Graphics, func(p *part.Graphics) bool {
			return p.Length.Or(0) <= l.Card.Length.Or(0) && p.Slots.Or(0) <= l.Card.Brackets.Or(0) && p.Height.Or(0) <= l.Card.Height.Or(0)
		})
		if b.Graphics == nil {
			return nil
		}
	}
	return b
}

// price of the parts in the box, before tax.
func price(b *build.Build) unit.Money {
	var sum unit.Money
	for _, line := range b.Lines() {
		sum += line.Price()
	}
	return sum
}

// TestEveryLayoutStandsFull: in every layout many of the machines a hand would try pass every rule, cheap ones and dear ones.
func TestEveryLayoutStandsFull(t *testing.T) {
	stock, err := catalog.Embedded()
	require.NoError(t, err)
	s := &sampler{stock, rand.New(rand.NewSource(1))}
	least, most := unit.Money(1<<40), unit.Money(0)
	for _, c := range stock.Cases {
		for i := range c.Layouts {
			standing := 0
			for range 500 {
				b := s.build(c, &c.Layouts[i])
				if b == nil {
					continue
				}
				if proof := rule.Prove(b, nil); proof.Stands() {
					standing++
					least, most = min(least, price(b)), max(most, price(b))
				}
			}
			require.GreaterOrEqual(t, standing, 10, "%s %s", c.ID, c.Layouts[i].ID)
		}
	}
	require.Less(t, least, unit.Money(600_00), "the cheapest machine found")
	require.Greater(t, most, unit.Money(6000_00), "the dearest machine found")
}

// TestEveryPartHasAMachine: no part in the catalog is one that can never be sold; each is in a machine that passes every rule.
func TestEveryPartHasAMachine(t *testing.T) {
	stock, err := catalog.Embedded()
	require.NoError(t, err)
	finds(t, stock, stock.Boards, func(s *part.Stock, p []*part.Board) { s.Boards = p })
	finds(t, stock, stock.Processors, func(s *part.Stock, p []*part.Processor) { s.Processors = p })
	finds(t, stock, stock.Coolers, func(s *part.Stock, p []*part.Cooler) { s.Coolers = p })
	finds(t, stock, stock.Memory, func(s *part.Stock, p []*part.Memory) { s.Memory = p })
	finds(t, stock, stock.Graphics, func(s *part.Stock, p []*part.Graphics) { s.Graphics = p })
	finds(t, stock, stock.Supplies, func(s *part.Stock, p []*part.Supply) { s.Supplies = p })
	finds(t, stock, stock.Drives, func(s *part.Stock, p []*part.Drive) { s.Drives = p })
}

// finds looks for a standing machine with each part, from a stock that holds nothing else of its kind.
func finds[P interface{ Common() *part.Article }](t *testing.T, stock *part.Stock, parts []P, only func(*part.Stock, []P)) {
	t.Helper()
	for _, p := range parts {
		bare := *stock
		only(&bare, []P{p})
		s := &sampler{&bare, rand.New(rand.NewSource(2))}
		require.True(t, stands(s, p.Common().ID), "no machine with %s passes every rule", p.Common().ID)
	}
}

func stands(s *sampler, id string) bool {
	for range 20_000 {
		c := s.Cases[s.Intn(len(s.Cases))]
		b := s.build(c, &c.Layouts[s.Intn(len(c.Layouts))])
		if b == nil || !slices.ContainsFunc(b.Lines(), func(l build.Line) bool { return l.Article.ID == id }) {
			continue
		}
		if proof := rule.Prove(b, nil); proof.Stands() {
			return true
		}
	}
	return false
}
