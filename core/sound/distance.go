package sound

import "math"

// FreeFieldDrop gives how far the pressure level falls from one distance to another in a free field: 20·lg(r2/r1),
// 6 dB a doubling.
func FreeFieldDrop(fromM, toM float64) float64 { return 20 * math.Log10(toM/fromM) }

// PressureInSphere gives Lp at a distance from a source that radiates all round: LW − 10·lg(4πr²), −11 dB at 1 m.
func PressureInSphere(powerDB, distanceM float64) float64 {
	return powerDB - 10*math.Log10(4*math.Pi*distanceM*distanceM)
}

// PressureInHemisphere gives Lp at a distance from a source on a reflecting plane (desk or floor):
// LW − 10·lg(2πr²), −8 dB at 1 m.
func PressureInHemisphere(powerDB, distanceM float64) float64 {
	return powerDB - 10*math.Log10(2*math.Pi*distanceM*distanceM)
}

// PowerFromHemisphere gives LW from an Lp measured at a distance over a reflecting plane. A bare vendor figure in dB(A) is
// by common practice such an Lp at 1 m: +8 dB. Flag the assumption where it is used.
func PowerFromHemisphere(pressureDB, distanceM float64) float64 {
	return pressureDB + 10*math.Log10(2*math.Pi*distanceM*distanceM)
}

// PressureInRoom gives Lp from the direct and the reverberant sound: LW + 10·lg(Q/(4πr²) + 4/A), with Q the directivity
// (1 free, 2 on a plane, 4 in an edge) and A the absorption area of the room in m².
// Source: Vigran, Room Acoustics, eq. 4.49.
func PressureInRoom(powerDB, distanceM, directivity, absorptionM2 float64) float64 {
	return powerDB + 10*math.Log10(directivity/(4*math.Pi*distanceM*distanceM)+4/absorptionM2)
}

// RoomCorrection gives K2 = 10·lg(1 + 4·S/A) for a measurement surface S in a room of absorption area A.
// Source: ISO 3744 (from memory).
func RoomCorrection(surfaceM2, absorptionM2 float64) float64 {
	return 10 * math.Log10(1+4*surfaceM2/absorptionM2)
}
