package grow

import (
	"slipfit/core/part"
	"slipfit/core/unit"
)

// card varies an add-in card, adapter or holder: length, draw, what a holder holds. Slot, ports, headers and plugs stay; the
// draw never rises, so that the slot it was made for still feeds it.
func (g *grower) card(p *part.Card) string {
	was := *p
	if p.Length.Or(0) > 0 {
		vary(&p.Length, mm, 50*mm, 330*mm, g.about(60))
	}
	vary(&p.Power, w/10, 0, p.Power.Or(0), g.about(100))
	stronger := g.about(120)
	vary(&p.Holds, unit.Mass(50), 100, 10_000, stronger)
	mass(&p.Article, change(p.Length, was.Length), g.about(40))
	price(&p.Article, change(p.Power, was.Power).lean(-20), change(p.Holds, was.Holds).lean(80), g.about(100))
	return ""
}
