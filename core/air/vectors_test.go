package air_test

import (
	"encoding/csv"
	"os"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"
)

const referenceDir = "../../testdata/reference/air/"

// readVectors reads a table of reference values as one map a row, keyed by the header.
func readVectors(t *testing.T, name string) []map[string]string {
	t.Helper()
	f, err := os.Open(referenceDir + name)
	require.NoError(t, err)
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	require.NoError(t, err)
	require.Greater(t, len(rows), 1)
	var out []map[string]string
	for _, row := range rows[1:] {
		m := map[string]string{}
		for i, v := range row {
			m[rows[0][i]] = v
		}
		out = append(out, m)
	}
	return out
}

func number(t *testing.T, s string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(s, 64)
	require.NoError(t, err)
	return v
}

func near(t *testing.T, want, got, relative float64, what ...any) {
	t.Helper()
	if want == 0 {
		require.InDelta(t, want, got, relative, what...)
		return
	}
	require.InEpsilon(t, want, got, relative, what...)
}
