package plan

import "slipfit/core/build"

// sequence is the order in which seats are decided: those that most others must match first, those that take what is
// left last.
var sequence = [...]build.Seat{
	build.Board, build.Processor, build.Graphics, build.Case, build.Cooler, build.Memory, build.Boot, build.Cache,
	build.Archive, build.Cards, build.Screens, build.Fans, build.UPS, build.Supply,
}

// order lists the columns in that sequence.
func (p *Problem) order() []int {
	list := make([]int, 0, len(p.cols))
	for _, s := range sequence {
		if c := p.colOf[s]; c >= 0 {
			list = append(list, c)
		}
	}
	return list
}
