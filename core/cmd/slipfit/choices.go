package main

import (
	"slipfit/core/verb"
)

var choicesCommand = command{
	name:  "choices",
	usage: "BRIEF [SEAT] [-keep SEAT=PART]... [-deadline TIME]",
	short: "which parts are still open in a seat, and from what price on",
	long: `Says for every part of a seat, or of every seat, whether a whole build with it
stands under the brief and the choices made, and what the cheapest such build
costs. Nothing is guessed: a part listed with a price leads to a build, one called
impossible leads to none. Where a deadline ends the search, what is not settled
says so. All seats together may take minutes. Exit 1 where no part is possible.`,
	example: "slipfit choices testdata/briefs/family.brief.json graphics",
	setup: func(k *call) {
		k.flags.Var(&list{}, "keep", "settle `SEAT=PART`; SEAT=none leaves it empty; may be given again")
		k.flags.Duration("deadline", 0, "say what is settled after this `TIME`, such as 5s")
	},
	run: func(k *call) int {
		if len(k.args) < 1 || len(k.args) > 2 {
			return k.usage("needs one brief, and at most one seat, such as graphics")
		}
		seat := ""
		if len(k.args) == 2 {
			seat = k.args[1]
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
		c, err := w.Choices(ctx, file, seat, *k.flags.Lookup("keep").Value.(*list), told)
		done()
		if err != nil {
			return k.fail(err)
		}
		if k.json {
			k.printf("%s", verb.JSON(c))
		} else {
			k.choices(c)
		}
		for _, s := range c.Seats {
			for _, p := range s.Parts {
				if p.Price != nil {
					return fine
				}
			}
		}
		return failing
	},
}

func (k *call) choices(c *verb.Choices) {
	k.printf("%s\n", k.strong(c.Title))
	if len(c.Seats) == 0 {
		k.paragraph("  ", "That seat is settled.")
	}
	for _, s := range c.Seats {
		k.printf("\n  %s\n", s.Title)
		never := 0
		for _, p := range s.Parts {
			switch {
			case p.State == "infeasible":
				never++
			case p.Price == nil:
				k.printf("    %-44s not settled in time\n", p.Name)
			case p.State == "optimal":
				k.printf("    %-44s from %s\n", p.Name, p.Price)
			default:
				k.printf("    %-44s possible at %s, perhaps for less\n", p.Name, p.Price)
			}
		}
		if never > 0 {
			k.printf("    %s in no build that stands\n", count(never, "part"))
		}
	}
}
