package media

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// Source: Amdahl 1967, as written in Gustafson 1988; table to four decimals.
func TestAmdahlTable(t *testing.T) {
	for _, row := range vectors(t, "amdahl.csv") {
		p := number(t, row["parallel"])
		for column, n := range map[string]float64{"n2": 2, "n4": 4, "n8": 8, "n16": 16, "n32": 32, "n64": 64} {
			got := Amdahl(p, n)
			require.InDelta(t, number(t, row[column]), got, 5e-5, row)
			require.Less(t, got, AmdahlLimit(p))
			back, err := ParallelShare(got, n)
			require.NoError(t, err)
			require.InDelta(t, p, back, 1e-12)
		}
		require.InDelta(t, number(t, row["limit"]), AmdahlLimit(p), 1e-9)
	}
	require.InDelta(t, 201.100, Amdahl(0.996, 1024), 5e-4)
	require.InDelta(t, 111.498, Amdahl(0.992, 1024), 5e-4)
}

// Source: Gustafson, CACM 31(5), 1988; formula values for N = 1024 beside the measured 1021 and 1016.
func TestGustafson(t *testing.T) {
	require.InDelta(t, 1019.908, Gustafson(0.004, 1024), 5e-4)
	require.InDelta(t, 1015.816, Gustafson(0.008, 1024), 5e-4)
	require.InDelta(t, 1021, Gustafson(0.004, 1024), 2)
	require.InDelta(t, 1016, Gustafson(0.008, 1024), 2)
}

func TestParallelShare(t *testing.T) {
	got, err := ParallelShare(5.925926, 8) // algebra
	require.NoError(t, err)
	require.InDelta(t, 0.95, got, 1e-7)
	got, err = ParallelShare(8, 8)
	require.NoError(t, err)
	require.InDelta(t, 1, got, 1e-12)
	got, err = ParallelShare(0.5, 8)
	require.NoError(t, err)
	require.Negative(t, got)
	for _, bad := range [][2]float64{{1, 1}, {0, 8}, {-1, 8}, {8.1, 8}} {
		_, err := ParallelShare(bad[0], bad[1])
		require.ErrorContains(t, err, "expected")
	}
}

// Source: Williams, Waterman, Patterson, CACM 52(4), 2009, and textbook and lecture examples.
func TestRoofline(t *testing.T) {
	require.InDelta(t, 11.111, RidgePoint(10e12, 900e9), 5e-4)
	require.InDelta(t, 112.5e9, Roofline(10e12, 900e9, 0.125), 1)
	require.InDelta(t, 5625e9, Roofline(10e12, 900e9, 6.25), 1)
	require.InDelta(t, 10e12, Roofline(10e12, 900e9, 100), 1)
	require.InDelta(t, 64, RidgePoint(2048, 32), 1e-12)
	require.InDelta(t, 1.173, RidgePoint(17.6e9, 15e9), 5e-4)
	for x := 0.01; x < 1000; x *= 1.5 {
		require.LessOrEqual(t, Roofline(2048, 32, x), Roofline(2048, 32, x*1.5))
	}
}
