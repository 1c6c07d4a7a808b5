package link

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// Source: PCI Express Base Specification, GB/s each way to three decimals.
func TestExpressTable(t *testing.T) {
	table := [][4]float64{
		{0.25, 1, 2, 4}, {0.5, 2, 4, 8}, {0.985, 3.938, 7.877, 15.754},
		{1.969, 7.877, 15.754, 31.508}, {3.938, 15.754, 31.508, 63.015}, {7.375, 29.5, 59, 118},
	}
	for g, row := range table {
		for i, lanes := range []int{1, 4, 8, 16} {
			got, err := ExpressBytePerS(g+1, lanes)
			require.NoError(t, err)
			require.InDelta(t, row[i]*1e9, got, 5.1e5, "gen %d x%d", g+1, lanes)
		}
	}
	_, err := ExpressBytePerS(7, 1)
	require.ErrorContains(t, err, "expected 1 to 6")
	_, err = ExpressBytePerS(0, 1)
	require.Error(t, err)
	_, err = ExpressBytePerS(3, 12)
	require.ErrorContains(t, err, "expected 1, 2, 4, 8 or 16")
}

// Source: Serial ATA, USB 2.0 and USB 3.2 specifications; IEEE 802.3 framing (MB/s).
func TestBusTable(t *testing.T) {
	for b, want := range map[Bus]float64{
		SATA6000: 600, USB2HighSpeed: 53.248, USB32Gen1x1: 500, USB32Gen2x1: 1212, USB32Gen2x2: 2424,
		Ethernet1G: 118.66, Ethernet2G5: 296.65, Ethernet5G: 593.30, Ethernet10G: 1186.61,
	} {
		require.InDelta(t, want*1e6, b.PayloadBytePerS(), 5e5, b.String())
	}
	require.InDelta(t, 118.66e6, Ethernet1G.PayloadBytePerS(), 5e3)
	require.InDelta(t, 0.991370e9, JumboGoodputBitPerS(1_000_000_000), 5e2)
	for b := Bus(0); b < busCount; b++ {
		require.Positive(t, b.PayloadBitPerS(), b.String())
		require.Less(t, b.PayloadBitPerS(), b.RawBitPerS())
		if practical, ok := b.PracticalMBPerS(); ok {
			require.Less(t, practical*1_000_000, b.PayloadBytePerS(), b.String())
		}
	}
	require.Zero(t, busCount.RawBitPerS())
	require.Zero(t, busCount.PayloadBitPerS())
	_, ok := busCount.PracticalMBPerS()
	require.False(t, ok)
	require.Equal(t, "bus 99", Bus(99).String())
}

// Source: JEDEC JESD79-4 and JESD79-5 rates, status beside each row of memory.csv.
func TestMemoryVectors(t *testing.T) {
	for _, row := range vectors(t, "memory.csv") {
		rate := integer(t, row["mega_transfers_s"])
		require.Equal(t, scaled(t, row["one_channel_gb_s"], 1e9), MemoryBytePerS(rate, 1), row)
		require.Equal(t, scaled(t, row["two_channels_gb_s"], 1e9), MemoryBytePerS(rate, 2), row)
	}
}

// Source: arithmetic; 128 GB per standard module in the JESD79-5 announcement.
func TestModuleCapacity(t *testing.T) {
	for _, c := range [][4]int64{{16, 8, 1, 16}, {16, 8, 2, 32}, {24, 8, 1, 24}, {24, 8, 2, 48}, {32, 8, 2, 64}, {64, 8, 2, 128}} {
		got, err := ModuleGiB(c[0], c[1], c[2])
		require.NoError(t, err)
		require.Equal(t, c[3], got)
	}
	_, err := ModuleGiB(16, 5, 1)
	require.ErrorContains(t, err, "expected 4, 8 or 16")
}
