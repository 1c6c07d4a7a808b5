package predict

import (
	"cmp"
	"crypto/sha256"
	"fmt"
	"math"
	"slices"

	"slipfit/core/air"
	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/sound"
	"slipfit/core/unit"
)

// What fans bought for a case can do for it at most: so many of one size on one face let through no more air (see breath) than as many that
// drive as hard as the strongest at any temperature, or not at all, and are as free as the freest; and they are heard no less than the
// quietest in that air. Their heat is not counted. What does not hold of some of them so may hold of the stronger half and of the weaker.

// AnyFans is case fans of which one article may be hung on one face of a case, as many as there is room for, or none.
type AnyFans struct {
	list   []anyFan
	bought map[*part.Layout][]*bought
	name   string
}

// anyFan is one of them.
type anyFan struct {
	part   *part.Fan
	fan    air.Fan
	lowest float64 // share of its full speed
	source sound.Source
	speed  air.Speed
}

// NewAnyFans is any of some fans. One of which a sheet lacks a figure is left out: with it no case is known to stand.
func NewAnyFans(list []*part.Fan) *AnyFans {
	x := &AnyFans{bought: map[*part.Layout][]*bought{}}
	sum := sha256.New()
	for _, f := range list {
		var m model
		one := anyFan{part: f, fan: m.fan(&f.FanFigures, &f.Article, "")}
		one.lowest = min(1, m.lowest(&f.FanFigures, &f.Article, "")/one.fan.RatedRPM)
		read(&m.sheet, f.Size, &f.Article, "size_mm")
		if len(m.missing) == 0 {
			one.source = m.heard(&f.FanFigures, &f.Article, "", "", 1)
			one.speed.Curves = []air.Curve{ramp(air.Sensor{Kind: air.ZoneAir}, caseAirLowC, caseAirFullC, one.lowest*one.fan.RatedRPM, one.fan.RatedRPM)}
			x.list = append(x.list, one)
			fmt.Fprintln(sum, f.Size, f.Holes, one.fan, one.lowest, one.source)
		}
	}
	slices.SortStableFunc(x.list, func(a, b anyFan) int { return cmp.Compare(b.fan.ShutoffPa, a.fan.ShutoffPa) })
	x.name = fmt.Sprintf("%d fans %x", len(x.list), sum.Sum(nil))
	return x
}

// bought is so many fans of one size for a face, whichever they are.
type bought struct {
	build.FanSet         // of one of them
	fan          air.Fan // the best of each
	lowest       float64 // share of its full speed
	of           []anyFan
	halves       []*bought // the stronger ones and the weaker; nil until they are asked for, and of a single one
}

// bestRPM is the full speed of a fan that stands for others, whose speeds are shares of it.
const bestRPM = 1000.0

// in lists what may be bought for a layout. A place that does not say how many it takes is known to take none.
func (x *AnyFans) in(l *part.Layout) []*bought {
	list, known := x.bought[l]
	if known {
		return list
	}
	for i := range l.FanPlaces {
		place := &l.FanPlaces[i]
		fitting := slices.DeleteFunc(slices.Clone(x.list), func(f anyFan) bool { return !place.Takes(f.part.Holes.Or(0)) })
		for len(fitting) > 0 {
			size := fitting[0].part.Size
			other := func(f anyFan) bool { return f.part.Size != size }
			alike := slices.DeleteFunc(slices.Clone(fitting), other)
			fitting = slices.DeleteFunc(fitting, func(f anyFan) bool { return !other(f) })
			for n := 1; n <= int(place.Fans.Or(0)); n++ {
				list = append(list, newBought(place.Face, n, alike))
			}
		}
	}
	x.bought[l] = list
	return list
}

// newBought is a set of fans, whichever they are of some of one size, the strongest first. Its own stands for all: unlit and not heard.
func newBought(face part.Face, n int, of []anyFan) *bought {
	one := *of[0].part
	one.Lights, one.Sound = nil, unit.Known(unit.Sound(0))
	b := &bought{FanSet: build.FanSet{Fan: &one, Count: n, Face: face}, fan: air.Fan{RatedRPM: bestRPM}, of: of}
	freest := math.Inf(1)
	for i := range of {
		f := &of[i]
		b.fan.ShutoffPa = max(b.fan.ShutoffPa, f.fan.ShutoffPa)
		b.fan.RatedPowerW = max(b.fan.RatedPowerW, f.fan.RatedPowerW)
		b.lowest = max(b.lowest, f.lowest)
		freest = min(freest, f.fan.Impedance())
	}
	b.fan.FreeM3PerS = math.Sqrt(b.fan.ShutoffPa / freest)
	return b
}

// quietestPW is the sound power of the quietest of them in air of a temperature, pW.
func (f *bought) quietestPW(airC float64) float64 {
	least := math.Inf(1)
	for i := range f.of {
		x := &f.of[i]
		least = min(least, sound.Picowatts(sound.Running{Source: x.source, RPM: asked(&x.speed, airC)}.GroupDBA()))
	}
	return float64(f.Count) * least
}

// every reports that something holds whichever of them there are.
func (f *bought) every(is func(*bought) bool) bool {
	if is(f) {
		return true
	}
	if f.halves == nil && len(f.of) > 1 {
		middle := len(f.of) / 2
		f.halves = []*bought{newBought(f.Face, f.Count, f.of[:middle]), newBought(f.Face, f.Count, f.of[middle:])}
	}
	return len(f.halves) > 0 && !slices.ContainsFunc(f.halves, func(half *bought) bool { return !half.every(is) })
}

// whichever reports that something holds of a case without fans bought for it, and with whichever of these on whichever face.
func (x *AnyFans) whichever(l *part.Layout, is func(*bought) bool) bool {
	return is(nil) && !slices.ContainsFunc(x.in(l), func(f *bought) bool { return !f.every(is) })
}

// hang puts the best of them in place of the one that hangs in a model, and tells which group they are and which paths.
func (f *bought) hang(m *model) (at int, paths []int) {
	at = len(m.groups) - 1
	for m.groups[at].face != f.Face {
		at--
	}
	share := m.spans(f.Face, false)
	paths = m.groups[at].paths[:m.groups[at].spans]
	for _, i := range paths {
		path := &m.air.Paths[i]
		path.Fans.Fan = f.fan
		path.Fans.Fan.FreeM3PerS *= share[path.Zone]
		path.Fans.Fan.RatedPowerW *= share[path.Zone]
		for c := range path.Fans.Speed.Curves {
			path.Fans.Speed.Curves[c] = ramp(path.Fans.Speed.Curves[c].Of, caseAirLowC, caseAirFullC, f.lowest*bestRPM, bestRPM)
		}
	}
	return at, paths
}

// DriveOverWithAnyFans is DriveOverFed of a build that holds no fans bought for its case, as it is and with whichever of those besides on
// whichever face.
func (p *Predictor) DriveOverWithAnyFans(b *build.Build, n *brief.Needs, counted build.Set, besides Besides, load int, tier build.Seat) bool {
	if besides.fans == nil || b.Layout == nil {
		return false
	}
	return besides.fans.whichever(b.Layout, func(fans *bought) bool {
		x := p.breath(b, n, besides, fans)
		return x != nil && p.driveOverFed(x, b, n, counted, besides, load, tier)
	})
}

// LouderWithAnyFans is LouderFed of a build that holds no fans bought for its case, as it is and with whichever of those besides on whichever
// face.
func (p *Predictor) LouderWithAnyFans(b *build.Build, n *brief.Needs, besides Besides, load int, wish unit.Sound, disksDBA float64) bool {
	if besides.fans == nil || b.Layout == nil {
		return false
	}
	return besides.fans.whichever(b.Layout, func(fans *bought) bool {
		return p.louderFed(p.breath(b, n, besides, fans), b, n, besides, load, wish, disksDBA)
	})
}
