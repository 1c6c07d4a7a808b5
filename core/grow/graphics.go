package grow

import (
	"fmt"

	"slipfit/core/feed"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// graphics varies a card: work, power, size and cooling together. Sockets, outputs, codecs, brackets and the low profile
// stay; slot and plugs carry the power, and the cooler holds it in case air of 35 °C.
func (g *grower) graphics(p *part.Graphics) string {
	was := *p
	work := g.about(110)
	vary(&p.Draw, 10, 1, 1_000_000, work)
	vary(&p.Compute, 10, 1, 1_000_000, work, g.about(25))
	vary(&p.MemoryRate, 1, 20, 8000, work, g.about(20))
	doubled := factor(1000)
	if g.IntN(10) == 0 && p.Memory.Or(0) <= 24*unit.GiB {
		vary(&p.Memory, unit.GiB, unit.GiB, 256*unit.GiB, 2000)
		doubled = 1150
	}

	low := p.Height.Or(0) == 68_900 // a low-profile card, by its bracket
	vary(&p.Power, w, 10*w, cardMost(p, low), work.lean(75), g.about(40))
	power := change(p.Power, was.Power)
	if watts, ok := p.Power.Get(); ok { // a peak of 1.5 to 3 times the power (CEM 5.x, as its author states)
		vary(&p.Peak, 10*w, (watts*3/2+10*w-1)/(10*w)*10*w, watts*3, power, g.about(50))
		vary(&p.Idle, w, 0, min(30*w, watts), power.lean(50), g.about(80))
		vary(&p.Advised, 50*w, (watts+200*w+50*w-1)/(50*w)*50*w, 2000*w, power)
	}

	size := power.lean(40)
	vary(&p.Length, mm, 150*mm, 360*mm, size, g.about(50))
	if n, ok := p.Slots.Get(); ok { // bracket pitch 20.32 mm: a card stays within the brackets it takes, and needs them
		pitch := unit.Length(20_320)
		least := max(pitch*unit.Length(n-1)-6*mm+mm, 10*mm)
		vary(&p.Thickness, mm, least, pitch*unit.Length(n), size, g.about(30))
	}
	if !low {
		vary(&p.Height, mm/2, 111_150, 150*mm, size.lean(50), g.about(20)) // full height, CEM
	}
	volume := factor(1000)
	for _, f := range []factor{change(p.Length, was.Length), change(p.Thickness, was.Thickness), change(p.Height, was.Height)} {
		volume = scaled(volume, f)
	}
	mass(&p.Article, volume, g.about(25))

	cooling := g.about(20)
	vary(&p.CoreFixed, 1, 10, 2000, of(1000, power), cooling)
	vary(&p.CoreAir, 1, 0, 2000, of(1000, power), volume.lean(-15), cooling)
	cool(p)
	spin := g.about(60)
	vary(&p.FanSpeed, 50, 0, 5000, spin)
	if p.Sound.Or(0) > 0 {
		move(&p.Sound, louder(spin)+unit.Sound(100*g.shift(8)), 5000, 60_000)
		p.Sound.Set(step(p.Sound.Or(0), 100))
	}
	price(&p.Article, work.lean(120), doubled, volume.lean(10), of(1000, spin).lean(15), g.about(35))
	if n, ok := p.Memory.Get(); ok {
		return fmt.Sprintf("%d GB", n/unit.GiB)
	}
	return ""
}

// cardMost is what a card may draw: its slot and its plugs, and no more than 600 W in all (CEM 5.0); 75 W in low profile.
func cardMost(p *part.Graphics, low bool) unit.Power {
	slot := 75 * w
	if low {
		return slot
	}
	most := slot
	for _, s := range p.Sockets {
		kind, ok := map[part.SocketKind]feed.SocketKind{
			part.SocketCard6: feed.SocketCard6, part.SocketCard8: feed.SocketCard8, part.SocketCard12: feed.SocketCard12,
		}[s.Kind]
		if ok {
			most += unit.Power(kind.LimitMW()) * unit.Power(s.Count.Or(0))
		}
	}
	return min(most, 600*w)
}

// cool lowers the resistances until the card holds its power in case air of 35 °C; 250 W and more are cooled by 0.09 to
// 0.19 K/W (common practice).
func cool(p *part.Graphics) {
	watts, okP := p.Power.Get()
	limit, okL := p.Limit.Get()
	all := p.CoreFixed.Or(0) + p.CoreAir.Or(0)
	if !okP || !okL || all == 0 {
		return
	}
	want := min(all, unit.Resistance((int64(limit)-35_000)*1000/int64(watts)))
	if watts >= 250*w {
		want = min(max(want, 92), 188)
	}
	if want == all {
		return
	}
	fixed := p.CoreFixed.Or(0) * want / all
	if _, ok := p.CoreFixed.Get(); ok {
		p.CoreFixed.Set(max(fixed, 10))
	}
	if p.CoreAir.Or(0) > 0 {
		p.CoreAir.Set(max(want-p.CoreFixed.Or(0), 1))
	}
}
