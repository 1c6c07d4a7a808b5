package media

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// Source: beside each row of storage.csv.
func TestStorageVectors(t *testing.T) {
	kinds := map[string]Array{"raid0_tb": RAID0, "raid5_tb": RAID5, "raid6_tb": RAID6, "raid10_tb": RAID10}
	for _, row := range vectors(t, "storage.csv") {
		var got float64
		switch what := row["what"]; what {
		case "tib_of_tb":
			got = float64(integer(t, row["input"])*TB) / TiB
		case "dwpd_of_600_tbw":
			got = DriveWritesPerDay(600*TB, TB, 5)
		case "tb_written_at_1_dwpd":
			require.Equal(t, RatedBytes(1000, TB, 5), WrittenBytes(TB, 5))
			got = float64(RatedBytes(1000, TB, 5)) / TB
		case "clean_read_24_tb":
			got = CleanReadChance(24*TB, number(t, row["input"]))
		default:
			kind, ok := kinds[what]
			require.True(t, ok, what)
			n, size, _ := strings.Cut(row["input"], "x")
			var drives []int64
			for range integer(t, n) {
				drives = append(drives, integer(t, size)*TB)
			}
			result, err := ArrayOf(kind, drives)
			require.NoError(t, err)
			got = float64(result.Bytes) / TB
		}
		require.InDelta(t, number(t, row["expected"]), got, number(t, row["tolerance"]), row)
	}
}

// Source: SNIA definitions, from memory: mixed sizes count as the smallest, failures survived.
func TestArrays(t *testing.T) {
	mixed := []int64{4 * TB, 8 * TB, 6 * TB, 5 * TB}
	for kind, want := range map[Array]ArrayResult{
		RAID0: {16 * TB, 0}, RAID1: {4 * TB, 3}, RAID5: {12 * TB, 1}, RAID6: {8 * TB, 2}, RAID10: {8 * TB, 1},
	} {
		got, err := ArrayOf(kind, mixed)
		require.NoError(t, err)
		require.Equal(t, want, got)
	}
	for kind, n := range map[Array]int{RAID0: 0, RAID1: 0, RAID5: 2, RAID6: 3, RAID10: 2} {
		_, err := ArrayOf(kind, make([]int64, n))
		require.ErrorContains(t, err, "or more", kind)
	}
	_, err := ArrayOf(RAID10, make([]int64, 5))
	require.ErrorContains(t, err, "even number")
	_, err = ArrayOf(Array(9), mixed)
	require.ErrorContains(t, err, "expected RAID")
}

// Source: arithmetic; the chain is common practice.
func TestUsableCapacity(t *testing.T) {
	got, err := UsableBytes(2*TB, 50, HeadroomSolidStatePermille)
	require.NoError(t, err)
	require.Equal(t, int64(1_520*GB), got)
	got, err = UsableBytes(999, 1, 0)
	require.NoError(t, err)
	require.Equal(t, int64(998), got) // down
	got, err = UsableBytes(TB, 0, 0)
	require.NoError(t, err)
	require.Equal(t, int64(TB), got)
	got, err = UsableBytes(TB, 1000, 0)
	require.NoError(t, err)
	require.Zero(t, got)
	_, err = UsableBytes(TB, -1, 0)
	require.ErrorContains(t, err, "expected 0 to 1000")
	_, err = UsableBytes(TB, 0, 1001)
	require.ErrorContains(t, err, "expected 0 to 1000")
	require.InDelta(t, 1.073741824, float64(GiB)/GB, 1e-12)
}

// Source: arithmetic after JESD218's terabytes written.
func TestEndurance(t *testing.T) {
	days, ok := EnduranceDays(600*TB, 100*GB)
	require.True(t, ok)
	require.Equal(t, int64(6_000), days)
	_, ok = EnduranceDays(600*TB, 0)
	require.False(t, ok)
	require.Equal(t, int64(182_500*GB), WrittenBytes(100*GB, 5))
	require.Equal(t, int64(547_500*GB), RatedBytes(300, TB, 5))
}
