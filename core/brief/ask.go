package brief

import (
	"fmt"

	"slipfit/core/part"
	"slipfit/core/unit"
)

// An activity is asked twice: once with the usual answer wherever the customer gave none, which makes the floors, and once
// with a high one, which makes what is enough. What the customer did say is the same both times, so an answer never makes
// a need wider, and "I don't know" is always an answer.

// demand is what one activity asks.
type demand struct {
	name    string
	atOnce  bool
	by      [Resources]Need
	decode  []CodecNeed
	encode  []CodecNeed
	screen  Screen // the screen that suits it; zero where any will do
	unseen  bool   // nobody sits before it
	written Written
	load    Load
	aims    []Aim
	highs   int // aims whose high law is known
	assumed []string
	heard   []answer
}

// asker hears out one activity.
type asker struct {
	cal     *part.Calibration
	screens []Screen // what the brief says of screens
	high    bool     // take high answers for what was not said
	hours   int64    // a week
	out     *demand
}

// amount is a typed quantity that can print itself.
type amount interface {
	~int64
	Q() unit.Quantity
}

// take is the customer's figure, or the usual one; the high one when what is enough is asked for.
func take[T amount](a *asker, f unit.Figure[T], field, what string, usual, high T) int64 {
	a.hear(field, usual.Q().String(), high.Q().String())
	if v, ok := f.Get(); ok {
		return int64(v)
	}
	if a.high {
		return int64(high)
	}
	if usual == high {
		a.assume("%s not said: %s taken", what, usual.Q())
	} else {
		a.assume("%s not said: %s taken, with room for %s", what, usual.Q(), high.Q())
	}
	return int64(usual)
}

// takeWord is take for a choice among words.
func takeWord[W ~string](a *asker, said W, field, what string, usual, high W) W {
	a.hear(field, string(usual), string(high))
	if said != "" {
		return said
	}
	if a.high {
		return high
	}
	if usual == high {
		a.assume("%s not said: %s taken", what, string(usual))
	} else {
		a.assume("%s not said: %s taken, with room for %s", what, string(usual), string(high))
	}
	return usual
}

// hear notes the answers that stand for "I don't know".
func (a *asker) hear(field, usual, high string) {
	if !a.high {
		a.out.heard = append(a.out.heard, answer{field, usual, high})
	}
}

// answer is what is taken for a field not said: the usual, and the high one that what is enough allows for.
type answer struct{ field, usual, high string }

// assume notes what was taken for something not said.
func (a *asker) assume(format string, args ...any) {
	if !a.high {
		a.out.assumed = append(a.out.assumed, a.out.name+": "+fmt.Sprintf(format, args...))
	}
}

// need asks for a resource: floor, what is enough, what a step between them is worth, the arithmetic and its source. Work is
// asked for only where the catalog says what a point is.
func (a *asker) need(r Resource, floor, enough int64, weight int, source, why string, args ...any) {
	if r.Kind() == unit.Work && a.cal.Tolerance == 0 {
		return
	}
	n := &a.out.by[r]
	if a.high {
		n.Enough = max(n.Enough, enough, n.Floor)
		return
	}
	if floor < n.Floor {
		return
	}
	*n = Need{Resource: r, Floor: floor, Enough: max(enough, floor, n.Enough), Weight: max(weight, n.Weight),
		Reason: fmt.Sprintf(why, args...), Source: source, From: a.out.name}
}

// pairs asks for two modules side by side. Common practice: everything past letters and the web loses more by half the
// bandwidth than two modules cost over one.
func (a *asker) pairs(enough int64) {
	a.need(Channels, 2, enough, 10, practice, "two equal modules: one alone leaves half of the bandwidth unused")
}

// streamed is the peak bandwidth that reads so many MB a second: streaming reads reach a share of it.
func (a *asker) streamed(mb int64) int64 {
	share := a.cal.Stream
	if share == 0 {
		share = fullLoad
	}
	return ceil(mb*int64(fullLoad), int64(share))
}

// reads and writes ask for a video format in hardware.
func (a *asker) reads(c part.Codec, why string) {
	if !a.high {
		a.out.decode = append(a.out.decode, CodecNeed{c, a.out.name + ": " + why})
	}
}

func (a *asker) writes(c part.Codec, why string) {
	if !a.high {
		a.out.encode = append(a.out.encode, CodecNeed{c, a.out.name + ": " + why})
	}
}

// load says what the activity draws on at once, in per cent, for as long as it is done.
func (a *asker) load(processor, graphics, memory, drives int64) {
	if !a.high {
		a.out.load = Load{a.out.name, unit.Share(processor * 1000), unit.Share(graphics * 1000), unit.Share(memory * 1000),
			unit.Share(drives * 1000), int(a.hours * 52)}
	}
}

// writesYearly says what goes to each tier in a year, in MB.
func (a *asker) writesYearly(boot, cache, archive int64) {
	if !a.high {
		w := &a.out.written
		w.Boot += unit.Storage(boot)
		w.Cache += unit.Storage(cache)
		w.Archive += unit.Storage(archive)
	}
}

// mode is the mode of the most demanding screen of the brief, or the one the activity would like.
func (a *asker) mode(width, height, refresh, bits int) Screen {
	best := Screen{}
	for _, s := range a.screens {
		if s.pixelRate() > best.pixelRate() {
			best = s
		}
	}
	if best.Width == 0 {
		best = Screen{Width: width, Height: height, Refresh: refresh, Bits: bits, Count: 1}
	}
	if !a.high {
		a.out.screen = best
	}
	return best
}

// pixelRate is pixels a second of one screen.
func (s Screen) pixelRate() int64 { return int64(s.Width) * int64(s.Height) * int64(s.Refresh) }

// tidied is how many weeks of new work an archive takes beside what is kept before somebody clears out the oldest: once a month.
// Room past that is kept empty. Common practice.
const tidied = 4

// hither is what a drive writes, MB/s, that holds work read and written here and there at once. Common practice: a disk, which holds
// up to about 270 in one long file, is out of step with several.
const hither = 300

// practice is the source of what careful builders reckon with and no standard states.
const practice = "common practice"

// size prints a size given in MB: in MB below ten gigabytes, where whole gigabytes would hide the arithmetic.
func size(mb int64) string {
	if mb < 10*int64(unit.Gigabyte) {
		return fmt.Sprintf("%d MB", mb)
	}
	return unit.Storage(mb).Q().String()
}
