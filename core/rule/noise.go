package rule

import (
	"fmt"
	"math"
	"slices"

	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/predict"
	"slipfit/core/unit"
)

// Noise holds the machine under the level the customer wishes at the chair.
var Noise = Rule{
	ID:    "noise",
	Group: Cool,
	Title: "Machine is as quiet at the chair as wished",
	Doc: `Where the brief names a level, for each activity on an ordinary day and at rest: have = level wished for, dB(A); need = predicted level
	at the chair, dB(A)
Lp = 10·lg Σ 10^(Lw/10) − 10·lg(2π·r²), r = distance to the ear, m (0.7 m where the brief does not say), over a reflecting plane
each fan: Lw = sheet's level at 1 m + 8 dB + 10·lg(count) + 50·lg(speed ÷ full speed), at least 20 dB(A) while it turns
pump, turning disks: sheet's level at 1 m + 8 dB, at any speed; the card as a whole; the supply's fan by its load
A sheet's bare dB(A) is taken as a pressure level at 1 m. The expected level decides; the band says what a meter may show.
	A build with seats still open is judged by what there is of it, in air as cool as the room: with the rest it can only be louder.
	When short: larger fans that turn slower, a freer front, parts that draw less.`,
	Source: "level addition and hemisphere: ISO 3744; speed law: ASHRAE Handbook, Fan sound; what a bare figure means: common practice",
	Reads:  loadSeats,
	Early: []Early{
		{Seats: []build.Seat{build.Graphics}},
		{Seats: []build.Seat{build.Cooler}},
		{Seats: []build.Seat{build.Processor, build.Cooler}},
		{Seats: []build.Seat{build.Boot}},
		{Seats: []build.Seat{build.Cache}},
		{Seats: []build.Seat{build.Archive}},
		{Seats: []build.Seat{build.Supply}},
		{Seats: []build.Seat{build.Case, build.Cooler}},
		{Seats: []build.Seat{build.Case, build.Processor, build.Cooler, build.Graphics}},
		{Seats: []build.Seat{build.Case, build.Processor, build.Cooler, build.Graphics, build.Archive}},
		{Seats: []build.Seat{build.Case, build.Processor, build.Cooler, build.Graphics, build.Supply}},
		{Seats: except(coreSeats, build.Board), Din: &din, Fails: (*View).louder, AnySupply: true, Warms: append([]build.Seat{build.Board}, predict.Warming...)},
		{Seats: coreSeats, Fails: (*View).louder, AnySupply: true, Warms: predict.Warming, Warmer: []build.Seat{build.Board}},
		{Seats: except(except(except(coreSeats, build.Supply), build.Board), build.Fans), Fails: (*View).louderWithAnyFans, AnySupply: true, AnyFans: true,
			Warms: append([]build.Seat{build.Board}, predict.Warming...)},
		{Seats: except(except(coreSeats, build.Supply), build.Board), Fails: (*View).louderFed, AnySupply: true,
			Warms: append([]build.Seat{build.Board}, predict.Warming...)},
		{Seats: except(except(coreSeats, build.Supply), build.Board), Kinds: []build.Seat{build.Cooler}, Fails: (*View).louderWithAnyCooler, AnySupply: true,
			Warms: append([]build.Seat{build.Board}, predict.Warming...)},
		{Seats: append(slices.Clone(coreSeats), build.Boot), Fails: (*View).louderByDisks, AnySupply: true, Warms: predict.Warming, Warmer: []build.Seat{build.Boot}},
		{Seats: append(slices.Clone(coreSeats), build.Cache), Fails: (*View).louderByDisks, AnySupply: true, Warms: predict.Warming, Warmer: []build.Seat{build.Cache}},
		{Seats: append(slices.Clone(coreSeats), build.Archive), Fails: (*View).louderByDisks, AnySupply: true, Warms: predict.Warming, Warmer: []build.Seat{build.Archive}},
		withMemory(true), withMemory(true, build.Archive),
		withMemory(false), withMemory(false, build.Archive),
		{Seats: loadSeats, Fails: (*View).tooLoud, Warmer: predict.Warming},
		{Seats: loadSeats, Fails: (*View).tooLoudSo, AnySupply: true},
	},
	Bounds: []Sum{{Kind: unit.Number, Term: leastNoise}},
	Holds:  (*View).quiet,
	Check: func(v *View) []Margin {
		wish, ok := v.Needs.Place.Noise.Get()
		if !ok {
			return nil
		}
		f := v.forecast()
		if f == nil {
			return v.inOpen(wish)
		}
		for i := range f.Asked() {
			v.loud(f.Run(i, predict.Ordinary), wish)
		}
		v.loud(f.Run(len(f.Loads())-1, predict.Ordinary), wish)
		return v.margins
	},
}

// din is the level of a build at the chair as a sum.
var din = Din{
	Loads: func(v *View) (list []int) {
		if _, ok := v.Needs.Place.Noise.Get(); ok {
			v.hardest(func(load int) bool { list = append(list, load); return false })
		}
		return list
	},
	Allowed: func(v *View) float64 { return predict.AllowedPW(v.Needs.Place.Noise.Or(0), &v.Needs.Place) },
	Core: func(v *View, load int, besides predict.Besides) []predict.Heard {
		return v.predictor().Heard(v.Build, v.Needs, besides, load)
	},
	Feeds: func(v *View, load int, besides predict.Besides) *predict.Choir {
		return v.predictor().Choir(v.Build, v.Needs, besides, load)
	},
	Cooler: func(v *View, load int, inlet predict.Inlet) (pw float64, known bool) {
		return v.predictor().CoolerPW(v.Build, v.Needs, load, inlet)
	},
}

// leastNoise is the sound power, in thousandths of a picowatt, that the level wished for allows, and what the part in a seat has of it at any
// load.
func leastNoise(v *View, s build.Seat) (gives, takes int64) {
	wish, ok := v.Needs.Place.Noise.Get()
	if !ok {
		return 0, 0
	}
	if s == build.Case {
		return int64(math.Ceil(1000 * predict.AllowedPW(wish, &v.Needs.Place))), 0
	}
	pw, missing := predict.LeastPW(v.Build, s)
	v.missing = append(v.missing, missing...)
	return 0, int64(1000 * pw)
}

// quiet reports a whole build that is as quiet as wished, in every activity and at rest.
func (v *View) quiet() bool {
	wish, ok := v.Needs.Place.Noise.Get()
	if !ok {
		return true
	}
	quiet := func(w *predict.Warmth, load int) bool { return w.Quiet(load, wish) }
	return v.every(quiet) && quiet(v.predictor().Warmth(v.Build, v.Needs, everyWarmth, v.besides), len(predict.Loads(v.Needs))-1)
}

// inOpen judges a build that is not whole by what its parts are heard at in the open.
func (v *View) inOpen(wish unit.Sound) []Margin {
	loads := predict.Loads(v.Needs)
	at := append(predict.Asked(v.Needs), loads[len(loads)-1])
	for _, l := range at {
		o := v.predictor().Open(v.Build, v.Needs, l, predict.Ordinary)
		v.missing = append(append(v.missing, o.Unheard...), o.Missing...)
		v.unsolved = o.Err
		v.find(l.Activity, wish.Q(), unit.Sound(up(o.ChairDBA)).Q(), func() string {
			return fmt.Sprintf("%s: what there is of the machine is heard at %s at %.2g m even in the open", l.Activity, loudness(o.ChairDBA), o.ChairM)
		})
	}
	return v.margins
}

// louder reports a build that is too loud before memory, drives that do not turn, and cards are in it.
func (v *View) louder() bool {
	wish, ok := v.Needs.Place.Noise.Get()
	if !ok {
		return false
	}
	disks := v.besides.Disks(v.Build)
	return v.hardest(func(load int) bool { return v.predictor().Louder(v.Build, v.Needs, v.besides, load, wish, disks) }) || v.louderBetween(0) ||
		v.Supply == nil && v.louderFed()
}

// louderFed is louder with whichever supply, in two chambers or with a radiator, by how much air can come in at most.
func (v *View) louderFed() bool {
	wish, ok := v.Needs.Place.Noise.Get()
	if !ok || v.Layout == nil || v.Cooler == nil || !v.Layout.Chambers && v.Cooler.Liquid == nil {
		return false
	}
	disks := v.besides.Disks(v.Build)
	return v.hardest(func(load int) bool { return v.predictor().LouderFed(v.Build, v.Needs, v.besides, load, wish, disks) })
}

// louderWithAnyFans is louderFed with whichever fans are bought for the case.
func (v *View) louderWithAnyFans() bool {
	wish, ok := v.Needs.Place.Noise.Get()
	if !ok {
		return false
	}
	disks := v.besides.Disks(v.Build)
	return v.hardest(func(load int) bool {
		return v.predictor().LouderWithAnyFans(v.Build, v.Needs, v.besides, load, wish, disks)
	})
}

// louderWithAnyCooler is louder with whichever air cooler.
func (v *View) louderWithAnyCooler() bool {
	wish, ok := v.Needs.Place.Noise.Get()
	if !ok {
		return false
	}
	disks := v.besides.Disks(v.Build)
	return v.hardest(func(load int) bool {
		return v.predictor().LouderWithAnyCooler(v.Build, v.Needs, v.besides, load, wish, disks)
	})
}

// louderByDisks is louder for builds that hold turning disks; without them louder has said all.
func (v *View) louderByDisks() bool {
	return slices.ContainsFunc(v.Tiers(), func(t build.Tier) bool { return t.Drive.Disk }) && v.louder()
}

// withMemory asks of two chambers, with whichever supply where that breathes from neither, whether cards, memory and some drives make a build
// too loud.
func withMemory(own bool, drives ...build.Seat) Early {
	held := append([]build.Seat{build.Cards, build.Memory}, drives...)
	core := coreSeats
	if own {
		core = except(coreSeats, build.Supply)
	}
	warms := slices.DeleteFunc(slices.Clone(predict.Warming), func(s build.Seat) bool { return slices.Contains(held, s) })
	return Early{
		Seats: append(slices.Clone(core), held...), AnySupply: own, Warms: warms, Warmer: held,
		Layouts: func(l *part.Layout) bool { return l.Chambers && l.Supply.OwnAir.Or(false) == own },
		Fails:   func(v *View) bool { return v.louderBetween(build.SetOf(held...)) },
	}
}

// louderBetween reports a build of two chambers that is too loud with the heat of some seats, before others are in it.
func (v *View) louderBetween(counted build.Set) bool {
	wish, ok := v.Needs.Place.Noise.Get()
	if !ok {
		return false
	}
	disks := v.besides.Disks(v.Build)
	return v.hardest(func(load int) bool {
		return v.predictor().LouderBetween(v.Build, v.Needs, counted, v.besides, load, wish, disks)
	})
}

// tooLoud is louder of a whole build.
func (v *View) tooLoud() bool {
	wish, ok := v.Needs.Place.Noise.Get()
	if !ok {
		return false
	}
	w := v.predictor().Warmth(v.Build, v.Needs, everyWarmth, v.besides)
	return v.hardest(func(load int) bool {
		if w != nil {
			if w.LouderUnder(load, wish) {
				return true
			}
			if louder, known := w.Louder(load, wish); known {
				return louder || w.LouderToMost(load, wish)
			}
		}
		return v.predictor().TooLoud(v.Build, v.Needs, load, wish)
	})
}

// tooLoudSo is tooLoud of just that build, where with more heat it may be quieter: in two chambers, or as its supply's fan starts.
func (v *View) tooLoudSo() bool {
	wish, ok := v.Needs.Place.Noise.Get()
	return ok && v.hardest(func(load int) bool { return v.predictor().LouderSo(v.Build, v.Needs, v.besides, load, wish) })
}

func (v *View) loud(r *predict.Run, wish unit.Sound) {
	v.under(v.find, r.Load.Activity, r, r.Unheard, wish.Q(), func() predict.Band { return r.ChairDBA }, func() string {
		r.Spread()
		var top predict.Fan
		for _, list := range [...][]predict.Fan{r.Fans, r.Cooling} {
			for _, f := range list {
				if f.DBA.Expected > top.DBA.Expected {
					top = f
				}
			}
		}
		text := fmt.Sprintf("%s: %s (%s) at %.2g m from the machine", r.Load.Activity, loudness(r.ChairDBA.Expected), ends(r.ChairDBA, loudness), r.ChairM)
		if top.DBA.Expected > 0 {
			text += fmt.Sprintf(", loudest the %s with %s", top.Name, loudness(top.DBA.Expected))
		}
		return text
	})
}
