package rule

import (
	"fmt"
	"strings"

	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/unit"
)

// Seats asks for a part in every seat that a machine needs and that the brief asks for.
var Seats = Rule{
	ID:    "seats",
	Group: Mate,
	Title: "Every seat that must be filled is filled",
	Doc: `machine: have = seats filled of case, main board, processor, processor cooler, memory, power supply and boot drive; need = 7
Besides, where the brief asks for them: the screens to be bought and an uninterruptible supply, each have = what is chosen, need =
	what is asked. Work in hand and what is kept may lie on the boot drive, so that their seats may stay empty.
Every other rule is silent where a seat it needs is empty, so that this one alone says that a build is not complete. A cooler that
	comes with a processor is put in its seat like any other.`,
	Source: "common practice",
	Reads: []build.Seat{build.Case, build.Board, build.Processor, build.Cooler, build.Memory, build.Supply, build.Boot,
		build.Screens, build.UPS},
	Check: func(v *View) []Margin {
		var empty build.Set
		filled := 0
		for _, s := range build.Compulsory() {
			if v.Filled(s) {
				filled++
			} else {
				empty |= build.SetOf(s)
			}
		}
		v.short("machine", unit.Count(filled), unit.Count(len(build.Compulsory())), func() string {
			if empty == 0 {
				return "every part that a machine needs is chosen"
			}
			var names []string
			for _, s := range build.Compulsory() {
				if empty.Has(s) {
					names = append(names, s.Title())
				}
			}
			return "not chosen yet: " + strings.Join(names, ", ")
		})
		if n := screensToBuy(v.Needs); n > 0 {
			have := 0
			for _, s := range v.Screens {
				have += s.Count
			}
			v.short("screens", unit.Count(have), unit.Count(n), func() string {
				return fmt.Sprintf("the brief asks for %s to be bought, and %d chosen", plural(n, "screen"), have)
			})
		}
		if minutes, ok := v.Needs.Wish.UPS.Get(); ok && minutes > 0 {
			has := v.UPS != nil
			v.short("uninterruptible supply", unit.Met(has), unit.Met(true), func() string {
				if has {
					return "an uninterruptible supply is chosen"
				}
				return "the brief asks the machine to run through a power cut, and no uninterruptible supply is chosen"
			})
		}
		return v.margins
	},
}

// short is find for a thing that is lacking, not clashing.
func (v *View) short(subject string, have, need unit.Quantity, why func() string) {
	if m := v.find(subject, have, need, why); m.Verdict == Clash {
		m.Verdict = Short
	}
}

// screensToBuy counts the screens a brief asks for that the customer does not own.
func screensToBuy(n *brief.Needs) int {
	sum := 0
	for i := range n.Screens {
		if !n.Screens[i].Owned {
			sum += n.Screens[i].Count
		}
	}
	return sum
}
