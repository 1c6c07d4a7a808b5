package predict

import (
	"math"

	"slipfit/core/unit"
)

// Cool reports a load at which no part comes near its limit, so that all hold what they are asked.
func (w *Warmth) Cool(load int) bool {
	return w.under(load, w.core.Day(), func(*state) bool { return true })
}

// BoardCool reports converters that stay under their limit at a load.
func (w *Warmth) BoardCool(load int) bool {
	return w.boardKnown() && w.under(load, w.core.Day(), func(s *state) bool { return w.convertersC(s, s.heldW) <= converterLimitC-slackK })
}

// DrivesCool reports drives that stay under their limits at a load, where the board puts them.
func (w *Warmth) DrivesCool(load int) bool {
	return w.under(load, w.core.Day(), func(s *state) bool {
		for i := range w.drives {
			d := &w.drives[i]
			if len(d.missing) > 0 || s.warmsFrom > d.beta || s.inletC(d.beta)+d.risenK(&w.core.loads[load]) > d.limit-slackK {
				return false
			}
		}
		return true
	})
}

// Quiet reports a level under a wish at a load on an ordinary day. Of a radiator that warms what comes in nothing is said: more air
// through it may let its fans slow down.
func (w *Warmth) Quiet(load int, wish unit.Sound) bool {
	k := w.build.Cooler
	return !(k.Liquid != nil && intakes(w.build.Face)) && w.under(load, Ordinary, func(s *state) bool {
		return s.heard && atChair(sum(s.powerDBA, w.disks), chairOf(&w.core.needs.Place)) <= float64(wish)/1000-slackDBA
	})
}

// under reports a core with more heat besides than there is that is cool enough: one that is no cooler and no quieter. It tries the
// most heat that there may be, for which others ask too, then the next step.
func (w *Warmth) under(load int, day Day, enough func(*state) bool) bool {
	if w.core.model.chambers() > 1 {
		return false
	}
	if most := w.mostW(load); !math.IsInf(most, 1) && w.isOver(load, day, most, enough) {
		return true
	}
	return w.isOver(load, day, w.extraW[load], enough)
}

// isOver reports a core with so much heat besides, to the next step, that is cool enough and of which all that has less heat is no
// warmer: no part is at its limit, and the supply's fan stands still with so much or turns with what there is.
func (w *Warmth) isOver(load int, day Day, heatW float64, enough func(*state) bool) bool {
	heatW = ceil(heatW, heatSteps[0])
	s := w.core.state(stateKey{load: load, day: day, extraW: heatW})
	if !s.steady || !s.free {
		return false
	}
	supply := &w.core.model.supply
	turns := s.asksW-heatW+w.extraW[load] > supply.zeroToW+nearlyW
	return (supply.duct >= 0 || turns || s.dcW < supply.zeroToW-nearlyW) && enough(s)
}
