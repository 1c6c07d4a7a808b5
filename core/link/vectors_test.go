package link

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"
)

// vectors reads a file of published figures: one map a row, keyed by the header.
func vectors(t *testing.T, name string) []map[string]string {
	t.Helper()
	f, err := os.Open("../../testdata/reference/link/" + name)
	require.NoError(t, err)
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	require.NoError(t, err)
	require.Greater(t, len(rows), 1)
	var out []map[string]string
	for _, row := range rows[1:] {
		m := map[string]string{}
		for i, key := range rows[0] {
			m[key] = row[i]
		}
		require.NotEmpty(t, m["source"]+m["source_command"])
		out = append(out, m)
	}
	return out
}

// scaled reads a decimal figure times a power of ten as an integer.
func scaled(t *testing.T, text string, factor float64) int64 {
	t.Helper()
	v, err := strconv.ParseFloat(text, 64)
	require.NoError(t, err, text)
	return int64(math.Round(v * factor))
}

func integer(t *testing.T, text string) int64 {
	t.Helper()
	v, err := strconv.ParseInt(text, 10, 64)
	require.NoError(t, err, text)
	return v
}
