package predict

import (
	"math"
	"slices"

	"slipfit/core/air"
	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/sound"
	"slipfit/core/unit"
)

// toldOf is what has been asked of a level: the activity, the level, and that of the disks beside.
type toldOf struct {
	load        int
	wish, disks float64
}

// told is what has been said of an activity and a level: too loud with disks of so much power, dB(A), and therefore with louder ones;
// nothing with disks of so much, and therefore with quieter ones.
type told struct{ louderFrom, nothingTo float64 }

// said is what has been said of the levels of a core, or of a build, by all that was asked but the disks. It is kept longer than
// forecasts are.
type said struct {
	fans []build.FanSet
	of   map[toldOf]told
}

// saidKept is how many cores a predictor keeps what it said of.
const saidKept = 1 << 14

// louder answers a question from what was said, or else asks.
func (s *said) louder(k toldOf, ask func(toldOf) bool) bool {
	of := k
	of.disks = 0
	t, known := s.of[of]
	switch {
	case !known:
		t = told{math.Inf(1), math.NaN()}
	case k.disks >= t.louderFrom:
		return true
	case k.disks <= t.nothingTo:
		return false
	}
	louder := ask(k)
	if louder {
		t.louderFrom = k.disks
	} else {
		t.nothingTo = k.disks
	}
	if s.of == nil {
		s.of = map[toldOf]told{}
	}
	s.of[of] = t
	return louder
}

// asking is a question with the slack that a level must be over a wish, dB(A).
func asking(load int, wish unit.Sound, disksDBA float64) toldOf {
	const slack = 1e-3
	return toldOf{load, float64(wish)/1000 + slack, disksDBA}
}

// Louder is Louder of a build's core, with what comes besides.
func (p *Predictor) Louder(b *build.Build, n *brief.Needs, besides Besides, load int, wish unit.Sound, disksDBA float64) bool {
	_, k, ok := coreOf(b, n, besides)
	if !ok {
		return false
	}
	s, kept := p.said.get(k, saidKept)
	if !kept || !slices.Equal(s.fans, b.Fans) {
		s = &said{fans: slices.Clone(b.Fans)}
		p.said.put(k, s, saidKept)
	}
	return s.louder(asking(load, wish, disksDBA), func(k toldOf) bool {
		return p.louderUnder(b, n, besides, k, besides.at(k.load), idealStepW) || p.Core(b, n, besides).louder(k)
	})
}

// Louder reports that no build which holds this one's parts and more memory, drives and cards, disks of so much sound power, dB(A),
// among them, is as quiet at the chair as a level in an activity on an ordinary day. False says nothing.
//
// How: the case's fans turn at some speed between what they have here, for more heat slows none, and their full one, a
// radiator's at some speed of theirs, the supply's by some load up to the planned one. These ranges are looked at in steps, which
// are halved where it cannot be said of the whole. Within a step fans are heard at its lower end, while everything else is solved
// with them at its upper end: so much air leaves every part at its coolest. A step in which air or coolant, at their coolest, ask the
// fans that follow them to turn faster is none. Where Least speaks of the build it says more.
func (f *Forecast) Louder(load int, wish unit.Sound, disksDBA float64) bool {
	return f.said.louder(asking(load, wish, disksDBA), f.louder)
}

func (f *Forecast) louder(k toldOf) bool {
	r := f.Run(k.load, Ordinary)
	if r.Err != nil || len(r.Missing) > 0 || !f.model.supply.any && atChair(sum(r.PowerDBA.Expected, k.disks), r.ChairM) <= k.wish {
		return false
	}
	runs := f.Least(k.load, Ordinary)
	if len(runs) > 0 && !slices.ContainsFunc(runs, func(r *Run) bool { return atChair(sum(r.leastDBA(), k.disks), r.ChairM) <= k.wish }) {
		return true
	}
	return (!f.model.supply.any || f.model.supply.duct >= 0) && r.clear() && f.stepped(r, k)
}

// sum adds two levels.
func sum(a, b float64) float64 {
	return 10 * math.Log10(math.Pow(10, a/10)+math.Pow(10, b/10))
}

// plannedLoad is the share of a supply's rating that everything at work may take (rule supply-steady).
const plannedLoad = 0.9

// share is how far the case's fans are on the way from their lowest to their full speed; 0 where there are none.
func (m *model) share(r *Run) float64 {
	least := 1.0
	found := false
	for i := range m.groups {
		g := &m.groups[i]
		if g.radiator {
			continue
		}
		s := &m.air.Paths[g.paths[0]].Fans.Speed
		if low, full := turned(s, 0), turned(s, 1); full > low {
			least, found = min(least, (r.Fans[i].RPM.Expected-low)/(full-low)), true
		}
	}
	if !found {
		return 0
	}
	return max(0, least)
}

// turned is a fan's speed at a share of the way from the lowest to the full speed of its curve.
func turned(s *air.Speed, share float64) float64 {
	points := s.Curves[0].Points
	low, full := points[0].RPM, points[len(points)-1].RPM
	return low + float64(share*(full-low))
}

// asked is the speed that a curve asks at a temperature.
func asked(s *air.Speed, c float64) float64 {
	points := s.Curves[0].Points
	low, full := points[0], points[len(points)-1]
	return low.RPM + float64(min(1, max(0, (c-low.TempC)/(full.TempC-low.TempC)))*(full.RPM-low.RPM))
}

// leastDBA is the sound power at any heat more than this run's, dB(A), at least.
func (r *Run) leastDBA() float64 {
	held, cut := r.leastButSupply()
	least := sum(held, r.supplyDBA())
	for _, dBA := range cut {
		least = min(least, dBA)
	}
	return least
}

// supplyDBA is that of the supply alone; of one of several the quietest one's.
func (r *Run) supplyDBA() float64 {
	s := &r.forecast.model.supply
	if s.any {
		return sound.FromPicowatts(r.forecast.predictor.quietestPW(r.forecast.besides.supplies, r.asksW()))
	}
	return s.source.PowerDBA(r.Cooling[len(r.Cooling)-1].RPM.Expected)
}

// leastButSupply is that but for the supply: as long as no part is at its limit, and with each part at it. As long as none is, all is as loud
// as here, but for a radiator's fans that blow in: more air through it may let them slow down. A part at its limit takes less, so that the
// supply's fan may slow down and counts for nothing, but has all fans of the case at full speed, and its own.
func (r *Run) leastButSupply() (held float64, cut []float64) {
	m := &r.forecast.model
	free, calling := slices.Clone(m.steady), slices.Clone(m.steady)
	for i := range m.groups {
		g := &m.groups[i]
		speed := &m.air.Paths[g.paths[0]].Fans.Speed
		rpm := r.Fans[i].RPM.Expected
		calling = append(calling, sound.Running{Source: g.source, RPM: turned(speed, 1)})
		if g.radiator && intakes(g.face) {
			rpm = turned(speed, 0)
		}
		free = append(free, sound.Running{Source: g.source, RPM: rpm})
	}
	fans := len(free)
	own := r.Cooling
	for i := range m.parts {
		if c := &m.parts[i]; c.sound.Count > 0 {
			free = append(free, sound.Running{Source: c.sound, RPM: own[0].RPM.Expected})
			own = own[1:]
		}
	}
	for i, at := 0, fans; i < len(m.parts); i++ {
		list := append(slices.Clone(calling), free[fans:]...)
		if c := &m.parts[i]; c.sound.Count > 0 {
			list[at].RPM = c.sound.RatedRPM
			at++
		}
		cut = append(cut, sound.Total(list))
	}
	return sound.Total(free), cut
}

// clear reports a processor well under its limit: it keeps the power it is asked for when memory, drives and cards are added,
// and its supply's fan is no slower.
func (r *Run) clear() bool { return r.Parts[0].TempC.Expected <= r.Parts[0].LimitC-nearK }

// TooLoud is Louder of a whole build, by what is known of builds with the same core: more heat and louder disks make none
// quieter.
func (p *Predictor) TooLoud(b *build.Build, n *brief.Needs, load int, wish unit.Sound) bool {
	if !ready(b) {
		return false
	}
	c := p.Core(b, n, Besides{})
	w, known := warmthOf(b, &c.loads[load])
	if !known {
		return false
	}
	if c.loud == nil {
		c.loud = make([][]warmth, len(c.loads))
	}
	if slices.ContainsFunc(c.loud[load], func(x warmth) bool { return w.heatW >= x.heatW && w.disksDBA >= x.disksDBA }) {
		return true
	}
	f := p.Forecast(b, n)
	if f.Run(load, Ordinary).ChairDBA.Expected*1000 <= float64(wish) || c.unsaid >= mostUnsaid {
		return false
	}
	if !f.Louder(load, wish, sound.Silent()) {
		c.unsaid++
		return false
	}
	c.loud[load] = append(c.loud[load], w)
	return true
}

// mostUnsaid is how many builds with a core that are too loud themselves may leave it open of warmer ones before no more are looked into.
const mostUnsaid = 8

// warmth is what memory, drives and cards bring into a case in an activity.
type warmth struct{ heatW, disksDBA float64 }

func warmthOf(b *build.Build, l *brief.Load) (w warmth, known bool) {
	m := model{b: b}
	m.extras()
	m.loose()
	return warmth{m.brings(l), sound.Total(m.steady)}, len(m.missing) == 0
}
