package predict

import (
	"slices"

	"slipfit/core/air"
	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// What is taken where the brief says nothing of the place.
const (
	ordinaryRoomC = 22.0
	hottestRoomC  = 30.0
	chairM        = 0.7
	kWhMinor      = 30
)

// Names of the duties that every forecast has beside the brief's.
const (
	AllOut = "everything at work"
	Idle   = "at rest"
)

// Predictor predicts builds one after the other in the same memory. It keeps the last forecast, so that whoever asks again
// about the same build and needs gets the same runs. The zero value is ready; it serves one goroutine.
type Predictor struct {
	solver  air.Solver
	result  air.Result
	last    *Forecast
	cores   latest[core, *Forecast]
	apart   latest[core, *indoors]
	said    latest[core, *said]
	opens   latest[openKey, *inOpen]
	ideals  latest[core, *ideal]
	coolers latest[coolerAt, float64]
	breaths latest[core, *breath]
	turns   map[turnsAt][]float64
	kinds   map[Kind]*part.Cooler
	warmth  Warmth // the last one asked for
}

// Forecast is what a build will do in every activity of a brief. Its runs are solved when they are asked for. It keeps a
// copy of the build, so that it stays true when the build changes.
type Forecast struct {
	predictor *Predictor
	build     build.Build
	needs     *brief.Needs
	besides   Besides
	loads     []brief.Load
	asked     int
	model     model
	runs      [][2]*Run
	started   *Forecast // with a supply whose fan never stands still
	stopped   *Forecast // with a supply whose fan never turns
	shut      *Forecast // with a supply that no air comes through
	said      said
	indoors   *indoors                  // of a core with a supply that breathes room air
	states    map[stateKey]*state       // of a core
	spans     map[toldOf]*spans         // of a core, by load and level
	loud      [][]warmth                // of a core, by load: what made builds too loud
	unsaid    int                       // of a core: how many too loud builds left it open of warmer ones
	just      struct{ asked, said int } // how often builds with this core were judged by their own heat, and found too loud
}

// Forecast gives the forecast of a build under needs; nil where the build has not enough in it (see Ready). Nil needs ask
// nothing.
func (p *Predictor) Forecast(b *build.Build, n *brief.Needs) *Forecast {
	if !ready(b) {
		return nil
	}
	if n == nil {
		n = &brief.Needs{}
	}
	if p.last != nil && p.last.needs == n && same(&p.last.build, b) {
		return p.last
	}
	p.last = p.fresh(b, n, Besides{})
	return p.last
}

// fresh is a forecast of a build that is ready, or but for the supply.
func (p *Predictor) fresh(b *build.Build, n *brief.Needs, besides Besides) *Forecast {
	f := &Forecast{predictor: p, build: *b, needs: n, besides: besides, asked: len(n.Loads)}
	f.build.Fans, f.build.Cards = slices.Clone(b.Fans), slices.Clone(b.Cards)
	f.loads = Loads(n)
	f.runs = make([][2]*Run, len(f.loads))
	newModel(&f.build, besides, &f.model)
	return f
}

// Loads lists the brief's activities, then everything at work, then at rest.
func Loads(n *brief.Needs) []brief.Load {
	list := make([]brief.Load, 0, len(n.Loads)+2)
	list = append(list, n.Loads...)
	return append(list,
		brief.Load{Activity: AllOut, Processor: full, Graphics: full, Memory: full, Drives: full},
		brief.Load{Activity: Idle})
}

// Asked lists the brief's activities, or everything at work where it names none.
func Asked(n *brief.Needs) []brief.Load { return Loads(n)[:max(1, len(n.Loads))] }

const full unit.Share = 100_000

// same reports two builds that a forecast cannot tell apart.
func same(a, b *build.Build) bool {
	return a.Case == b.Case && a.Layout == b.Layout && a.Plate == b.Plate && a.Board == b.Board && a.Processor == b.Processor &&
		a.Cooler == b.Cooler && a.Face == b.Face && a.Memory == b.Memory && a.Kits == b.Kits && a.Graphics == b.Graphics &&
		a.Supply == b.Supply && a.Boot == b.Boot && a.Cache == b.Cache && a.Archive == b.Archive &&
		slices.Equal(a.Fans, b.Fans) && slices.Equal(a.Cards, b.Cards)
}

// Asked lists the brief's activities, or everything at work where it names none.
func (f *Forecast) Asked() []brief.Load {
	if f.asked == 0 {
		return f.loads[:1]
	}
	return f.loads[:f.asked]
}

// Loads lists the brief's activities, then everything at work, then at rest.
func (f *Forecast) Loads() []brief.Load { return f.loads }

// Run gives the run of a load, by its place in Loads, on a day.
func (f *Forecast) Run(load int, day Day) *Run {
	if r := f.runs[load][day]; r != nil {
		return r
	}
	r := f.run(f.loads[load], roomC(f.needs, day), f.besides.at(load), f.besides.mostW(load))
	r.Day = day
	f.runs[load][day] = r
	return r
}

// roomC is the room of a day. Where there is no brief every day is ordinary.
func roomC(n *brief.Needs, day Day) float64 {
	room := float64(n.Place.Room.Or(ordinaryRoomC*1000)) / 1000
	if day == Hottest && len(n.Loads) > 0 {
		room = max(room, float64(n.Place.Hottest.Or(hottestRoomC*1000))/1000)
	}
	return room
}

// Day is the day that temperatures are judged on: the brief's hottest, or an ordinary one where there is no brief.
func (f *Forecast) Day() Day {
	if f.asked == 0 {
		return Ordinary
	}
	return Hottest
}

// run solves one load in one room, with so much heat in the board's chamber besides, of all that may come there at most.
func (f *Forecast) run(l brief.Load, roomC, besidesW, mostW float64) *Run {
	place := &f.needs.Place
	r := &Run{
		Load: l, RoomC: roomC, forecast: f, besidesW: besidesW, mostW: mostW,
		AltitudeM: float64(place.Altitude.Or(0)),
		ChairM:    chairOf(place),
		Missing:   f.model.missing, Unheard: f.model.unheard.missing,
	}
	if len(r.Missing) > 0 {
		f.model.name(r)
		return r
	}
	m, p := &f.model, f.predictor
	m.duty(r)
	out := &p.result
	if f.indoors != nil {
		out, r.Err = f.indoors.solve(m, r)
	} else {
		r.Err = m.solve(&p.solver, out, mainsLine(place))
	}
	if r.Err != nil {
		m.name(r)
		return r
	}
	m.read(r, &m.air, out, f)
	return r
}

// chairOf is the distance from the machine to the ear, m.
func chairOf(p *brief.Place) float64 { return float64(p.Chair.Or(chairM*1e6)) / 1e6 }
