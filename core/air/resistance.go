package air

import "math"

// ConductionKPerW gives the resistance of a plane layer, t/(k·A).
func ConductionKPerW(thicknessM, conductivityWPerMK, areaM2 float64) float64 {
	return thicknessM / (conductivityWPerMK * areaM2)
}

// ConvectionKPerW gives the resistance of a surface, 1/(h·A).
func ConvectionKPerW(hWPerM2K, areaM2 float64) float64 { return 1 / (hWPerM2K * areaM2) }

// InterfaceKPerW gives the resistance of a joint: the layer itself and its contacts (area-specific, K·m²/W; a greased
// joint as a whole 0.05–0.3 K·cm²/W is common practice).
func InterfaceKPerW(thicknessM, conductivityWPerMK, areaM2, contactKM2PerW float64) float64 {
	return ConductionKPerW(thicknessM, conductivityWPerMK, areaM2) + contactKM2PerW/areaM2
}

// SeriesKPerW adds resistances passed one after the other.
func SeriesKPerW(r ...float64) float64 {
	sum := 0.0
	for _, v := range r {
		sum += v
	}
	return sum
}

// ParallelKPerW joins resistances side by side: 1/R = Σ1/Ri.
func ParallelKPerW(r ...float64) float64 {
	sum := 0.0
	for _, v := range r {
		sum += 1 / v
	}
	return 1 / sum
}

// WallWPerK gives the conductance of a thin wall between two air films: A/(1/h_in + 1/h_out).
func WallWPerK(areaM2, innerWPerM2K, outerWPerM2K float64) float64 {
	return areaM2 / (1/innerWPerM2K + 1/outerWPerM2K)
}

// FinEfficiency gives tanh(mL)/(mL), m = √(2h/(k·t)), of a straight fin with corrected length Lc.
// Source: Bergman/Incropera, Fundamentals of Heat and Mass Transfer, ch. 3 (from memory).
func FinEfficiency(hWPerM2K, conductivityWPerMK, thicknessM, lengthM float64) float64 {
	ml := math.Sqrt(2*hWPerM2K/(conductivityWPerMK*thicknessM)) * lengthM
	if ml == 0 {
		return 1
	}
	return math.Tanh(ml) / ml
}

// FinArrayEfficiency gives the overall surface efficiency 1 − (A_fins/A_total)·(1 − η_fin).
func FinArrayEfficiency(finEfficiency, finsM2, totalM2 float64) float64 {
	return 1 - finsM2/totalM2*(1-finEfficiency)
}

// SinkToInletKPerW gives a heat sink's resistance referred to the air that enters it, for an isothermal base:
// 1/(ε·C), ε = 1 − exp(−UA/C).
func SinkToInletKPerW(uaWPerK, capacityWPerK float64) float64 {
	return 1 / (-math.Expm1(-uaWPerK/capacityWPerK) * capacityWPerK)
}

// CoolantCapacityWPerK gives the capacity of a coolant stream, ρ·cp·V̇, with the flow in litres a minute.
// Water near 30 °C: ρ 995 kg/m³, cp 4179 J/(kg·K) (Çengel, Heat Transfer, Table A-9).
func CoolantCapacityWPerK(litresPerMin, densityKgPerM3, cpJPerKgK float64) float64 {
	return densityKgPerM3 * cpJPerKgK * litresPerMin / 60000
}
