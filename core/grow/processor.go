package grow

import (
	"slices"

	"slipfit/core/feed"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// processor varies a processor: speed, a pair of cores more or less, the power that goes with them. Socket, chipsets,
// memory, lanes and the class of thermal design power stay; boost keeps to what the supply guide lets the class draw, and
// sustained power to what a board and a cooler of the stock hold.
func (g *grower) processor(p *part.Processor) string {
	was := *p
	speed := g.about(60)
	if n, ok := p.Cores.Get(); ok && n >= 6 {
		by := unit.Whole(2 * g.shift(1))
		p.Cores.Set(n + by)
		if p.Threads.Or(0) == 2*n {
			by *= 2
		}
		move(&p.Threads, by, n+by, 256)
	}
	cores := change(p.Cores, was.Cores)
	vary(&p.Single, 10, 1, 100_000, speed)
	low, top := unit.Points(1), unit.Points(1_000_000)
	if n, ok := p.Cores.Get(); ok && p.Single.Or(0) > 0 { // all threads do 0.4 to 1.35 of every core at its best
		every := p.Single.Or(0) * unit.Points(n)
		low, top = max(p.Single.Or(0), every*4/10+1), every*135/100
	}
	vary(&p.All, 10, low, top, speed, cores, g.about(25))
	work := change(p.All, was.All)

	power := g.about(50)
	most := 600 * w
	if tdp, ok := p.TDP.Get(); ok {
		most = max(unit.Power(feed.ProcessorPower(int64(tdp)).ContinuousMW)/w*w, was.Boost.Or(0))
	}
	vary(&p.Boost, w, 5*w, min(most, 600*w), work.lean(60), power)
	vary(&p.Sustained, w, 5*w, min(g.held(&was), p.Boost.Or(500*w)), work.lean(60), power)
	vary(&p.Idle, w, w, max(p.Sustained.Or(80*w)/4, w), g.about(80))
	thin := unit.Resistance(100) // junction to lid 0.10 to 0.35 K/W, below for the largest lids (common practice)
	if p.Lid.Or(0) > 3000 {
		thin = 60
	}
	vary(&p.Spread, 1, thin, 350, cores.lean(-40), g.about(25))
	if p.Graphics != nil {
		engine := *p.Graphics
		draw := g.about(80)
		vary(&engine.Draw, 1, 1, 1_000_000, draw)
		vary(&engine.Compute, 1, 1, 1_000_000, draw, g.about(20))
		p.Graphics = &engine
	}
	price(&p.Article, work.lean(110), speed.lean(40), power.lean(-30), g.about(40))
	return ""
}

// held is the most sustained power that a processor of this kind may have and still be run as delivered by a board and
// cooled by a cooler of the stock; its own where none does.
func (g *grower) held(p *part.Processor) unit.Power {
	var board, cooler unit.Power
	for _, b := range g.from.Boards {
		if b.Socket == p.Socket && slices.ContainsFunc(p.Platforms, func(f part.Platform) bool {
			return f.Chipset == b.Chipset && f.Firmware.Or(0) <= b.Firmware.Or(0)
		}) {
			board = max(board, b.Sustained.Or(0))
		}
	}
	for _, c := range g.from.Coolers {
		if slices.Contains(c.Sockets, p.Socket) {
			cooler = max(cooler, c.Rated.Or(0))
		}
	}
	return max(min(board, cooler), p.Sustained.Or(0))
}
