package rule

import (
	"math/rand/v2"
	"testing"

	"slipfit/catalog"
	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/unit"

	"github.com/stretchr/testify/require"
)

// TestMostTaken holds the sum by which mains passes to builds that load their supply nearly in full, on circuits that just carry them or
// just do not.
func TestMostTaken(t *testing.T) {
	stock, err := catalog.Embedded()
	require.NoError(t, err)
	r := rand.New(rand.NewPCG(230, 10))
	sufficed, failed, lacked := 0, 0, 0
	for range 20_000 {
		b := randomBuild(r, stock)
		for _, s := range build.Compulsory() {
			if !b.Filled(s) {
				randomSeat(r, b, s, stock)
			}
		}
		load := allOut(NewView(b, &brief.Needs{}))
		full := *b.Supply
		full.Rating.Set(load + load*unit.Power(r.IntN(4))/100)
		if full.Curve = nil; r.IntN(2) == 0 {
			at := unit.Share(0)
			for range 1 + r.IntN(4) {
				at += unit.Share(1000 + r.IntN(24_000))
				full.Curve = append(full.Curve, part.LoadPoint{Load: at, Efficiency: unit.Share(50_000 + r.IntN(45_000))})
			}
		}
		b.Supply = &full
		n := &brief.Needs{}
		need := mainsNeed(b, n)
		n.Place.Circuit.Set(need * unit.Current(100+r.IntN(60)) / 100)
		if r.IntN(10) == 0 && b.Memory != nil {
			lacking := *b.Memory
			lacking.Power = unit.Figure[unit.Power]{}
			b.Memory = &lacking
			require.False(t, suffices(NewView(b, n), &Mains))
			lacked++
		}
		stands := passes(NewView(b, n).Run(&Mains))
		if suffices(NewView(b, n), &Mains) {
			require.True(t, stands, "rated %v, curve %v, circuit %v", full.Rating, full.Curve, n.Place.Circuit)
			sufficed++
		} else if !stands {
			failed++
		}
	}
	t.Logf("%d sufficed, %d failed, %d lacked a figure", sufficed, failed, lacked)
	require.Greater(t, sufficed, 1000)
	require.Greater(t, failed, 1000)
	require.Greater(t, lacked, 1000)
}

// mainsNeed is what a build is found to take of its circuit, mA.
func mainsNeed(b *build.Build, n *brief.Needs) unit.Current {
	for _, m := range NewView(b, n).Run(&Mains) {
		return unit.Current(m.Need.N)
	}
	return 0
}
