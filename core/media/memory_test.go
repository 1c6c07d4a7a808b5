package media

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// Source: arithmetic.
func TestRasterVectors(t *testing.T) {
	for _, row := range vectors(t, "rasters.csv") {
		w, h := integer(t, row["width"]), integer(t, row["height"])
		for column, bytes := range map[string]int64{"bytes_4": 4, "bytes_8": 8, "bytes_16": 16} {
			require.Equal(t, integer(t, row[column]), RasterBytes(w, h, bytes), row)
			require.Equal(t, PictureBits(w, h, bytes*8), 8*RasterBytes(w, h, bytes))
		}
	}
	require.InDelta(t, 7.9102, float64(RasterBytes(1920, 1080, 4))/MiB, 5e-5)
	require.InDelta(t, 126.5625, float64(RasterBytes(7680, 4320, 4))/MiB, 1e-9)
}

// Source: arithmetic.
func TestGraphicsMemory(t *testing.T) {
	require.Equal(t, int64(16_588_800_000), FrameCacheBytes(3840, 2160, 8, WholeRate(25), 10))
	require.Equal(t, int64(4_976_640_000), FrameCacheBytes(1920, 1080, 4, WholeRate(60), 10))
	require.InDelta(t, 15.450, float64(FrameCacheBytes(3840, 2160, 8, WholeRate(25), 10))/GiB, 5e-4)
	require.Equal(t, int64(99_532_800), SwapChainBytes(3840, 2160, 4, 3))
	require.Equal(t, int64(364_953_600), RenderTargetBytes(3840, 2160, 5, 8, 4))
	require.InDelta(t, 89_478_485, TextureBytes(4096, 4096, 4), 1) // a third of a byte, rounded up
	require.InDelta(t, 22_369_621, TextureBytes(4096, 4096, 1), 1)
	require.Equal(t, int64(1_500_000_000), SceneBytes(1_000_000, 1_000_000_000)) // 1.2 GB and a fifth spare
}

// Source: arithmetic; the cache sizes are also printed in public texts (1.07 GB).
func TestModelMemory(t *testing.T) {
	for _, c := range [][3]int64{
		{7e9, 16_000, 14e9}, {7e9, 8_000, 7e9}, {7e9, 4_000, 3.5e9}, {70e9, 16_000, 140e9}, {70e9, 8_000, 70e9},
		{70e9, 4_000, 35e9}, {7e9, 4_500, 3_937_500_000},
	} {
		require.Equal(t, c[2], WeightBytes(c[0], c[1]))
	}
	require.Equal(t, int64(1_073_741_824), KVCacheBytes(32, 32, 128, 2048, 1, 2))
	require.Equal(t, int64(4_294_967_296), KVCacheBytes(32, 32, 128, 2048, 4, 2)) // width 4096 = 32 heads of 128
	require.Equal(t, int64(1_073_741_824), KVCacheBytes(32, 8, 128, 8192, 1, 2))
	require.Equal(t, int64(2_684_354_560), KVCacheBytes(80, 8, 128, 8192, 1, 2))
	require.Equal(t, int64(16_800_000_000), InferenceBytes(14e9, 0))
	require.Equal(t, int64(4_500_000_000), InferenceBytes(3.5e9, 0)) // at least 1 GB
	rate, ok := TokenCeilingMilliPerS(100e9, 3.5e9)
	require.True(t, ok)
	require.InDelta(t, 28_600, rate, 50)
	_, ok = TokenCeilingMilliPerS(100e9, 0)
	require.False(t, ok)
}

// Source: common practice.
func TestWorkingMemory(t *testing.T) {
	require.Equal(t, int64(24*GB), GuestBytes(8*GB, 8*GB))
	require.Equal(t, int64(8*GB), GuestBytes())
	require.Equal(t, int64(30*GB), TableBytes(10*GB))
	require.Equal(t, int64(2*CompileJobBytes), int64(CompileJobHeavyBytes))
}

// Source: Rec. ITU-R BT.500 design viewing distance; geometry.
func TestSight(t *testing.T) {
	for lines, want := range map[int64]float64{720: 4.775, 1080: 3.183, 2160: 1.592, 4320: 0.796} {
		require.InDelta(t, want, ViewingHeights(lines), 5e-4)
	}
	require.InDelta(t, 7.1, ViewingHeights(480), 0.1)  // Poynton, Digital Video and HDTV
	require.InDelta(t, 3.1, ViewingHeights(1080), 0.1) // the same
	for _, c := range []struct {
		inch           float64
		w, h           int64
		atMM, pitch, p float64
	}{
		{24, 1920, 1080, 600, 0.27673, 37.84}, {27, 2560, 1440, 600, 0.23349, 44.85},
		{27, 3840, 2160, 600, 0.15566, 67.28}, {32, 3840, 2160, 700, 0.18448, 66.23},
	} {
		pitch := PixelPitchMM(c.inch, c.w, c.h)
		require.InDelta(t, c.pitch, pitch, 6e-6)
		require.InDelta(t, c.p, PixelsPerDegree(c.atMM, pitch), 6e-3)
	}
	for hz, want := range map[int64]int64{60: 16_667, 120: 8_333, 144: 6_944, 240: 4_167} {
		require.Equal(t, want, FrameTimeUS(hz*1000))
	}
}
