package outcome

import (
	"fmt"
	"slices"
	"strings"

	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/predict"
	"slipfit/core/unit"
)

// warmth is what heat takes of a build's speed while one piece of work goes on for ever, beside whatever goes on at once.
//
// A part that comes to its temperature limit is held to the power that can be carried away from it, and its speed goes with
// the cube root of that power, as package predict has it (Kept): near its sustained power a part's voltage follows its
// frequency. All work points of the part fall alike; encoding engines draw little and lose nothing. What is told is the
// ordinary day; on the hottest day it may be less, and the band goes so far. A machine that holds on the hottest day loses
// nothing, to the bit.
type warmth struct {
	ordinary, hottest losses
	said              string   // what is lost, to be added to the arithmetic; empty where nothing is
	missing           []string // figures the sheets lack, so that what is lost is not known
	err               error    // why the prediction is no answer
}

// losses is the share of their speed that parts lose.
type losses struct{ processor, graphics float64 }

// warm tells what heat takes in each of the aims' works. A build that is not whole enough to be predicted is taken to hold.
func (h *Have) warm(b *build.Build, n *brief.Needs) {
	own := *n
	own.Loads = nil
	for i := range n.Aims {
		if m := &n.Aims[i]; m.Computes() && !slices.Contains(own.Loads, m.Load) {
			own.Loads = append(own.Loads, m.Load)
		}
	}
	if len(own.Loads) == 0 {
		return
	}
	f := new(predict.Predictor).Forecast(b, &own)
	if f == nil {
		return
	}
	h.heat = map[brief.Load]*warmth{}
	for i, l := range own.Loads {
		if w := warmthOf(f, i); w != nil {
			h.heat[l] = w
		}
	}
}

// held is what heat takes of an aim.
func (h *Have) held(m *brief.Aim) warmth {
	if w := h.heat[m.Load]; w != nil && m.Computes() {
		return *w
	}
	return warmth{}
}

// warmthOf is what heat takes under one load; nil where it takes nothing.
func warmthOf(f *predict.Forecast, load int) *warmth {
	hot := f.Run(load, predict.Hottest)
	if len(hot.Missing) > 0 || hot.Err != nil {
		return &warmth{missing: hot.Missing, err: hot.Err}
	}
	w := &warmth{hottest: lossesOf(hot)}
	if w.hottest == (losses{}) {
		return nil
	}
	ordinary := f.Run(load, predict.Ordinary)
	w.ordinary, w.err = lossesOf(ordinary), ordinary.Err
	var said []string
	for i := range ordinary.Parts {
		p := &ordinary.Parts[i]
		if hot.Parts[i].Kept.Expected >= 1 {
			continue
		}
		said = append(said, fmt.Sprintf("%s holds %s of %s asked and keeps %s of its speed (%s on the hottest day)", p.Name,
			watts(p.HeldW.Expected), watts(p.AskedW), percent(p.Kept.Expected), percent(hot.Parts[i].Kept.Expected)))
	}
	w.said = "; " + strings.Join(said, "; ")
	return w
}

// lossesOf is what processor and graphics lose in a run; graphics on the processor lose what it loses.
func lossesOf(r *predict.Run) losses {
	var l losses
	for i := range r.Parts {
		switch lost := max(0, 1-r.Parts[i].Kept.Expected); r.Parts[i].Seat {
		case build.Processor:
			l = losses{lost, lost}
		case build.Graphics:
			l.graphics = lost
		}
	}
	return l
}

// at is what a build gives when its parts lose so much of their speed, rounded down.
func (h *Have) at(l losses) *Have {
	if l == (losses{}) {
		return h
	}
	slow := *h
	for r, lost := range map[brief.Resource]float64{
		brief.SingleWork: l.processor, brief.AllWork: l.processor, brief.DrawWork: l.graphics, brief.ComputeWork: l.graphics,
	} {
		slow.By[r] = int64(float64(h.By[r]) * (1 - lost))
	}
	return &slow
}

func watts(w float64) string   { return unit.Power(w * 1000).Q().String() }
func percent(s float64) string { return unit.Share(s * 100_000).Q().String() }
