package grow

import (
	"math/rand/v2"

	"slipfit/core/unit"
)

// factor multiplies a figure, in thousandths: 1000 leaves it as it is.
type factor int64

// draw is where variations come from.
type draw struct{ *rand.Rand }

// about is a factor near 1000, at most spread thousandths off; small changes are more frequent than large ones.
func (d draw) about(spread int64) factor {
	return factor(1000 + d.Int64N(spread+1) - d.Int64N(spread+1))
}

// shift is a change of at most so many steps up or down.
func (d draw) shift(steps int64) int64 { return d.Int64N(2*steps+1) - steps }

// lean is a factor that follows another by so many per cent of its change: 50 for half, -50 for half the other way, 150
// for more than the change itself.
func (f factor) lean(percent int64) factor {
	return max(1000+(f-1000)*factor(percent)/100, 1)
}

// of is the factor between two positive figures; 1000 where one of them is nought.
func of[T ~int64](now, before T) factor {
	if now <= 0 || before <= 0 {
		return 1000
	}
	return factor(int64(now) * 1000 / int64(before))
}

// change is the factor between two figures; 1000 where a sheet does not state one of them.
func change[T ~int64](now, before unit.Figure[T]) factor {
	return of(now.Or(0), before.Or(0))
}

// scaled is a figure under factors, rounded to the nearest after each.
func scaled[T ~int64](v T, by ...factor) T {
	for _, f := range by {
		v = (v*T(f) + 500) / 1000
	}
	return v
}

// step rounds a figure that is not negative to the nearest multiple.
func step[T ~int64](v, by T) T { return (v + by/2) / by * by }

// vary scales a figure and rounds it to a step between two bounds; the upper bound rules. A missing figure stays missing.
func vary[T ~int64](f *unit.Figure[T], by, low, top T, factors ...factor) {
	if v, ok := f.Get(); ok {
		f.Set(min(max(step(scaled(v, factors...), by), low), top))
	}
}

// move adds to a figure between two bounds; the upper bound rules. A missing figure stays missing.
func move[T ~int64](f *unit.Figure[T], by, low, top T) {
	if v, ok := f.Get(); ok {
		f.Set(min(max(v+by, low), top))
	}
}
