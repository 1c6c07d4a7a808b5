package unit_test

import (
	"encoding/json"
	"strings"
	"testing"

	"slipfit/core/unit"

	"github.com/stretchr/testify/require"
)

// thin is the narrow no-break space between thousands, as ISO 80000-1 section 7.3.1 asks for groups of three digits.
const thin = "\u202f"

func TestGroup(t *testing.T) {
	for digits, want := range map[string]string{"0": "0", "9999": "9999", "12000": "12" + thin + "000",
		"3671186090959440000": "3" + thin + "671" + thin + "186" + thin + "090" + thin + "959" + thin + "440" + thin + "000"} {
		require.Equal(t, want, unit.Group(digits))
	}
}

func TestQuantityPrintsAsAPersonReadsIt(t *testing.T) {
	for _, c := range []struct {
		q    unit.Quantity
		want string
	}{
		{unit.Length(312_500).Q(), "312.5 mm"},
		{unit.Length(312_000).Q(), "312 mm"},
		{unit.Length(31_250).Q(), "31.3 mm"}, // half away from zero
		{unit.Length(31_249).Q(), "31.2 mm"},
		{unit.Length(-31_250).Q(), "−31.3 mm"},
		{unit.Length(49).Q(), "0 mm"},
		{unit.Length(50).Q(), "0.1 mm"},
		{unit.Length(-49).Q(), "0 mm"}, // nought has no sign
		{unit.Length(9_999_000).Q(), "9999 mm"},
		{unit.Length(12_345_600).Q(), "12" + thin + "345.6 mm"},
		{unit.Power(75_900).Q(), "75.9 W"},
		{unit.Power(999_960).Q(), "1000 W"},
		{unit.Current(1_005).Q(), "1.01 A"},
		{unit.Current(540).Q(), "0.54 A"},
		{unit.Mass(1_234).Q(), "1.23 kg"},
		{unit.Mass(60_000).Q(), "60 kg"},
		{unit.Money(123_450).Q(), "1234.50"},
		{unit.Money(1_234_567).Q(), "12" + thin + "345.67"},
		{unit.Money(-5).Q(), "−0.05"},
		{unit.Memory(64 * unit.GiB).Q(), "64 GiB"},
		{unit.Memory(1536).Q(), "1.5 GiB"},
		{(2 * unit.Terabyte).Q(), "2000 GB"},
		{(20 * unit.Terabyte).Q(), "20" + thin + "000 GB"},
		{(500 * unit.Gigabyte).Q(), "500 GB"},
		{unit.Throughput(7_400).Q(), "7400 MB/s"},
		{unit.LinkRate(2_500).Q(), "2500 Mbit/s"},
		{unit.TransferRate(6_400).Q(), "6400 MT/s"},
		{unit.Temperature(84_960).Q(), "85 °C"},
		{unit.Temperature(-5_000).Q(), "−5 °C"},
		{unit.Sound(23_450).Q(), "23.5 dB(A)"},
		{unit.Flow(92_000).Q(), "92 m³/h"},
		{unit.Duration(90).Q(), "90 min"},
		{unit.Share(21_000).Q(), "21 %"},
		{unit.Share(333).Q(), "0.3 %"},
		{unit.Millilitre(10_240).Q(), "10.2 l"},
		{unit.Points(57_510).Q(), "57" + thin + "510 points"},
		{unit.Whole(1_234_567).Q(), "1" + thin + "234" + thin + "567"},
		{unit.Whole(-12_345).Q(), "−12" + thin + "345"},
		{unit.Release(2_014).Q(), "2.14"},
		{unit.Count(3), "3"},
		{unit.Met(true), "yes"},
		{unit.Met(false), "no"},
		{unit.Quantity{N: 12_500, Kind: unit.Year}, "12.5 years"},
		{unit.Quantity{N: 1_500_000, Kind: unit.VoltAmpere}, "1500 VA"},
		{unit.Quantity{N: 4_905, Kind: unit.Newton}, "4.91 N·m"},
	} {
		require.Equal(t, c.want, c.q.String())
		figure := strings.TrimSuffix(c.want, " "+c.q.Kind.Symbol())
		require.Equal(t, figure, c.q.Figure(), "the figure without its unit")
	}
}

// TestEveryKindHasItsWord: kinds follow one another without a gap, and no two share a word in JSON.
func TestEveryKindHasItsWord(t *testing.T) {
	words := map[string]unit.Kind{}
	for k := unit.Number; k <= unit.Volume; k++ {
		require.NotEmpty(t, k.Name(), "kind %d", k)
		require.NotContains(t, words, k.Name())
		words[k.Name()] = k
		require.NotEmpty(t, unit.Quantity{N: 1000, Kind: k}.String())
	}
}

func TestQuantitySubtracts(t *testing.T) {
	have, need := unit.Length(322_000).Q(), unit.Length(325_500).Q()
	require.Equal(t, unit.Quantity{N: -3_500, Kind: unit.Metre}, have.Sub(need))
	require.Equal(t, "−3.5 mm", have.Sub(need).String())
}

func TestQuantityInJSON(t *testing.T) {
	for _, c := range []struct {
		q    unit.Quantity
		want string
	}{
		{unit.Length(312_500).Q(), `{"figure":312.5,"unit":"mm","kind":"length","text":"312.5 mm"}`},
		{unit.Length(-1).Q(), `{"figure":-0.001,"unit":"mm","kind":"length","text":"0 mm"}`},
		{unit.Memory(1536).Q(), `{"figure":1.5,"unit":"GiB","kind":"memory","text":"1.5 GiB"}`},
		{unit.Money(-123_450).Q(), `{"figure":-123450,"unit":"","kind":"money","text":"−1234.50"}`},
		{unit.Whole(12_345).Q(), `{"figure":12345,"unit":"","kind":"number","text":"12` + thin + `345"}`},
		{unit.Met(true), `{"figure":1,"unit":"","kind":"yes","text":"yes"}`},
	} {
		raw, err := json.Marshal(c.q)
		require.NoError(t, err)
		require.JSONEq(t, c.want, string(raw))
		var back struct{ Text string }
		require.NoError(t, json.Unmarshal(raw, &back))
		require.Equal(t, c.q.String(), back.Text, "the number on screen and in JSON is the same")
	}
}

func TestFloatIsInThePrintedUnit(t *testing.T) {
	require.Equal(t, 312.5, unit.Length(312_500).Q().Float())
	require.Equal(t, 1.5, unit.Memory(1536).Q().Float())
	require.Equal(t, 12.34, unit.Money(1234).Q().Float())
	require.Equal(t, 7.0, unit.Count(7).Float())
}

func TestRelease(t *testing.T) {
	for text, want := range map[string]unit.Release{"0": 0, "2": 2000, "2.0": 2000, "2.14": 2014, "2.140": 2140, "999.999": 999_999, "1.05": 1005, "3.1": 3001} {
		got, err := unit.ParseRelease(text)
		require.NoError(t, err, text)
		require.Equal(t, want, got, text)
		again, err := unit.ParseRelease(got.String())
		require.NoError(t, err)
		require.Equal(t, got, again, "printing and parsing again")
	}
	for _, text := range []string{"", ".", "2.", ".2", "2.1.4", "v2", "-1", "+1", "2,1", " 2", "2 ", "1000", "1.1000", "２.1", "2.x"} {
		_, err := unit.ParseRelease(text)
		require.ErrorContains(t, err, "is not a version such as 2.14", "%q", text)
	}
	older, err := unit.ParseRelease("1.9")
	require.NoError(t, err)
	later, err := unit.ParseRelease("1.10")
	require.NoError(t, err)
	require.Greater(t, later, older, "1.10 comes after 1.9")
	require.Equal(t, "1.10", later.String())
}

func TestFigureMissingIsNotNought(t *testing.T) {
	var none unit.Figure[unit.Length]
	v, ok := none.Get()
	require.False(t, ok)
	require.Zero(t, v)
	require.True(t, none.IsZero())
	require.Equal(t, unit.Length(7), none.Or(7))

	nought := unit.Known[unit.Length](0)
	_, ok = nought.Get()
	require.True(t, ok)
	require.False(t, nought.IsZero(), "a stated nought is written")
	require.Zero(t, nought.Or(7))
	require.NotEqual(t, none, nought)

	none.Set(5)
	require.Equal(t, unit.Known[unit.Length](5), none)

	no := unit.Known(false)
	require.False(t, no.IsZero(), "a stated no is written")
}

func FuzzParseRelease(f *testing.F) {
	for _, text := range []string{"2.14", "0", "999.999", "1.", ".1", "1.1.1", "x"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		r, err := unit.ParseRelease(text)
		if err != nil {
			require.Zero(t, r)
			return
		}
		again, err := unit.ParseRelease(r.String())
		require.NoError(t, err)
		require.Equal(t, r, again)
	})
}
