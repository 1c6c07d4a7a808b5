package grow

import (
	"fmt"
	"slices"

	"slipfit/core/part"
	"slipfit/core/unit"
)

// supply varies a supply: a rating step up or down where its plugs suffice, the depth of ATX bodies, cables, fan. Form,
// guide, level with its load points, plugs and sense ratings stay.
func (g *grower) supply(p *part.Supply) string {
	was := *p
	move(&p.Rating, 50*w*unit.Power(g.shift(1)), 100*w, 3000*w)
	if !plugsSuffice(p) {
		p.Rating = was.Rating
	}
	rating := change(p.Rating, was.Rating)
	if watts, ok := p.Rating.Get(); ok { // the 12 V rails carry 95 to 100 % of the rating
		vary(&p.Rail12, 100, unit.Current(watts*95/1200+1), unit.Current(watts/12), rating)
	}
	if p.ZeroTo.Or(0) > 0 {
		vary(&p.ZeroTo, 10*w, 10*w, p.Rating.Or(1500*w)*6/10, rating, g.about(120))
	}
	if p.Form == part.SupplyATX { // PS/2 body 140 mm, long bodies to 230; SFX bodies have one depth each
		move(&p.Length, 5*mm*unit.Length(g.shift(3)), 140*mm, 230*mm)
	}
	spin := g.fan(&p.Fan)
	longer := g.about(80)
	p.Cables = slices.Clone(p.Cables)
	for i := range p.Cables {
		vary(&p.Cables[i].Length, 10*mm, 150*mm, 1500*mm, longer)
	}
	mass(&p.Article, rating.lean(60), change(p.Length, was.Length), longer.lean(30), g.about(30))
	price(&p.Article, rating.lean(110), longer.lean(40), spin.lean(-30), change(p.Length, was.Length).lean(-30), g.about(60))
	if watts, ok := p.Rating.Get(); ok {
		return fmt.Sprintf("%d W", watts/w)
	}
	return ""
}

// plugsSuffice reports whether the cables suit the rating: plugs for cards for 0.4 of it, no 12-contact plug that announces what the
// rest of the machine needs, two processor plugs from 1000 W on (common practice), a 12-contact plug over 450 W
// from design guide 3.0 on (its section 5.2.2.4.3).
func plugsSuffice(p *part.Supply) bool {
	count := map[part.PlugKind]unit.Whole{}
	var announced unit.Power
	for _, c := range p.Cables {
		n := c.Count.Or(0)
		for _, plug := range c.Plugs {
			count[plug] += n
		}
		announced += c.Rated.Or(0) * unit.Power(n)
	}
	rating := p.Rating.Or(0)
	twelve := count[part.PlugCard12]
	switch {
	case rating >= 1000*w && count[part.PlugProcessor44]+count[part.PlugProcessor8] < 2,
		p.Guide != part.Guide2 && rating > 450*w && twelve == 0,
		announced/unit.Power(max(1, twelve)) > rating-100*w,
		announced+150*w*unit.Power(count[part.PlugCard62]) < rating*4/10:
		return false
	}
	return true
}
