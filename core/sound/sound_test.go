package sound_test

import (
	"encoding/csv"
	"math"
	"math/rand/v2"
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"slipfit/core/sound"
)

func readVectors(t *testing.T, name string) [][]string {
	t.Helper()
	f, err := os.Open("../../testdata/reference/sound/" + name)
	require.NoError(t, err)
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	require.NoError(t, err)
	require.Greater(t, len(rows), 1)
	return rows[1:]
}

func number(t *testing.T, s string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(s, 64)
	require.NoError(t, err)
	return v
}

// Source and status in each row of levels.csv.
func TestLevels(t *testing.T) {
	for _, row := range readVectors(t, "levels.csv") {
		var in []float64
		for s := range strings.SplitSeq(row[1], ";") {
			in = append(in, number(t, s))
		}
		var got float64
		switch row[0] {
		case "sum":
			got = sound.Sum(in...)
		case "equal":
			got = sound.OfEqual(int(in[0]), in[1])
		case "speed":
			got = sound.AtSpeed(0, in[0]/in[1])
		case "diameter":
			got = sound.OfSimilarFan(0, 1, in[0]/in[1], 1)
		case "sphere":
			got = -sound.PressureInSphere(0, in[0])
		case "hemisphere":
			got = -sound.PressureInHemisphere(0, in[0])
			require.InDelta(t, 0, sound.PowerFromHemisphere(-got, in[0]), 1e-12)
		case "doubling":
			got = sound.FreeFieldDrop(in[0], in[1])
		case "octaves_a":
			got, _ = sound.FromOctaves([8]float64(in))
		case "octaves":
			_, got = sound.FromOctaves([8]float64(in))
		case "fan_at":
			got = sound.Source{Count: 1, RatedDBA: in[0], RatedRPM: in[1]}.PowerDBA(in[2])
		default:
			t.Fatalf("unknown check %q", row[0])
		}
		require.InDelta(t, number(t, row[2]), got, number(t, row[3]), "%v", row)
	}
}

// IEC 61672: the formula at exact band frequencies rounds to every printed entry; at nominal ones it does not.
func TestAWeighting(t *testing.T) {
	rows := readVectors(t, "a-weighting.csv")
	require.Len(t, rows, 34)
	missed := 0
	for _, row := range rows {
		hz, want := number(t, row[0]), number(t, row[1])
		require.InDelta(t, want, sound.AWeighting(sound.BandFrequencyHz(hz)), 0.05, "%g Hz", hz)
		if math.Abs(want-sound.AWeighting(hz)) > 0.05 {
			missed++
		}
	}
	require.NotZero(t, missed)
	require.InDelta(t, 0, sound.AWeighting(1000), 1e-3)
	require.InDelta(t, 1258.925, sound.BandFrequencyHz(1250), 1e-3)
}

// The worked machine of testdata/reference/air at its speeds: computed, confirmed by a second implementation.
func workedSet() []sound.Running {
	return []sound.Running{
		{sound.Source{Name: "front fans", Count: 2, RatedDBA: 40, RatedRPM: 1500}, 1200},
		{sound.Source{Name: "radiator fans", Count: 3, RatedDBA: 42, RatedRPM: 1800}, 1200},
		{sound.Source{Name: "graphics", Count: 1, RatedDBA: 44, RatedRPM: 2000}, 1600},
		{sound.Source{Name: "supply", Count: 1, RatedDBA: 28}, 0},
		{sound.Source{Name: "pump", Count: 1, RatedDBA: 28}, 0},
	}
}

func TestWorkedMachine(t *testing.T) {
	total := sound.Total(workedSet())
	require.InDelta(t, 43.4846, total, 1e-4)
	require.InDelta(t, 35.5028, sound.PressureInHemisphere(total, 1), 1e-4)
	require.InDelta(t, 39.9397, sound.PressureInHemisphere(total, 0.6), 1e-4)

	// sensitivities of the same machine, and its variant with the radiator fans at 1139.62 rpm
	for _, c := range []struct {
		group    int
		factor   float64
		wantDiff float64
	}{{1, 1.05, 0.324}, {1, 0.95, -0.285}, {0, 1.05, 0.339}, {0, 0.95, -0.299}, {1, 1139.62 / 1200, 43.198 - 43.4846}} {
		set := workedSet()
		set[c.group].RPM *= c.factor
		require.InDelta(t, c.wantDiff, sound.Total(set)-total, 6e-4, "%+v", c)
	}
}

// Below about 20 dB(A) the law breaks: a turning fan stays at the floor, a standing one is silent.
func TestFanFloor(t *testing.T) {
	fan := sound.Source{Count: 1, RatedDBA: 40, RatedRPM: 1500}
	atFloor := 1500 * math.Pow(10, -20.0/50)
	require.InDelta(t, sound.FanFloorDBA, fan.PowerDBA(atFloor), 1e-9)
	require.Greater(t, fan.PowerDBA(1.01*atFloor), sound.FanFloorDBA)
	require.Equal(t, sound.FanFloorDBA, fan.PowerDBA(0.5*atFloor))
	require.Equal(t, sound.Silent(), fan.PowerDBA(0))
	whisper := sound.Source{Count: 1, RatedDBA: 15, RatedRPM: 800}
	require.Equal(t, 15.0, whisper.PowerDBA(400))
	require.Equal(t, 28.0, sound.Source{Count: 1, RatedDBA: 28}.PowerDBA(0), "a steady source has no speed")
}

// Sound power levels are re 1 pW (ISO 3744, terms and definitions): a hundred decibels are a hundredth of a watt.
func TestPicowatts(t *testing.T) {
	for level, pw := range map[float64]float64{0: 1, 60: 1e6, 100: 1e10} {
		require.InEpsilon(t, pw, sound.Picowatts(level), 1e-12)
		require.InDelta(t, level, sound.FromPicowatts(pw), 1e-12)
	}
	require.Zero(t, sound.Picowatts(sound.Silent()))
	require.Equal(t, sound.Silent(), sound.FromPicowatts(0))
}

func TestSilence(t *testing.T) {
	require.Equal(t, sound.Silent(), sound.Sum())
	require.Equal(t, sound.Silent(), sound.Total(nil))
	require.Equal(t, sound.Silent(), sound.OfEqual(0, 30))
	require.InDelta(t, 30, sound.Sum(30, sound.Silent()), 1e-12)
	require.Equal(t, sound.Silent(), sound.TotalBand(nil, 0, 2).Expected)
}

// Law: in a room the level is never below the free field's, meets it where absorption is endless, and stops falling
// with distance where absorption is small.
func TestRoom(t *testing.T) {
	require.InDelta(t, sound.PressureInHemisphere(40, 1), sound.PressureInRoom(40, 1, 2, 1e12), 1e-6)
	require.InDelta(t, sound.PressureInSphere(40, 3), sound.PressureInRoom(40, 3, 1, 1e12), 1e-6)
	for _, absorption := range []float64{1, 10, 50} {
		require.Greater(t, sound.PressureInRoom(40, 2, 2, absorption), sound.PressureInHemisphere(40, 2))
	}
	require.InDelta(t, 40+10*math.Log10(4/10.0), sound.PressureInRoom(40, 1e6, 2, 10), 1e-6)
	require.InDelta(t, 10*math.Log10(2), sound.RoomCorrection(10, 40), 1e-12, "ISO 3744 K2 at A = 4 S")
}

// ISO 3744: taking K1 off a sum gives the source back; no figure under 6 dB, none needed over 15 dB.
func TestBackground(t *testing.T) {
	for _, source := range []float64{31, 35, 40} {
		sum := sound.Sum(source, 29.5)
		k, ok := sound.BackgroundCorrection(sum - 29.5)
		if sum-29.5 < 6 {
			require.False(t, ok)
			continue
		}
		require.True(t, ok)
		require.InDelta(t, source, sum-k, 1e-9)
	}
	k, ok := sound.BackgroundCorrection(6)
	require.True(t, ok)
	require.InDelta(t, 1.256, k, 1e-3)
	k, ok = sound.BackgroundCorrection(20)
	require.True(t, ok)
	require.Zero(t, k)
	_, ok = sound.BackgroundCorrection(math.NaN())
	require.False(t, ok)
	require.Equal(t, 42.0, sound.BelsToDecibels(4.2))
}

func TestDensityTerm(t *testing.T) {
	require.InDelta(t, 20*math.Log10(0.7846), sound.OfSimilarFan(0, 1, 1, 0.7846), 1e-12)
}

// The first-order band agrees with twice the standard deviation of sampled sets.
func TestTotalBand(t *testing.T) {
	set := workedSet()
	for i := range set {
		set[i].Source.UDB = 1.5
	}
	band := sound.TotalBand(set, 0.03, 1)
	require.InDelta(t, 43.4846, band.Expected, 1e-4)
	rng := rand.New(rand.NewPCG(5, 5))
	const samples = 20000
	sum, squares := 0.0, 0.0
	for range samples {
		drawn := workedSet()
		for i := range drawn {
			drawn[i].Source.RatedDBA += 1.5 * rng.NormFloat64()
			drawn[i].RPM *= 1 + 0.03*rng.NormFloat64()
		}
		l := sound.Total(drawn) + rng.NormFloat64()
		sum += l
		squares += l * l
	}
	mean := sum / samples
	require.InEpsilon(t, 2*math.Sqrt(squares/samples-mean*mean), band.High-band.Expected, 0.05)
	require.InDelta(t, band.Expected-8, band.Shifted(-8).Expected, 1e-12)
}
