// Package air models the air side of a machine: properties of air, fans, losses, heat exchangers, thermal
// resistances, and the steady-state network that solves flows, temperatures and fan speeds at once.
//
// Everything is SI inside: Pa, m³/s, K or °C (named), W, W/K, kg/m³. Nothing here knows of parts or rules.
package air

import "math"

// Constants of dry air.
const (
	// GasConstantJPerKgK is the specific gas constant of dry air (ISO 2533; value from memory).
	GasConstantJPerKgK = 287.05287
	// CpJPerKgK is the specific heat used by the network. The range 10–50 °C is 1005.8–1007.4
	// (ASHRAE Handbook, Fundamentals; value from memory), so the error is below 0.15 %.
	CpJPerKgK = 1006.0
	// SeaLevelPa is the standard pressure at sea level (U.S. Standard Atmosphere 1976 = ISO 2533).
	SeaLevelPa = 101325.0
	// StandardDensityKgPerM3 is dry air at 20 °C and SeaLevelPa, the usual rating state of fans.
	StandardDensityKgPerM3 = 1.2041
	// GravityMPerS2 is the standard acceleration of gravity.
	GravityMPerS2 = 9.80665
	// ZeroCelsiusK is 0 °C in kelvin.
	ZeroCelsiusK = 273.15
	// StefanBoltzmann in W/(m²·K⁴).
	StefanBoltzmann = 5.670374419e-8
)

// PressurePa gives the pressure of the standard atmosphere at a geopotential altitude of up to 11 000 m.
// Source: U.S. Standard Atmosphere 1976.
func PressurePa(altitudeM float64) float64 {
	return SeaLevelPa * math.Pow(1-0.0065*altitudeM/288.15, 5.25588)
}

// DensityKgPerM3 gives the density of dry air as an ideal gas. Humid air at 30 °C and 60 % is about 1 % lighter.
func DensityKgPerM3(tempC, pressurePa float64) float64 {
	return pressurePa / (GasConstantJPerKgK * (tempC + ZeroCelsiusK))
}

// ViscosityPaS gives the dynamic viscosity by Sutherland's formula (U.S. Standard Atmosphere 1976).
func ViscosityPaS(tempC float64) float64 {
	t := tempC + ZeroCelsiusK
	return 1.458e-6 * math.Pow(t, 1.5) / (t + 110.4)
}

// ConductivityWPerMK gives the thermal conductivity (U.S. Standard Atmosphere 1976). Textbook tables lie 2–3 %
// lower between 10 and 50 °C; only free convection and fin estimates see it.
func ConductivityWPerMK(tempC float64) float64 {
	t := tempC + ZeroCelsiusK
	return 2.64638e-3 * math.Pow(t, 1.5) / (t + 245.4*math.Pow(10, -12/t))
}

// CpAtJPerKgK gives the specific heat at a temperature, by a quadratic fitted between 0 and 100 °C
// (coefficients after Poling et al., The Properties of Gases and Liquids). The network uses CpJPerKgK.
func CpAtJPerKgK(tempC float64) float64 {
	t := tempC + ZeroCelsiusK
	return 1030.5 - 0.19975*t + 3.9734e-4*t*t
}
