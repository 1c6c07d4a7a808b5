package air

import "math"

// Machine is one computer in a room as the network sees it. It is a plain value: build it, solve it, change a copy.
// Indices (zone, loop, consumer) are positions in the slices. Fans and impedances hold at RefDensityKgPerM3; the
// network scales pressure, loss and fan power with the density of the room's air, so volume flows do not change with
// altitude at a given speed (other than draughts, which follow temperature).
type Machine struct {
	RoomC             float64
	AltitudeM         float64 // geopotential, up to 11 000 m
	RefDensityKgPerM3 float64 // state that fans, losses and sinks were rated at; 0 means StandardDensityKgPerM3

	Zones      []Zone
	Partitions []Partition
	Paths      []Path
	Loops      []Loop
	Consumers  []Consumer
}

// Zone is a chamber of the case with one pressure and one mixed air temperature.
type Zone struct {
	Name          string
	HeatW         float64 // heat straight into the zone's air: board, memory, anything not listed as a consumer
	WallWPerK     float64 // conductance of its walls to the room: see WallWPerK
	LeakImpedance float64 // seams and vents without a fan, Pa·s²/m⁶ on the whole leak; 0 means tight
	LeakHeightM   float64 // height between the lower and the upper half of the leak: the draught of a warm chamber
	Recirculation float64 // share of its intake air that is its own outlet air, 0 to below 1
}

// Partition is what stands between two zones.
type Partition struct {
	A, B             int
	Impedance        float64 // of an opening for flow, Pa·s²/m⁶; 0 means none
	ExchangeM3PerS   float64 // air that changes places through the opening with no net flow
	ConductanceWPerK float64 // through the wall itself
}

// Direction says which way a path's fans blow.
type Direction uint8

const (
	Intake Direction = iota
	Exhaust
)

// Path is one way for air through a face: equal fans side by side, behind a shared filter, each behind its own
// grille or radiator section. With no fans it is a plain opening. Air may flow against the fans; the sign of the
// flow says so. The fans' own heat goes to the zone's air from an intake, to the stream from an exhaust or a radiator.
type Path struct {
	Name            string
	Zone            int
	Direction       Direction
	Fans            Fans
	SharedImpedance float64 // on the whole flow: filter, front panel
	EachImpedance   float64 // on each fan's (or radiator section's) own flow: grille, radiator section
	HeightM         float64 // above the middle of the zone, for the draught
	BypassShare     float64 // outward air: share drawn fresh past the parts (1 − β); 0 means fully mixed case air
	HeatW           float64 // heat given to the air that passes, such as a power supply's own loss
	Radiator        Radiator

	// OwnOf names a consumer whose own fans blow through this path, as its index + 1; 0 means none. Fans then says what
	// they move; they turn as the consumer's do, whose Fans hold their speed and their power.
	OwnOf int
}

// Radiator is a row of equal sections, one to a fan. The zero value means no radiator.
type Radiator struct {
	Sections    int
	Loop        int
	UAWPerK     float64 // of one section, at FlowM3PerS through that section and the reference density
	FlowM3PerS  float64
	Exponent    float64 // UA ∝ (ρq)^Exponent: 0.3–0.5 developing laminar, 0.6–0.8 louvred (Kays & London trend)
	Arrangement Arrangement
}

// ConductsWPerK is the conductance of all sections with a flow through all together, in air of so many times the reference density.
func (r *Radiator) ConductsWPerK(flowM3PerS, densityRatio float64) float64 {
	n := float64(r.Sections)
	return n * r.UAWPerK * math.Pow(densityRatio*flowM3PerS/(n*r.FlowM3PerS), r.Exponent)
}

// Fans is a group of equal fans at one speed. The zero value means none.
type Fans struct {
	Count int
	Fan   Fan
	Speed Speed
}

// Speed is either fixed or the highest that any of its curves asks for.
type Speed struct {
	FixedRPM float64 // used when Curves is empty
	Curves   []Curve
}

// Curve is a control curve: straight lines between points with strictly rising temperature and never falling speed,
// flat outside them.
type Curve struct {
	Of     Sensor
	Points []CurvePoint
}

// CurvePoint is one point of a control curve.
type CurvePoint struct {
	TempC, RPM float64
}

// SensorKind says what a fan follows.
type SensorKind uint8

const (
	ZoneAir   SensorKind = iota // mixed air of zone Index
	Coolant                     // coolant into the first radiator of loop Index, the warmest point
	Component                   // temperature of consumer Index; its hot spot's, set against LimitC, where that is nearer to its limit
)

// Sensor is one named temperature.
type Sensor struct {
	Kind  SensorKind
	Index int
}

// Loop is a coolant circuit through the radiators that name it, in the order of Machine.Paths, then through the
// consumers that name it, in the order of Machine.Consumers.
type Loop struct {
	Name          string
	CapacityWPerK float64 // coolant stream, see CoolantCapacityWPerK
	PumpW         float64 // all of it ends in the coolant
}

// Medium says what takes a consumer's heat.
type Medium uint8

const (
	ToZoneAir Medium = iota // through its own sink into the air of its zone
	ToCoolant               // through a cold plate into its loop
	ToOwnDuct               // by a duct of its own from the room to the room, such as a supply that breathes outside air
)

// Consumer is a part with a temperature worth knowing.
type Consumer struct {
	Name   string
	PowerW float64 // what it asks
	Medium Medium
	Zone   int     // ToZoneAir
	Loop   int     // ToCoolant
	Beta   float64 // ToZoneAir: 0 takes the air as it enters the zone, 1 the mixed air of the zone

	// Resistance from the component to the air at its inlet, or to the coolant at its plate:
	// RFixKPerW + RFlowKPerW·(N0/N·ρref/ρ)^FlowExponent, N and N0 of its own fans; without fans N = N0.
	RFixKPerW    float64
	RFlowKPerW   float64
	FlowExponent float64 // about 0.6
	Fans         Fans    // its own fans: they stir air in the zone and move none in or out

	HotspotKPerW  float64 // hot spot over the component temperature
	LimitC        float64 // 0 means no limit
	HotspotLimitC float64 // 0 means no limit
}

// stillShare is the least share of rated speed that a sink's flow resistance is taken at: with its fan stopped, free
// convection and the air moving past keep about that. An assumption, marked so.
const stillShare = 0.1

// KPerW is the resistance from the component to its inlet with its own fans at a share of their rated speed, 1 where it has none, in air of
// so many times the reference density.
func (c *Consumer) KPerW(share, densityRatio float64) float64 {
	if c.RFlowKPerW <= 0 {
		return c.RFixKPerW
	}
	return c.RFixKPerW + float64(c.RFlowKPerW*math.Pow(max(stillShare, share)*densityRatio, -c.FlowExponent))
}

// freshAirScaleWPerK sets when a zone is too poor in inflow to hand anyone fresh air: the fresh part of a consumer's
// inlet, 1 − β, is weighted with 1 − exp(−C_in/scale). At the flow of any working fan this is 1; in a sealed zone
// every consumer breathes mixed air. An assumption, marked so.
const freshAirScaleWPerK = 1.0

// rpm gives the speed a curve asks at a temperature.
func (c *Curve) rpm(tempC float64) float64 {
	p := c.Points
	if tempC <= p[0].TempC {
		return p[0].RPM
	}
	for i := 1; i < len(p); i++ {
		if tempC <= p[i].TempC {
			a, b := p[i-1], p[i]
			return a.RPM + float64((b.RPM-a.RPM)*((tempC-a.TempC)/(b.TempC-a.TempC)))
		}
	}
	return p[len(p)-1].RPM
}

// maxRPM gives the highest speed the control may ask for.
func (s *Speed) maxRPM() float64 {
	if len(s.Curves) == 0 {
		return s.FixedRPM
	}
	top := 0.0
	for i := range s.Curves {
		p := s.Curves[i].Points
		top = max(top, p[len(p)-1].RPM)
	}
	return top
}

// elements gives how many equal flow elements share the path's flow.
func (p *Path) elements() int {
	if p.Fans.Count > 0 {
		return p.Fans.Count
	}
	return max(1, p.Radiator.Sections)
}

// Impedance gives A in A·Q² for the whole path at the reference density, fans included, Pa·s²/m⁶.
func (p *Path) Impedance() float64 {
	each := p.EachImpedance
	if p.Fans.Count > 0 {
		each += p.Fans.Fan.Impedance()
	}
	n := float64(p.elements())
	return each/(n*n) + p.SharedImpedance
}
