package media

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

var frameRates = map[string]FrameRate{
	"23.976": VideoRate(24), "24": WholeRate(24), "25": WholeRate(25), "29.97": VideoRate(30), "50": WholeRate(50),
	"59.94": VideoRate(60), "60": WholeRate(60), "120": WholeRate(120),
}

var (
	rasterRow = regexp.MustCompile(`(\d+)x(\d+)p(\d+)`)
	plainRow  = regexp.MustCompile(`^Uncompressed .* 4:(\d):(\d) (\d+)-bit$`)
	vc3Row    = regexp.MustCompile(`^VC-3 CID (\d+).* ([\d.]+) fps$`)
	intraRow  = regexp.MustCompile(`^AVC-Intra class (\d+) .* ([\d.]+) fps$`)
	pcmRow    = regexp.MustCompile(`^PCM ([\d.]+) kHz (\d+)-bit (mono|stereo|\d+)`)
)

// rateOf computes the rate a row of rates.csv names.
func rateOf(t *testing.T, name string) int64 {
	t.Helper()
	raster := func() (w, h int64, r FrameRate) {
		m := rasterRow.FindStringSubmatch(name)
		require.NotNil(t, m, name)
		return integer(t, m[1]), integer(t, m[2]), frameRates[m[3]]
	}
	if m := plainRow.FindStringSubmatch(name); m != nil {
		w, h, r := raster()
		halves := map[string]int64{"44": 6, "22": 4, "20": 3}[m[1]+m[2]]
		return r.BitPerS(PictureBits(w, h, halves*integer(t, m[3])/2))
	}
	if strings.HasPrefix(name, "10-bit 4:2:2 packed") {
		w, h, r := raster()
		return r.BitPerS(Packed422TenBits(w, h))
	}
	if strings.HasPrefix(name, "10-bit RGB packed") {
		w, h, r := raster()
		return r.BitPerS(PackedRGBTenBits(w, h))
	}
	if m := vc3Row.FindStringSubmatch(name); m != nil {
		frame, ok := VC3FrameBytes(int(integer(t, m[1])))
		require.True(t, ok)
		return frameRates[m[2]].BitPerS(frame * 8)
	}
	if m := intraRow.FindStringSubmatch(name); m != nil {
		frame, ok := AVCIntraFrameBits(int(integer(t, m[1])), frameRates[m[2]])
		require.True(t, ok)
		return frameRates[m[2]].BitPerS(frame)
	}
	if m := pcmRow.FindStringSubmatch(name); m != nil {
		channels := map[string]int64{"mono": 1, "stereo": 2}[m[3]]
		if channels == 0 {
			channels = integer(t, m[3])
		}
		return PCMBitPerS(int64(number(t, m[1])*1000), integer(t, m[2]), channels)
	}
	fixed, ok := FixedRateNamed(name)
	require.True(t, ok, name)
	require.NotEmpty(t, fixed.Source)
	return fixed.BitPerS
}

// Source: beside each row of rates.csv; rates to 1 bit/s (six decimals of Mbit/s, rounded up), volumes to 1000 bytes.
func TestRateVectors(t *testing.T) {
	rows := vectors(t, "rates.csv")
	require.Len(t, rows, 63)
	for _, row := range rows {
		got := rateOf(t, row["name"])
		require.InDelta(t, number(t, row["mbit_s"])*1e6, got, 1.01, row)
		require.InDelta(t, number(t, row["gb_per_hour"])*1e9, BytesPerHour(got), 1000, row)
	}
}

// Every fixed rate is checked by a row of rates.csv.
func TestEveryFixedRateHasAVector(t *testing.T) {
	rows := map[string]bool{}
	for _, row := range vectors(t, "rates.csv") {
		rows[row["name"]] = true
	}
	for _, r := range FixedRates() {
		require.True(t, rows[r.Name], r.Name)
	}
	_, ok := FixedRateNamed("no such rate")
	require.False(t, ok)
	_, ok = VC3FrameBytes(1)
	require.False(t, ok)
	_, ok = AVCIntraFrameBits(50, WholeRate(60))
	require.False(t, ok)
	twin, ok := VC3FrameBytes(1238)
	require.True(t, ok)
	require.Equal(t, int64(917_504), twin)
}

// Source: IEC 80000-13 multiples; 50 Mbit/s is 22.5 GB an hour and 2 TB holds 88.9 h.
func TestHoursAndCapacity(t *testing.T) {
	require.Equal(t, int64(22_500_000_000), BytesPerHour(50_000_000))
	seconds, ok := SecondsIn(2*TB, 50_000_000)
	require.True(t, ok)
	require.InDelta(t, 88.9, float64(seconds)/3600, 0.05)
	_, ok = SecondsIn(2*TB, 0)
	require.False(t, ok)
	for _, rate := range []int64{1, 7, 8, 175_984_784, 143_327_232_000} {
		require.Equal(t, ceilDiv(rate*3600, 8), BytesFor(rate, 3600))
		require.Equal(t, BytesPerHour(rate), BytesFor(rate, 3600))
		seconds, ok := SecondsIn(4*TB+3, rate)
		require.True(t, ok)
		require.LessOrEqual(t, BytesFor(rate, seconds), int64(4*TB+3))
		require.Greater(t, BytesFor(rate, seconds+1), int64(4*TB+3-1))
	}
}

// Source: common practice: media rate × streams × 1.5.
func TestCaptureThroughput(t *testing.T) {
	require.Equal(t, int64(75_000_000), CaptureBytePerS(400_000_000, 1))
	require.Equal(t, int64(225_000_000), CaptureBytePerS(400_000_000, 3))
	require.Equal(t, int64(1), CaptureBytePerS(1, 1)) // up
}

// Source: arithmetic; 128 frames at 48 kHz are 5.333 ms there and back.
func TestAudioMemoryAndDelay(t *testing.T) {
	require.Equal(t, int64(5_334), BufferRoundTripUS(128, 48_000))
	require.Equal(t, int64(655_360_000), PreloadBytes(10_000, UsualPreloadBytes))
}

// Source: digital cinema 2K at 250 Mbit/s and 24 frames per second is 1302083 B a frame and 4.71 bits a pixel.
func TestCinemaFrame(t *testing.T) {
	cinema, ok := FixedRateNamed("Digital cinema JPEG 2000 image maximum")
	require.True(t, ok)
	require.Equal(t, int64(1_302_083), cinema.BitPerS/8/24)
	require.InDelta(t, 4.71, float64(cinema.BitPerS)/24/(2048*1080), 0.005)
}

// Rates rise with the picture, the depth and the frame rate.
func TestRatesAreMonotone(t *testing.T) {
	for _, r := range frameRates {
		for bits := int64(12); bits < 48; bits++ {
			require.LessOrEqual(t, r.BitPerS(PictureBits(1920, 1080, bits)), r.BitPerS(PictureBits(1920, 1080, bits+1)))
			require.LessOrEqual(t, r.BitPerS(PictureBits(1920, 1080, bits)), WholeRate(240).BitPerS(PictureBits(1920, 1080, bits)))
		}
	}
	require.Less(t, VideoRate(60).BitPerS(1001), WholeRate(60).BitPerS(1001))
	require.Equal(t, int64(600), WholeRate(60).Frames(10))
	require.Equal(t, int64(60), VideoRate(60).Frames(1)) // 59.94 up
}
