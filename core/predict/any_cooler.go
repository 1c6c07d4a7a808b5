package predict

import (
	"math"

	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// In one chamber no air cooler moves the air of the case. So what a case comes to with one that makes no sound and leaves the processor
// as cool as can be says something of whichever there is: with that it is as warm, and as loud beside the cooler itself.
//
// Why: suppose that it were cooler. Then the processor breathes cooler air, stays under its limit, which is looked at, draws all that it is
// asked and calls no fans; all else that warms the case draws no less, and what follows its air turns no faster: no less heat into no more air.

// anyCooler stands for whichever air cooler.
var anyCooler = part.Cooler{Air: &part.AirCooler{Sink: unit.Known(unit.Resistance(0))}, Fans: unit.Known(unit.Whole(0))}

// coolerFansW is what the fans of an air cooler draw at most, W: four of 3 A, the widest figures of the schema.
const coolerFansW = 144.0

// coolerMostW is what whichever cooler brings at most, W, where one stands for all.
func (m *model) coolerMostW() float64 {
	if m.b.Cooler == &anyCooler {
		return coolerFansW
	}
	return 0
}

// sinkStep is how coarsely air coolers are told apart by their resistance.
const sinkStep unit.Resistance = 50 // 0.05 K/W

// Kind is what is told apart of air coolers in one chamber where none moves its air: the resistance, rounded up to the next step, and whether
// the sink has fans.
type Kind struct {
	Sink  unit.Resistance
	Stirs bool
}

// CoolerKind is all that LouderWithAnyCooler and DriveOverWithAnyCooler see of a cooler; where it is not known they say nothing of the cooler.
func CoolerKind(c *part.Cooler) (k Kind, known bool) {
	if c == nil || c.Air == nil {
		return Kind{}, false
	}
	sink, stated := c.Air.Sink.Get()
	fans, counted := c.Fans.Get()
	return Kind{(sink + sinkStep - 1) / sinkStep * sinkStep, fans > 0}, stated && counted
}

// KindOf is the kind of a build's cooler; known is false where more of it counts, or its sheet lacks a figure.
func KindOf(b *build.Build) (k Kind, known bool) {
	if b.Layout == nil || b.Layout.Chambers {
		return Kind{}, false
	}
	return CoolerKind(b.Cooler)
}

// ofKind is a build in one chamber with an air cooler that stands for all of its kind, which makes no sound; ok is false where its own is of
// none.
func (p *Predictor) ofKind(b *build.Build) (some build.Build, ok bool) {
	k, known := KindOf(b)
	if some = *b; !known {
		return some, false
	}
	c := p.kinds[k]
	if c == nil {
		c = &part.Cooler{Air: &part.AirCooler{Sink: unit.Known(k.Sink), Height: unit.Known(unit.Length(0))}, Fans: unit.Known(unit.Whole(0))}
		if k.Stirs {
			c.Fans = unit.Known(unit.Whole(1))
			c.Fan = stillFan
		}
		if p.kinds == nil {
			p.kinds = map[Kind]*part.Cooler{}
		}
		p.kinds[k] = c
	}
	some.Cooler, some.Face = c, ""
	return some, true
}

// stillFan moves no air of a case, and draws as much as all fans of an air cooler may.
var stillFan = part.FanFigures{
	Speed: unit.Known(unit.Speed(bestRPM)), Lowest: unit.Known(unit.Speed(bestRPM)), Flow: unit.Known(unit.Flow(0)),
	Pressure: unit.Known(unit.Pressure(0)), Current: unit.Known(unit.Current(coolerFansW / 12 * 1000)), Sound: unit.Known(unit.Sound(0)),
	Size: unit.Known(unit.Length(0)),
}

// DriveOverWithAnyCooler is DriveOverFed of a build in one chamber with whichever air cooler of the kind of its own (CoolerKind).
func (p *Predictor) DriveOverWithAnyCooler(b *build.Build, n *brief.Needs, counted build.Set, besides Besides, load int, tier build.Seat) bool {
	some, ok := p.ofKind(b)
	return ok && p.DriveOverFed(&some, n, counted, besides, load, tier)
}

// DriveOverWithAnyFansAndCooler is DriveOverWithAnyFans of the same.
func (p *Predictor) DriveOverWithAnyFansAndCooler(b *build.Build, n *brief.Needs, counted build.Set, besides Besides, load int, tier build.Seat) bool {
	some, ok := p.ofKind(b)
	return ok && p.DriveOverWithAnyFans(&some, n, counted, besides, load, tier)
}

// LouderWithAnyCooler is Louder of a build in one chamber with whichever air cooler of no more than the resistance of its own (CoolerKind).
func (p *Predictor) LouderWithAnyCooler(b *build.Build, n *brief.Needs, besides Besides, load int, wish unit.Sound, disksDBA float64) bool {
	kind, known := KindOf(b)
	if !known {
		return false
	}
	some := *b
	some.Cooler = &anyCooler
	f := p.Core(&some, n, besides)
	if f == nil {
		return false
	}
	runs := f.Least(load, Ordinary)
	for _, r := range runs {
		k := asking(load, wish, disksDBA)
		if atChair(sum(r.leastDBA(), k.disks), r.ChairM) <= k.wish || !r.staysFree(float64(kind.Sink)/1000) {
			return false
		}
	}
	return len(runs) > 0
}

// staysFree reports a processor that stays under its limit in a run's air with all it is asked, under a sink of a resistance.
func (r *Run) staysFree(sinkKPerW float64) bool {
	p, in := &r.Parts[0], &r.forecast.model.air.Consumers[0]
	thin := max(1, math.Pow(r.density, -flowExponent)) // air takes less heat from the sink
	return p.InletC.Expected+p.AskedW*(in.RFixKPerW+sinkKPerW*thin) < p.LimitC-1
}
