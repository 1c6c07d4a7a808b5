package sound

import "math"

const (
	// SpeedExponent is the fan law's: LW ∝ 50·lg N (ASHRAE Handbook, AMCA; 55 is met too, range 50–60).
	SpeedExponent = 50.0
	// FanFloorDBA is where the law stops: below about 20 dB(A) of sound power motor, bearings and tones take over and a
	// fan gets no quieter with speed. Where on a fan that happens is not on its sheet; 20 is the trade's figure.
	FanFloorDBA = 20.0
)

// AtSpeed gives a level at another speed by the fan law: L + 50·lg(N2/N1).
func AtSpeed(level, speedRatio float64) float64 { return level + SpeedExponent*math.Log10(speedRatio) }

// OfSimilarFan gives the sound power of a similar fan: LW + 50·lg(N2/N1) + 70·lg(D2/D1) + 20·lg(ρ2/ρ1)
// (ASHRAE Handbook, AMCA 301; from memory).
func OfSimilarFan(powerDB, speedRatio, diameterRatio, densityRatio float64) float64 {
	return AtSpeed(powerDB, speedRatio) + 70*math.Log10(diameterRatio) + 20*math.Log10(densityRatio)
}

// Source is a group of equal sources: fans at a speed, or a steady one such as a pump or a supply.
type Source struct {
	Name     string
	Count    int
	RatedDBA float64 // sound power LWA of one, at RatedRPM
	RatedRPM float64 // 0 means steady: the level does not follow speed
	UDB      float64 // standard uncertainty of the level, dB
}

// PowerDBA gives the sound power of one at a speed: the fan law, held at FanFloorDBA (or at the rated level, where that is
// lower) as long as the fan turns, and Silent when it stands.
func (s Source) PowerDBA(rpm float64) float64 {
	if s.RatedRPM == 0 {
		return s.RatedDBA
	}
	if !(rpm > 0) {
		return Silent()
	}
	return max(AtSpeed(s.RatedDBA, rpm/s.RatedRPM), min(FanFloorDBA, s.RatedDBA))
}

// Running is a source at the speed it was solved to.
type Running struct {
	Source Source
	RPM    float64
}

// GroupDBA gives the sound power of the whole group.
func (r Running) GroupDBA() float64 { return OfEqual(r.Source.Count, r.Source.PowerDBA(r.RPM)) }

// Total gives the sound power of a set of groups together.
func Total(set []Running) float64 {
	energy := 0.0
	for _, r := range set {
		energy += energyOf(r.GroupDBA())
	}
	return levelOf(energy)
}
