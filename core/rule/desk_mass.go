package rule

import (
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// liftAlone is what one person may lift from the floor beside a desk by the NIOSH equation: 23 kg × 25/40 (held 40 cm away) ×
// 1 (knuckle height) × (0.82 + 4.5/25) = 14.375 kg.
const liftAlone = 14_375 // g

// DeskMass advises two people where the machine is too heavy for one.
var DeskMass = Rule{
	ID:    "desk-mass",
	Group: Fit,
	Title: "One person can lift the machine",
	Doc: `have = 14.375 kg, what one person may lift by the NIOSH equation with the load 40 cm from the body, at knuckle height, moved
	25 cm, not turned: 23 × 25/40 × 1 × (0.82 + 4.5/25); need = mass of every part in the case, kg; advice only.
Where heavier: two people or a trolley. Lifting from the floor, turning or reaching over a desk allows less. Follow local rules for
	manual handling.`,
	Source: "revised NIOSH lifting equation, NIOSH Pub. 94-110",
	Reads: []build.Seat{build.Case, build.Board, build.Processor, build.Cooler, build.Memory, build.Graphics, build.Supply,
		build.Boot, build.Cache, build.Archive, build.Fans, build.Cards},
	Check: func(v *View) []Margin {
		if !v.both(build.Case) {
			return nil
		}
		var sum unit.Mass
		add := func(a *part.Article, n int) { sum += figure(v, a.Mass, a, "mass_kg") * unit.Mass(n) }
		add(&v.Case.Article, 1)
		if v.Board != nil {
			add(&v.Board.Article, 1)
		}
		if v.Processor != nil {
			add(&v.Processor.Article, 1)
		}
		if v.Cooler != nil {
			add(&v.Cooler.Article, 1)
		}
		if v.Memory != nil {
			add(&v.Memory.Article, v.Kits)
		}
		if v.Graphics != nil {
			add(&v.Graphics.Article, 1)
		}
		if v.Supply != nil {
			add(&v.Supply.Article, 1)
		}
		for _, s := range [...]build.Storage{v.Boot, v.Cache, v.Archive} {
			if s.Drive != nil {
				add(&s.Drive.Article, s.Count)
			}
		}
		for _, f := range v.Fans {
			add(&f.Fan.Article, f.Packs())
		}
		for _, c := range v.Cards {
			add(&c.Card.Article, c.Count)
		}
		have := unit.Mass(liftAlone)
		v.advise("", have.Q(), sum.Q(), func() string {
			if sum > have {
				return say("%s: two people or a trolley, lifting index %s", sum.Q(), index(sum))()
			}
			return say("%s: one person can lift it from a bench, lifting index %s", sum.Q(), index(sum))()
		})
		return v.margins
	},
}

// index is the NIOSH lifting index of a mass, to two decimals, rounded up.
func index(m unit.Mass) string {
	n := (int64(m)*100 + liftAlone - 1) / liftAlone
	return say("%d.%02d", n/100, n%100)()
}
