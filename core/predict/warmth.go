package predict

import (
	"math"

	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/sound"
	"slipfit/core/unit"
)

// Warmth is a build seen as a core and what memory, drives and cards bring into it: heat in the board's chamber, and turning
// disks to be heard. What a core comes to with so much heat besides is solved once for all builds that have it, in steps, and
// bounds what those between two steps come to.
type Warmth struct {
	build   build.Build
	counted build.Set // seats whose heat and drives count
	besides Besides
	core    *Forecast
	drives  []drive
	extraW  []float64 // heat besides the core's at least, by load
	disks   float64   // dB(A) of power
}

// Warmth lays a build out so, counting the heat of some of its seats, with what comes besides; nil where there is not enough in
// it, or a sheet lacks a figure. The last one is kept for whoever asks about the same build again, and is good until then.
func (p *Predictor) Warmth(b *build.Build, n *brief.Needs, counted build.Set, besides Besides) *Warmth {
	if w := &p.warmth; w.core != nil && w.core.needs == n && w.counted == counted && w.besides.name == besides.name && w.besides.supplies == besides.supplies && same(&w.build, b) {
		return w
	}
	core := p.Core(b, n, besides.atMost())
	if core == nil || b.Board == nil {
		return nil
	}
	some := but(b, counted)
	m := model{b: &some}
	m.extras()
	m.storage()
	if len(m.missing) > 0 || len(m.unheard.missing) > 0 {
		return nil
	}
	w := Warmth{build: *b, counted: counted, besides: besides, core: core, disks: sound.Total(m.steady), extraW: p.warmth.extraW[:0]}
	for i := range core.loads {
		w.extraW = append(w.extraW, m.brings(&core.loads[i])+besides.at(i))
	}
	m.b, m.drives = b, nil // all of them have a say in what sits where
	m.storage()
	w.drives = m.drives
	p.warmth = w
	return &p.warmth
}

// but is a build with no memory, drives and cards but those in some seats.
func but(b *build.Build, counted build.Set) build.Build {
	some := *b
	for _, s := range Warming {
		if !counted.Has(s) {
			some.Clear(s)
		}
	}
	return some
}

// brings is the heat of memory, drives and cards at a load, W.
func (m *model) brings(l *brief.Load) float64 {
	heat := m.cardsW + between(m.memoryW*memoryRest, m.memoryW, l.Memory)
	for i := range m.drives {
		d := &m.drives[i]
		heat += float64(d.count) * between(d.rest, d.most, l.Drives)
	}
	return heat
}

// Limits by which a bound must be passed to count: more than solver and supply leave open, and what a part that holds its limit
// leaves open of the air beside it.
const (
	slackK       = 0.05
	ownAirSlackK = 0.005
	slackShare   = 1e-4
	slackDBA     = 0.02
)

// HeldBack reports a part that keeps less than a share of its speed at a load, with this much in the case or more.
func (w *Warmth) HeldBack(load int, share float64) bool {
	back := func(s *state) bool { return s.kept < share-slackShare }
	return w.settles(load, w.core.Day(), func(x *bounds) (yes, no bool) { return x.settle(back) })
}

// DriveOver reports drives of a tier over their limit at a load, where the board puts them, with this much in the case or more.
func (w *Warmth) DriveOver(load int, tier build.Seat) bool {
	for i := range w.drives {
		d := &w.drives[i]
		if d.seat != tier || len(d.missing) > 0 {
			continue
		}
		over := func(s *state) bool {
			return s.warmsFrom <= d.beta && s.inletC(d.beta)+d.risenK(&w.core.loads[load]) > d.limit+slackK
		}
		if w.settles(load, w.core.Day(), func(x *bounds) (yes, no bool) { return x.settle(over) }) {
			return true
		}
	}
	return false
}

// DriveOverAnywhere is DriveOver in the socket that suits a drive best, whatever other drives and cards come.
func (w *Warmth) DriveOverAnywhere(load int) bool {
	for i := range w.drives {
		d := &w.drives[i]
		if !w.counted.Has(d.seat) {
			continue
		}
		limitC, known := LimitC(d.part)
		over := func(s *state) bool {
			c, ok := coolest(w.build.Board, d.part, s.inletC(d.beta), w.core.loads[load].Drives)
			return ok && s.warmsFrom <= d.beta && c > limitC+slackK
		}
		if known && w.settles(load, w.core.Day(), func(x *bounds) (yes, no bool) { return x.settle(over) }) {
			return true
		}
	}
	return false
}

// BoardOver reports converters over their limit at a load, or a part that keeps less than a share of its speed, with this much in the
// case or more.
func (w *Warmth) BoardOver(load int, share float64) bool {
	most := w.mostW(load)
	if !w.boardKnown() || math.IsInf(most, 1) {
		return false
	}
	if s := w.core.hottest(load, w.core.Day(), most); s != nil && s.kept >= share && !w.tooWarm(s, s.heldW) {
		return false
	}
	if w.boardOver(load, share, w.extraW[load], most, finestW) {
		return true
	}
	const stepW = 8
	for extraW := w.extraW[load]; ; extraW += stepW {
		if !w.boardOver(load, share, extraW, extraW+stepW, stepW) {
			return false
		}
		if extraW >= most {
			return true
		}
	}
}

// BoardBearsW is the least heat at a load of which, or of more, BoardOver says so, W; +Inf where it does not of the most there can be.
func (w *Warmth) BoardBearsW(load int, share float64) float64 {
	most := w.mostW(load)
	if !w.boardKnown() || math.IsInf(most, 1) || !w.boardOver(load, share, most, most, finestW) {
		return math.Inf(1)
	}
	under, over := floor(w.extraW[load], finestW)-finestW, floor(most, finestW)
	for asked := 0; over-under > finestW; asked++ {
		middle := (under + over) / 2
		if asked%3 < 2 { // warmth goes nearly with heat: a guess a little to either side of where its line passes the limit
			middle = w.boardPasses(load, under, over) + float64(asked%3) - 0.5
		}
		if middle = min(max(floor(middle, finestW), under+finestW), over-finestW); w.boardOver(load, share, middle, most, finestW) {
			over = middle
		} else {
			under = middle
		}
	}
	return over
}

// boardPasses is about how much heat takes converters to their limit, between two amounts.
func (w *Warmth) boardPasses(load int, fromW, toW float64) float64 {
	at := func(heatW float64) float64 {
		s := w.core.state(stateKey{load: load, day: w.core.Day(), extraW: max(0, floor(heatW, finestW))})
		return w.convertersC(s, s.heldW)
	}
	fromC, toC := at(fromW), at(toW)
	if toC-fromC <= 0 {
		return (fromW + toW) / 2
	}
	return fromW + (converterLimitC+w.slackK()-fromC)/(toC-fromC)*(toW-fromW)
}

func (w *Warmth) boardKnown() bool {
	c := &w.core.model.converters
	return c.holdsW > 0 && len(c.missing) == 0
}

// boardOver is BoardOver with heat between two amounts, the lower one to a step.
func (w *Warmth) boardOver(load int, share, extraW, toW, stepW float64) bool {
	x := w.core.between(load, w.core.Day(), extraW, toW, w.mostW(load), stepW)
	return x.every(func(s *state) bool {
		return s.kept < share-slackShare || x.high() != nil && w.tooWarm(s, x.high().heldW)
	})
}

// tooWarm reports converters over their limit in the air of a state, where the processor holds so much.
func (w *Warmth) tooWarm(s *state, heldW float64) bool {
	return w.convertersC(s, heldW) > converterLimitC+w.slackK()
}

// convertersC is how warm converters are in the air of a state, where the processor holds so much.
func (w *Warmth) convertersC(s *state, heldW float64) float64 {
	return s.airC + float64(converterRiseK*heldW/w.core.model.converters.holdsW)
}

// slackK is how far over its limit a part must be to count. A supply with air of its own leaves nothing open but what a solver does.
func (w *Warmth) slackK() float64 {
	if w.core.model.supply.duct >= 0 {
		return ownAirSlackK
	}
	return slackK
}

// Louder reports a level over a wish at a load on an ordinary day, with this much in the case or more and disks no quieter; known
// is false where it cannot be said of the build as it is.
func (w *Warmth) Louder(load int, wish unit.Sound) (louder, known bool) {
	over := func(powerDBA float64) bool {
		return atChair(sum(powerDBA, w.disks), chairOf(&w.core.needs.Place)) > float64(wish)/1000+slackDBA
	}
	louder = w.settles(load, Ordinary, func(x *bounds) (yes, no bool) {
		known = x.n > 0 && x.low[0].heard && w.core.model.chambers() == 1
		if !known || x.every(func(s *state) bool { return over(s.leastDBA) }) {
			return known, false
		}
		return false, x.high() != nil && !over(x.high().powerDBA)
	})
	return louder, known
}

// LouderUnder is Louder by what the core comes to with an ideal cooler.
func (w *Warmth) LouderUnder(load int, wish unit.Sound) bool {
	f := w.core
	return f.predictor.louderUnder(&w.build, f.needs, w.besides, asking(load, wish, w.disks), w.extraW[load], wholeIdealStepW)
}

// mostW is how much there can be in the case besides the core, W; +Inf where that is not known.
func (w *Warmth) mostW(load int) float64 {
	if load >= len(w.besides.most) {
		return math.Inf(1)
	}
	return max(w.extraW[load], float64(w.besides.most[load]))
}

// settles asks of ever closer bounds until they settle a question. It begins with the most heat that there can be.
func (w *Warmth) settles(load int, day Day, ask func(x *bounds) (yes, no bool)) bool {
	if most := w.core.hottest(load, day, w.mostW(load)); most != nil {
		if _, no := ask(&bounds{low: [2]*state{most}, n: 1, top: most}); no {
			return false
		}
	}
	for _, stepW := range heatSteps {
		x := w.core.between(load, day, w.extraW[load], w.extraW[load]+stepW, w.mostW(load), stepW)
		if x.n == 0 {
			continue // a finer step may tell whether the supply's fan turns
		}
		if yes, no := ask(&x); yes || no {
			return yes
		}
	}
	return false
}

// hottest is the state with the most heat; nil where that is not known, or more heat may cool.
func (f *Forecast) hottest(load int, day Day, mostW float64) *state {
	if math.IsInf(mostW, 1) {
		return nil
	}
	s := f.state(stateKey{load: load, day: day, extraW: ceil(mostW, heatSteps[0])})
	if !s.steady {
		return nil
	}
	return s
}

// heatSteps are the distances, W, between the amounts of heat that a core is solved with. The widest is tried first.
var heatSteps = [...]float64{32, 8, 2}

// finestW is the distance that is told apart where the heat that a core bears is looked for, W.
const finestW = 0.125

// floor and ceil round heat to a step.
func floor(heatW, stepW float64) float64 { return math.Floor(heatW/stepW) * stepW }
func ceil(heatW, stepW float64) float64  { return math.Ceil(heatW/stepW) * stepW }

// bounds is between which states a build lies at a load: above those that are low, of which there are two where it is open
// whether the supply's fan turns, and below the high one, which may not be known.
type bounds struct {
	low   [2]*state
	n     int
	top   *state        // the high one
	above func() *state // finds it; nil once it has
}

// high is the high state, nil where it is not known. It is solved when it is first asked for.
func (x *bounds) high() *state {
	if x.above != nil {
		if s := x.above(); s.steady {
			x.top = s
		}
		x.above = nil
	}
	return x.top
}

// settle reports that something is true of all builds within the bounds, or that it is not of those at the top.
func (x *bounds) settle(is func(*state) bool) (yes, no bool) {
	if x.every(is) {
		return true, false
	}
	return false, x.high() != nil && !is(x.high())
}

// every reports low states that something is true of.
func (x *bounds) every(is func(*state) bool) bool {
	for _, s := range x.low[:x.n] {
		if !is(s) {
			return false
		}
	}
	return x.n > 0
}

// between finds the bounds of builds that bring heat between two amounts besides the core, to a step; none where more heat, up to the
// most, may cool.
func (f *Forecast) between(load int, day Day, extraW, toW, mostW, stepW float64) (x bounds) {
	k := stateKey{load: load, day: day, extraW: floor(extraW, stepW)}
	above, most := k, (*state)(nil)
	if above.extraW += stepW; toW > above.extraW {
		above.extraW = ceil(toW, heatSteps[0])
	}
	if !math.IsInf(mostW, 1) {
		k := k
		k.extraW = max(above.extraW, ceil(mostW, heatSteps[0]))
		most = f.state(k)
	}
	low := f.state(k)
	if !low.steady || f.model.chambers() > 1 && (most == nil || !low.free || !most.steady || !most.free) {
		return bounds{}
	}
	x.low[0], x.n, x.above = low, 1, func() *state { return f.state(above) }
	s := &f.model.supply
	sure := low.turns && low.dcW > s.zeroToW+nearlyW || most != nil && most.steady && !most.turns && most.dcW < s.zeroToW-nearlyW
	if s.duct >= 0 || sure && !s.any {
		return x
	}
	if low.turns { // and may as well be at rest
		return bounds{}
	}
	k.supply = turning
	if !s.any {
		k.extraW = max(k.extraW, floor(f.turnsFromW(low, k.extraW), stepW))
	}
	turns := f.state(k)
	if !turns.steady {
		return bounds{}
	}
	x.low[1], x.n, x.above = turns, 2, nil
	if f.model.chambers() == 1 && f.model.b.Cooler.Liquid == nil {
		above.supply = closed
		x.above = func() *state { return f.state(above) }
	}
	return x
}

// turnsFromW is the heat, by a state with so much, from which on the supply's fan may turn, W: a part at its limit draws less than it asks,
// and no fan more than at its full speed.
func (f *Forecast) turnsFromW(s *state, extraW float64) float64 {
	return extraW + f.model.supply.zeroToW - nearlyW - f.model.fansW() - s.asksW
}

// nearlyW is how near to the load at which its fan starts a supply may be in either state, W.
const nearlyW = 1.0
