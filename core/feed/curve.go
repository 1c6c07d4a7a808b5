package feed

import "fmt"

// CurvePoint is one load point of a supply's own sheet: load and efficiency in thousandths of a per cent.
type CurvePoint struct {
	LoadShare, Efficiency int64
}

// CurvePPM is the efficiency of a supply at loadMW out of ratingMW by its own load points, which rise in load, in parts per
// million rounded down. Between two points: on the straight line that joins them. Under the first: the loss in watts at that
// point is kept, as in EfficiencyPPM. Past the last: the last point's efficiency, which a sheet that ends there leaves open.
func CurvePPM(points []CurvePoint, loadMW, ratingMW int64) (ppm int64, err error) {
	if len(points) == 0 {
		return 0, fmt.Errorf("efficiency curve: no points")
	}
	for i, p := range points {
		if p.LoadShare <= 0 || p.Efficiency <= 0 || p.Efficiency >= 100_000 || i > 0 && p.LoadShare <= points[i-1].LoadShare {
			return 0, fmt.Errorf("efficiency curve: point %d (load %d, efficiency %d): expected rising loads and efficiencies between 0 and 100 %%", i, p.LoadShare, p.Efficiency)
		}
	}
	if loadMW < 0 || ratingMW <= 0 || loadMW > ratingMW {
		return 0, fmt.Errorf("efficiency curve: load %d mW of %d mW", loadMW, ratingMW)
	}
	first := points[0]
	if atFirst := ceilDiv(first.LoadShare*ratingMW, 100_000); loadMW < atFirst {
		lossMW := ceilDiv(atFirst*(100_000-first.Efficiency), first.Efficiency)
		return loadMW * millionths / (loadMW + lossMW), nil
	}
	for i := 1; i < len(points); i++ {
		low, high := points[i-1], points[i]
		if loadMW*100_000 > high.LoadShare*ratingMW {
			continue
		}
		rise := (high.Efficiency - low.Efficiency) * 10 * (loadMW*100_000 - low.LoadShare*ratingMW)
		return low.Efficiency*10 + floorDiv(rise, (high.LoadShare-low.LoadShare)*ratingMW), nil
	}
	return points[len(points)-1].Efficiency * 10, nil
}
