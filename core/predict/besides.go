package predict

import (
	"fmt"

	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/sound"
)

// Besides is heat that comes into the board's chamber besides that of the parts a build holds: at least so much, and no more than
// so much together with what these parts bring. The zero value is none.
type Besides struct {
	least, most []int  // W, by activity asked
	name        string // the same, to be compared
}

// NewBesides is so many whole watts in each activity asked.
func NewBesides(least, most []int) Besides { return Besides{least, most, fmt.Sprint(least, most)} }

// atMost leaves out the heat that there is at least.
func (x Besides) atMost() Besides {
	if len(x.least) == 0 {
		return x
	}
	return NewBesides(nil, x.most)
}

// String says how much.
func (x Besides) String() string { return x.name }

// at is the least heat at a load, W.
func (x Besides) at(load int) float64 {
	if load < len(x.least) {
		return float64(x.least[load])
	}
	return 0
}

// Warming is the seats whose parts only warm the air of a case, and do not settle it.
var Warming = []build.Seat{build.Memory, build.Boot, build.Cache, build.Archive, build.Cards}

// Brings is what board, memory, drives and cards of a build bring into its air in an activity, W, of those whose sheets say it.
func Brings(b *build.Build, l *brief.Load) float64 {
	m := model{b: b}
	if b.Board != nil {
		m.boardW = thousandth(&m.sheet, b.Board.Own, &b.Board.Article, "own_power_w")
	}
	m.extras()
	m.loose()
	return m.boardW + m.brings(l)
}

// Disks is the sound power of a build's turning disks, dB(A), of those whose sheets say it; nought where there are none.
func Disks(b *build.Build) float64 {
	m := model{b: b}
	for _, t := range b.Tiers() {
		m.disk(t)
	}
	return max(0, sound.Total(m.steady))
}
