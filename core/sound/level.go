// Package sound models what a machine is heard at: levels, their sums, fans at speed, distance, and A-weighting.
//
// Levels are decibels: sound power LW re 1 pW, sound pressure Lp re 20 µPa, both A-weighted where named so. A source that
// makes no sound has the level −Inf.
package sound

import "math"

// Silent gives the level of a source that makes no sound, −Inf.
func Silent() float64 { return math.Inf(-1) }

// Sum adds the levels of independent sources as energies: 10·lg Σ 10^(Li/10). The sum of none is Silent.
func Sum(levels ...float64) float64 {
	energy := 0.0
	for _, l := range levels {
		energy += energyOf(l)
	}
	return levelOf(energy)
}

// OfEqual gives the level of n equal sources: +10·lg n.
func OfEqual(n int, level float64) float64 {
	if n <= 0 {
		return Silent()
	}
	return level + 10*math.Log10(float64(n))
}

// BackgroundCorrection gives K1 = −10·lg(1 − 10^(−ΔL/10)), to be taken from a level measured over a background that lies
// ΔL below it; ok is false under 6 dB, where the measurement says only an upper limit. Over 15 dB it is 0.
// Source: ISO 3744 (from memory).
func BackgroundCorrection(differenceDB float64) (correctionDB float64, ok bool) {
	switch {
	case !(differenceDB >= 6):
		return 0, false
	case differenceDB > 15:
		return 0, true
	}
	return -10 * math.Log10(1-energyOf(-differenceDB)), true
}

// BelsToDecibels turns a declared sound power in bels, an older form, into decibels.
func BelsToDecibels(bels float64) float64 { return 10 * bels }

// Picowatts is the sound power of a level of sound power, which is 0 dB at 1 pW (ISO 3744).
func Picowatts(powerDB float64) float64 { return energyOf(powerDB) }

// FromPicowatts is the level of a sound power, Silent where there is none.
func FromPicowatts(pw float64) float64 { return levelOf(pw) }

func energyOf(level float64) float64 { return math.Pow(10, level/10) }
func levelOf(energy float64) float64 { return 10 * math.Log10(energy) }
