package outcome

import (
	"math"
	"math/rand/v2"
	"testing"

	"slipfit/core/brief"
	"slipfit/core/unit"

	"github.com/stretchr/testify/require"
)

// TestLeastSquaresNorris checks the data set Norris of the NIST Statistical Reference Datasets (linear regression, lower
// level of difficulty): certified intercept −0.262323073774029 and slope 1.00211681802045.
func TestLeastSquaresNorris(t *testing.T) {
	data := [][2]float64{ // y, x
		{0.1, 0.2}, {338.8, 337.4}, {118.1, 118.2}, {888.0, 884.6}, {9.2, 10.1}, {228.1, 226.5}, {668.5, 666.3}, {998.5, 996.3},
		{449.1, 448.6}, {778.9, 777.0}, {559.2, 558.2}, {0.3, 0.4}, {0.1, 0.6}, {778.1, 775.5}, {668.8, 666.9}, {339.3, 338.0},
		{448.9, 447.5}, {10.8, 11.6}, {557.7, 556.0}, {228.3, 228.1}, {998.0, 995.8}, {888.8, 887.6}, {119.6, 120.2}, {0.3, 0.3},
		{0.6, 0.3}, {557.6, 556.8}, {339.3, 339.1}, {888.0, 887.2}, {998.5, 999.0}, {778.9, 779.0}, {10.2, 11.1}, {117.6, 118.3},
		{228.9, 229.2}, {668.4, 669.1}, {449.2, 448.9}, {0.2, 0.5},
	}
	var x [][]float64
	var y []float64
	for _, d := range data {
		x, y = append(x, []float64{1, d[1]}), append(y, d[0])
	}
	b, err := leastSquares(x, y, 0)
	require.NoError(t, err)
	require.InDelta(t, -0.262323073774029, b[0], 1e-11)
	require.InDelta(t, 1.00211681802045, b[1], 1e-13)
	var sum float64
	for i := range x {
		r := y[i] - b[0] - b[1]*x[i][1]
		sum += r * r
	}
	require.InDelta(t, 0.884796396144373, math.Sqrt(sum/34), 1e-11, "certified residual standard deviation")
}

// TestLeastSquaresNoIntercept checks NoInt1 of the same collection: y = 130 … 140 at x = 60 … 70, certified slope
// 2.07438016528926.
func TestLeastSquaresNoIntercept(t *testing.T) {
	var x [][]float64
	var y []float64
	for i := range 11 {
		x, y = append(x, []float64{float64(60 + i)}), append(y, float64(130+i))
	}
	b, err := leastSquares(x, y, 0)
	require.NoError(t, err)
	require.InDelta(t, 2.07438016528926, b[0], 1e-13)
}

func TestLeastSquaresRefuses(t *testing.T) {
	_, err := leastSquares([][]float64{{1, 2}}, []float64{1}, 0)
	require.ErrorIs(t, err, errAlike, "fewer lines than coefficients")
	_, err = leastSquares([][]float64{{1, 2}, {2, 4}, {3, 6.01}}, []float64{1, 2, 3}, enough)
	require.ErrorIs(t, err, errAlike, "columns that say the same")
	_, err = leastSquares([][]float64{{0}, {0}}, []float64{1, 2}, 0)
	require.ErrorIs(t, err, errAlike)
}

// TestFitFindsWhatMadeTheMeasurements measures machines that follow known coefficients, with noise of a quarter of a hundredth, and
// requires the fit to give them back; the times are those the outcome model tells.
func TestFitFindsWhatMadeTheMeasurements(t *testing.T) {
	old := stock(t).Calibration
	truth := old
	truth.MatchCore, truth.MatchCard, truth.MatchParallel = 2700, 640, 93_000
	truth.CompileCore, truth.CompileParallel = 1900, 97_000
	truth.GameLoop, truth.GameLoopHz, truth.VideoPlay, truth.PlugIn, truth.VideoEngine = 700, 420, 25_000, 13_000, 1300
	r := rand.New(rand.NewPCG(3, 8))
	noisy := func(v float64) float64 { return v * (1 + (r.Float64()-0.5)*0.005) }
	var list []Measurement
	for _, m := range []struct{ single, all, card float64 }{{1000, 3800, 300}, {1200, 9000, 1000}, {1500, 11_000, 2500}, {1700, 24_000, 600}, {1850, 34_000, 1700}, {1450, 57_000, 400}} {
		h := &Have{}
		h.By[brief.SingleWork], h.By[brief.AllWork], h.By[brief.ComputeWork] = int64(m.single), int64(m.all), int64(m.card)
		match := job(&brief.Job{CoreMS: 4320 * int64(truth.MatchCore), CardMS: 4320 * int64(truth.MatchCard), Parallel: truth.MatchParallel, Pieces: 1}, brief.Unit{}, h)
		compile := job(&brief.Job{CoreMS: 3000 * int64(truth.CompileCore), Parallel: truth.CompileParallel, Pieces: 1}, brief.Unit{}, h)
		list = append(list,
			Measurement{Measure: "match", Amount: 4320, Single: m.single, All: m.all, Graphics: m.card, Measured: noisy(match.value / 1000)},
			Measurement{Measure: "compile", Amount: 3000, Single: m.single, All: m.all, Measured: noisy(compile.value / 1000)},
			Measurement{Measure: "game-loop", Single: m.single, Measured: noisy(100 * (m.single - 700) / 420)},
			Measurement{Measure: "video-play", All: m.all, Measured: noisy(m.all / 25_000)},
			Measurement{Measure: "video-engine", Amount: 124, Measured: noisy(124 * 1.3)},
			Measurement{Measure: "plug-in", All: m.all, Measured: noisy(m.all / 13)})
	}
	cal, fits, err := Fit(old, list)
	require.NoError(t, err)
	require.Len(t, fits, 6)
	near := func(want, got int64, share float64) {
		t.Helper()
		require.InDelta(t, want, got, float64(want)*share)
	}
	near(int64(truth.MatchCore), int64(cal.MatchCore), 0.05)
	near(int64(truth.MatchCard), int64(cal.MatchCard), 0.05)
	near(int64(truth.MatchParallel), int64(cal.MatchParallel), 0.03)
	near(int64(truth.CompileCore), int64(cal.CompileCore), 0.05)
	near(int64(truth.CompileParallel), int64(cal.CompileParallel), 0.02)
	near(int64(truth.GameLoop), int64(cal.GameLoop), 0.05)
	near(int64(truth.GameLoopHz), int64(cal.GameLoopHz), 0.05)
	near(int64(truth.VideoPlay), int64(cal.VideoPlay), 0.02)
	near(int64(truth.PlugIn), int64(cal.PlugIn), 0.02)
	near(int64(truth.VideoEngine), int64(cal.VideoEngine), 0.02)
	require.Equal(t, old.RenderCard, cal.RenderCard, "what was not measured stays")
	for _, f := range fits {
		require.Less(t, f.RMS, 0.02, f.Measure)
		require.Empty(t, f.Note)
		require.Len(t, f.Residuals, 6)
	}
}

// TestFitOfOneMachine keeps the parallel share where one machine cannot tell it.
func TestFitOfOneMachine(t *testing.T) {
	old := stock(t).Calibration
	cal, fits, err := Fit(old, []Measurement{
		{Line: 2, Measure: "develop", Amount: 4800, Single: 1650, All: 23_560, Measured: 40},
		{Line: 3, Measure: "develop", Amount: 9600, Single: 1650, All: 23_560, Measured: 80}})
	require.NoError(t, err)
	require.Equal(t, old.DevelopParallel, cal.DevelopParallel)
	require.Contains(t, fits[0].Note, "too alike")
	// 40 s = 4800 × C × (0.1/1.65 + 0.9/23.56): C = 0.0843 core seconds a megapixel
	require.EqualValues(t, unit.Whole(84), cal.DevelopCore)
	require.InDelta(t, 40, fits[0].Residuals[0].Told, 0.2)

	_, _, err = Fit(old, []Measurement{{Measure: "game-loop", Single: 1500, Measured: 150}})
	require.ErrorContains(t, err, "game-loop: the measurements are too alike")
}

// TestMeasuresCoverTheBlock requires every coefficient of work to be measurable, each by one measure.
func TestMeasuresCoverTheBlock(t *testing.T) {
	seen := map[string]string{}
	for _, m := range Measures() {
		for _, f := range m.fields {
			require.Empty(t, seen[f], "%s is fitted twice", f)
			seen[f] = m.Name
		}
	}
	require.Len(t, seen, 17+7, "seventeen costs and seven parallel shares")
}
