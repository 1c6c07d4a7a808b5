package feed

// Wall is what a supply takes from the outlet for one DC load, in mW, as a band.
type Wall struct {
	LowMW      int64 // if it is as good as the next better level's floor (two points above the floor for Titanium)
	ExpectedMW int64 // at the efficiency half way between the two
	HighMW     int64 // if it only just keeps its level: the figure to plan with
}

// WallPower is the band of wall power for loadMW of DC out of a supply of ratingMW. HighMW follows EfficiencyPPM and is
// rounded up. LowMW rests on common practice: a supply better than the next level's floor would be sold under that level.
// ok is false where EfficiencyPPM has no answer.
func WallPower(level Level, line Line, loadMW, ratingMW int64) (wall Wall, ok bool) {
	floor, ok := EfficiencyPPM(level, line, loadMW, ratingMW)
	if !ok {
		return Wall{}, false
	}
	points, _ := efficiencyPoints(level, line)
	if better, ok := efficiencyPoints(level+1, line); ok {
		points = better
	} else {
		for i := range points {
			points[i] += 2
		}
	}
	first := firstPoint(points)
	ceiling := points[first] * 10_000
	if loadMW*100 >= loadPercents[first]*ratingMW {
		ceiling = interpolatePPM(points, first, loadMW, ratingMW)
	}
	if loadMW == 0 {
		high := idleLossMW(level, line, ratingMW)
		return Wall{0, high / 2, high}, true
	}
	return Wall{
		LowMW:      loadMW * millionths / ceiling,
		ExpectedMW: ceilDiv(loadMW*millionths*2, floor+ceiling),
		HighMW:     ceilDiv(loadMW*millionths, floor),
	}, true
}

// idleLossMW is the loss carried down from the lowest published load point.
func idleLossMW(level Level, line Line, ratingMW int64) int64 {
	points, _ := efficiencyPoints(level, line)
	first := firstPoint(points)
	return pointLossMW(points[first], loadPercents[first], ratingMW)
}

// HeatMW is the heat left in the supply itself: wall − DC, in mW. The room gets all of the wall power.
func HeatMW(wallMW, loadMW int64) int64 {
	return wallMW - loadMW
}

// ApparentMVA is wall power in mW over a power factor in percent, in mVA rounded up.
func ApparentMVA(wallMW, powerFactorPercent int64) int64 {
	return ceilDiv(wallMW*100, powerFactorPercent)
}

// Use is how long in a year a machine draws a wall power.
type Use struct {
	WallMW        int64
	MinutesPerDay int64
	DaysPerYear   int64
}

// EnergyWh is the energy of a year of uses, in Wh rounded up: Σ P · t. 1000 Wh are 1 kWh.
func EnergyWh(uses ...Use) int64 {
	var milliwattMinutes int64
	for _, u := range uses {
		milliwattMinutes += u.WallMW * u.MinutesPerDay * u.DaysPerYear
	}
	return ceilDiv(milliwattMinutes, 60_000)
}

// CostMinor is the price of energyWh at a tariff, in minor money units rounded up. The tariff is in thousandths of a minor
// unit per kWh: 34.5 cents per kWh is 34500.
func CostMinor(energyWh, tariffMilliMinorPerKWh int64) int64 {
	return ceilDiv(energyWh*tariffMilliMinorPerKWh, 1_000_000)
}
