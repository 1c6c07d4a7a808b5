package catalog

import (
	"fmt"
	"slices"
	"testing"

	"slipfit/core/part"

	"github.com/stretchr/testify/require"
)

// between the board's top face and the plate's far side: board 1.57 mm (microATX 1.2, figure 4), standoff 6.35 mm (bottom
// keep-out of the same), sheet metal about 1 mm (common practice)
const boardStack = 1.57 + 6.35 + 1

func eachLayout(t *testing.T, check func(t *testing.T, c *part.Case, l *part.Layout)) {
	t.Helper()
	for _, c := range stock(t).Cases {
		for i := range c.Layouts {
			t.Run(fmt.Sprintf("%s %s", c.ID, c.Layouts[i].ID), func(t *testing.T) { check(t, c, &c.Layouts[i]) })
		}
	}
}

func TestCaseSizes(t *testing.T) {
	for _, c := range stock(t).Cases {
		wide, high, deep := mm(c.Outer.Width), mm(c.Outer.Height), mm(c.Outer.Depth)
		box := wide * high * deep / 1e6
		litres := float64(c.Volume.Or(0)) / 1000
		require.GreaterOrEqual(t, litres, 7.0, c.ID)
		require.LessOrEqual(t, litres, 60.0, c.ID)
		require.LessOrEqual(t, litres, box, c.ID)
		require.GreaterOrEqual(t, litres, box*0.9, "%s: feet and protrusions take little of the box", c.ID)
		if len(c.Fans) == 0 {
			free := int64(0)
			for _, o := range c.Openings {
				free += int64(o.Free.Or(0))
			}
			require.Greater(t, free, int64(1000), "%s brings no fan, so it must be open", c.ID)
		}
		for _, o := range c.Openings {
			side := map[part.Face]float64{part.Front: wide * high, part.Rear: wide * high, part.Top: wide * deep, part.Bottom: wide * deep, part.Side: 2 * high * deep}[o.Face] / 100
			require.Less(t, float64(o.Free.Or(0)), 0.75*side, "%s: more opening at the %s than a grille leaves", c.ID, o.Face)
		}
	}
}

func TestLayoutsFitTheirCases(t *testing.T) {
	eachLayout(t, func(t *testing.T, c *part.Case, l *part.Layout) {
		wide, high, deep := mm(c.Outer.Width), mm(c.Outer.Height), mm(c.Outer.Depth)
		cooler, length, thick, height := mm(l.Cooler), mm(l.Card.Length), mm(l.Card.Thickness), mm(l.Card.Height)
		brackets := float64(l.Card.Brackets.Or(0))

		long := deep
		if high > deep && l.Card.Mount == part.Behind {
			long = high // a chimney, the card on edge
		}
		require.LessOrEqual(t, length+18, long, "a bracket recess and a front panel stand at the card's ends")
		travel := 0.0
		if l.Plate != nil {
			travel = float64(l.Plate.Step) * float64(l.Plate.Steps) / 1000
		}
		// slot pitch 20.32 mm (CAD models of the slot drawing); the last card may stand past its bracket up to a shroud
		require.LessOrEqual(t, thick+travel, brackets*20.32+25, "more thickness than brackets")
		switch {
		case l.Card.Mount == part.Behind:
			require.LessOrEqual(t, cooler+thick+boardStack+4, wide, "cooler, plate and card stack across the width")
			require.True(t, l.Chambers)
		case l.Card.Mount == part.InSlot && !l.Lies:
			require.LessOrEqual(t, cooler+boardStack+12, wide, "cooler and cable room stack across the width")
			// a seated card starts 3.40 mm above the board and ends under the same panel as the cooler
			require.InDelta(t, cooler, height+3.4, 12)
		case l.Card.Mount == part.Facing:
			require.LessOrEqual(t, thick+boardStack+20, wide)
		}
		if l.Lies {
			require.LessOrEqual(t, cooler+boardStack+8, high, "a lying board carries its cooler upright")
		}
		// boards: ATX 305 x 244, microATX 244 x 244, Mini-ITX 170 x 170 (microATX 1.2, table 3; Mini-ITX 1.1, table 1)
		across, along := high, deep
		if l.Lies {
			across = wide
		}
		size := map[part.BoardForm][2]float64{part.ATX: {305, 244}, part.MicroATX: {244, 244}, part.MiniITX: {170, 170}}
		for _, f := range l.Boards {
			edge, depth := size[f][0], size[f][1]
			fits := edge <= across-4 && depth <= along-20
			turned := edge <= along-20 && depth <= across-4
			require.True(t, fits || l.Card.Mount == part.Behind && turned, "%s board", f)
		}
		slots := map[part.BoardForm]int64{part.ATX: 7, part.MicroATX: 4, part.MiniITX: 1}
		if slices.Contains(l.Boards, part.ATX) && l.Card.Mount == part.InSlot {
			require.GreaterOrEqual(t, int64(l.Card.Brackets.Or(0)), slots[part.ATX])
		}
	})
}

func TestRadiatorMountsAndFanPlaces(t *testing.T) {
	eachLayout(t, func(t *testing.T, c *part.Case, l *part.Layout) {
		wide, high, deep := mm(c.Outer.Width), mm(c.Outer.Height), mm(c.Outer.Depth)
		span := map[part.Face]float64{part.Front: high, part.Rear: high, part.Top: deep, part.Bottom: deep, part.Side: max(high, deep)}
		breadth := map[part.Face]float64{part.Front: wide, part.Rear: wide, part.Top: wide, part.Bottom: wide, part.Side: min(high, deep)}
		for _, r := range l.Radiators {
			require.LessOrEqual(t, mm(r.Length), span[r.Face], "%s radiator", r.Face)
			smallest := float64(slices.Min(r.FanSizes)) / 1000
			// nominal n x fan size; tanks add 20 to 55 mm (common practice)
			require.GreaterOrEqual(t, mm(r.Length), smallest*float64(r.Fans.Or(0))+20, "%s radiator: room for its own nominal size", r.Face)
			require.LessOrEqual(t, float64(slices.Max(r.FanSizes))/1000, breadth[r.Face], "%s radiator", r.Face)
			require.GreaterOrEqual(t, mm(r.Thickness), 52.0, "%s radiator: core 27 mm and fan 25 mm (common practice)", r.Face)
			require.Equal(t, r.Face == part.Top || r.Face == part.Rear || r.Face == part.Side || r.TankHigh.Or(false), r.TankHigh.Or(false), "%s radiator lies above the pump", r.Face)
		}
		for _, p := range l.FanPlaces {
			require.LessOrEqual(t, float64(slices.Min(p.FanSizes))/1000*float64(p.Fans.Or(0)), span[p.Face], "%s fans", p.Face)
		}
		for _, f := range c.Fans {
			require.True(t, slices.ContainsFunc(l.FanPlaces, func(p part.FanPlace) bool {
				return p.Face == f.Face && slices.Contains(p.FanSizes, f.Size.Or(0)) && p.Fans.Or(0) >= f.Count.Or(0) && p.Thickness.Or(0) >= f.Thickness.Or(0)
			}), "the fans that come at the %s have no place in this layout", f.Face)
		}
	})
}

// TestLayoutsCanBeFurnished finds for every layout a board, a cooler, a graphics card and a supply whose cables reach: no case
// in the catalog is one that cannot be built in.
func TestLayoutsCanBeFurnished(t *testing.T) {
	s := stock(t)
	eachLayout(t, func(t *testing.T, c *part.Case, l *part.Layout) {
		boards := keep(s.Boards, func(b *part.Board) bool { return slices.Contains(l.Boards, b.Form) })
		require.GreaterOrEqual(t, len(boards), 5)
		coolers := keep(s.Coolers, func(k *part.Cooler) bool { return k.Air != nil && k.Air.Height.Or(0) <= l.Cooler.Or(0) })
		require.GreaterOrEqual(t, len(coolers), 5)
		cards := keep(s.Graphics, func(p *part.Graphics) bool {
			plug := 0.0
			if p.PlugSide == "top" {
				plug = mm(p.PlugRoom)
			}
			return p.Length.Or(0) <= l.Card.Length.Or(0) && p.Slots.Or(0) <= l.Card.Brackets.Or(0) &&
				p.Thickness.Or(0)+l.Card.Breathing.Or(0) <= l.Card.Thickness.Or(0) && mm(p.Height)+plug <= mm(l.Card.Height)
		})
		require.GreaterOrEqual(t, len(cards), 3)
		supplies := keep(s.Supplies, func(p *part.Supply) bool {
			if !slices.Contains(l.Supply.Forms, p.Form) || mm(p.Length)+mm(p.PlugBend) > mm(l.Supply.Length) {
				return false
			}
			reach := map[part.PlugKind]float64{}
			for _, cable := range p.Cables {
				for _, plug := range cable.Plugs {
					reach[plug] = max(reach[plug], mm(cable.Length))
				}
			}
			card := max(reach[part.PlugCard62], reach[part.PlugCard12])
			return reach[part.PlugMain24] >= mm(l.Routes.Main) && reach[part.PlugProcessor44] >= mm(l.Routes.Processor) && card >= mm(l.Routes.Card)
		})
		require.GreaterOrEqual(t, len(supplies), 4)
	})
}
