package predict

import (
	"crypto/sha256"
	"fmt"
	"math"
	"slices"

	"slipfit/core/air"
	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/part"
)

// What fans bought for a case can do for it at most: so many of one size on one face let through no more air (see breath) than as many that
// drive as hard as the strongest at any temperature, or not at all, and are as free as the freest. Their heat is not counted.

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
			x.list = append(x.list, one)
			fmt.Fprintln(sum, f.Size, f.Holes, one.fan, one.lowest)
		}
	}
	x.name = fmt.Sprintf("%d fans %x", len(x.list), sum.Sum(nil))
	return x
}

// bought is so many fans of one size for a face, whichever they are.
type bought struct {
	build.FanSet         // of one of them
	fan          air.Fan // the best of each
	lowest       float64 // share of its full speed
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
				list = append(list, newBought(build.FanSet{Fan: alike[0].part, Count: n, Face: place.Face}, alike))
			}
		}
	}
	x.bought[l] = list
	return list
}

// newBought is a set of fans, whichever of some of one size they are.
func newBought(set build.FanSet, of []anyFan) *bought {
	b := &bought{FanSet: set, fan: air.Fan{RatedRPM: bestRPM}}
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

// hang puts the best of them in place of the one that hangs in a model, and lists its paths.
func (f *bought) hang(m *model) []int {
	at := len(m.groups) - 1
	for m.groups[at].face != f.Face {
		at--
	}
	paths, share := m.groups[at].paths[:m.groups[at].spans], m.spans(f.Face, false)
	for _, i := range paths {
		path := &m.air.Paths[i]
		path.Fans.Fan = f.fan
		path.Fans.Fan.FreeM3PerS *= share[path.Zone]
		path.Fans.Fan.RatedPowerW *= share[path.Zone]
		for c := range path.Fans.Speed.Curves {
			path.Fans.Speed.Curves[c] = ramp(path.Fans.Speed.Curves[c].Of, caseAirLowC, caseAirFullC, f.lowest*bestRPM, bestRPM)
		}
	}
	return paths
}

// DriveOverWithAnyFans is DriveOverFed of a build that holds no fans bought for its case, as it is and with whichever of those besides on
// whichever face.
func (p *Predictor) DriveOverWithAnyFans(b *build.Build, n *brief.Needs, counted build.Set, besides Besides, load int, tier build.Seat) bool {
	if besides.fans == nil || b.Layout == nil {
		return false
	}
	with := func(fans *bought) bool {
		x := p.breath(b, n, besides, fans)
		return x != nil && p.driveOverFed(x, b, n, counted, besides, load, tier)
	}
	return with(nil) && !slices.ContainsFunc(besides.fans.in(b.Layout), func(fans *bought) bool { return !with(fans) })
}
