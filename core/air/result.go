package air

// Result is the machine at rest: every flow, pressure, speed and temperature. Slices run parallel to the machine's.
type Result struct {
	DensityKgPerM3 float64 // of the room's air
	DensityRatio   float64 // to the machine's reference density

	Zones      []ZoneState
	Partitions []PartitionState
	Paths      []PathState
	Loops      []LoopState
	Consumers  []ConsumerState

	HeatInW    float64 // all heat given off in the machine, fans and pumps included
	CarriedW   float64 // of it carried out by the air of the zones
	WallW      float64 // through the walls
	DuctW      float64 // by consumers' own ducts
	FanPowerW  float64 // electrical, all fans
	PumpPowerW float64

	EnergyResidualW  float64 // HeatInW − CarriedW − WallW − DuctW
	MassResidualKgS  float64 // largest net inflow of a zone
	ControlResidualK float64 // largest gap between a temperature that acts (on a fan, a draught, a limit) and the one it causes
	Iterations       int     // steps of the outer solver
	Evaluations      int     // solutions of flow and heat, all told
	Converged        bool
}

// ZoneState is one zone. Temperatures of streams that do not flow equal the zone's or the room's.
type ZoneState struct {
	GaugePa    float64 // over the room
	AirC       float64 // mixed air
	IntakeC    float64 // air at its intake faces, own outlet air mixed in
	FreshC     float64 // flow-weighted mean of all that enters
	OutletC    float64 // flow-weighted mean of all that leaves to the room
	InM3PerS   float64 // all inflow
	OutM3PerS  float64 // all outflow to the room
	LeakM3PerS float64 // net, outward positive
	WallLossW  float64
}

// PartitionState is one opening; flow and heat run from A to B.
type PartitionState struct {
	FlowM3PerS, HeatW float64
}

// PathState is one path. Flows are positive the way its fans blow.
type PathState struct {
	RPM                     float64
	FlowM3PerS              float64 // whole path
	EachM3PerS              float64 // one fan or section
	FanRisePa               float64 // static pressure of its fans
	SharedLossPa            float64
	EachLossPa              float64
	FanPowerW               float64 // electrical, all its fans
	CapacityWPerK           float64
	AirInC, AirOutC         float64
	RadiatorW               float64 // heat from the coolant
	RadiatorUAWPerK         float64
	Exchange                Exchange
	CoolantInC, CoolantOutC float64 // zero without a radiator
}

// LoopState is one coolant loop.
type LoopState struct {
	HotC  float64 // into its first radiator
	ColdC float64 // out of its last radiator
	HeatW float64
}

// ConsumerState is one consumer.
type ConsumerState struct {
	InletC          float64 // air at its sink, or coolant at its plate
	ResistanceKPerW float64
	TempC           float64
	HotspotC        float64
	RPM             float64 // its own fans
	FanPowerW       float64
	HeldW           float64 // what it can hold for ever: PowerW, or less where even full speed cannot hold its limit
	HeldShare       float64 // HeldW over PowerW; 1 when it asks nothing
	Throttled       bool    // HeldW is below PowerW
	CallShare       float64 // 0 to 1: how far its limit drives the fans that serve it past their curves
}

func (r *Result) resize(m *Machine) {
	zones, partitions, paths, loops, consumers := r.Zones, r.Partitions, r.Paths, r.Loops, r.Consumers
	*r = Result{
		Zones:      cleared(zones, len(m.Zones)),
		Partitions: cleared(partitions, len(m.Partitions)),
		Paths:      cleared(paths, len(m.Paths)),
		Loops:      cleared(loops, len(m.Loops)),
		Consumers:  cleared(consumers, len(m.Consumers)),
	}
}

// cleared gives a zeroed slice of n, in the same memory where it fits.
func cleared[T any](s []T, n int) []T {
	if cap(s) < n {
		return make([]T, n)
	}
	s = s[:n]
	clear(s)
	return s
}
