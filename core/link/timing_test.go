package link

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

var blankings = map[string]Blanking{
	"CVT": BlankingCVT, "RB1": BlankingRB1, "RB2": BlankingRB2, "RB2 video-optimised": BlankingRB2Video,
}

// Source: reference tools, command beside each row of timing.csv. For RB1 the edid-decode rows are the reference: they
// agree with the RB1 rows of VESA DMT. The `cvt -r` rows kept in the file are those where both tools agree.
func TestTimingVectors(t *testing.T) {
	rows := vectors(t, "timing.csv")
	require.Len(t, rows, 202)
	edid := 0
	for _, row := range rows {
		got, err := ComputeTiming(integer(t, row["width"]), integer(t, row["height"]), 1000*integer(t, row["refresh_hz"]), blankings[row["kind"]])
		require.NoError(t, err)
		want := Timing{scaled(t, row["pixel_clock_mhz"], 1000), integer(t, row["htotal"]), integer(t, row["vtotal"])}
		require.Equal(t, want, got, row)
		if strings.HasPrefix(row["source_command"], "edid-decode") {
			edid++
		}
	}
	require.Equal(t, 47*3, edid)
}

// Source: VESA CVT 1.2 formula in exact arithmetic; floating-point tools print these 1 kHz low.
func TestTimingExactFloors(t *testing.T) {
	for _, row := range vectors(t, "rb2-exact.csv") {
		got, err := ComputeTiming(integer(t, row["width"]), integer(t, row["height"]), 1000*integer(t, row["refresh_hz"]), BlankingRB2)
		require.NoError(t, err)
		require.Equal(t, integer(t, row["clock_khz"]), got.ClockKHz, row)
	}
}

// Source: VESA DMT as printed by edid-decode --list-dmts.
func TestTimingAgainstDMT(t *testing.T) {
	for _, row := range vectors(t, "dmt.csv") {
		w, h, f := integer(t, row["width"]), integer(t, row["height"]), integer(t, row["refresh_millihz"])
		if row["relation"] == "television" {
			got, ok := TelevisionTiming(w, h, f)
			require.True(t, ok)
			require.Equal(t, integer(t, row["clock_khz"]), got.ClockKHz, row)
			continue
		}
		blanking, ok := blankings[row["relation"]]
		require.True(t, ok, row)
		got, err := ComputeTiming(w, h, f, blanking)
		require.NoError(t, err)
		require.Equal(t, integer(t, row["clock_khz"]), got.ClockKHz, row)
	}
}

// Source: CTA-861 as printed by edid-decode --list-vics.
func TestTelevisionVectors(t *testing.T) {
	for _, row := range vectors(t, "television.csv") {
		got, ok := TelevisionTiming(integer(t, row["width"]), integer(t, row["height"]), 1000*integer(t, row["refresh_hz"]))
		require.True(t, ok, row)
		require.Equal(t, integer(t, row["clock_khz"]), got.ClockKHz, row)
	}
	for _, m := range televisionModes {
		require.Equal(t, m.refreshHz*1_000_000, m.timing.RefreshMicroHz(), m)
		for _, f := range []int64{m.refreshHz * 1_000_000 / 1001, m.refreshHz*1_000_000/1001 + 1} {
			got, ok := TelevisionTiming(m.width, m.height, f)
			require.True(t, ok, f)
			require.Equal(t, m.timing, got)
		}
	}
	_, ok := TelevisionTiming(2560, 1440, 60_000)
	require.False(t, ok)
	_, ok = TelevisionTiming(1920, 1080, 75_000)
	require.False(t, ok)
}

// Source: achieved rates printed by edid-decode for 1920×1080 at 60 Hz.
func TestAchievedRefresh(t *testing.T) {
	for blanking, want := range map[Blanking]int64{BlankingCVT: 59_962_844, BlankingRB1: 59_933_878, BlankingRB2: 60_000_000} {
		got, err := ComputeTiming(1920, 1080, 60_000, blanking)
		require.NoError(t, err)
		require.InDelta(t, want, got.RefreshMicroHz(), 1)
	}
	require.Zero(t, Timing{}.RefreshMicroHz())
}

func TestTimingRefusesBadModes(t *testing.T) {
	for _, m := range [][3]int64{{0, 1080, 60_000}, {1920, 0, 60_000}, {32_769, 1080, 60_000}, {1920, 32_769, 60_000}} {
		_, err := ComputeTiming(m[0], m[1], m[2], BlankingRB2)
		require.ErrorContains(t, err, "expected 1 to 32768 pixels")
	}
	for _, f := range []int64{0, -1, 1_000_001} {
		_, err := ComputeTiming(1920, 1080, f, BlankingRB2)
		require.ErrorContains(t, err, "expected 1 to 1000000")
	}
	_, err := ComputeTiming(1920, 1080, 60_000, Blanking(9))
	require.ErrorContains(t, err, "expected one of the four kinds")
	for b := BlankingCVT; b <= BlankingRB2Video; b++ { // the corner of the range neither overflows nor panics
		got, err := ComputeTiming(maxPixels, maxPixels, maxRefreshMHz, b)
		require.NoError(t, err)
		require.Positive(t, got.ClockKHz)
		require.Positive(t, got.RefreshMicroHz())
		_, err = ComputeTiming(1, 1, 1, b)
		require.NoError(t, err)
	}
}

// A higher refresh rate never needs a lower clock, nor do more pixels; reduced blanking never needs more than normal.
func TestTimingIsMonotone(t *testing.T) {
	sizes := [][2]int64{{640, 480}, {1280, 720}, {1366, 768}, {1920, 1080}, {2560, 1440}, {3440, 1440}, {3840, 2160}, {7680, 4320}}
	for b := BlankingCVT; b <= BlankingRB2Video; b++ {
		for _, size := range sizes {
			last := int64(0)
			for f := int64(24_000); f <= 500_000; f += 990 {
				got, err := ComputeTiming(size[0], size[1], f, b)
				require.NoError(t, err)
				require.GreaterOrEqual(t, got.ClockKHz, last, "%v at %d mHz", size, f)
				last = got.ClockKHz
				require.Greater(t, got.HTotal, size[0])
				require.Greater(t, got.VTotal, size[1])
				// Rounding the clock down never loses more than its step.
				require.LessOrEqual(t, got.RefreshMicroHz(), f*1000+f*1000/50)
			}
		}
	}
	for _, size := range sizes {
		for f := int64(50_000); f <= 360_000; f += 10_000 {
			cvt, _ := ComputeTiming(size[0], size[1], f, BlankingCVT)
			rb1, _ := ComputeTiming(size[0], size[1], f, BlankingRB1)
			rb2, _ := ComputeTiming(size[0], size[1], f, BlankingRB2)
			video, _ := ComputeTiming(size[0], size[1], f, BlankingRB2Video)
			require.LessOrEqual(t, video.ClockKHz, rb2.ClockKHz)
			require.LessOrEqual(t, rb2.ClockKHz, rb1.ClockKHz)
			if size[0] >= 1280 {
				require.LessOrEqual(t, rb1.ClockKHz, cvt.ClockKHz)
			}
		}
	}
}
