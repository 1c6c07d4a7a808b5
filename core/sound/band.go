package sound

import "math"

// Band is a level with what it may miss by: two standard uncertainties either way.
type Band struct {
	Low, Expected, High float64
}

const (
	// FurnishedRoomUDB is a sound level meter in a furnished room (common practice).
	FurnishedRoomUDB = 2.0
	// HemiAnechoicUDB is a hemi-anechoic room, ISO 3744 grade 2 (from memory).
	HemiAnechoicUDB = 1.5
)

// TotalBand gives the sound power of a set with its band, to first order: a group's uncertainty, with what speed ±share
// adds by the fan law, weighs by its share of the energy; groups and meter are independent.
func TotalBand(set []Running, speedUShare, meterUDB float64) Band {
	total := Total(set)
	variance := meterUDB * meterUDB
	for _, r := range set {
		weight := energyOf(r.GroupDBA() - total)
		if math.IsInf(total, -1) {
			weight = 0
		}
		u := r.Source.UDB
		if r.Source.RatedRPM > 0 {
			u = math.Hypot(u, SpeedExponent/math.Ln10*speedUShare)
		}
		variance += weight * weight * u * u
	}
	return bandAround(total, variance)
}

// Shifted gives the band at the place where the level differs by a constant, such as a distance.
func (b Band) Shifted(byDB float64) Band {
	return Band{Low: b.Low + byDB, Expected: b.Expected + byDB, High: b.High + byDB}
}

func bandAround(expected, variance float64) Band {
	u := 2 * math.Sqrt(variance)
	return Band{Low: expected - u, Expected: expected, High: expected + u}
}
