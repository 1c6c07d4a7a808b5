package air

import "math"

// NusseltVerticalPlate gives the mean Nusselt number of free convection on a vertical plate.
// Source: Churchill & Chu, as in Bergman/Incropera ch. 9; all Rayleigh numbers up to 1e12.
func NusseltVerticalPlate(rayleigh, prandtl float64) float64 {
	den := math.Pow(1+math.Pow(0.492/prandtl, 9.0/16), 8.0/27)
	root := 0.825 + 0.387*math.Pow(rayleigh, 1.0/6)/den
	return root * root
}

// RayleighVertical gives g·β·ΔT·L³/(ν·α) in air at the film temperature, and the Prandtl number there.
func RayleighVertical(heightM, wallC, airC, pressurePa float64) (rayleigh, prandtl float64) {
	filmC := (wallC + airC) / 2
	mu, k := ViscosityPaS(filmC), ConductivityWPerMK(filmC)
	nu := mu / DensityKgPerM3(filmC, pressurePa)
	prandtl = mu * CpJPerKgK / k
	rayleigh = GravityMPerS2 / (filmC + ZeroCelsiusK) * math.Abs(wallC-airC) * heightM * heightM * heightM /
		(nu * nu) * prandtl
	return rayleigh, prandtl
}

// FreeConvectionWPerM2K gives h on a vertical wall of a given height in still air.
func FreeConvectionWPerM2K(heightM, wallC, airC, pressurePa float64) float64 {
	ra, pr := RayleighVertical(heightM, wallC, airC, pressurePa)
	return NusseltVerticalPlate(ra, pr) * ConductivityWPerMK((wallC+airC)/2) / heightM
}

// RadiationWPerM2K gives the radiative coefficient εσ(T1²+T2²)(T1+T2) between a surface and large surroundings.
func RadiationWPerM2K(emissivity, wallC, surroundingsC float64) float64 {
	a, b := wallC+ZeroCelsiusK, surroundingsC+ZeroCelsiusK
	return emissivity * StefanBoltzmann * (a*a + b*b) * (a + b)
}
