package feed

import (
	"testing"

	"github.com/stretchr/testify/require"
)

var allLines = map[string]Line{"115": Line115, "230": Line230, "230 redundant": LineRedundant230}

func levelNamed(name string) Level {
	for l := LevelWhite; l <= LevelTitanium; l++ {
		if l.String() == name {
			return l
		}
	}
	return LevelUnknown
}

// Source: 80 PLUS table as printed in the trade press.
func TestEfficiencyAtPublishedPoints(t *testing.T) {
	const rating = 1_000_000
	for _, row := range vectors(t, "efficiency.csv") {
		line, level := allLines[row["programme"]], levelNamed(row["level"])
		for column, load := range map[string]int64{"at_10": 10, "at_20": 20, "at_50": 50, "at_100": 100} {
			if row[column] == "" {
				continue
			}
			got, ok := EfficiencyPPM(level, line, rating*load/100, rating)
			require.True(t, ok, row)
			require.Equal(t, integer(t, row[column])*10_000, got, "%v at %d %%", row, load)
		}
	}
	_, ok := EfficiencyPPM(LevelWhite, LineRedundant230, 500_000, rating)
	require.False(t, ok)
	_, ok = EfficiencyPPM(LevelUnknown, Line115, 500_000, rating)
	require.False(t, ok)
	_, ok = EfficiencyPPM(LevelGold, Line115, rating+1, rating)
	require.False(t, ok)
	_, ok = EfficiencyPPM(LevelGold, Line115, 1, 0)
	require.False(t, ok)
	_, ok = EfficiencyPPM(LevelGold, Line(3), 1, rating)
	require.False(t, ok)
}

// The line between two points stays between them; under the first point efficiency only falls; wall power rises with load.
func TestEfficiencyBounds(t *testing.T) {
	for _, line := range allLines {
		for level := LevelWhite; level <= LevelTitanium; level++ {
			points, ok := efficiencyPoints(level, line)
			if !ok {
				continue
			}
			for _, rating := range []int64{300_000, 549_999, 850_000, 1_600_000} {
				checkEfficiencyBounds(t, level, line, points, rating)
			}
		}
	}
}

func checkEfficiencyBounds(t *testing.T, level Level, line Line, points [4]int64, rating int64) {
	t.Helper()
	first := firstPoint(points)
	var lastPPM, lastHigh, lastLow int64
	for load := int64(0); load <= rating; load += rating / 397 {
		ppm, ok := EfficiencyPPM(level, line, load, rating)
		require.True(t, ok)
		if load*100 < loadPercents[first]*rating {
			require.GreaterOrEqual(t, ppm, lastPPM)
			require.LessOrEqual(t, ppm, points[first]*10_000)
		}
		for i := first; i < 3; i++ {
			if load*100 >= loadPercents[i]*rating && load*100 <= loadPercents[i+1]*rating {
				require.GreaterOrEqual(t, ppm, min(points[i], points[i+1])*10_000)
				require.LessOrEqual(t, ppm, max(points[i], points[i+1])*10_000)
			}
		}
		wall, ok := WallPower(level, line, load, rating)
		require.True(t, ok)
		require.LessOrEqual(t, wall.LowMW, wall.ExpectedMW)
		require.LessOrEqual(t, wall.ExpectedMW, wall.HighMW)
		require.GreaterOrEqual(t, wall.LowMW, load)
		require.GreaterOrEqual(t, wall.HighMW, lastHigh)
		require.GreaterOrEqual(t, wall.LowMW, lastLow)
		lastPPM, lastHigh, lastLow = ppm, wall.HighMW, wall.LowMW
	}
}

// A better level never takes more from the wall at its floor.
func TestBetterLevelTakesNoMore(t *testing.T) {
	for _, line := range allLines {
		for load := int64(5_000); load <= 750_000; load += 5_000 {
			var last int64
			for level := LevelTitanium; level >= LevelWhite; level-- {
				wall, ok := WallPower(level, line, load, 750_000)
				if !ok {
					continue
				}
				require.GreaterOrEqual(t, wall.HighMW, last, "%v %v %d", line, level, load)
				last = wall.HighMW
			}
		}
	}
}

// Source: 80 PLUS Gold at 115 V: 850 W supply at 425 and 850 W takes at most 472.2 and 977.0 W, heat 47.2 and 127.0 W.
func TestWallVectors(t *testing.T) {
	half, ok := WallPower(LevelGold, Line115, 425_000, 850_000)
	require.True(t, ok)
	require.InDelta(t, 472_200, half.HighMW, 50)
	require.InDelta(t, 47_200, HeatMW(half.HighMW, 425_000), 50)
	full, ok := WallPower(LevelGold, Line115, 850_000, 850_000)
	require.True(t, ok)
	require.InDelta(t, 977_000, full.HighMW, 50)
	require.InDelta(t, 127_000, HeatMW(full.HighMW, 850_000), 50)
	// Platinum's floor at 425 W is 92 %: the band's low end.
	require.Equal(t, int64(425_000*100/92), half.LowMW)
	// Under 20 % the loss of the 20 % point is carried down: 170 W at 87 % loses 25.403 W.
	idle, ok := WallPower(LevelGold, Line115, 60_000, 850_000)
	require.True(t, ok)
	require.InDelta(t, 85_403, idle.HighMW, 1)
	none, ok := WallPower(LevelGold, Line115, 0, 850_000)
	require.True(t, ok)
	require.Equal(t, Wall{0, 12_701, 25_403}, none)
	_, ok = WallPower(LevelUnknown, Line115, 60_000, 850_000)
	require.False(t, ok)
}

// Source: NEC 210.20(A) as quoted in a published bulletin; BS 1363 13 A at 230 V is 2990 VA.
func TestCircuitVectors(t *testing.T) {
	circuits := Circuits()
	fifteen, twenty, thirteen := circuits[0], circuits[1], circuits[2]
	require.Equal(t, int64(12_000), fifteen.ContinuousMA())
	require.Equal(t, int64(1_440_000), fifteen.ContinuousMVA())
	require.Equal(t, int64(16_000), twenty.ContinuousMA())
	require.Equal(t, int64(1_920_000), twenty.ContinuousMVA())
	require.Equal(t, int64(2_990_000), thirteen.ContinuousMVA())
	require.Equal(t, int64(12_000), fifteen.PlannedShareMA())

	gold, ok := WallPower(LevelGold, Line115, 1_200_000, 1_200_000)
	require.True(t, ok)
	mva := ApparentMVA(gold.HighMW, 100)
	require.InDelta(t, 11_490, CurrentMA(mva, 120_000), 10)
	require.Positive(t, fifteen.MarginMA(mva, 0))

	titanium, ok := WallPower(LevelTitanium, Line115, 1_600_000, 1_600_000)
	require.True(t, ok)
	mva = ApparentMVA(titanium.HighMW, 100)
	require.InDelta(t, 14_810, CurrentMA(mva, 120_000), 10)
	require.Negative(t, fifteen.MarginMA(mva, 0))
	require.Positive(t, twenty.MarginMA(mva, 0))

	require.Zero(t, fifteen.MarginMA(1_440_000, 0)) // at the exact limit
	require.Equal(t, int64(-1), fifteen.MarginMA(1_440_001, 0))
	require.Zero(t, fifteen.MarginMA(0, 1_800_000)) // not continuous: the whole rating
	for _, c := range circuits {
		require.NotEmpty(t, c.Source)
		require.Zero(t, c.MarginMA(c.ContinuousMVA(), 0), c.Name)
	}
}

func TestEnergyAndCost(t *testing.T) {
	// Arithmetic: 100 W for 10 h on 250 days is 250 kWh; 2 W standby for 14 h on 365 days is 10.22 kWh.
	require.Equal(t, int64(250_000), EnergyWh(Use{100_000, 600, 250}))
	require.Equal(t, int64(10_220), EnergyWh(Use{2_000, 840, 365}))
	require.Equal(t, int64(260_220), EnergyWh(Use{100_000, 600, 250}, Use{2_000, 840, 365}))
	require.Equal(t, int64(8_625), CostMinor(250_000, 34_500)) // 250 kWh at 34.5 cents: 86.25
	require.Equal(t, int64(1), CostMinor(1, 34_500))           // up
	require.Zero(t, EnergyWh())
	require.Equal(t, int64(111_112), ApparentMVA(100_000, 90))
}

// Source: 80 PLUS programme rules, per level from memory.
func TestPowerFactor(t *testing.T) {
	for level, want := range map[Level]int64{LevelWhite: 90, LevelGold: 90, LevelPlatinum: 95, LevelTitanium: 95} {
		got, ok := LeastPowerFactorPercent(level)
		require.True(t, ok)
		require.Equal(t, want, got)
	}
	_, ok := LeastPowerFactorPercent(LevelUnknown)
	require.False(t, ok)
}

func TestUPS(t *testing.T) {
	u := UPS{RatedMVA: 1_500_000, RatedMW: 900_000} // 0.6 W a VA, common practice
	require.Equal(t, int64(0), u.FreeMW(720_000))
	require.Equal(t, int64(-1), u.FreeMW(720_001))
	require.Equal(t, int64(500_000), u.FreeMVA(1_000_000))

	table := []RuntimePoint{{100_000, 3_600}, {300_000, 1_080}, {900_000, 180}}
	for _, row := range table {
		got, err := UPSRuntimeS(table, row.LoadMW)
		require.NoError(t, err)
		require.Equal(t, row.RuntimeS, got)
	}
	got, err := UPSRuntimeS(table, 10_000)
	require.NoError(t, err)
	require.Equal(t, int64(3_600), got)
	_, err = UPSRuntimeS(table, 900_001)
	require.ErrorIs(t, err, ErrUPSLoad)
	last := int64(3_600)
	for load := int64(1_000); load <= 900_000; load += 1_000 {
		got, err := UPSRuntimeS(table, load)
		require.NoError(t, err)
		require.LessOrEqual(t, got, last)
		last = got
	}
	for _, bad := range [][]RuntimePoint{nil, {{0, 1}}, {{1, 0}}, {{2, 2}, {2, 1}}, {{2, 2}, {3, 3}}} {
		_, err := UPSRuntimeS(bad, 1)
		require.Error(t, err)
		require.NotErrorIs(t, err, ErrUPSLoad)
	}
	_, err = UPSRuntimeS(table, -1)
	require.ErrorContains(t, err, "zero or more")
}

// A battery of energy E behind a fixed loss L runs E / (P + L); one with Peukert exponent k runs c / P^k. Read from two
// rows of either, the model never promises more than the battery gives.
func TestUPSRuntimeIsSafe(t *testing.T) {
	fixedLoss := func(p int64) int64 { return 2_400_000_000 / (p + 40_000) }
	peukert := func(p int64) int64 { return 2_000_000_000_000_000 / (p * p) } // k = 2
	for _, truth := range []func(int64) int64{fixedLoss, peukert} {
		table := []RuntimePoint{{100_000, truth(100_000)}, {400_000, truth(400_000)}}
		for p := int64(100_000); p <= 400_000; p += 10_000 {
			got, err := UPSRuntimeS(table, p)
			require.NoError(t, err)
			require.LessOrEqual(t, got, truth(p)+1, "load %d mW", p) // one second for whole seconds
		}
	}
}

func TestLevelNamed(t *testing.T) {
	for want, word := range []string{"", "white", "bronze", "silver", "gold", "platinum", "titanium"} {
		require.Equal(t, Level(want), LevelNamed(word), word)
	}
	require.Equal(t, LevelUnknown, LevelNamed("Gold"))
}
