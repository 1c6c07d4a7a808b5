package feed

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// The Gold row at 230 V (80 PLUS table: 90, 92, 89 % at 20, 50, 100 % load) given as a supply's own curve answers like the level.
func TestCurveLikeLevel(t *testing.T) {
	gold := []CurvePoint{{20_000, 90_000}, {50_000, 92_000}, {100_000, 89_000}}
	for _, loadMW := range []int64{0, 1, 40_000, 129_999, 130_000, 200_000, 325_000, 400_000, 649_999, 650_000} {
		want, ok := EfficiencyPPM(LevelGold, Line230, loadMW, 650_000)
		require.True(t, ok)
		got, err := CurvePPM(gold, loadMW, 650_000)
		require.NoError(t, err)
		require.Equal(t, want, got, "at %d mW", loadMW)
	}
}

func TestCurveBounds(t *testing.T) {
	one := []CurvePoint{{50_000, 91_300}}
	ppm, err := CurvePPM(one, 600_000, 600_000)
	require.NoError(t, err)
	require.Equal(t, int64(913_000), ppm)
	for name, points := range map[string][]CurvePoint{
		"none":        nil,
		"not rising":  {{50_000, 90_000}, {50_000, 91_000}},
		"hundred":     {{50_000, 100_000}},
		"zero":        {{50_000, 0}},
		"no load":     {{0, 80_000}},
		"second down": {{50_000, 90_000}, {20_000, 91_000}},
	} {
		_, err := CurvePPM(points, 100_000, 600_000)
		require.ErrorContains(t, err, "efficiency curve", name)
	}
	_, err = CurvePPM(one, 600_001, 600_000)
	require.ErrorContains(t, err, "600001 mW of 600000 mW")
}
