package predict

import (
	"fmt"
	"math"

	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/sound"
)

// Besides is what comes into a build besides the parts it holds: heat in the board's chamber, from so much up to so much, and no more than so
// much together with what these parts bring; turning disks; one of some supplies; and some fans. Where a question speaks of warmer parts too,
// the heat goes up by what they may bring more than those held. The zero value is none.
type Besides struct {
	least, upTo, most []int   // W, by activity asked
	name              string  // the same, to be compared
	disksDBA          float64 // sound power of disks at least, dB(A); nought for none
	supplies          *Supplies
	fans              *AnyFans
}

// NewBesides is so many whole watts in each activity asked.
func NewBesides(least, upTo, most []int) Besides {
	return Besides{least: least, upTo: upTo, most: most, name: fmt.Sprint(least, upTo, most)}
}

// atMost leaves out the heat that there is at least.
func (x Besides) atMost() Besides {
	if len(x.least) > 0 {
		x.least, x.upTo, x.name = nil, nil, NewBesides(nil, nil, x.most).name
	}
	return x
}

// Heard is the same with disks of at least so much sound power, dB(A).
func (x Besides) Heard(disksDBA float64) Besides {
	x.disksDBA = disksDBA
	return x
}

// Fed is the same with one of some supplies where a build has none.
func (x Besides) Fed(by *Supplies) Besides {
	x.supplies = by
	return x
}

// Aired is the same with one of some fans where a build has none bought for its case, or with none.
func (x Besides) Aired(by *AnyFans) Besides {
	x.fans = by
	return x
}

// Feeds is no more of it than the supplies.
func (x Besides) Feeds() Besides { return Besides{supplies: x.supplies} }

// String says all of it.
func (x Besides) String() string {
	text := x.name
	if x.disksDBA > 0 {
		text += fmt.Sprint(" disks ", x.disksDBA)
	}
	if x.supplies != nil {
		text += " " + x.supplies.name
	}
	if x.fans != nil {
		text += " " + x.fans.name
	}
	return text
}

// Disks is how loud the turning disks of a build are with those besides, dB(A) of sound power; Silent where there are none.
func (x Besides) Disks(b *build.Build) float64 {
	own := model{b: b}
	for _, t := range b.Tiers() {
		own.disk(t)
	}
	if x.disksDBA > 0 {
		return sum(sound.Total(own.steady), x.disksDBA)
	}
	return sound.Total(own.steady)
}

// feed reports that something is known of a build without a supply with whichever of these.
func (x Besides) feed(b *build.Build) bool {
	if b.Supply != nil || x.supplies == nil || len(x.supplies.list) == 0 || !readyToFeed(b) {
		return false
	}
	return b.Layout.Supply.OwnAir.Or(false) || !b.Layout.Chambers && b.Cooler.Liquid == nil
}

// mostW is the most heat at a load, by its place in Loads, W; +Inf where it is not known.
func (x Besides) mostW(load int) float64 {
	if load >= len(x.most) {
		return math.Inf(1)
	}
	return float64(x.most[load])
}

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
func Disks(b *build.Build) float64 { return max(0, Besides{}.Disks(b)) }
