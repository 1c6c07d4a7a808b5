package predict

import (
	"slipfit/core/air"
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/sound"
	"slipfit/core/unit"
)

// model is a build as an air machine, with what is needed to read the outcome back as parts. It holds for every duty; only
// room, powers and the supply's own loss change from one to the next.
type model struct {
	b *build.Build
	sheet
	unheard sheet // figures whose lack leaves the level unknown

	air    air.Machine
	groups []group // fans one can see and hear, in the order of faces
	parts  []consumer
	drives []drive
	supply supply
	drawn  [2]float64      // m² of the side panels taken by a part's own fans
	steady []sound.Running // sources that do not follow speed

	boardW, cardsW, lightsW, pumpW float64
	memoryW                        float64 // at work
	converters                     converters
}

// consumer is a part of the air machine.
type consumer struct {
	seat  build.Seat
	part  *part.Article
	index int // in air.Consumers
	rest  float64
	most  float64
	limit float64
	sound sound.Source // its own fans
}

// drive is drives of one tier, alike, in one kind of place.
type drive struct {
	sheet
	seat              build.Seat
	part              *part.Drive
	count             int
	beta              float64
	rest, most        float64 // of one
	resistance, limit float64
	onModule          string // the socket it sits in
}

type converters struct {
	sheet
	holdsW float64
}

// ready reports a build with enough in it to be predicted: a case, a board, a processor with a cooler that hangs somewhere,
// and a supply.
func ready(b *build.Build) bool { return b.Supply != nil && readyToFeed(b) }

// readyToFeed is ready but for the supply.
func readyToFeed(b *build.Build) bool {
	if b.Case == nil || b.Layout == nil || b.Board == nil || b.Processor == nil || b.Cooler == nil {
		return false
	}
	return b.Cooler.Air != nil || b.Cooler.Liquid != nil && b.Mount() != nil
}

// newModel lays a build out; without a supply, with one of those besides at its best.
func newModel(b *build.Build, besides Besides, fresh *model) *model {
	m := fresh
	*m = model{b: b}
	m.air.Zones = m.zones()
	m.cooling()
	m.graphics()
	m.openings()
	m.draws()
	m.storage()
	if b.Supply != nil {
		m.feed(m.supplied(b.Supply))
	} else {
		m.feed(besides.supplies.best)
	}
	return m
}

// Zones: the board's chamber, and the card's where the layout has one.
const (
	boardZone = 0
	cardZone  = 1
)

// shell is what the walls of a case come to.
type shell struct {
	width, height, depth float64    // m
	share                [2]float64 // of each chamber in faces that span both
}

func (m *model) shell() shell {
	c, l := m.b.Case, m.b.Layout
	s := shell{
		width:  metres(&m.sheet, c.Outer.Width, &c.Article, "outer.width_mm"),
		height: metres(&m.sheet, c.Outer.Height, &c.Article, "outer.height_mm"),
		depth:  metres(&m.sheet, c.Outer.Depth, &c.Article, "outer.depth_mm"),
		share:  [2]float64{1, 0},
	}
	if l.Chambers {
		shift := float64(m.b.Shift()) / 1e6
		cooler := max(0.001, metres(&m.sheet, l.Cooler, &c.Article, "cooler_height_mm")-shift)
		card := max(0.001, metres(&m.sheet, l.Card.Thickness, &c.Article, "card.thickness_mm")+shift)
		s.share = [2]float64{cooler / (cooler + card), card / (cooler + card)}
	}
	return s
}

// chambers is how many there are; one in the open.
func (m *model) chambers() int {
	if m.b.Layout != nil && m.b.Layout.Chambers {
		return 2
	}
	return 1
}

// zones lays out the chambers, and the plate between two.
func (m *model) zones() []air.Zone {
	s := m.shell()
	n := m.chambers()
	zones := make([]air.Zone, n)
	for z := range zones {
		sides := float64(2/n) * s.height * s.depth
		area := sides + float64(2*s.share[z]*s.width*(s.height+s.depth))
		zones[z] = air.Zone{
			Name:          [...]string{"board's chamber", "card's chamber"}[z],
			WallWPerK:     air.WallWPerK(area, innerFilm, outerFilm),
			LeakImpedance: opening(seamsM2PerM2*area, false),
			LeakHeightM:   s.height / 2,
		}
	}
	if n == 1 {
		zones[boardZone].Name = "case"
		return zones
	}
	plate := s.height * s.depth
	m.air.Partitions = []air.Partition{{
		A: boardZone, B: cardZone,
		Impedance:        opening(plateGaps*plate, false),
		ConductanceWPerK: air.WallWPerK(plate, innerFilm, innerFilm),
	}}
	return zones
}

// opening gives K of an opening of a free area.
func opening(freeM2 float64, filtered bool) float64 {
	loss := openingLoss
	if filtered {
		loss += filterLoss
	}
	return loss * air.StandardDensityKgPerM3 / 2 / max(freeM2*freeM2, 1e-10)
}

// fan reads a fan's figures as the air network takes them.
func (m *model) fan(f *part.FanFigures, owner *part.Article, path string) air.Fan {
	return air.Fan{
		ShutoffPa:   thousandth(&m.sheet, f.Pressure, owner, path+"pressure_pa"),
		FreeM3PerS:  cubicMetresPerS(&m.sheet, f.Flow, owner, path+"flow_m3_h"),
		RatedRPM:    float64(read(&m.sheet, f.Speed, owner, path+"speed_rpm")),
		RatedPowerW: 12 * thousandth(&m.sheet, f.Current, owner, path+"current_a"),
	}
}

// lowest is the least speed a fan turns at under control.
func (m *model) lowest(f *part.FanFigures, owner *part.Article, path string) float64 {
	return float64(read(&m.sheet, f.Lowest, owner, path+"lowest_rpm"))
}

// heard is a group of fans as a source: a sheet's level is a pressure at 1 m, turned into a power over a reflecting plane.
func (m *model) heard(f *part.FanFigures, owner *part.Article, path, name string, count int) sound.Source {
	return sound.Source{
		Name: name, Count: count, UDB: sourceUDB,
		RatedDBA: sound.PowerFromHemisphere(thousandth(&m.unheard, f.Sound, owner, path+"sound_dba"), 1),
		RatedRPM: float64(f.Speed.Or(0)),
	}
}

// ramp is a control curve from the lowest speed to the full one.
func ramp(of air.Sensor, lowC, fullC, lowRPM, fullRPM float64) air.Curve {
	return air.Curve{Of: of, Points: []air.CurvePoint{{TempC: lowC, RPM: min(lowRPM, fullRPM)}, {TempC: max(fullC, lowC+1), RPM: fullRPM}}}
}

// draws sums what the parts draw that the air network does not know by name.
func (m *model) draws() {
	b := m.b
	m.boardW = thousandth(&m.sheet, b.Board.Own, &b.Board.Article, "own_power_w")
	m.extras()
	m.lights(b.Case.Lights, &b.Case.Article, 1)
	m.lights(b.Cooler.Lights, &b.Cooler.Article, 1)
	for i := range b.Fans {
		m.lights(b.Fans[i].Fan.Lights, &b.Fans[i].Fan.Article, b.Fans[i].Count)
	}
	m.converters.holdsW = thousandth(&m.converters.sheet, b.Board.Sustained, &b.Board.Article, "processor_power_w")
}

// extras are memory and cards.
func (m *model) extras() {
	b := m.b
	if k := b.Memory; k != nil {
		modules := float64(read(&m.sheet, k.Modules, &k.Article, "modules")) * float64(b.Kits)
		m.memoryW = thousandth(&m.sheet, k.Power, &k.Article, "module_power_w") * modules
	}
	for i := range b.Cards {
		c := &b.Cards[i]
		m.cardsW += thousandth(&m.sheet, c.Card.Power, &c.Card.Article, "power_w") * float64(c.Count)
	}
}

// lights adds lighting leads at their most: 5 V for addressable ones, 12 V for the others.
func (m *model) lights(leads []part.Lead, owner *part.Article, count int) {
	for i := range leads {
		volts := 5.0
		if leads[i].Kind == part.HeaderRGB {
			volts = 12
		}
		m.lightsW += volts * thousandth(&m.sheet, leads[i].Current, owner, "lighting_leads.current_a") * float64(count)
	}
}

// between is a share of the way from rest to work.
func between(rest, most float64, share unit.Share) float64 {
	if most <= rest {
		return most
	}
	return rest + float64((most-rest)*float64(share)/100_000)
}
