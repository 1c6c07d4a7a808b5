package grow

import (
	"fmt"

	"slipfit/core/part"
	"slipfit/core/unit"
)

// memory varies a kit: the rate of another of its kind and count, a latency that chips of the generation reach, the height
// of its heat spreader. Modules and sizes stay.
func (g *grower) memory(p *part.Memory) string {
	was := *p
	other := like(g, g.from.Memory, p, func(o *part.Memory) bool {
		_, rate := o.Speed.Get()
		_, latency := o.Latency.Get()
		return rate && latency && o.Type == p.Type && o.Form == p.Form && o.ECC == p.ECC && o.Modules == p.Modules
	})
	slower := factor(1000)
	if rate, ok := p.Speed.Get(); ok {
		p.Speed = other.Speed
		faster := other.Speed.Or(rate)
		if p.Latency.Set(other.Latency.Or(p.Latency.Or(0))); was.Latency != (unit.Figure[unit.Whole]{}) {
			// CL / (rate / 2) between 8.5 and 17.5 ns (common practice)
			low, top := (unit.Whole(faster)*85+19_999)/20_000, unit.Whole(faster)*175/20_000
			vary(&p.Latency, 1, low, top, g.about(80))
			slower = of(p.Latency.Or(0)*unit.Whole(rate), was.Latency.Or(0)*unit.Whole(faster))
		} else {
			p.Latency = was.Latency
		}
	}
	if bare := unit.Length(31_250); p.Height.Or(0) > bare { // the bare module, MO-309 as a module sheet states it
		vary(&p.Height, mm/10, bare, 60*mm, g.about(100))
	}
	faster := change(p.Speed, was.Speed)
	vary(&p.Power, w/10, w/2, 20*w, faster.lean(50), g.about(40))
	mass(&p.Article, change(p.Height, was.Height).lean(60), g.about(20))
	price(&p.Article, faster.lean(40), slower.lean(-25), change(p.Height, was.Height).lean(20), g.about(50))
	if modules, ok := p.Modules.Get(); ok {
		return fmt.Sprintf("%d GB %d", p.Module.Or(0)/unit.GiB*unit.Memory(modules), p.Speed.Or(0))
	}
	return ""
}
