package predict

import (
	"math"
	"slices"

	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/unit"
)

// spans is what is known of whether a core of two chambers is over a level at a load, between amounts of heat besides.
type spans struct {
	loud  []span
	quiet []warmth // amounts at which it may be no louder than the level, with disks no louder than so
}

// span is from how much heat to how much a core is over the level, with disks no quieter than so, dB(A).
type span struct{ fromW, toW, disksDBA float64 }

// loudBetween reports a core over a level with any heat besides between two amounts, and disks as asked.
func (f *Forecast) loudBetween(k toldOf, fromW, toW float64) bool {
	known := f.spansOf(k)
	finest := len(chamberSteps) - 1
	heatW := floor(fromW, chamberSteps[finest].wideW)
	if slices.ContainsFunc(known.quiet, func(x warmth) bool { return heatW <= x.heatW && x.heatW <= toW && k.disks <= x.disksDBA }) {
		return false
	}
	chairM := chairOf(&f.needs.Place)
	over := func(heatW float64, step chamberStep) bool {
		dBA, said := f.betweenDBA(k.load, heatW, step.wideW)
		return said && atChair(sum(dBA, k.disks), chairM) > k.wish+f.slackDBA(step)
	}
	in := func(heatW float64) int {
		return slices.IndexFunc(known.loud, func(x span) bool { return x.fromW <= heatW && heatW < x.toW && x.disksDBA <= k.disks })
	}
	if in(heatW) < 0 && !over(heatW, chamberStep{slackDBA: chamberSteps[finest].slackDBA}) {
		known.quiet = append(known.quiet, warmth{heatW, k.disks})
		return false
	}
	endW, loud := throughout(heatW, toW, func(atW float64) (endW float64, ok bool) {
		if i := in(atW); i >= 0 {
			return known.loud[i].toW, true
		}
		return 0, false
	}, over)
	if !loud {
		known.quiet = append(known.quiet, warmth{endW, k.disks})
	}
	known.add(span{heatW, endW, k.disks})
	return loud
}

// throughout reports that something is so with any heat between two amounts, and up to where. It is asked of the widest steps of which it
// may be said, unless it is known to be so up to some amount.
func throughout(fromW, toW float64, known func(heatW float64) (endW float64, ok bool), is func(lowW float64, step chamberStep) bool) (endW float64, all bool) {
	at := 0
	for endW = fromW; endW <= toW; {
		if end, ok := known(endW); ok {
			endW, at = end, 0
			continue
		}
		step := chamberSteps[at]
		low := floor(endW, step.wideW)
		switch {
		case is(low, step):
			endW = low + step.wideW
			at = max(0, at-1)
		case at == len(chamberSteps)-1:
			return endW, false
		default:
			at++
		}
	}
	return endW, true
}

// spansOf is what is known of a load and a level.
func (f *Forecast) spansOf(k toldOf) *spans {
	k.disks = 0
	if f.spans == nil {
		f.spans = map[toldOf]*spans{}
	}
	if f.spans[k] == nil {
		f.spans[k] = &spans{}
	}
	return f.spans[k]
}

// add adds a span, in place of those within it.
func (s *spans) add(x span) {
	if x.fromW < x.toW {
		s.loud = append(slices.DeleteFunc(s.loud, func(y span) bool {
			return x.fromW <= y.fromW && y.toW <= x.toW && x.disksDBA <= y.disksDBA
		}), x)
	}
}

// LouderBetween reports that no build of two chambers which holds this one's parts, what comes besides, and disks of so much sound power,
// dB(A), is as quiet at the chair as a level in an activity on an ordinary day. Of memory, drives and cards it counts the heat of those in
// some seats.
func (p *Predictor) LouderBetween(b *build.Build, n *brief.Needs, counted build.Set, besides Besides, load int, wish unit.Sound, disksDBA float64) bool {
	if b.Layout == nil || !b.Layout.Chambers || b.Board == nil || load >= len(besides.upTo) {
		return false
	}
	bare, boardW, known := boardless(b)
	core := p.Core(&bare, n, besides.Feeds())
	if core == nil || !known {
		return false
	}
	some := but(b, counted)
	w, known := warmthOf(&some, &core.loads[load])
	heatW := boardW + w.heatW
	return known && core.loudBetween(asking(load, wish, disksDBA), heatW+besides.at(load), heatW+float64(besides.upTo[load]))
}

// LouderToMost is Louder of a build in one chamber, by what its core comes to from its own heat to the most there can be.
func (w *Warmth) LouderToMost(load int, wish unit.Sound) bool {
	most := w.mostW(load)
	if w.core.model.supply.any || w.core.model.chambers() > 1 || math.IsInf(most, 1) {
		return false
	}
	return w.core.loudBetween(asking(load, wish, w.disks), w.extraW[load], most)
}
