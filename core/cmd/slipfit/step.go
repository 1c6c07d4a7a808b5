package main

import (
	"fmt"
	"strings"
	"time"

	"slipfit/core/verb"
)

var stepCommand = command{
	name:  "step",
	usage: "BUILD -brief BRIEF [-deadline TIME]",
	short: "the next step up and down for every seat of a build",
	long: `For every seat: the least money that serves something it gives further, and the
next cheaper filling with which a whole build stands for less; where none does,
the next cheaper one and what it gives up. Everything else is served at least as
far as now. Other seats may change with it: what comes in is named. The budget is
not asked. Both are exact; a step that a deadline left unproven says so.`,
	example: "slipfit step build.json -brief testdata/briefs/museum-pottery.brief.json",
	setup: func(k *call) {
		k.flags.String("brief", "", "the `BRIEF` the build is held against")
		k.flags.Duration("deadline", time.Minute, "end the search after this `TIME`")
	},
	run: func(k *call) int {
		w, file, asked, code := k.underBrief()
		if w == nil {
			return code
		}
		ctx, told, done := k.search()
		s, err := w.Steps(ctx, file, asked, told)
		done()
		if err != nil {
			return k.fail(err)
		}
		if k.json {
			k.printf("%s", verb.JSON(s))
		} else {
			k.steps(s)
		}
		return fine
	},
}

func (k *call) steps(s *verb.Steps) {
	k.printf("%s\n", k.strong(titled(s.Title)))
	for _, seat := range s.Seats {
		k.printf("\n  %s: %s\n", k.strong(seat.Title), seat.Part)
		if up := seat.Up; up != nil {
			k.paragraph("    up    ", dearer(up.Costs.N, up.Costs.String())+", "+up.Serves+" further"+stride(up))
		} else if seat.Unfinished {
			k.paragraph("    up    ", "not settled in this time")
		} else if len(seat.Full) > 0 {
			k.paragraph("    up    ", "nothing serves "+strings.Join(seat.Full, ", ")+" further to any use")
		}
		if down := seat.Down; down != nil {
			k.paragraph("    down  ", dearer(down.Costs.N, down.Costs.String())+stride(down))
		} else if seat.Unfinished {
			k.paragraph("    down  ", "not settled in this time")
		} else {
			k.paragraph("    down  ", "nothing cheaper in this seat makes the machine cheaper")
		}
	}
}

// stride tells what comes in with a step, what is left out, what changes, and what is given up.
func stride(s *verb.Stride) string {
	var parts []string
	for _, l := range s.Parts {
		name := l.Name
		if l.Count > 1 {
			name = fmt.Sprintf("%d × %s", l.Count, l.Name)
		}
		parts = append(parts, name)
	}
	for _, seat := range s.Empties {
		parts = append(parts, "no "+seat)
	}
	text := ": " + strings.Join(parts, ", ")
	for _, g := range s.Gives {
		text += "; gives up " + g.Title + ": " + g.Have.String() + " of " + g.Need.String()
	}
	if len(s.Changes) > 0 {
		text += "; " + changes(s.Changes)
	}
	if !s.Proven {
		text += "; not proven in this time"
	}
	return text
}
