package grow

import (
	"slipfit/core/part"
	"slipfit/core/unit"
)

// caseFan varies a fan sold singly or in packs; frame, thickness and holes stay.
func (g *grower) caseFan(p *part.Fan) string {
	was := p.FanFigures
	spin := g.fan(&p.FanFigures)
	quiet := of(was.Sound.Or(0)+10_000, p.Sound.Or(0)+10_000)
	mass(&p.Article, g.about(30))
	price(&p.Article, spin.lean(60), quiet.lean(40), g.about(90))
	return ""
}

// fan varies the figures of a fan by its speed, after the fan laws: flow as speed, pressure as its square, current as its
// cube, sound by 50 dB for ten times the speed. It returns the change of speed.
func (g *grower) fan(f *part.FanFigures) factor {
	was := f.Speed
	vary(&f.Speed, 50, 200, 6000, g.about(80))
	spin := change(f.Speed, was)
	vary(&f.Lowest, 10, 0, min(3000, f.Speed.Or(6000)*3/10), spin, g.about(80)) // at most 0.3 of full speed (4-Wire PWM fan specification 2.1.2, section 3)
	vary(&f.Flow, 100, 1000, 500_000, spin, g.about(20))
	vary(&f.Pressure, 100, 1000, 120_000, spin, spin, g.about(30))
	if sound, ok := f.Sound.Get(); ok {
		f.Sound.Set(min(max(step(sound+louder(spin)+unit.Sound(100*g.shift(5)), 100), 5000), 60_000))
	}
	// half the free flow at half the shut-off pressure is less than half the electrical power at 12 V
	floor := unit.Current(int64(f.Flow.Or(0))*int64(f.Pressure.Or(0))/86_400_000+20) / 10 * 10
	vary(&f.Current, 10, max(floor, 10), 1500, spin, spin, spin, g.about(30)) // at most 1.5 A (the same, section 2.1.2)
	return spin
}

// louder is the sound that a change of speed adds: 50 dB for ten times the speed, 21.7 dB times the change where it is small.
func louder(spin factor) unit.Sound { return unit.Sound(spin-1000) * 217 / 10 }
