package air_test

import (
	"testing"

	"slipfit/core/air"
)

// Constants of the shop forms by air state, and the flow for 300 W at 10 K. Computed from P = ρ·cp·Q·ΔT with cp 1006.
func TestShopForms(t *testing.T) {
	for _, c := range []struct {
		tempC, altitudeM                       float64
		cfmK, cfmF, m3hK, flow, flowCFM, flowH float64
	}{
		{20, 0, 1.7492, 3.1486, 2.9719, 0.024766, 52.48, 89.16},
		{25, 0, 1.7791, 3.2023, 3.0226, 0.025189, 53.37, 90.68},
		{35, 0, 1.8387, 3.3097, 3.1240, 0.026033, 55.16, 93.72},
		{25, 1000, 2.0057, 3.6103, 3.4077, 0.028398, 60.17, 102.23},
		{25, 2000, 2.2676, 4.0817, 3.8527, 0.032105, 68.03, 115.58},
	} {
		rho := air.DensityKgPerM3(c.tempC, air.PressurePa(c.altitudeM))
		q := air.FlowForHeatM3PerS(300, 10, rho)
		near(t, c.cfmK, air.CFMKelvinPerWatt(rho), 1e-4, c)
		near(t, c.cfmF, air.CFMFahrenheitPerWatt(rho), 1e-4, c)
		near(t, c.m3hK, air.M3PerHKelvinPerWatt(rho), 1e-4, c)
		near(t, c.flow, q, 1e-4, c)
		near(t, c.flowCFM, q*air.CFMPerM3PerS, 2e-4, c)
		near(t, c.flowH, q*air.M3PerHPerM3PerS, 2e-4, c)
		near(t, 10, air.RiseK(300, q, rho), 1e-12, c)
	}
	// Published enclosure-ventilation note: CFM = 3.16·W/ΔT(°F), which is 1.76 with kelvin, for air near 21 °C.
	near(t, 3.16, air.CFMFahrenheitPerWatt(air.DensityKgPerM3(21, air.SeaLevelPa)), 1e-3)
	near(t, 1.76, air.CFMKelvinPerWatt(air.DensityKgPerM3(21, air.SeaLevelPa)), 3e-3)
	near(t, 4.719474e-4, 1/air.CFMPerM3PerS, 1e-6, "1 CFM, NIST SP 811")
	near(t, 3.4123, 1/air.WPerBTUPerH, 5e-5, "1 W in BTU/h, textbook conversion table")
	near(t, 1762.36, 516.498/air.WPerBTUPerH, 1e-5)
}

func TestRecirculationAndRoom(t *testing.T) {
	const rho = 1.19596
	c := air.CapacityWPerK(rho, 0.030)
	near(t, 36.0940, c, 1e-5)
	near(t, 8.3116, 300/c, 1e-5)
	near(t, 0.92351, air.RecirculationRiseK(0.10, 300, c), 1e-4)
	near(t, 11.2653, air.RoomRiseK(516.498, 40, 35, 0.5, rho), 1e-5)
}
