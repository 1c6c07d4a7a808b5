package catalog

import (
	"cmp"
	"math"
	"slices"
	"strings"
	"testing"

	"slipfit/core/format"
	"slipfit/core/part"
	"slipfit/core/unit"

	"github.com/stretchr/testify/require"
)

// The catalog is invented; these tests are the proof that it could be real. Standards are named beside the figures taken from
// them; "common practice" marks what the trade holds to and no standard says.

// stock is the embedded catalog.
func stock(t testing.TB) *part.Stock {
	t.Helper()
	s, err := Embedded()
	require.NoError(t, err)
	return s
}

// known is a figure that must be stated.
func known[T ~int64 | ~bool](t testing.TB, f unit.Figure[T], of string) T {
	t.Helper()
	v, ok := f.Get()
	require.True(t, ok, "%s is not stated", of)
	return v
}

// mm, w and g are figures in millimetres, watts and grams, for comparison with a standard's own numbers.
func mm(f unit.Figure[unit.Length]) float64 { return float64(f.Or(0)) / 1000 }
func w(f unit.Figure[unit.Power]) float64   { return float64(f.Or(0)) / 1000 }
func g(f unit.Figure[unit.Mass]) float64    { return float64(f.Or(0)) }

// ranks gives each value its rank, equal values their mean rank.
func ranks(v []float64) []float64 {
	order := make([]int, len(v))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(v[a], v[b]) })
	r := make([]float64, len(v))
	for i := 0; i < len(order); {
		j := i
		for j < len(order) && v[order[j]] == v[order[i]] {
			j++
		}
		for k := i; k < j; k++ {
			r[order[k]] = float64(i+j-1) / 2
		}
		i = j
	}
	return r
}

// spearman is the rank correlation of two lists: Pearson's coefficient of their ranks.
func spearman(x, y []float64) float64 {
	a, b := ranks(x), ranks(y)
	n := float64(len(a))
	var sa, sb float64
	for i := range a {
		sa, sb = sa+a[i], sb+b[i]
	}
	var ab, aa, bb float64
	for i := range a {
		da, db := a[i]-sa/n, b[i]-sb/n
		ab, aa, bb = ab+da*db, aa+da*da, bb+db*db
	}
	return ab / math.Sqrt(aa*bb)
}

func TestSpearman(t *testing.T) {
	require.InDelta(t, 1, spearman([]float64{1, 2, 3, 4}, []float64{10, 20, 25, 90}), 1e-12)
	require.InDelta(t, -1, spearman([]float64{1, 2, 3, 4}, []float64{9, 8, 2, 1}), 1e-12)
	// 1 - 6 sum(d^2) / (n (n^2 - 1)) for ranks without ties: d = 1, -1, 1, -1 gives 0.6
	require.InDelta(t, 0.6, spearman([]float64{1, 2, 3, 4}, []float64{2, 1, 4, 3}), 1e-12)
}

// correlate asks that two figures of the parts rise together at least as closely as the rank correlation says; at a
// negative bound, that one falls as the other rises.
func correlate[P any](t *testing.T, name string, list []P, atLeast float64, x, y func(P) float64) {
	t.Helper()
	var xs, ys []float64
	for _, p := range list {
		xs, ys = append(xs, x(p)), append(ys, y(p))
	}
	require.Greater(t, len(xs), 5, name)
	r := spearman(xs, ys)
	if atLeast < 0 {
		require.LessOrEqual(t, r, atLeast, "%s: rank correlation", name)
		return
	}
	require.GreaterOrEqual(t, r, atLeast, "%s: rank correlation", name)
}

func price[P interface{ Common() *part.Article }](p P) float64 { return float64(p.Common().Price) }
func mass[P interface{ Common() *part.Article }](p P) float64  { return g(p.Common().Mass) }

func keep[P any](list []P, want func(P) bool) []P {
	var kept []P
	for _, p := range list {
		if want(p) {
			kept = append(kept, p)
		}
	}
	return kept
}

func TestCounts(t *testing.T) {
	s := stock(t)
	for name, c := range map[string]struct{ have, least int }{
		"cases": {len(s.Cases), 26}, "boards": {len(s.Boards), 38}, "processors": {len(s.Processors), 32}, "coolers": {len(s.Coolers), 38},
		"memory": {len(s.Memory), 44}, "graphics": {len(s.Graphics), 42}, "supplies": {len(s.Supplies), 40}, "drives": {len(s.Drives), 52},
		"fans": {len(s.Fans), 26}, "monitors": {len(s.Monitors), 18}, "cards": {len(s.Cards), 20}, "ups": {len(s.UPS), 10}, "services": {len(s.Services), 10},
	} {
		require.GreaterOrEqual(t, c.have, c.least, name)
	}
	makers := map[string]bool{}
	for _, a := range s.Articles() {
		makers[a.Maker] = true
		require.Equal(t, strings.TrimSpace(a.Name), a.Name)
	}
	require.GreaterOrEqual(t, len(makers), 14)

	layouts := func(n int) []*part.Case {
		return keep(s.Cases, func(c *part.Case) bool { return len(c.Layouts) >= n })
	}
	require.GreaterOrEqual(t, len(layouts(2)), 7, "cases of more than one layout")
	moving := keep(s.Cases, func(c *part.Case) bool {
		return slices.ContainsFunc(c.Layouts, func(l part.Layout) bool { return l.Plate != nil && l.Card.Mount == part.Behind })
	})
	require.GreaterOrEqual(t, len(moving), 4, "cases whose board plate moves")
	require.GreaterOrEqual(t, len(keep(s.Memory, func(m *part.Memory) bool { return m.ECC.Or(false) })), 6)
	require.GreaterOrEqual(t, len(keep(s.Boards, func(b *part.Board) bool { return b.FlashAlone.Or(false) })), 10)
	for _, kind := range [][]string{{"udimm", "so-dimm", "rdimm"}} {
		for _, form := range kind {
			require.NotEmpty(t, keep(s.Memory, func(m *part.Memory) bool { return m.Form == form }), form)
			require.NotEmpty(t, keep(s.Boards, func(b *part.Board) bool { return b.Module == form }), form)
		}
	}
	faces := map[part.Face]bool{}
	for _, c := range s.Cases {
		for _, l := range c.Layouts {
			for _, r := range l.Radiators {
				faces[r.Face] = true
			}
		}
	}
	for _, f := range []part.Face{part.Front, part.Top, part.Bottom, part.Side, part.Rear} {
		require.True(t, faces[f], "no radiator mount at the %s", f)
	}
}

// TestFiguresAreStated lists every figure a part leaves out and asks for a reason; where none is given the sheet is poor.
func TestFiguresAreStated(t *testing.T) {
	s := stock(t)
	fails := func(id string, v any, excused func(path string) bool) {
		for _, path := range format.Missing(v) {
			require.True(t, excused(path), "%s: %s is not stated", id, path)
		}
	}
	ends := func(path string, names ...string) bool {
		return slices.ContainsFunc(names, func(n string) bool { return strings.HasSuffix(path, n) })
	}
	for _, p := range s.Cases { // a mount that never meets the card or the board; a bay no card reaches; a card without a riser
		fails(p.ID, p, func(x string) bool {
			return ends(x, "board_above_mm", "board_free_mm", "card_free_mm", "card_up_to_mm", "riser_pcie")
		})
		for _, l := range p.Layouts {
			_, riser := l.Card.Riser.Get()
			require.Equal(t, l.Card.Mount != part.InSlot, riser, "%s %s: a riser goes with a card away from its slot", p.ID, l.ID)
		}
	}
	for _, p := range s.Boards { // audio and switch headers feed nothing
		fails(p.ID, p, func(x string) bool {
			return ends(x, "current_a") || x == "memory_speed_two_mt_s" && p.Slots.Or(0) <= channels(p)
		})
	}
	for _, p := range s.Processors {
		fails(p.ID, p, func(string) bool { return false })
	}
	for _, p := range s.Coolers {
		fails(p.ID, p, func(string) bool { return false })
	}
	for _, p := range s.Memory {
		fails(p.ID, p, func(string) bool { return false })
	}
	for _, p := range s.Graphics { // a measured peak is rare on a sheet
		fails(p.ID, p, func(x string) bool { return x == "peak_w" })
	}
	for _, p := range s.Supplies {
		fails(p.ID, p, func(x string) bool { return ends(x, "rated_w") })
		for _, c := range p.Cables {
			_, rated := c.Rated.Get()
			require.Equal(t, slices.Contains(c.Plugs, part.PlugCard12), rated, p.ID)
		}
	}
	for _, p := range s.Drives {
		fails(p.ID, p, func(x string) bool {
			switch x {
			case "module_length", "height_above_mm", "two_sided", "own_heat_sink":
				return p.Form != part.FormM2
			case "height_mm":
				return p.Form == part.FormM2
			case "pcie", "lanes":
				return p.Bus == part.BusSATA
			case "endurance_tbw":
				return p.Disk
			}
			return false
		})
	}
	for _, p := range s.Fans {
		fails(p.ID, p, func(string) bool { return false })
	}
	for _, p := range s.Monitors {
		fails(p.ID, p, func(string) bool { return false })
	}
	for _, p := range s.Cards {
		fails(p.ID, p, func(x string) bool {
			return x == "holds_kg" && p.Use != part.UseHolder || x == "pcie" && p.Slot.Or(0) == 0 || ends(x, "current_a")
		})
	}
	for _, p := range s.UPS {
		fails(p.ID, p, func(string) bool { return false })
	}
}

// channels is how many memory channels the boards of a platform have: the workstation platform's processors drive four.
func channels(b *part.Board) unit.Whole {
	if b.Socket == "w2310" {
		return 4
	}
	return 2
}

// TestPricesRiseWithWhatIsBought holds the rank correlations a market shows (common practice; the thresholds are ours).
func TestPricesRiseWithWhatIsBought(t *testing.T) {
	s := stock(t)
	correlate(t, "processor, all-thread work", s.Processors, 0.9, func(p *part.Processor) float64 { return float64(p.All.Or(0)) }, price)
	correlate(t, "processor, one-thread work", keep(s.Processors, func(p *part.Processor) bool { return p.Channels.Or(0) == 2 }), 0.7, func(p *part.Processor) float64 { return float64(p.Single.Or(0)) }, price)
	home := keep(s.Graphics, func(p *part.Graphics) bool { return p.Maker != "Gravenhal" })
	work := keep(s.Graphics, func(p *part.Graphics) bool { return p.Maker == "Gravenhal" })
	draw := func(p *part.Graphics) float64 { return float64(p.Draw.Or(0)) }
	correlate(t, "graphics, picture work", home, 0.95, draw, price)
	correlate(t, "workstation graphics, picture work", work, 0.95, draw, price)
	correlate(t, "graphics memory", s.Graphics, 0.85, func(p *part.Graphics) float64 { return float64(p.Memory.Or(0)) }, price)
	for _, typ := range []part.MemoryType{part.DDR4, part.DDR5} {
		kits := keep(s.Memory, func(m *part.Memory) bool { return m.Type == typ })
		correlate(t, "memory size "+string(typ), kits, 0.9, func(m *part.Memory) float64 { return float64(m.Module.Or(0)) * float64(m.Modules.Or(0)) }, price)
	}
	capacity := func(d *part.Drive) float64 { return float64(d.Capacity.Or(0)) }
	correlate(t, "module capacity", keep(s.Drives, func(d *part.Drive) bool { return d.Form == part.FormM2 }), 0.85, capacity, price)
	correlate(t, "2.5 inch solid state capacity", keep(s.Drives, func(d *part.Drive) bool { return d.Form == part.Form25 && !d.Disk }), 0.95, capacity, price)
	correlate(t, "disk capacity", keep(s.Drives, func(d *part.Drive) bool { return d.Disk }), 0.85, capacity, price)
	correlate(t, "boards, converter watts", s.Boards, 0.85, func(b *part.Board) float64 { return w(b.Sustained) }, price)
	correlate(t, "cases, volume", s.Cases, 0.4, func(c *part.Case) float64 { return float64(c.Volume.Or(0)) }, price)
	for _, form := range []part.SupplyForm{part.SupplyATX, part.SupplySFX, part.SupplySFXL} {
		list := keep(s.Supplies, func(p *part.Supply) bool { return p.Form == form })
		if len(list) > 5 {
			correlate(t, "supply rating "+string(form), list, 0.75, func(p *part.Supply) float64 { return w(p.Rating) }, price)
		}
	}
	correlate(t, "air coolers, rating", keep(s.Coolers, func(c *part.Cooler) bool { return c.Air != nil }), 0.75, func(c *part.Cooler) float64 { return w(c.Rated) }, price)
	correlate(t, "liquid coolers, rating", keep(s.Coolers, func(c *part.Cooler) bool { return c.Liquid != nil }), 0.85, func(c *part.Cooler) float64 { return w(c.Rated) }, price)
	correlate(t, "monitors, pixels a second", s.Monitors, 0.6, func(m *part.Monitor) float64 {
		return float64(m.Width.Or(0) * m.Height.Or(0) * m.Refresh.Or(0))
	}, price)
	correlate(t, "ups, watts", s.UPS, 0.9, func(u *part.UPS) float64 { return w(u.Real) }, price)
}

func TestMassGrowsWithSize(t *testing.T) {
	s := stock(t)
	correlate(t, "cases", s.Cases, 0.9, func(c *part.Case) float64 { return float64(c.Volume.Or(0)) }, mass)
	correlate(t, "graphics, power", s.Graphics, 0.85, func(p *part.Graphics) float64 { return w(p.Power) }, mass)
	correlate(t, "graphics, volume", s.Graphics, 0.9, func(p *part.Graphics) float64 { return mm(p.Length) * mm(p.Height) * mm(p.Thickness) }, mass)
	correlate(t, "air coolers, height", keep(s.Coolers, func(c *part.Cooler) bool { return c.Air != nil }), 0.75, func(c *part.Cooler) float64 { return mm(c.Air.Height) }, mass)
	correlate(t, "liquid coolers, radiator", keep(s.Coolers, func(c *part.Cooler) bool { return c.Liquid != nil }), 0.9, func(c *part.Cooler) float64 { return mm(c.Liquid.Length) * mm(c.Liquid.Width) * mm(c.Liquid.Thickness) }, mass)
	correlate(t, "ups, watts", s.UPS, 0.9, func(u *part.UPS) float64 { return w(u.Real) }, mass)
	correlate(t, "monitors, diagonal", s.Monitors, 0.85, func(m *part.Monitor) float64 { return mm(m.Diagonal) }, mass)
	correlate(t, "supplies, rating", s.Supplies, 0.5, func(p *part.Supply) float64 { return w(p.Rating) }, mass)
}
