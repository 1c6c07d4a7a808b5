package media

import (
	"errors"
	"fmt"
)

// Amdahl is the speed-up of a job of fixed size whose share parallel (0 to 1) spreads over n workers: 1 / (s + p/n).
//
// Source: Amdahl 1967, as written in Gustafson 1988.
func Amdahl(parallel, n float64) float64 {
	return 1 / ((1 - parallel) + parallel/n)
}

// AmdahlLimit is the speed-up that no number of workers exceeds: 1 / s. It is infinite for parallel = 1.
func AmdahlLimit(parallel float64) float64 {
	return 1 / (1 - parallel)
}

// Gustafson is the scaled speed-up of a job that grows with n workers, of which serial is the share of time not shared:
// n + (1 − n) · s'.
//
// Source: Gustafson, Reevaluating Amdahl's Law, CACM 31(5), 1988.
func Gustafson(serial, n float64) float64 {
	return n + float64((1-n)*serial)
}

// ParallelShare turns a measured speed-up at n workers back into Amdahl's parallel share: (1 − 1/S) / (1 − 1/n). Range:
// n > 1 and 0 < S ≤ n; beyond it the measurement is not Amdahl's and an error is returned. A speed-up below 1 gives a
// negative share: the job got slower.
func ParallelShare(speedUp, n float64) (float64, error) {
	if !(n > 1) {
		return 0, errors.New("parallel share: expected more than one worker")
	}
	if !(speedUp > 0) || speedUp > n {
		return 0, fmt.Errorf("parallel share: speed-up %g on %g workers: expected above 0 and at most %g", speedUp, n, n)
	}
	return (1 - 1/speedUp) / (1 - 1/n), nil
}

// Roofline is the attainable rate in operations/s: min(peak, bandwidth · intensity), with bandwidth in byte/s and
// intensity in operations per byte.
//
// Source: Williams, Waterman, Patterson, CACM 52(4), 2009.
func Roofline(peakPerS, bandwidthBytePerS, intensityPerByte float64) float64 {
	return min(peakPerS, bandwidthBytePerS*intensityPerByte)
}

// RidgePoint is the intensity in operations per byte from which the peak, not the bandwidth, is the limit.
func RidgePoint(peakPerS, bandwidthBytePerS float64) float64 {
	return peakPerS / bandwidthBytePerS
}
