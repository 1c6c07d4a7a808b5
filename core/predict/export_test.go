package predict

import (
	"slipfit/core/air"
	"slipfit/core/build"
)

// Breathed is what became of a chamber in a run, beside what its breath says of it at the most.
type Breathed struct {
	M3PerS   float64 // that came in
	Less     func(share float64) bool
	HeatW    float64 // of its parts at least
	GoneW    float64 // taken out by as much air and by walls and plate, if what came in was as cool as the room
	Calm     bool    // no part comes to its limit
	Fastest  [2]float64
	Turned   [2]float64 // by part: the share of their full speed that its fans turn
	GaugePa  float64    // its pressure
	MostPa   float64    // where it gives some air through the plate, at most
	LeastPa  float64    // where it takes some, at least
	GivesAir bool       // through the plate
}

// Breathed tells of a build that was run last, chamber by chamber.
func (p *Predictor) Breathed(r *Run, b *build.Build, besides Besides) (list []Breathed) {
	x := p.breath(b, r.forecast.needs, besides, nil)
	m, in := &r.forecast.model, r.forecast.predictor.result
	for z := range in.Zones {
		a := airing{breath: x, place: &r.forecast.needs.Place, asked: &r.Load, roomC: r.RoomC, boardW: m.boardW, mostW: besides.mostW(0), riseK: r.Zones[z].RiseK.Expected}
		cools := a.coolsWPerK(z, true)
		heatW, fans := a.parts(z, cools)
		c := Breathed{
			M3PerS: in.Zones[z].InM3PerS, HeatW: heatW, Calm: fans.calm, Fastest: fans.share,
			GoneW:   a.riseK * (cools + a.density()*air.CpJPerKgK*in.Zones[z].InM3PerS),
			GaugePa: in.Zones[z].GaugePa / in.DensityRatio, MostPa: x.chambers[z].most, LeastPa: x.chambers[z].least,
			Less: func(share float64) bool { return a.breathesLess(z, in.Zones[z].InM3PerS*share, true, fans) },
		}
		if z == boardZone {
			c.HeatW += m.boardW + m.lightsW + m.brings(&r.Load)
		}
		if len(in.Partitions) > 0 {
			c.GivesAir = (in.Partitions[0].FlowM3PerS > 0) == (z == boardZone)
		}
		for i := range m.parts {
			at := m.parts[i].index
			c.Turned[i] = in.Consumers[at].RPM / max(1, m.air.Consumers[at].Fans.Fan.RatedRPM)
			if m.air.Consumers[at].Zone != z {
				c.Turned[i] = 0
			}
		}
		list = append(list, c)
	}
	return list
}

// Free reports a run with no part at its limit.
func (r *Run) Free() bool { return r.free() }

// Breathes tells of a core with so much heat besides, in the first activity on the hottest day, what is breathed with a share of mixed air, °C,
// and from which share on that is no cooler with more heat, with the supply's fan as it is; known is false where it has not come to rest, or
// a part is at its limit.
func (f *Forecast) Breathes(heatW float64) (inletC func(beta float64) float64, from float64, turns, known bool) {
	s := f.state(stateKey{day: Hottest, extraW: heatW})
	return s.inletC, s.warmsFrom, s.turns, s.rests && s.free
}

// Steps is how many widths of steps there are between amounts of heat.
const Steps = len(chamberSteps)

// Between is a step of a width from so much heat on, or less, in the first activity on an ordinary day: where it begins and how wide it is, W;
// by how much a core is heard in all of it at least, dB(A), and what slack that leaves.
func (f *Forecast) Between(nth int, heatW float64) (fromW, wideW, dBA, slack float64, known bool) {
	step := chamberSteps[nth]
	fromW = floor(heatW, step.wideW)
	dBA, known = f.betweenDBA(0, fromW, step.wideW)
	return fromW, step.wideW, dBA, f.slackDBA(step), known
}

// HeardAt is how loud the core is with just so much heat besides, dB(A).
func (f *Forecast) HeardAt(heatW float64) float64 {
	return f.state(stateKey{day: Ordinary, extraW: heatW}).powerDBA
}
