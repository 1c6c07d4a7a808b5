package rule

import (
	"slices"

	"slipfit/core/build"
	"slipfit/core/part"
)

// SupplyForm keeps the supply's form with the bay or its bracket.
var SupplyForm = Rule{
	ID:    "supply-form",
	Group: Fit,
	Title: "The bay takes the supply's form",
	Doc: `have = 1 where the supply's form is one the bay or its bracket takes, else 0; need = 1.
A smaller form goes into a larger bay only with a bracket, which the case's sheet counts. The word SFX names several
	bodies: compare width, height and holes before ordering an odd one. When it clashes: another supply or layout.`,
	Source: "power supply design guide, mechanical chapter; sfx-l is common practice",
	Reads:  []build.Seat{build.Case, build.Supply},
	Check: func(v *View) []Margin {
		if !v.both(build.Case, build.Supply) {
			return nil
		}
		v.met("", slices.Contains(v.Layout.Supply.Forms, v.Supply.Form),
			say("%s is %s, the bay of %s takes %s", v.Supply.Name, v.Supply.Form, v.Case.Name, words[part.SupplyForm](v.Layout.Supply.Forms)))
		return v.margins
	},
}
