package predict

import (
	"math"
	"slices"

	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/sound"
	"slipfit/core/unit"
)

// In one chamber, under an air cooler, a build is heard as a sum: case and card by the air that they come to with an ideal cooler (see
// anyCooler), which other supplies change but little; the cooler by the air at it; the supply by its load; disks as they are. So what is
// solved once for a case and a card tells how loud builds with any of the coolers are, and with any of the supplies.

// ideal is what a core with an ideal air cooler comes to, and no board.
type ideal struct {
	fans []build.FanSet
	at   map[idealAt][]under
}

// idealAt is a load, and how much heat there is in the case besides processor and card, and may be at most, W.
type idealAt struct {
	load         int
	heatW, mostW float64
}

// under is a run of Least of it: sound power but for cooler and supply as long as no part is at its limit, with the processor at it and with
// the card, pW; that of the supply; and the air at the cooler.
type under struct {
	heldPW, hotPW, cardPW float64
	supplyPW, inletC      float64
	leastW, mostW         float64 // that it asks of a supply, whichever it is
}

// Heard is how loud a core is but for its cooler, pW of sound power at least, with the air at that, °C; +Inf where it turns at full speed.
type Heard struct{ PW, InletC float64 }

// with adds what a run comes to with a supply of so much.
func (u *under) with(list []Heard, supplyPW float64) []Heard {
	free := Heard{min(u.heldPW+supplyPW, u.cardPW), u.inletC}
	if list = append(list, free); u.hotPW < free.PW {
		list = append(list, Heard{u.hotPW, math.Inf(1)})
	}
	return list
}

// idealsKept is how many of them a predictor keeps, and coolers in some air.
const idealsKept = 1 << 14

// ideal finds the runs of Least of a build with an ideal cooler, and so much heat; none where nothing is said.
func (p *Predictor) ideal(b *build.Build, n *brief.Needs, fed *Supplies, at idealAt) []under {
	if b.Layout == nil || b.Layout.Chambers {
		return nil
	}
	some := *b
	some.Cooler, some.Board, some.Face = &anyCooler, nil, ""
	var besides Besides
	if b.Supply == nil {
		besides.supplies = fed
	} else {
		at.mostW = math.Inf(1) // which only tells of whichever supply whether its fan may turn
	}
	bare, k, ok := coreOf(&some, n, besides)
	if !ok {
		return nil
	}
	x, kept := p.ideals.get(k, idealsKept)
	if !kept || !slices.Equal(x.fans, b.Fans) {
		x = &ideal{slices.Clone(b.Fans), map[idealAt][]under{}}
		p.ideals.put(k, x, idealsKept)
	}
	list, known := x.at[at]
	if !known {
		for _, r := range p.fresh(&bare, n, besides).leastWith(at.load, Ordinary, at.heatW, at.mostW) {
			list = append(list, r.under())
		}
		x.at[at] = list
	}
	return list
}

// under reads a run so.
func (r *Run) under() under {
	held, cut := r.leastButSupply()
	u := under{
		heldPW: sound.Picowatts(held), hotPW: sound.Picowatts(cut[0]), cardPW: math.Inf(1),
		supplyPW: sound.Picowatts(r.supplyDBA()), inletC: r.Parts[0].InletC.Expected,
	}
	if len(cut) > 1 {
		u.cardPW = sound.Picowatts(cut[1])
	}
	u.leastW, _, u.mostW = r.feeds()
	return u
}

// Distances between the amounts of heat that an ideal core is solved with, W: for cores, and for whole builds, of which more differ by that.
const (
	idealStepW      = 0.5
	wholeIdealStepW = 2.0
)

// louderUnder reports a build over a level by what it comes to with an ideal cooler and so much heat besides the board's own, to a step, with
// disks as asked.
func (p *Predictor) louderUnder(b *build.Build, n *brief.Needs, besides Besides, k toldOf, heatW, stepW float64) bool {
	if b.Cooler == nil || b.Cooler.Air == nil {
		return false
	}
	_, boardW, known := boardless(b)
	if !known {
		return false
	}
	allowed := allowedPW(k, &n.Place)
	bears := func(h Heard) bool {
		own, known := p.CoolerPW(b, n, k.load, InletOf(h.InletC))
		return !known || h.PW+own+sound.Picowatts(k.disks) <= allowed
	}
	list := p.ideal(b, n, besides.supplies, idealAt{k.load, floor(boardW+heatW, stepW), boardW + besides.mostW(k.load)})
	return len(list) > 0 && !slices.ContainsFunc(list, func(u under) bool {
		var room [2]Heard
		return slices.ContainsFunc(u.with(room[:0], u.supplyPW), bears)
	})
}

// idealWith is ideal of what comes besides, the board's own heat with it.
func (p *Predictor) idealWith(b *build.Build, n *brief.Needs, besides Besides, load int) []under {
	return p.ideal(b, n, besides.supplies, idealAt{load, floor(besides.at(load), idealStepW), besides.mostW(load)})
}

// Heard tells of a build's core, whatever air cooler it has and whatever comes besides, how loud it is: the build is as loud as one of these
// with its cooler in that air. None where nothing is said.
func (p *Predictor) Heard(b *build.Build, n *brief.Needs, besides Besides, load int) (list []Heard) {
	for _, u := range p.idealWith(b, n, besides, load) {
		list = u.with(list, u.supplyPW)
	}
	return list
}

// Choir is a core without a supply, and what it is heard at with each of some.
type Choir struct {
	runs     []under
	supplies *Supplies
	turnPW   []float64
}

// Choir is Heard of a core without a supply with each of those besides; nil where nothing is said.
func (p *Predictor) Choir(b *build.Build, n *brief.Needs, besides Besides, load int) *Choir {
	runs := p.idealWith(b, n, besides, load)
	if len(runs) == 0 || b.Supply != nil {
		return nil
	}
	return &Choir{runs, besides.supplies, p.turnPW(besides.supplies, runs[0].leastW)}
}

// With adds what it comes to with one of the supplies, by its place in what they were made of: nothing where that does not carry the core,
// or lacks a figure, so that no build with it stands.
func (c *Choir) With(list []Heard, place int) []Heard {
	i := c.supplies.index[place]
	if i < 0 {
		return list
	}
	s, rests := &c.supplies.list[i], &c.runs[0]
	switch {
	case !s.carries(rests.leastW):
	case len(c.runs) == 1 && s.zeroToW > rests.leastW:
		list = rests.with(list, 0)
	case len(c.runs) == 1:
		list = rests.with(list, c.turnPW[i])
	default:
		if s.zeroToW > rests.leastW {
			list = rests.with(list, 0)
		}
		if s.zeroToW <= rests.mostW {
			list = c.runs[1].with(list, c.turnPW[i])
		}
	}
	return list
}

// Least is no more than any of what it comes to.
func (c *Choir) Least() Heard {
	least := Heard{math.Inf(1), math.Inf(1)}
	var room [4]Heard
	for place := range c.supplies.index {
		for _, h := range c.With(room[:0], place) {
			least = Heard{min(least.PW, h.PW), min(least.InletC, h.InletC)}
		}
	}
	return least
}

// turnsAt is some supplies at a load in steps of turnsStepW.
type turnsAt struct {
	supplies *Supplies
	steps    int
}

const turnsStepW = 1.0

// turnPW is the sound power of some supplies, pW, at a load or more, while their fans turn.
func (p *Predictor) turnPW(all *Supplies, loadW float64) []float64 {
	k := turnsAt{all, int(loadW / turnsStepW)}
	list := p.turns[k]
	if list == nil {
		if p.turns == nil {
			p.turns = map[turnsAt][]float64{}
		}
		for i := range all.list {
			s := &all.list[i]
			list = append(list, sound.Picowatts(s.source.PowerDBA(s.rpm(max(float64(k.steps)*turnsStepW, s.zeroToW)))))
		}
		p.turns[k] = list
	}
	return list
}

// quietestPW is the sound power of the quietest of some supplies at a load or more, pW.
func (p *Predictor) quietestPW(all *Supplies, loadW float64) float64 {
	least := math.Inf(1)
	for i, pw := range p.turnPW(all, loadW) {
		if s := &all.list[i]; s.carries(loadW) {
			if s.zeroToW > loadW {
				return 0
			}
			least = min(least, pw)
		}
	}
	return least
}

// AllowedPW is the sound power that a level at the chair allows, pW, with the slack by which it must be passed.
func AllowedPW(wish unit.Sound, place *brief.Place) float64 {
	return allowedPW(asking(0, wish, sound.Silent()), place)
}

func allowedPW(k toldOf, place *brief.Place) float64 {
	return sound.Picowatts(sound.PowerFromHemisphere(k.wish, chairOf(place)))
}

// Inlet is the air at a cooler in steps of a quarter of a kelvin over 0 °C; FullSpeed stands for air so warm that its fans can do no more.
type Inlet int32

const (
	stepsPerK       = 4
	FullSpeed Inlet = math.MaxInt32
)

// InletOf is air of a temperature, °C, to a step down; of +Inf it is FullSpeed.
func InletOf(inletC float64) Inlet {
	return Inlet(min(float64(FullSpeed), math.Floor(stepsPerK*inletC)))
}

// coolerAt is a cooler on a processor at a load in some air.
type coolerAt struct {
	needs     *brief.Needs
	load      int
	processor *part.Processor
	cooler    *part.Cooler
	inlet     Inlet
}

// CoolerPW is how loud a build's air cooler is at a load with so warm air at its inlet, or warmer, pW of sound power at least.
// Nothing is known of one without a figure, nor of one under which the processor comes near its limit in that air.
func (p *Predictor) CoolerPW(b *build.Build, n *brief.Needs, load int, inlet Inlet) (pw float64, known bool) {
	if b.Cooler == nil || b.Cooler.Air == nil {
		return 0, false
	}
	k := coolerAt{n, load, b.Processor, b.Cooler, inlet}
	pw, solved := p.coolers.get(k, idealsKept)
	if !solved {
		pw = p.coolerAlone(&k)
		p.coolers.put(k, pw, idealsKept)
	}
	return pw, !math.IsNaN(pw)
}

// coolerAlone solves a cooler on its processor; NaN where nothing is known.
func (p *Predictor) coolerAlone(k *coolerAt) float64 {
	warmerK := 0.0
	if k.inlet != FullSpeed {
		warmerK = max(0, float64(k.inlet)/stepsPerK-roomC(k.needs, Ordinary))
	}
	x := p.alone(openKey{k.needs, Loads(k.needs)[k.load], Ordinary, k.processor, k.cooler, nil}, warmerK)
	if x.err != nil || len(x.missing)+len(x.unheard) > 0 {
		return math.NaN()
	}
	if k.inlet == FullSpeed {
		for i := range x.sources {
			x.sources[i].RPM = x.sources[i].Source.RatedRPM
		}
	} else if x.parts[0].TempC.Expected > x.parts[0].LimitC-1 {
		return math.NaN()
	}
	return sound.Picowatts(sound.Total(x.sources))
}
