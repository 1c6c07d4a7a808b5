package predict

import (
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
)

// TestThroughout holds steps of heat to points at which something is not so: it is so throughout where no point lies between the two amounts,
// to the finest step, and else up to the first point; and one wide step is asked of where no point is near.
func TestThroughout(t *testing.T) {
	finest := chamberSteps[len(chamberSteps)-1].wideW
	r := rand.New(rand.NewPCG(31, 7))
	so, not := 0, 0
	for range 20000 {
		from, to := float64(r.IntN(200))*finest, float64(100+r.IntN(400))*finest
		to = max(from, to)
		points := make([]float64, r.IntN(4))
		for i := range points {
			points[i] = float64(r.IntN(600))*finest + finest/2
		}
		knownFrom := float64(r.IntN(500)) * finest
		knownTo := knownFrom + float64(1+r.IntN(100))*finest
		asks := 0
		end, all := throughout(from, to, func(heatW float64) (float64, bool) {
			return knownTo, knownFrom <= heatW && heatW < knownTo
		}, func(low float64, step chamberStep) bool {
			asks++
			return !slices.ContainsFunc(points, func(x float64) bool { return low <= x && x < low+step.wideW })
		})
		first := to + finest
		for _, x := range points {
			if from <= x && x < first && (x < knownFrom || x >= knownTo) {
				first = x
			}
		}
		if first >= to+finest {
			require.True(t, all, "%v to %v, not at %v", from, to, points)
			require.Greater(t, end, to)
			so++
		} else {
			require.False(t, all, "%v to %v, not at %v, known from %v to %v", from, to, points, knownFrom, knownTo)
			require.Equal(t, floor(first, finest), end)
			not++
		}
		if len(points) == 0 {
			require.LessOrEqual(t, float64(asks), (to-from)/chamberSteps[0].wideW+3)
		}
	}
	require.Greater(t, so, 2000)
	require.Greater(t, not, 2000)
}
