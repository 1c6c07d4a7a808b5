package verb

import (
	"math"
	"testing"

	"slipfit/core/brief"
	"slipfit/core/plan"
	"slipfit/core/unit"

	"github.com/stretchr/testify/require"
)

// TestNotesOfASearch holds the notes to the letter that a search tells while it goes on.
func TestNotesOfASearch(t *testing.T) {
	n := &brief.Needs{}
	n.By[brief.AllWork].Weight = 1 // a thousand value points in all
	course := func(found int, nodes int64, best, bound plan.Bound) plan.Course {
		return plan.Course{Found: found, Nodes: nodes, Best: best, Bound: bound}
	}
	price := func(p unit.Money) plan.Bound { return plan.Bound{Price: p, Worth: 500} }
	for _, c := range []struct {
		what string
		of   plan.Course
		note string
	}{
		{"least", course(0, 0, plan.Bound{}, plan.Bound{}), "searching"},
		{"least", course(0, 12, plan.Bound{}, plan.Bound{}), "searching, 12 tried"},
		{"least", course(1, 641, price(181_640), plan.Bound{Price: 71_370}), "found 1816.40, perhaps 1102.70 less, 641 tried"},
		{"least", course(1, 641, price(181_640), plan.Bound{Price: 181_640}), "found 1816.40, 641 tried"},
		{"best", course(1, 641, price(181_640), plan.Bound{Worth: math.MaxInt64}), "found 50 % served for 1816.40, 641 tried"},
		{"best", course(1, 641, price(181_640), plan.Bound{Worth: 811}), "found 50 % served for 1816.40, perhaps 31.1 % more, 641 tried"},
		{"quiet", course(1, 641, plan.Bound{Price: 181_640, Noise: 28_300}, plan.Bound{Noise: 20_000}), "found 28.3 dB(A) for 1816.40, perhaps 8.3 dB(A) less, 641 tried"},
		{"small", course(1, 641, plan.Bound{Price: 181_640, Volume: 34_000}, plan.Bound{Volume: 18_500}), "found 34 l for 1816.40, perhaps 15.5 l less, 641 tried"},
	} {
		told := ""
		Progress(func(_ float64, note string) { told = note }).seeking(c.what, n)(c.of)
		require.Equal(t, c.note, told)
	}
	told, share := "", 0.0
	p := Progress(func(done float64, note string) { told, share = note, done })
	p.counting("looking at every part", "")(plan.Course{Done: 0.25, Nodes: 7, Found: 3})
	require.Equal(t, "looking at every part, 7 tried", told)
	require.Equal(t, 0.25, share)
	p.counting("looking at what every price buys", "%d prices found")(plan.Course{Nodes: 7, Found: 3})
	require.Equal(t, "looking at what every price buys, 3 prices found, 7 tried", told)
	p.counting("looking at what every price buys", "%d prices found")(plan.Course{})
	require.Equal(t, "looking at what every price buys", told)
	require.Nil(t, Progress(nil).seeking("least", n))
	require.Nil(t, Progress(nil).counting("", ""))
}
