package air

import (
	"fmt"
	"math"
)

// FanPoint is one point of a measured fan curve.
type FanPoint struct {
	FlowM3PerS, PressurePa float64
}

// FanTable is a fan curve as tabulated: flow rising strictly from 0, pressure never rising, to 0 at free flow, all at
// RatedRPM. Between points the curve is a straight line: a coarse table reads up to 1 % low in flow, so refine it or
// fit a Fan through it.
type FanTable struct {
	RatedRPM float64
	Points   []FanPoint
}

// Check says what is wrong with the table, or nil.
func (t FanTable) Check() error {
	if !(t.RatedRPM > 0) {
		return fmt.Errorf("fan table: rated speed %g rpm, want above 0", t.RatedRPM)
	}
	if len(t.Points) < 2 {
		return fmt.Errorf("fan table: %d points, want at least 2", len(t.Points))
	}
	if t.Points[0].FlowM3PerS != 0 {
		return fmt.Errorf("fan table: first flow %g m³/s, want 0", t.Points[0].FlowM3PerS)
	}
	for i := 1; i < len(t.Points); i++ {
		a, b := t.Points[i-1], t.Points[i]
		if !(b.FlowM3PerS > a.FlowM3PerS) || !(b.PressurePa <= a.PressurePa) {
			return fmt.Errorf("fan table: point %d (%g m³/s, %g Pa): want more flow and no more pressure than the point before",
				i, b.FlowM3PerS, b.PressurePa)
		}
	}
	if p := t.Points[len(t.Points)-1].PressurePa; p != 0 {
		return fmt.Errorf("fan table: last pressure %g Pa, want 0 at free flow", p)
	}
	return nil
}

// PressurePa gives the pressure at a speed and flow by the fan laws; 0 beyond free flow.
func (t FanTable) PressurePa(rpm, flowM3PerS float64) float64 {
	r := rpm / t.RatedRPM
	q := flowM3PerS / r
	for i := 1; i < len(t.Points); i++ {
		a, b := t.Points[i-1], t.Points[i]
		if q <= b.FlowM3PerS {
			return r * r * (a.PressurePa + (b.PressurePa-a.PressurePa)*(q-a.FlowM3PerS)/(b.FlowM3PerS-a.FlowM3PerS))
		}
	}
	return 0
}

// Operate gives the operating point against K. The crossing on each straight piece is the root of a quadratic.
func (t FanTable) Operate(rpm, impedance float64) OperatingPoint {
	r := rpm / t.RatedRPM
	for i := 1; i < len(t.Points); i++ {
		a, b := t.Points[i-1], t.Points[i]
		if impedance*b.FlowM3PerS*b.FlowM3PerS < b.PressurePa {
			continue
		}
		slope := (a.PressurePa - b.PressurePa) / (b.FlowM3PerS - a.FlowM3PerS)
		top := a.PressurePa + slope*a.FlowM3PerS
		q := b.FlowM3PerS
		if den := slope + math.Sqrt(slope*slope+4*impedance*top); den > 0 {
			q = math.Min(q, 2*top/den)
		}
		q *= r
		return OperatingPoint{FlowM3PerS: q, PressurePa: impedance * q * q}
	}
	last := t.Points[len(t.Points)-1]
	return OperatingPoint{FlowM3PerS: last.FlowM3PerS * r}
}

// Fit gives the quadratic fan nearest to the table in the least-squares sense: p = p0 − a·Q².
func (t FanTable) Fit(ratedPowerW float64) Fan {
	var n, sx, sy, sxx, sxy float64
	for _, p := range t.Points {
		x := p.FlowM3PerS * p.FlowM3PerS
		n++
		sx += x
		sy += p.PressurePa
		sxx += x * x
		sxy += x * p.PressurePa
	}
	a := -(n*sxy - sx*sy) / (n*sxx - sx*sx)
	p0 := (sy + a*sx) / n
	return Fan{ShutoffPa: p0, FreeM3PerS: math.Sqrt(p0 / a), RatedRPM: t.RatedRPM, RatedPowerW: ratedPowerW}
}
