package predict

import (
	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/sound"
)

// Day says which of the brief's room temperatures a run is made at.
type Day uint8

// Days.
const (
	Ordinary Day = iota
	Hottest
)

// String is the day's word.
func (d Day) String() string { return [...]string{"ordinary day", "hottest day"}[d] }

// Run is one build at one activity in one room, at rest.
type Run struct {
	Load      brief.Load
	Day       Day
	RoomC     float64
	AltitudeM float64
	ChairM    float64

	Missing []string // figures without which nothing is known
	Unheard []string // figures without which the level is not known
	Err     error    // the machine did not come to rest

	Parts   []Part // processor, graphics card
	Drives  []Part // in seat order
	Board   Part   // its converters
	Zones   []Zone // the case, or the board's chamber and the card's
	Fans    []Fan  // front, rear, top, bottom, side; a radiator's first
	Cooling []Fan  // the cooler's, the card's and the supply's own fans, where they have any

	CoolantC Band // into the radiator; nought without a loop
	DCW      Band // out of the supply
	WallW    Band // from the mains; all of it warms the room
	LossW    Band // in the supply
	YearKWh  Band
	YearCost Band // minor units
	InM3H    Band // drawn in by fans and openings, all chambers
	FansIn   Band // driven in by fans on the faces, m³/h
	FansOut  Band
	PowerDBA Band // sound power of all sources
	ChairDBA Band // level at the chair

	HeatInW, CarriedW, WallsW, DuctW float64 // the balance of the air network
	MassResidualKgS                  float64
	Evaluations                      int

	forecast *Forecast
	besidesW float64 // heat in the board's chamber besides that of the parts
	mostW    float64 // with all that may come besides
	freshC   float64 // what comes into the board's chamber
	density  float64 // of the air, as a share of the standard one
	levelU   float64 // standard uncertainty of the level from its sources and the meter
	spread   bool
}

// Part is one part with a temperature worth knowing.
type Part struct {
	Seat    build.Seat
	Name    string
	Count   int
	AskedW  float64 // of one
	HeldW   Band    // what it can hold for ever
	Kept    Band    // share of its speed that it keeps
	TempC   Band
	InletC  Band // air or coolant at its sink
	LimitC  float64
	Bare    string   // the board's socket that leaves it without a heat-sink
	Missing []string // figures without which it alone is not known
}

// Zone is a chamber of the case.
type Zone struct {
	Name  string
	AirC  Band
	RiseK Band // over the room
}

// Fan is fans of one kind in one place.
type Fan struct {
	Name    string
	Face    part.Face // empty for a part's own fans
	Outward bool
	Count   int
	RPM     Band
	FullRPM float64
	FlowM3H Band // all together, the way they blow
	PowerW  Band
	DBA     Band // level at the chair
}

// kind of a figure, for its band.
type figure uint8

const (
	amount figure = iota
	temperature
	loudness // a level
)

// each visits every predicted figure in a fixed order.
func (r *Run) each(visit func(*Band, figure)) {
	for _, list := range [...][]Part{r.Parts, r.Drives} {
		for i := range list {
			p := &list[i]
			visit(&p.HeldW, amount)
			visit(&p.Kept, amount)
			visit(&p.TempC, temperature)
			visit(&p.InletC, temperature)
		}
	}
	visit(&r.Board.TempC, temperature)
	for i := range r.Zones {
		visit(&r.Zones[i].AirC, temperature)
		visit(&r.Zones[i].RiseK, temperature)
	}
	for _, list := range [...][]Fan{r.Fans, r.Cooling} {
		for i := range list {
			f := &list[i]
			visit(&f.RPM, amount)
			visit(&f.FlowM3H, amount)
			visit(&f.PowerW, amount)
			visit(&f.DBA, loudness)
		}
	}
	visit(&r.CoolantC, temperature)
	for _, b := range [...]*Band{&r.DCW, &r.WallW, &r.LossW, &r.YearKWh, &r.YearCost, &r.InM3H, &r.FansIn, &r.FansOut} {
		visit(b, amount)
	}
	visit(&r.PowerDBA, loudness)
	visit(&r.ChairDBA, loudness)
}

// level at the chair of a group of sources, never under the threshold of hearing.
func atChair(powerDBA, chairM float64) float64 {
	return max(0, sound.PressureInHemisphere(powerDBA, chairM))
}
