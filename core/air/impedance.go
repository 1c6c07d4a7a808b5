package air

import "math"

// A loss of pressure in turbulent flow is Δp = K·Q² with K in Pa·s²/m⁶ at a reference density; K grows with density.

// ImpedanceFromPoint gives K from one measured flow and loss.
func ImpedanceFromPoint(flowM3PerS, lossPa float64) float64 {
	return lossPa / (flowM3PerS * flowM3PerS)
}

// ImpedanceSeries adds losses that the same air passes one after the other: ΣK.
func ImpedanceSeries(k ...float64) float64 {
	sum := 0.0
	for _, v := range k {
		sum += v
	}
	return sum
}

// ImpedanceParallel joins openings side by side: (Σ 1/√K)^−2. Every K must be positive.
func ImpedanceParallel(k ...float64) float64 {
	sum := 0.0
	for _, v := range k {
		sum += 1 / math.Sqrt(v)
	}
	return 1 / (sum * sum)
}
