package air_test

import (
	"strings"
	"testing"

	"slipfit/core/air"
)

// Sources in each row: Çengel Table A-15 and U.S. Standard Atmosphere 1976. The two differ by up to 0.1 % in density,
// 0.7 % in viscosity, 2.6 % in conductivity and 0.2 % in specific heat.
func TestAirProperties(t *testing.T) {
	for _, row := range readVectors(t, "air-properties.csv") {
		tempC, altitudeM := number(t, row["temp_c"]), number(t, row["altitude_m"])
		tolerance := struct{ density, viscosity, conductivity, cp float64 }{1e-5, 1e-5, 2e-4, 1e-4}
		if strings.HasPrefix(row["source"], "Cengel") {
			tolerance = struct{ density, viscosity, conductivity, cp float64 }{1e-3, 8e-3, 3e-2, 2e-3}
		}
		pressurePa := air.PressurePa(altitudeM)
		near(t, number(t, row["pressure_pa"]), pressurePa, 1e-5, row)
		near(t, number(t, row["density_kg_m3"]), air.DensityKgPerM3(tempC, pressurePa), tolerance.density, row)
		near(t, number(t, row["viscosity_pa_s"]), air.ViscosityPaS(tempC), tolerance.viscosity, row)
		near(t, number(t, row["conductivity_w_mk"]), air.ConductivityWPerMK(tempC), tolerance.conductivity, row)
		near(t, number(t, row["cp_j_kgk"]), air.CpAtJPerKgK(tempC), tolerance.cp, row)
		near(t, number(t, row["cp_j_kgk"]), air.CpJPerKgK, 2e-3, row)
	}
}

// U.S. Standard Atmosphere 1976, published check values.
func TestStandardAtmosphere(t *testing.T) {
	near(t, 1.225, air.DensityKgPerM3(15, air.SeaLevelPa), 1e-4, "sea level density")
	near(t, 1.7894e-5, air.ViscosityPaS(15), 1e-4, "sea level viscosity")
	near(t, 79501, air.PressurePa(2000), 1e-4, "2000 m, geometric: within 0.01 %")
	near(t, 1.0066, air.DensityKgPerM3(275.15-air.ZeroCelsiusK, 79501), 1e-4, "2000 m density")
	near(t, 17.26e-6, air.ViscosityPaS(275.15-air.ZeroCelsiusK), 1e-4, "2000 m viscosity")
	near(t, 0.0248134, air.ConductivityWPerMK(281.65-air.ZeroCelsiusK), 1e-4, "1000 m conductivity")
	near(t, 0.8870, air.PressurePa(1000)/air.SeaLevelPa, 1e-4, "density ratio 1000 m")
	near(t, 0.7846, air.PressurePa(2000)/air.SeaLevelPa, 1e-4, "density ratio 2000 m")
	near(t, 1.292, air.DensityKgPerM3(0, air.SeaLevelPa), 1e-3, "0 °C: 1.292 kg/m³, handbook")
	near(t, air.StandardDensityKgPerM3, air.DensityKgPerM3(20, air.SeaLevelPa), 1e-5, "rating state of fans")
}
