package predict

import (
	"math"
	"slices"

	"slipfit/core/air"
	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// nearK is how far under its limit a processor is taken to stay clear of it.
const nearK = 10.0

// core is what settles the air of a case; memory, drives and cards only warm it.
type core struct {
	needs     *brief.Needs
	housing   *part.Case
	layout    *part.Layout
	plate     int
	fans      build.FanSet // the first of those bought, if any
	board     *part.Board
	processor *part.Processor
	cooler    *part.Cooler
	face      part.Face
	graphics  *part.Graphics
	supply    *part.Supply
	besides   string
	supplies  *Supplies
	bought    *bought // fans besides; nil for none
}

// coresKept is how many cores a predictor keeps forecasts of.
const coresKept = 1024

// noBoard stands for a board not chosen yet: it draws nothing and brings no sinks.
var noBoard = part.Board{Own: unit.Known(unit.Power(0))}

// boardless is a build without its board, and what that draws, W, nought where there is none; all that it brings into the air of a case is
// as much heat. Known is false where its sheet does not say it.
func boardless(b *build.Build) (bare build.Build, boardW float64, known bool) {
	bare = *b
	if b.Board != nil {
		var s sheet
		boardW = thousandth(&s, b.Board.Own, &b.Board.Article, "own_power_w")
		bare.Board, known = nil, len(s.missing) == 0
		return bare, boardW, known
	}
	return bare, 0, true
}

// Core is the forecast of a build without its memory, drives and cards, of one without a board as if that drew nothing, and of one
// without a supply with one of those besides at its best (see Supplies); nil where the build has not enough in it. A predictor keeps
// many, since builds with the same core come often.
func (p *Predictor) Core(b *build.Build, n *brief.Needs, besides Besides) *Forecast {
	bare, k, ok := coreOf(b, n, besides)
	if !ok {
		return nil
	}
	f, kept := p.cores.get(k, coresKept)
	if !kept || !slices.Equal(f.build.Fans, b.Fans) {
		f = p.fresh(&bare, n, besides)
		f.indoors = p.indoors(b, k)
		p.cores.put(k, f, coresKept)
	}
	return f
}

// coreOf is a build's core; ok is false where it has not enough in it.
func coreOf(b *build.Build, n *brief.Needs, besides Besides) (bare build.Build, k core, ok bool) {
	bare = bared(b)
	return bare, keyOf(&bare, n, besides), ready(&bare) || besides.feed(&bare)
}

// bared is a build without its memory, drives and cards.
func bared(b *build.Build) build.Build {
	bare := *b
	if bare.Board == nil {
		bare.Board = &noBoard
	}
	bare.Memory, bare.Kits, bare.Cards = nil, 0, nil
	bare.Boot, bare.Cache, bare.Archive = build.Storage{}, build.Storage{}, build.Storage{}
	return bare
}

// keyOf is what settles the air of a core.
func keyOf(b *build.Build, n *brief.Needs, besides Besides) core {
	k := core{n, b.Case, b.Layout, b.Plate, build.FanSet{}, b.Board, b.Processor, b.Cooler, b.Face, b.Graphics, b.Supply, besides.name, nil, nil}
	if len(b.Fans) > 0 {
		k.fans = b.Fans[0]
	}
	if b.Supply == nil {
		k.supplies = besides.supplies
	}
	return k
}

// Least gives runs of a build without some of its memory, drives and cards, such that the air in the whole build is no cooler
// than in one of them; none where that cannot be said. Two where it is open whether the supply's fan turns: one with it at
// rest, one with it turning.
//
// Why: a build of one chamber is at rest where heat = (ρ·cp·Q + UA)·rise, and Q grows with the air's temperature, by every
// curve. More heat at the same curves is warmer air, unless more load speeds up the supply's fan by more than it warms, which
// it does not (warmsFaster). A part at its limit calls fans only while its own air is warmer than when it was under its limit.
func (f *Forecast) Least(load int, day Day) []*Run {
	return f.least(func(f *Forecast) *Run { return f.Run(load, day) })
}

// leastWith is Least with so much heat besides, and no more than so much.
func (f *Forecast) leastWith(load int, day Day, heatW, mostW float64) []*Run {
	return f.least(func(f *Forecast) *Run { return f.run(f.loads[load], roomC(f.needs, day), heatW, mostW) })
}

func (f *Forecast) least(run func(*Forecast) *Run) []*Run {
	r := run(f)
	m := &f.model
	if !r.free() || m.chambers() > 1 {
		return nil
	}
	list := []*Run{r}
	if m.supply.duct < 0 && r.DCW.Expected < m.supply.zeroToW {
		list = append(list, run(f.turning()))
	}
	for _, r := range list {
		if !r.free() || !r.steady() {
			return nil
		}
	}
	return list
}

// free reports a machine at rest with no part at its limit.
func (r *Run) free() bool {
	for i := range r.Parts {
		if r.Parts[i].TempC.Expected > r.Parts[i].LimitC-1 {
			return false
		}
	}
	return r.Err == nil && len(r.Missing) == 0
}

// turning is the forecast with a supply whose fan never stands still.
func (f *Forecast) turning() *Forecast {
	if f.started == nil {
		t := *f
		t.runs = make([][2]*Run, len(f.loads))
		newModel(&t.build, t.besides, &t.model)
		t.model.supply.zeroToW = 0
		f.started = &t
	}
	return f.started
}

// standing is the forecast with a supply whose fan never turns.
func (f *Forecast) standing() *Forecast {
	if f.stopped == nil {
		t := *f
		t.runs = make([][2]*Run, len(f.loads))
		newModel(&t.build, t.besides, &t.model)
		t.model.supply.zeroToW = math.Inf(1)
		f.stopped = &t
	}
	return f.stopped
}

// closed is the forecast with a supply that no air comes through, which leaves as much in the case as one may lose.
func (f *Forecast) closed() *Forecast {
	if f.shut == nil {
		t := *f
		t.runs = make([][2]*Run, len(f.loads))
		m := newModel(&t.build, t.besides, &t.model)
		if s := &m.supply; s.duct < 0 {
			m.air.Paths[s.path].EachImpedance = closedImpedance
			s.zeroToW = math.Inf(1)
			s.closed = true
		}
		f.shut = &t
	}
	return f.shut
}

// closedImpedance is a way that no air comes through, Pa·s²/m⁶.
const closedImpedance = 1e12

// blown is the air that a watt of load brings through the supply's fan, m³/s, at most.
func (r *Run) blown() float64 {
	m := &r.forecast.model
	switch s := &m.supply; {
	case s.duct >= 0:
		return 0
	case s.any:
		return m.through() * r.forecast.besides.supplies.blown(r.asksW())
	default:
		return m.through() * s.blown()
	}
}

// blown is the free air that a watt of load adds to the fan's, m³/s, at most.
func (s *supply) blown() float64 {
	low := max(s.low, leastTurning*s.fan.RatedRPM)
	return s.fan.FreeM3PerS * (1 - low/max(1, s.fan.RatedRPM)) / (0.8 * max(1, float64(s.rating)/1000))
}

// through is the share of that which the case draws in for it, at most.
//
// At a share s of its speed the fan gets Qf·√((s² + p/P0) ÷ (1 + k)) through, p the pressure in the case and k the pack's way by its own
// (packImpedance). Where nothing else blows out, p is under the room's by what it takes to draw that in, and as that goes with the square of
// the flow too, the flow is in proportion to s: no more than Qf·s ÷ √(1 + k), half the free flow. A draught only takes from it, as long as it
// is weaker than the fan. Other fans that blow out may lower p so far that a little speed brings more: there all of the free flow is counted.
func (m *model) through() float64 {
	for i := range m.air.Paths {
		if p := &m.air.Paths[i]; i != m.supply.path && p.Direction == air.Exhaust && p.Fans.Count > 0 {
			return 1
		}
	}
	return 1 / math.Sqrt(1+packImpedance)
}

// followed is the air that a kelvin of the chamber's air brings through the fans that follow it, m³/s, at most.
func (m *model) followed() float64 {
	sum := 0.0
	for i := range m.air.Paths {
		if p := &m.air.Paths[i]; p.Radiator.Sections == 0 {
			for _, c := range p.Fans.Speed.Curves {
				low, full := c.Points[0], c.Points[len(c.Points)-1]
				sum += float64(p.Fans.Count) * p.Fans.Fan.FreeM3PerS * (1 - low.RPM/max(1, full.RPM)) / (full.TempC - low.TempC)
			}
		}
	}
	return sum
}

// inM3PerS is the air drawn in.
func (r *Run) inM3PerS() float64 { return r.InM3H.Expected / air.M3PerHPerM3PerS }

// warmsFaster reports that a watt more in the case brings more heat, as a share of what is there, than air. While the supply's fan stands
// still it brings none; what it may be once that turns is another run. In one chamber it never brings as much, whatever else blows there.
//
// Why: let x be the pressure in the case under the room's. What comes in, V, goes with the square root of x, or grows by less where fans
// help: dV/dx ≤ V/(2x). Through the pack comes q = Qf·√((s² − x/P0) ÷ (1 + k)) at a share s of its speed (see through), and what else leaves
// shrinks as x grows. So dV/ds ≤ a·s·V ÷ (q·(V − q) + a·s²), where a = Qf²/(1 + k), and as q is no more than V that is no more than V/s. Where x
// is less than nought q is no less than √a·s, and dq/ds no more than √a, which is no more than V/s; air that comes in through the pack grows
// less as the fan turns faster. So the air grows by no larger a share than the speed, but for less than a hundredth that draughts may add. And
// a fan that turns no slower than at leastTurning grows faster by less than nine tenths of the share that the load grows by (supply.rpm). The
// heat in the case is the load; what the supply itself loses leaves with its air, but for the little that is drawn in again.
func (r *Run) warmsFaster() bool {
	return r.forecast.model.chambers() == 1 || r.Cooling[len(r.Cooling)-1].RPM.Expected == 0 || r.blown()*r.HeatInW <= r.inM3PerS()
}

// warmsFrom is the least share of mixed air in what a part or a drive breathes with which that grows warmer with the mixed air. Where room
// air alone comes in it always does; where a radiator warms what comes in, that falls as more comes, and the mixed part of a part's air must
// rise by more. With F, R the rise of fresh and mixed air, a watt is dR·(A + c·R·G) ÷ (1 − c·R·g), G and g what follows a kelvin and
// a watt, A = heat ÷ R; wanted is β·dR ≥ (1 − β)·dF. G counts free flows, about twice what a case lets through.
func (r *Run) warmsFrom() (beta float64) {
	m := &r.forecast.model
	if m.b.Cooler.Liquid == nil || !intakes(m.b.Face) {
		return 0
	}
	heatPerM3 := air.StandardDensityKgPerM3 * air.CpJPerKgK
	q, rise := r.inM3PerS(), r.Zones[boardZone].RiseK.Expected
	fresh := (r.Parts[0].HeldW.Expected + m.pumpW) / (heatPerM3 * q)
	perK, perW := m.followed(), r.blown()
	left := 1 - heatPerM3*rise*perW
	if q <= 0 || rise <= 0 || left <= 0 {
		return math.Inf(1)
	}
	wattsPerK := (r.HeatInW/rise + heatPerM3*rise*perK) / left
	falls := inletSlack * fresh / q * (perK + perW*wattsPerK) // of what comes in, to a kelvin of mixed air
	return falls / (1 + falls)
}

// inletSlack is by how much more than by these sums what comes in through a radiator is taken to fall: draughts grow too. Of 20,000 random
// cores none fell by more than 1.11 times as much.
const inletSlack = 1.25

// mixed is the least share of mixed air in what a part under air breathes.
func (m *model) mixed() float64 {
	least := 1.0
	for i := range m.parts {
		if in := &m.air.Consumers[m.parts[i].index]; in.Medium != air.ToCoolant {
			least = min(least, in.Beta)
		}
	}
	return least
}
