package feed

import "strings"

// Level is the efficiency level a supply is certified to. The zero value is none stated.
type Level int

// Levels of the 80 PLUS programme.
const (
	LevelUnknown Level = iota
	LevelWhite
	LevelBronze
	LevelSilver
	LevelGold
	LevelPlatinum
	LevelTitanium
)

// LevelNamed is the level of a name in lower case, LevelUnknown where there is none of that name.
func LevelNamed(word string) Level {
	for l := LevelWhite; l <= LevelTitanium; l++ {
		if strings.ToLower(l.String()) == word {
			return l
		}
	}
	return LevelUnknown
}

// String is the level's published name.
func (l Level) String() string {
	names := [...]string{"unknown", "White", "Bronze", "Silver", "Gold", "Platinum", "Titanium"}
	if l < 0 || int(l) >= len(names) {
		return names[0]
	}
	return names[l]
}

// Line is the programme a supply was tested under.
type Line int

// Programmes: internal supplies at 115 V and at 230 V (EU), redundant supplies at 230 V.
const (
	Line115 Line = iota
	Line230
	LineRedundant230
)

// loadPercents are the published load points.
var loadPercents = [4]int64{10, 20, 50, 100}

// efficiencyPercent holds the least efficiency in percent at 10, 20, 50 and 100 % load. A zero is a point the level does
// not promise; a row of zeros is a level the programme does not have.
//
// Source: 80 PLUS level table as printed in the trade press.
var efficiencyPercent = [3][7][4]int64{
	Line115: {
		LevelWhite:    {0, 80, 80, 80},
		LevelBronze:   {0, 82, 85, 82},
		LevelSilver:   {0, 85, 88, 85},
		LevelGold:     {0, 87, 90, 87},
		LevelPlatinum: {0, 90, 92, 89},
		LevelTitanium: {90, 92, 94, 90},
	},
	Line230: {
		LevelWhite:    {0, 82, 85, 82},
		LevelBronze:   {0, 85, 88, 85},
		LevelSilver:   {0, 87, 90, 87},
		LevelGold:     {0, 90, 92, 89},
		LevelPlatinum: {0, 92, 94, 90},
		LevelTitanium: {90, 94, 96, 94},
	},
	LineRedundant230: {
		LevelBronze:   {0, 81, 85, 81},
		LevelSilver:   {0, 85, 89, 85},
		LevelGold:     {0, 88, 92, 88},
		LevelPlatinum: {0, 90, 94, 91},
		LevelTitanium: {90, 94, 96, 91},
	},
}

// millionths is one, in parts per million.
const millionths = 1_000_000

// EfficiencyPPM is the least efficiency a supply of that level promises at loadMW out of ratingMW, in parts per million,
// rounded down.
//
// Between two published load points: on the straight line that joins them, so never above the better neighbour nor below
// the worse. Under the lowest published point (20 %, or 10 % for Titanium): the loss in watts at that point is kept, since
// a supply does not lose more when it gives less; efficiency = P / (P + loss). The programme promises neither.
//
// ok is false for an unknown level, a level the programme does not have, a negative load, a rating not above zero and a
// load above the rating.
func EfficiencyPPM(level Level, line Line, loadMW, ratingMW int64) (ppm int64, ok bool) {
	points, ok := efficiencyPoints(level, line)
	if !ok || loadMW < 0 || ratingMW <= 0 || loadMW > ratingMW {
		return 0, false
	}
	first := firstPoint(points)
	if loadMW*100 < loadPercents[first]*ratingMW {
		return loadMW * millionths / (loadMW + pointLossMW(points[first], loadPercents[first], ratingMW)), true
	}
	return interpolatePPM(points, first, loadMW, ratingMW), true
}

func efficiencyPoints(level Level, line Line) ([4]int64, bool) {
	if line < 0 || int(line) >= len(efficiencyPercent) || level < 0 || int(level) >= len(efficiencyPercent[0]) {
		return [4]int64{}, false
	}
	points := efficiencyPercent[line][level]
	return points, points[1] != 0
}

func firstPoint(points [4]int64) int {
	if points[0] == 0 {
		return 1
	}
	return 0
}

// pointLossMW is the loss at a published load point, rounded up.
func pointLossMW(efficiencyPct, loadPct, ratingMW int64) int64 {
	loadMW := ceilDiv(loadPct*ratingMW, 100)
	return ceilDiv(loadMW*(100-efficiencyPct), efficiencyPct)
}

// interpolatePPM reads the line at a load on or above the first point.
func interpolatePPM(points [4]int64, first int, loadMW, ratingMW int64) int64 {
	for i := first; i < len(points)-1; i++ {
		low, high := loadPercents[i]*ratingMW, loadPercents[i+1]*ratingMW // both in hundredths of mW
		if loadMW*100 <= high {
			rise := (points[i+1] - points[i]) * (loadMW*100 - low)
			// Percent to ppm is ×10^4; rise may be negative, so floor it by hand.
			return points[i]*10_000 + floorDiv(rise*10_000, high-low)
		}
	}
	return points[len(points)-1] * 10_000
}

// floorDiv divides and rounds towards minus infinity; b is positive.
func floorDiv(a, b int64) int64 {
	q := a / b
	if a%b < 0 {
		q--
	}
	return q
}

// LeastPowerFactorPercent is the power factor a level promises: 0.90 up to Gold, 0.95 from Platinum. ok is false for an
// unknown level.
//
// Source: base rule, encyclopaedia article "80 Plus"; per level, programme rules from memory.
func LeastPowerFactorPercent(level Level) (percent int64, ok bool) {
	switch {
	case level <= LevelUnknown || level > LevelTitanium:
		return 0, false
	case level >= LevelPlatinum:
		return 95, true
	}
	return 90, true
}
