package main

import (
	"strings"

	"slipfit/core/verb"
)

var whyCommand = command{
	name:  "why",
	usage: "BRIEF [-keep SEAT=PART]... [-deadline TIME]",
	short: "why nothing can be planned for a brief, and what to give up",
	long: `Names demands of a brief that cannot all be met: with any one of them given up,
the rest can. Then lists every smallest set of at most two demands whose giving up
lets a build stand, with the cheapest such build. Where a deadline or Ctrl-C ends
the search, what is known so far is told: the list may then not be complete, and
the demands named may be more than those in the way; it says so. Exit 1 where
nothing can be planned, 0 where a build stands.`,
	example: "slipfit why testdata/briefs/museum-pottery.brief.json -keep graphics=none",
	setup: func(k *call) {
		k.flags.Var(&list{}, "keep", "settle `SEAT=PART`; SEAT=none leaves it empty; may be given again")
		k.flags.Duration("deadline", 0, "tell what is found after this `TIME`, such as 5s")
	},
	run: func(k *call) int {
		if len(k.args) != 1 {
			return k.usage("needs one brief")
		}
		w, err := k.bench()
		if err != nil {
			return k.fail(err)
		}
		file, err := document(k.args[0])
		if err != nil {
			return k.fail(err)
		}
		ctx, told, done := k.search()
		y, err := w.Why(ctx, file, *k.flags.Lookup("keep").Value.(*list), told)
		done()
		if err != nil {
			return k.fail(err)
		}
		if k.json {
			k.printf("%s", verb.JSON(y))
		} else {
			k.printf("%s\n\n", k.strong(y.Title))
			k.why(y)
		}
		if y.Stands {
			return fine
		}
		return failing
	},
}

func (k *call) why(y *verb.Why) {
	switch {
	case y.Stands:
		k.paragraph("  ", "A build stands that meets everything asked.")
		return
	case len(y.Asks) == 0 && y.Unknown && !y.Loose:
		k.paragraph("  ", "The search ended before it was known what stands in the way, if anything does.")
		return
	case len(y.Asks) == 0 && y.Loose:
		k.paragraph("  ", "Not all that is asked can be met. The search ended before it was known what stands in the way.")
		return
	case len(y.Asks) == 0:
		k.paragraph("  ", "Nothing that is asked stands in the way: this catalog holds no build that goes together.")
		return
	case y.Loose:
		k.paragraph("  ", "These cannot all be met. The search ended before it was known which of them are in the way; some may not be:")
	case len(y.Asks) == 1:
		k.paragraph("  ", "One thing asked cannot be met:")
	default:
		k.paragraph("  ", "These cannot all be met; without any one of them the rest can:")
	}
	for _, a := range y.Asks {
		k.paragraph("    ", a)
	}
	k.printf("\n")
	if len(y.Repairs) == 0 && !y.Unknown {
		k.paragraph("  ", "Giving up two of all that is asked is not enough.")
	}
	for _, r := range y.Repairs {
		var drops []string
		for _, d := range r.Drops {
			drops = append(drops, d.Asks)
		}
		text := "Give up " + strings.Join(drops, ", and ") + ": a build for " + r.Price.String() + " before tax"
		if r.Above.N > 0 {
			text += ", " + r.Above.String() + " above the budget"
		}
		if !r.Proven {
			text += ", perhaps for less"
		}
		k.paragraph("  ", text+".")
	}
	if y.Unknown {
		k.paragraph("  ", "Stopped early: the list may not be complete; something else may be given up instead.")
	}
}
