package catalog

import (
	"testing"

	"slipfit/core/part"

	"github.com/stretchr/testify/require"
)

// TestCardPower checks cards against the slot and auxiliary plug ratings: slot 75 W (card specification), 2x3 75 W, 2x4 150 W,
// 12-contact 600 W (ATX 3.0 guide, table 3-5), one card 600 W in all (CEM 5.0).
func TestCardPower(t *testing.T) {
	s := stock(t)
	rated := map[part.SocketKind]float64{part.SocketCard6: 75, part.SocketCard8: 150, part.SocketCard12: 600}
	seen := map[string]bool{}
	for _, p := range s.Graphics {
		most, kinds := 75.0, ""
		for _, k := range p.Sockets {
			most += rated[k.Kind] * float64(k.Count.Or(0))
			kinds += string(k.Kind)
			if k.Count.Or(0) > 1 {
				kinds += k.Count.Or(0).Q().String()
			}
		}
		seen[kinds] = true
		require.LessOrEqual(t, w(p.Power), most, p.ID)
		require.LessOrEqual(t, w(p.Power), 600.0, p.ID)
		require.GreaterOrEqual(t, w(p.Advised), w(p.Power)+200, "%s: the maker leaves room for the rest of the machine (common practice)", p.ID)
		if peak, ok := p.Peak.Get(); ok { // three times the sustained power over 100 us at most (CEM 5.x, as its author states)
			require.LessOrEqual(t, float64(peak)/1000, 3*w(p.Power), p.ID)
			require.GreaterOrEqual(t, float64(peak)/1000, 1.5*w(p.Power), p.ID)
		}
		require.LessOrEqual(t, w(p.Idle), 30.0, p.ID)
		if p.PlugSide == "top" { // 30 mm for a 2x4 with its bend; 35 mm straight for the 12-contact kind (trade guidance)
			need := 30.0
			if p.Sockets[0].Kind == part.SocketCard12 {
				need = 35
			}
			require.GreaterOrEqual(t, mm(p.PlugRoom), need, p.ID)
		}
	}
	for _, kinds := range []string{"", "card-6", "card-8", "card-8card-6", "card-82", "card-83", "card-12"} {
		require.True(t, seen[kinds], "no card fed by %q", kinds)
	}
}

// TestCardSizes checks brackets and heights: pitch 20.32 mm, full height 111.15 mm, low profile 68.90 mm (CAD models and card
// tables); many cards stand higher than the bracket.
func TestCardSizes(t *testing.T) {
	s := stock(t)
	low := 0
	for _, p := range s.Graphics {
		slots := float64(p.Slots.Or(0))
		require.LessOrEqual(t, mm(p.Thickness), slots*20.32, "%s: a card stays within the brackets it takes", p.ID)
		require.Greater(t, mm(p.Thickness), (slots-1)*20.32-6, "%s: and needs them", p.ID)
		require.True(t, mm(p.Length) >= 150 && mm(p.Length) <= 360, p.ID)
		switch h := mm(p.Height); {
		case h == 68.9:
			low++
			require.LessOrEqual(t, w(p.Power), 75.0, p.ID)
		default:
			require.GreaterOrEqual(t, h, 111.15, p.ID)
		}
		require.Contains(t, []int64{4, 8, 16}, int64(p.Lanes.Or(0)), p.ID)
		// 0.10 to 0.18 K/W from core to inlet air at 250 to 450 W (common practice)
		r := float64(p.CoreFixed.Or(0)+p.CoreAir.Or(0)) / 1000
		if w(p.Power) >= 250 {
			require.True(t, r >= 0.09 && r <= 0.19, "%s: %v K/W", p.ID, r)
		}
		require.LessOrEqual(t, 35+w(p.Power)*r, float64(p.Limit.Or(0))/1000, "%s: holds its power in case air of 35 degrees at full fan speed", p.ID)
	}
	require.GreaterOrEqual(t, low, 4, "low-profile cards")
	fanned := keep(s.Graphics, func(p *part.Graphics) bool { return p.Fans.Or(0) > 0 })
	require.GreaterOrEqual(t, len(s.Graphics)-len(fanned), 2, "passive cards")
	correlate(t, "core to air falls as power grows", fanned, -0.9, func(p *part.Graphics) float64 { return w(p.Power) }, func(p *part.Graphics) float64 { return float64(p.CoreAir.Or(0)) })
	correlate(t, "picture work with power", s.Graphics, 0.9, func(p *part.Graphics) float64 { return w(p.Power) }, func(p *part.Graphics) float64 { return float64(p.Draw.Or(0)) })
	correlate(t, "memory bandwidth with compute", s.Graphics, 0.95, func(p *part.Graphics) float64 { return float64(p.MemoryRate.Or(0)) }, func(p *part.Graphics) float64 { return float64(p.Compute.Or(0)) })
}

func TestSupplyBodiesAndRails(t *testing.T) {
	for _, p := range stock(t).Supplies {
		depth := mm(p.Length)
		switch p.Form {
		case part.SupplyATX: // PS/2 body 150 x 86 x 140; long bodies to 230 (trade lists)
			require.True(t, depth >= 140 && depth <= 230, p.ID)
		case part.SupplySFX: // 125 x 63.5 x 100 (ATX guide family, SFX chapter)
			require.Equal(t, 100.0, depth, p.ID)
		case part.SupplySFXL: // 125 x 63.5 x 130, common practice
			require.Equal(t, 130.0, depth, p.ID)
		}
		rail12 := float64(p.Rail12.Or(0)) / 1000 * 12
		require.LessOrEqual(t, rail12, w(p.Rating)+1, "%s: 12 V rails against the rating", p.ID)
		require.GreaterOrEqual(t, rail12, 0.95*w(p.Rating), p.ID)
		minor := float64(p.Rail5.Or(0))/1000*5 + float64(p.Rail33.Or(0))/1000*3.3
		require.LessOrEqual(t, w(p.Minor), minor+1, "%s: minor rails together against each", p.ID)
		// hold-up in all: 3.0 at least 17 ms, 3.1 at least 12 ms (guides 2.01 table 4-9, 2.1a table 4-10)
		require.GreaterOrEqual(t, int64(p.HoldUp.Or(0)), map[part.Guide]int64{part.Guide2: 12, part.Guide30: 17, part.Guide31: 12}[p.Guide], p.ID)
		require.LessOrEqual(t, w(p.ZeroTo), 0.65*w(p.Rating), p.ID)
		require.Equal(t, p.ZeroTo.Or(0) > 0, p.Fan.Lowest.Or(1) == 0, "%s: a fan that stands still can stop", p.ID)
	}
}

// TestSupplyLevels checks the sheets' own load points against the 115 V internal table of the 80 PLUS programme.
func TestSupplyLevels(t *testing.T) {
	least := map[part.Level]map[int64]float64{
		part.White:    {20: 80, 50: 80, 100: 80},
		part.Bronze:   {20: 82, 50: 85, 100: 82},
		part.Silver:   {20: 85, 50: 88, 100: 85},
		part.Gold:     {20: 87, 50: 90, 100: 87},
		part.Platinum: {20: 90, 50: 92, 100: 89},
		part.Titanium: {10: 90, 20: 92, 50: 94, 100: 90},
	}
	seen := map[part.Level]int{}
	for _, p := range stock(t).Supplies {
		seen[p.Level]++
		stated := map[int64]float64{}
		for _, point := range p.Curve {
			stated[int64(point.Load)/1000] = float64(point.Efficiency) / 1000
		}
		for load, floor := range least[p.Level] {
			if have, ok := stated[load]; ok {
				require.GreaterOrEqual(t, have, floor, "%s at %d %%", p.ID, load)
				require.LessOrEqual(t, have, floor+5, "%s at %d %%: would be sold as a better level", p.ID, load)
			} else {
				require.Empty(t, p.Curve, "%s states load points but not %d %%", p.ID, load)
			}
		}
	}
	for level := range least {
		require.Positive(t, seen[level], "no supply of level %s", level)
	}
}

func TestSupplyCables(t *testing.T) {
	guides := map[part.Guide]int{}
	for _, p := range stock(t).Supplies {
		guides[p.Guide]++
		count := map[part.PlugKind]int64{}
		announced := 0.0
		for _, c := range p.Cables {
			n := int64(known(t, c.Count, p.ID+" cable count"))
			for _, plug := range c.Plugs {
				count[plug] += n
			}
			if rated, ok := c.Rated.Get(); ok { // levels the sense pins can announce (guide 2.1a, section 3.3)
				require.Contains(t, []float64{150, 300, 450, 600}, float64(rated)/1000, p.ID)
				announced += float64(rated) / 1000 * float64(n)
			}
			require.GreaterOrEqual(t, mm(c.Length), 150.0, "%s: shortest harness of the guide (ATX12VO 2.0)", p.ID)
		}
		rating := w(p.Rating)
		require.EqualValues(t, 1, count[part.PlugMain24], p.ID)
		processor := count[part.PlugProcessor44] + count[part.PlugProcessor8]
		require.Positive(t, processor, p.ID)
		if rating >= 1000 {
			require.GreaterOrEqual(t, processor, int64(2), p.ID)
		}
		require.GreaterOrEqual(t, count[part.PlugSATA], int64(3), p.ID)
		if p.Guide != part.Guide2 && rating > 450 { // 12-contact plug required above 450 W (guide 3.0, section 5.2.2.4.3)
			require.Positive(t, count[part.PlugCard12], p.ID)
		}
		if p.Guide == part.Guide2 {
			require.Zero(t, count[part.PlugCard12], p.ID)
		}
		card := announced + 150*float64(count[part.PlugCard62])
		require.GreaterOrEqual(t, card, 0.4*rating, "%s: card plugs enough for the rating (common practice)", p.ID)
		require.LessOrEqual(t, announced/float64(max(1, count[part.PlugCard12])), rating-100, "%s: announces what it cannot give", p.ID)
	}
	for _, g := range []part.Guide{part.Guide2, part.Guide30, part.Guide31} {
		require.GreaterOrEqual(t, guides[g], 6, g)
	}
}

// TestUPS: a unit must satisfy both ratings, watts 0.5 to 0.9 of the volt-amperes (common practice).
func TestUPS(t *testing.T) {
	for _, u := range stock(t).UPS {
		factor := w(u.Real) / w(u.Apparent)
		require.True(t, factor >= 0.5 && factor <= 0.9, "%s: %v", u.ID, factor)
		require.LessOrEqual(t, u.Runtime[len(u.Runtime)-1].Load, u.Real.Or(0), u.ID)
		last := 1e9
		for _, r := range u.Runtime { // a battery gives less of its energy at a high draw (Peukert)
			wh := float64(r.Load) / 1000 * float64(r.Minutes) / 60
			require.LessOrEqual(t, wh, last*1.1, u.ID)
			last = wh
		}
		require.LessOrEqual(t, int64(u.Transfer.Or(0)), int64(10), "%s: 2 to 10 ms, none for a double converter (common practice)", u.ID)
	}
}
