package air

// Conversions of trade units (NIST SP 811; values from memory).
const (
	CFMPerM3PerS    = 2118.880        // cubic feet a minute in 1 m³/s
	M3PerHPerM3PerS = 3600.0          // m³/h in 1 m³/s
	WPerBTUPerH     = 0.2930710701722 // watts in 1 BTU/h (international table)
	PaPerMMH2O      = 9.80665         // pascals in 1 mm of water
	PaPerInH2O      = 249.089         // pascals in 1 inch of water
)

// CapacityWPerK gives the heat capacity of a stream of air, ρ·cp·Q.
func CapacityWPerK(densityKgPerM3, flowM3PerS float64) float64 {
	return densityKgPerM3 * CpJPerKgK * flowM3PerS
}

// FlowForHeatM3PerS gives the flow that carries heat at a given rise: Q = P/(ρ·cp·ΔT). Use the density at the inlet
// for a flow measured at the inlet.
func FlowForHeatM3PerS(heatW, riseK, densityKgPerM3 float64) float64 {
	return heatW / (densityKgPerM3 * CpJPerKgK * riseK)
}

// RiseK gives the rise of a stream that takes up heat: ΔT = P/(ρ·cp·Q).
func RiseK(heatW, flowM3PerS, densityKgPerM3 float64) float64 {
	return heatW / CapacityWPerK(densityKgPerM3, flowM3PerS)
}

// CFMKelvinPerWatt is the constant c of the shop form CFM = c·W/ΔT(K); 1.76 near 21 °C at sea level.
func CFMKelvinPerWatt(densityKgPerM3 float64) float64 {
	return CFMPerM3PerS / (densityKgPerM3 * CpJPerKgK)
}

// CFMFahrenheitPerWatt is the constant c of the shop form CFM = c·W/ΔT(°F); 3.16 near 21 °C at sea level.
func CFMFahrenheitPerWatt(densityKgPerM3 float64) float64 {
	return 1.8 * CFMKelvinPerWatt(densityKgPerM3)
}

// M3PerHKelvinPerWatt is the constant c of the shop form m³/h = c·W/ΔT(K); 2.97 at 20 °C and sea level.
func M3PerHKelvinPerWatt(densityKgPerM3 float64) float64 {
	return M3PerHPerM3PerS / (densityKgPerM3 * CpJPerKgK)
}

// RecirculationRiseK gives how much warmer than the room a stream enters that takes the share phi (below 1) of its
// air from its own outlet: [φ/(1−φ)]·P/C.
func RecirculationRiseK(phi, heatW, capacityWPerK float64) float64 {
	return phi / (1 - phi) * heatW / capacityWPerK
}

// RoomRiseK gives the steady rise of a room over its surroundings: P/(UA + ρ·cp·n·V/3600), with n air changes an
// hour of the volume V.
func RoomRiseK(heatW, wallWPerK, volumeM3, changesPerH, densityKgPerM3 float64) float64 {
	return heatW / (wallWPerK + CapacityWPerK(densityKgPerM3, changesPerH*volumeM3/3600))
}
