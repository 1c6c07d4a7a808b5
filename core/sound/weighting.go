package sound

import "math"

// AWeighting gives the A-weighting at a frequency in Hz, 0 at 1 kHz (IEC 61672-1; constants from memory). At the exact
// band frequencies, see BandFrequencyHz, it rounds to every entry of the standard's table; at nominal ones it does not.
func AWeighting(hz float64) float64 {
	return 20 * math.Log10(aResponse(hz)/aResponse(1000))
}

func aResponse(hz float64) float64 {
	const f1, f2, f3, f4 = 20.598997, 107.65265, 737.86223, 12194.217
	s := hz * hz
	return s * s / ((s + f1*f1) * math.Sqrt((s+f2*f2)*(s+f3*f3)) * (s + f4*f4))
}

// BandFrequencyHz gives the exact mid-frequency of the third-octave band nearest to a nominal one: 10^(n/10).
func BandFrequencyHz(nominalHz float64) float64 {
	return math.Pow(10, math.Round(10*math.Log10(nominalHz))/10)
}

// FromOctaves gives the A-weighted level of a spectrum of eight octave bands, 63 Hz to 8 kHz, and the unweighted one.
func FromOctaves(bandDB [8]float64) (weightedDBA, unweightedDB float64) {
	octaveHz := [8]float64{63, 125, 250, 500, 1000, 2000, 4000, 8000}
	weighted, plain := 0.0, 0.0
	for i, l := range bandDB {
		weighted += energyOf(l + AWeighting(BandFrequencyHz(octaveHz[i])))
		plain += energyOf(l)
	}
	return levelOf(weighted), levelOf(plain)
}
