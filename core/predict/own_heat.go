package predict

import (
	"iter"
	"math"
	"slices"

	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/sound"
	"slipfit/core/unit"
)

// More heat in the board's chamber may make a machine of two chambers quieter: fans of the case follow the warmer chamber, and what
// they bring may cool the card's. So nothing is said of more heat there, but of heat between two amounts something is.
//
// Why: let M be the warmer of the two, which the case's fans follow. Where that is the board's chamber, M grows with its heat, for
// more of it is warmer air at the same fans; where it is the card's, M falls, if at all, for more comes through that from the fans of
// the board's, or of the supply. Each is a fall of air for faster fans and a rise of fans for warmer air, which meet in one point, and
// the case is at the higher one: once the board's chamber is the warmer one, it stays that with more heat. So where it is with the
// lesser heat, or is not with the greater one, all goes one way between the two, fans and air of both chambers, and nothing is heard
// less than at both ends. Else M is no lower than the air of the board's chamber with the lesser heat, and the card's no cooler than
// it is with the greater. No part at its limit may be between the two, for it asks for fans. A supply's fan that starts lets air change
// at a stroke: where it may, it is taken to stand still in both, and then to turn in both.
//
// The card's chamber, which follows the board's by the plate and the fans against it, may turn on the way, by less than the slack of a step
// leaves: the wider the step, the more.
//
// In one chamber all goes one way as well: its air grows warmer, and fans that follow it faster, those of a radiator that blow in slower.
// There a build is judged so where it is open of more heat whether the supply's fan starts, and so whether a warmer machine is quieter.

// betweenDBA is the sound power at a load of all but turning disks of a core with any heat from so much to a step more, dB(A), at least;
// known is false where that cannot be said.
func (f *Forecast) betweenDBA(load int, heatW, stepW float64) (dBA float64, known bool) {
	dBA = math.Inf(1)
	for less, more := range f.ends(stateKey{load: load, day: Ordinary, extraW: heatW}, stepW) {
		least, known := f.oneWayDBA(less, more)
		if !known {
			return 0, false
		}
		dBA = min(dBA, least)
	}
	return dBA, true
}

// ends goes through the states with so much heat and with a step more: once, or where the supply's fan may start between them once with
// it standing still in both and once with it turning.
func (f *Forecast) ends(k stateKey, stepW float64) iter.Seq2[*state, *state] {
	at := func(supply supplyState) (less, more *state) {
		k := k
		k.supply = supply
		less = f.state(k)
		k.extraW += stepW
		return less, f.state(k)
	}
	return func(yield func(less, more *state) bool) {
		s := &f.model.supply
		less, more := at(asItIs)
		if s.duct >= 0 || less.turns && less.dcW > s.zeroToW+nearlyW || !more.turns && more.dcW < s.zeroToW-nearlyW {
			yield(less, more)
			return
		}
		_ = yield(at(standing)) && yield(at(turning))
	}
}

// oneWayDBA is betweenDBA of two states, the second one's heat more, with a supply's fan that does not start between them.
func (f *Forecast) oneWayDBA(less, more *state) (dBA float64, known bool) {
	m := &f.model
	if !less.heard || !less.steady || !less.free || !more.steady || !more.free {
		return 0, false
	}
	turns := less.airC < less.cardC && more.airC > more.cardC // which chamber is the warmer one
	if turns && more.cardC > less.airC {
		return 0, false
	}
	var room [12]sound.Running
	list := append(room[:0], m.steady...)
	for i := range less.rpm {
		rpm := min(less.rpm[i], more.rpm[i])
		if turns && i < len(m.groups) {
			rpm = min(rpm, asked(&m.air.Paths[m.groups[i].paths[0]].Fans.Speed, less.airC))
		}
		list = append(list, sound.Running{Source: f.source(i), RPM: rpm})
	}
	return sound.Total(list), true
}

// source is a fan by its place in a state's.
func (f *Forecast) source(i int) sound.Source {
	m := &f.model
	if i < len(m.groups) {
		return m.groups[i].source
	}
	i -= len(m.groups)
	for j := range m.parts {
		if c := &m.parts[j]; c.sound.Count > 0 {
			if i == 0 {
				return c.sound
			}
			i--
		}
	}
	return m.supply.source
}

// chamberStep is a distance between amounts of heat that a core is solved with, W, and by how much a level must be over a wish in all of
// it, dB(A).
type chamberStep struct{ wideW, slackDBA float64 }

// chamberSteps are tried in turn, the widest first; of a build's own heat those from ownHeat on. Their slack is more than what was found in
// builds made at random, in the wider ones about twice as much, where the supply's fan starts or the other chamber becomes the warmer one on
// the way (TestBetweenSteps).
var chamberSteps = [...]chamberStep{{32, 0.05}, {8, 0.02}, {2, 0.008}, {0.25, 0.004}}

const ownHeat = 2

// slackDBA is by how much a core must be over a level in all of a step, dB(A). The speed of a supply's fan in the case's air follows from a
// loss that is not taken over any more once it hardly moves (solve).
func (f *Forecast) slackDBA(step chamberStep) float64 {
	const lossDBA = 0.003
	if f.model.supply.duct < 0 {
		return step.slackDBA + lossDBA
	}
	return step.slackDBA
}

// LouderSo reports a build, with just what it holds and one of the supplies besides where it has none, over a level at a load on an ordinary
// day. Of a core in one chamber it is not looked into where that has hardly said anything of builds with it.
func (p *Predictor) LouderSo(b *build.Build, n *brief.Needs, besides Besides, load int, wish unit.Sound) bool {
	f := p.Core(b, n, besides.Feeds())
	if f == nil || f.model.supply.any && f.model.supply.duct < 0 {
		return false
	}
	w, known := warmthOf(b, &f.loads[load])
	if !known {
		return false
	}
	if f.model.chambers() == 1 {
		if f.just.said*4 < f.just.asked-4 {
			return false
		}
		f.just.asked++
	}
	if f.loudAt(load, w, wish) {
		f.just.said++
		return true
	}
	return false
}

// loudAt reports a core over a level with so much besides and no more.
func (f *Forecast) loudAt(load int, w warmth, wish unit.Sound) bool {
	for _, step := range chamberSteps[ownHeat:] {
		dBA, known := f.betweenDBA(load, floor(w.heatW, step.wideW), step.wideW)
		if known && atChair(sum(dBA, w.disksDBA), chairOf(&f.needs.Place)) > float64(wish)/1000+f.slackDBA(step) {
			return true
		}
	}
	return false
}

// The same is asked of what is too warm in just that build, with no part at its limit, where of more heat nothing may be said: the air of two
// chambers may grow cooler, and where a radiator warms what comes in that is not known of one.
//
// Why, in one chamber: suppose its air were cooler than with a little less heat. Fans that follow it would turn no faster. Those of a
// radiator follow a coolant that the room cools, and would turn faster only if less came through it. So no more air would come but for what
// the supply's fan brings for the heat between, and with as much heat the air is no cooler than that makes it. In two all goes one way
// between the two amounts where the same chamber is the warmer one with both (see above).

// BoardOverSo reports converters over their limit at a load in just that build.
func (w *Warmth) BoardOverSo(load int) bool {
	return w.boardKnown() && w.soWarm(load, func(s *state, coolerK float64) bool {
		return w.convertersC(s, s.heldW) > converterLimitC+slackK+coolerK
	})
}

// DriveOverSo reports drives over their limits at a load in just that build, where the board puts them.
func (w *Warmth) DriveOverSo(load int) bool {
	return slices.ContainsFunc(w.drives, func(d drive) bool {
		return len(d.missing) == 0 && w.soWarm(load, func(s *state, coolerK float64) bool {
			return s.inletC(d.beta)+d.risenK(&w.core.loads[load]) > d.limit+slackK+coolerK
		})
	})
}

// soWarm reports something too warm in the states next to a build's own heat at a load, by as much as its air may be cooler than in either,
// as far as they say anything of what lies between.
func (w *Warmth) soWarm(load int, over func(s *state, coolerK float64) bool) bool {
	if w.core.model.supply.any {
		return false
	}
	return slices.ContainsFunc(chamberSteps[ownHeat:], func(step chamberStep) bool {
		k := stateKey{load: load, day: w.core.Day(), extraW: floor(w.extraW[load], step.wideW)}
		for less, more := range w.core.ends(k, step.wideW) {
			if !w.core.oneWay(less, more, step.wideW, over) {
				return false
			}
		}
		return true
	})
}

// oneWay reports something too warm in two states a step of heat apart and all between, with a supply's fan that does not start there.
func (f *Forecast) oneWay(less, more *state, stepW float64, over func(s *state, coolerK float64) bool) bool {
	if !less.rests || !less.free || !more.rests || !more.free {
		return false
	}
	coolerK := 0.0
	switch {
	case f.model.chambers() == 1:
		coolerK = stepW * less.coolsKPerW
	case !less.steady || !more.steady || (less.airC < less.cardC) != (more.airC < more.cardC):
		return false
	}
	return over(less, coolerK) && over(more, coolerK)
}
