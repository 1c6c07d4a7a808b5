package rule

import (
	"math/rand/v2"
	"testing"

	"slipfit/catalog"
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/unit"

	"github.com/stretchr/testify/require"
)

// TestReachToDrives holds the sums of cable and way to the rule itself: where all figures are known, a build fails by it just where one of
// them is negative, whatever cables a supply has.
func TestReachToDrives(t *testing.T) {
	stock, err := catalog.Embedded()
	require.NoError(t, err)
	r := rand.New(rand.NewPCG(450, 3))
	failed, stood, bare := 0, 0, 0
	for range 20_000 {
		b := randomBuild(r, stock)
		randomSeat(r, b, build.Case, stock)
		randomSeat(r, b, build.Supply, stock)
		supply, layout := *b.Supply, *b.Layout
		supply.Cables = nil
		for range r.IntN(4) {
			plug := []part.PlugKind{part.PlugSATA, part.PlugMain24}[r.IntN(2)]
			supply.Cables = append(supply.Cables, part.Cable{Plugs: []part.PlugKind{plug}, Count: unit.Known(unit.Whole(1 + r.IntN(2))), Length: unit.Known(unit.Length(r.IntN(900)) * unit.Millimetre)})
		}
		layout.Routes.Drive.Set(unit.Length(r.IntN(900)) * unit.Millimetre)
		b.Supply, b.Layout = &supply, &layout
		v := NewView(b, nil)
		least := int64(0)
		for i := range SupplyReachDrives.Bounds {
			sum := int64(0)
			for _, s := range SupplyReachDrives.Reads {
				gives, takes, known := v.Term(&SupplyReachDrives, &SupplyReachDrives.Bounds[i], s)
				require.True(t, known)
				sum += gives - takes
			}
			least = min(least, sum)
		}
		stands := passes(v.Run(&SupplyReachDrives))
		require.Equal(t, least >= 0, stands)
		if _, some := v.longest(1, isSATA); !some {
			require.True(t, stands)
			bare++
		}
		if stands {
			stood++
		} else {
			failed++
		}
	}
	t.Logf("%d failed, %d stood, %d of them without such cables", failed, stood, bare)
	require.Greater(t, failed, 1000)
	require.Greater(t, stood-bare, 1000)
	require.Greater(t, bare, 1000)
}
