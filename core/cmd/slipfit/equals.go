package main

import (
	"fmt"

	"slipfit/core/verb"
)

var equalsCommand = command{
	name:  "equals",
	usage: "BUILD SEAT [-brief BRIEF]",
	short: "parts of other makers that do the same in a build",
	long: `Lists the parts of other makers that could sit in a seat with every verdict of
the build unchanged and, with a brief, no outcome moved by more than 3 %: so that
a habit of name does not decide. The nearest comes first. Exit 1 where there is
none.`,
	example: "slipfit equals build.json graphics -brief testdata/briefs/museum-pottery.brief.json",
	setup: func(k *call) {
		k.flags.String("brief", "", "hold the outcomes of `BRIEF` too")
	},
	run: func(k *call) int {
		if len(k.args) != 2 {
			return k.usage("needs one build and one seat, such as graphics")
		}
		w, err := k.bench()
		if err != nil {
			return k.fail(err)
		}
		file, asked, err := k.buildAndBrief()
		if err != nil {
			return k.fail(err)
		}
		told, done := k.long()
		e, err := w.Equals(file, asked, k.args[1], told)
		done()
		if err != nil {
			return k.fail(err)
		}
		if k.json {
			k.printf("%s", verb.JSON(e))
		} else {
			k.equals(e)
		}
		if len(e.Parts) == 0 {
			return failing
		}
		return fine
	},
}

func (k *call) equals(e *verb.Equals) {
	k.printf("%s: %s\n\n", k.strong(e.Title), e.Part)
	if len(e.Parts) == 0 {
		k.paragraph("  ", "No part of another maker keeps every verdict and every outcome.")
	}
	for _, p := range e.Parts {
		moves := "no outcome moves"
		if p.What != "" {
			moves = fmt.Sprintf("%s moves by %.1f %%", p.What, p.Apart)
		}
		if p.Liked {
			moves += "; a maker they like"
		}
		k.paragraph("  ", fmt.Sprintf("%s: %s, %s; %s", named(p.Instead), p.Price, dearer(p.Costs.N, p.Costs.String()), moves))
	}
}

// dearer says a difference of price.
func dearer(n int64, text string) string {
	switch {
	case n == 0:
		return "the same price"
	case n > 0:
		return text + " more"
	}
	return text[len("−"):] + " less"
}
