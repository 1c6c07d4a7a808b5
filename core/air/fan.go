package air

import "math"

// Fan is a fan by its two end points at a rated speed: p = r²·p0 − a·Q² with r = N/N0 and a = p0/Qmax². This form
// obeys the fan laws exactly. Pressure and power hold at the density they were rated at.
type Fan struct {
	ShutoffPa   float64 // static pressure at no flow, rated speed
	FreeM3PerS  float64 // flow at no pressure, rated speed
	RatedRPM    float64
	RatedPowerW float64 // electrical, at rated speed
}

// Impedance gives a = p0/Qmax² in Pa·s²/m⁶; it does not depend on speed.
func (f Fan) Impedance() float64 { return f.ShutoffPa / (f.FreeM3PerS * f.FreeM3PerS) }

// PressurePa gives the static pressure at a speed and flow.
func (f Fan) PressurePa(rpm, flowM3PerS float64) float64 {
	r := rpm / f.RatedRPM
	return r*r*f.ShutoffPa - f.Impedance()*flowM3PerS*math.Abs(flowM3PerS)
}

// PowerW gives the electrical power at a speed: P0·(N/N0)³·(ρ/ρ0).
func (f Fan) PowerW(rpm, densityRatio float64) float64 {
	r := rpm / f.RatedRPM
	return f.RatedPowerW * r * r * r * densityRatio
}

// Similar gives the fan that the fan laws predict at another diameter, at the same rated speed and density:
// Q ∝ D³, p ∝ D², P ∝ D⁵ (ASHRAE Handbook; D⁵ follows from p·Q).
func (f Fan) Similar(diameterRatio float64) Fan {
	d2 := diameterRatio * diameterRatio
	f.FreeM3PerS *= d2 * diameterRatio
	f.ShutoffPa *= d2
	f.RatedPowerW *= d2 * d2 * diameterRatio
	return f
}

// Fan laws for one fan moved to another speed and density, all else equal (published fan-law notes).

// FlowAtSpeed scales a flow (any unit) by N2/N1.
func FlowAtSpeed(flow, speedRatio float64) float64 { return flow * speedRatio }

// PressureAtSpeed scales a pressure by (N2/N1)²·(ρ2/ρ1).
func PressureAtSpeed(pressure, speedRatio, densityRatio float64) float64 {
	return pressure * speedRatio * speedRatio * densityRatio
}

// PowerAtSpeed scales shaft power by (N2/N1)³·(ρ2/ρ1).
func PowerAtSpeed(power, speedRatio, densityRatio float64) float64 {
	return power * speedRatio * speedRatio * speedRatio * densityRatio
}

// BladePassHz gives the tone of a fan: blades·rpm/60.
func BladePassHz(blades int, rpm float64) float64 { return float64(blades) * rpm / 60 }

// OperatingPoint is where a fan curve and a system curve K·Q² cross.
type OperatingPoint struct {
	FlowM3PerS float64 // through the system
	PressurePa float64 // lost in the system
}

// Operate gives the operating point of one fan against K.
func (f Fan) Operate(rpm, impedance float64) OperatingPoint {
	return f.OperateParallel(1, rpm, impedance)
}

// OperateParallel gives the operating point of n equal fans side by side: Q = r·√(p0/(a/n² + K)).
func (f Fan) OperateParallel(n int, rpm, impedance float64) OperatingPoint {
	nn := float64(n * n)
	q := rpm / f.RatedRPM * math.Sqrt(f.ShutoffPa/(f.Impedance()/nn+impedance))
	return OperatingPoint{FlowM3PerS: q, PressurePa: impedance * q * q}
}

// OperateSeries gives the operating point of m equal fans one behind the other: Q = r·√(m·p0/(m·a + K)).
func (f Fan) OperateSeries(m int, rpm, impedance float64) OperatingPoint {
	mm := float64(m)
	q := rpm / f.RatedRPM * math.Sqrt(mm*f.ShutoffPa/(mm*f.Impedance()+impedance))
	return OperatingPoint{FlowM3PerS: q, PressurePa: impedance * q * q}
}
