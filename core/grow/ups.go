package grow

import (
	"fmt"
	"slices"

	"slipfit/core/part"
	"slipfit/core/unit"
)

// ups varies an uninterruptible supply: both ratings and the loads of its runtimes together, its minutes by the battery.
// The share of watts in volt-amperes, waveform and outlets stay.
func (g *grower) ups(p *part.UPS) string {
	was := *p
	vary(&p.Apparent, 10*w, 200*w, 6000*w, g.about(100))
	larger := change(p.Apparent, was.Apparent)
	if va, ok := p.Apparent.Get(); ok && was.Apparent.Or(0) > 0 {
		if share := was.Real.Or(0) * 1000 / was.Apparent.Or(1); share > 0 {
			p.Real.Set(min(max(va/1000*share/(5*w)*(5*w), 100*w), va))
		}
	}
	battery := g.about(80)
	p.Runtime = slices.Clone(p.Runtime)
	for i := range p.Runtime {
		r := &p.Runtime[i]
		r.Load = min(max(step(scaled(r.Load, change(p.Real, was.Real)), w), 10*w), p.Real.Or(r.Load))
		r.Minutes = min(max(scaled(r.Minutes, battery), 1), 600)
		if i > 0 { // a battery gives less of its energy at a high draw (Peukert)
			before := p.Runtime[i-1]
			r.Minutes = max(min(r.Minutes, before.Minutes, before.Minutes*unit.Duration(before.Load)*109/(unit.Duration(r.Load)*100)), 1)
		}
	}
	mass(&p.Article, larger, battery.lean(50), g.about(20))
	price(&p.Article, larger.lean(100), battery.lean(50), g.about(50))
	if va, ok := p.Apparent.Get(); ok {
		return fmt.Sprintf("%d", va/w)
	}
	return ""
}
