package grow

import (
	"fmt"
	"slices"

	"slipfit/core/part"
	"slipfit/core/unit"
)

// cooler varies a cooler: rating, size, mass and resistance together, and its fan by the fan laws. Sockets, fan sizes and the
// radiator's hole pattern stay.
func (g *grower) cooler(p *part.Cooler) string {
	spin := g.fan(&p.Fan)
	better := g.about(120)
	var size factor
	switch {
	case p.Air != nil:
		size = g.airCooler(p, better)
		mass(&p.Article, better.lean(110), size, g.about(15))
	case p.Liquid != nil:
		size = g.liquidCooler(p, better)
		mass(&p.Article, size, g.about(15))
	}
	price(&p.Article, better.lean(120), spin.lean(-20), g.about(55))
	if watts, ok := p.Rated.Get(); ok {
		return fmt.Sprintf("%d W", watts/w)
	}
	return ""
}

// airCooler keeps flat coolers flat and towers tower (100 mm lies between), and the rating at a rise of 20 to 36 K over air
// (common practice). It returns the change in size.
func (g *grower) airCooler(p *part.Cooler, better factor) factor {
	was := *p.Air
	air := was
	least, most := 100*mm+mm/2, 168*mm
	worst, best := unit.Resistance(310), unit.Resistance(80)
	if was.Height.Or(0) <= 100*mm {
		least, most = 37*mm, 100*mm
		worst, best = 500, 180
	}
	vary(&air.Height, mm/2, least, most, better.lean(25), g.about(20))
	up := air.Height.Or(0) - was.Height.Or(0)
	move(&air.FanTop, up, 20*mm, min(200*mm, air.Height.Or(200*mm)))
	move(&air.UnderFan, up, 0, min(120*mm, air.Height.Or(120*mm)))
	for _, reach := range []*unit.Figure[unit.Length]{&air.ToMemory, &air.ToCard, &air.ToTop} {
		vary(reach, mm/2, 30*mm, 80*mm, better.lean(15), g.about(25))
	}
	vary(&air.Sink, 1, best, worst, of(1000, better), g.about(20))
	low, top := 20*w, 600*w
	if r, ok := air.Sink.Get(); ok {
		low, top = unit.Power(20_000*1000/int64(r)+1), unit.Power(36_000*1000/int64(r))
	}
	vary(&p.Rated, 5*w, max(low, 20*w), min(top, 600*w), better, g.about(15))
	p.Air = &air
	return change(air.Height, was.Height)
}

// liquidCooler keeps the radiator within 20 to 55 mm of its fans side by side, and to a size some case of the stock mounts. It
// returns the change in the radiator's volume.
func (g *grower) liquidCooler(p *part.Cooler, better factor) factor {
	was := *p.Liquid
	loop := was
	p.Liquid = &loop
	fan, okF := was.FanSize.Get()
	fans, okN := was.Sections.Get()
	if okF && okN {
		long := fan * unit.Length(fans)
		move(&loop.Length, unit.Length(g.shift(8))*mm, long+20*mm, long+55*mm)
		move(&loop.Thickness, unit.Length(g.shift(2))*mm, 20*mm, 45*mm)
		if !g.mounted(p) {
			loop.Length, loop.Thickness = was.Length, was.Thickness
		}
	}
	// UA of a 120 mm section 10 to 15 W/K, by area for others; coolant 6 to 16 K over air at the rating (common practice)
	least, most := unit.Resistance(2000), unit.Resistance(60_000)
	if okF {
		area := int64(fan/mm) * int64(fan/mm)
		least, most = max(least, unit.Resistance(10_000*area/14_400+100)), min(most, unit.Resistance(15_000*area/14_400))
	}
	vary(&loop.Conductance, 100, least, most, better.lean(40), g.about(20))
	low, top := 20*w, 600*w
	if ua, ok := loop.Conductance.Get(); ok && okN {
		all := unit.Power(ua) * unit.Power(fans)
		low, top = max(low, 6*all+1), min(top, 16*all)
	}
	vary(&p.Rated, 5*w, low, top, better, g.about(15))
	vary(&loop.Plate, 1, 30, 80, of(1000, better).lean(60), g.about(40))
	vary(&loop.CoolantFlow, 1, 30, 120, better.lean(50), g.about(50))
	vary(&loop.PumpPower, w/10, w/2, 30*w, better.lean(50), g.about(60))
	if watts, ok := loop.PumpPower.Get(); ok && loop.PumpCurrent.Or(0) > 0 {
		loop.PumpCurrent.Set(max(step(unit.Current(watts/12), 10), 50)) // at 12 V
	}
	move(&loop.PumpSound, unit.Sound(500*g.shift(3)), 5000, 45_000)
	move(&loop.Tube, unit.Length(10*g.shift(3))*mm, 300*mm, 500*mm)
	return scaled(change(loop.Length, was.Length), change(loop.Thickness, was.Thickness))
}

// mounted reports whether some case of the stock takes the radiator with its fans.
func (g *grower) mounted(p *part.Cooler) bool {
	l := p.Liquid
	return slices.ContainsFunc(g.from.Cases, func(c *part.Case) bool {
		return slices.ContainsFunc(c.Layouts, func(y part.Layout) bool {
			return slices.ContainsFunc(y.Radiators, func(m part.RadiatorMount) bool {
				return slices.Contains(m.FanSizes, l.FanSize.Or(0)) && l.Length.Or(0) <= m.Length.Or(0) &&
					l.Thickness.Or(0)+p.Fan.Thickness.Or(0) <= m.Thickness.Or(0)
			})
		})
	})
}
