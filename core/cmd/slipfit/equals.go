package main

import (
	"fmt"

	"slipfit/core/verb"
)

var equalsCommand = command{
	name:  "equals",
	usage: "BUILD SEAT [-brief BRIEF] [-deadline TIME]",
	short: "parts of other makers that do the same in a build",
	long: `Lists the parts of other makers that could sit in a seat with every verdict of
the build unchanged and, with a brief, no outcome moved by more than 3 %: so that
a habit of name does not decide. The nearest comes first. Where a deadline or
Ctrl-C ends the look before every part was tried, it says so. Exit 1 where there
is none.`,
	example: "slipfit equals build.json graphics -brief testdata/briefs/museum-pottery.brief.json",
	setup: func(k *call) {
		k.flags.String("brief", "", "hold the outcomes of `BRIEF` too")
		k.flags.Duration("deadline", 0, "tell what is found after this `TIME`, such as 5s")
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
		ctx, told, done := k.search()
		e, err := w.Equals(ctx, file, asked, k.args[1], told)
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
	if len(e.Parts) == 0 && !e.Unfinished {
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
	if e.Unfinished {
		k.paragraph("  ", "Stopped early: not every part of the seat was tried; others may do the same.")
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
