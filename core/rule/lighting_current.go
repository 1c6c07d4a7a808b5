package rule

import (
	"fmt"

	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// LightingCurrent is the current of each lighting header against the lights that hang on it.
var LightingCurrent = Rule{
	ID:    "lighting-current",
	Group: Feed,
	Title: "No lighting header gives more current than it may",
	Doc: `For 5 V and for 12 V lighting: have = current of the header that is nearest to its limit, A; need = most current of the lights
	that hang on it, A
Leads hang one on each header, heaviest first, the rest on splitters where most room is left; where that overloads a header every other
	way is tried. Lights that find no header at all stay dark and are the rule headers. Never join a 5 V lead to a 12 V header: it destroys
	the lights. When short: a lighting hub that the supply feeds.`,
	Source: "3 A a header: common practice, the board's sheet rules",
	Reads:  []build.Seat{build.Case, build.Board, build.Cooler, build.Fans, build.Cards},
	Check: func(v *View) []Margin {
		if !v.both(build.Case, build.Board, build.Cooler) {
			return nil
		}
		lightCurrent(v, part.HeaderARGB, "5 V lighting")
		lightCurrent(v, part.HeaderRGB, "12 V lighting")
		return v.margins
	},
}

func lightCurrent(v *View, kind part.HeaderKind, subject string) {
	var leadRoom [32]unit.Current
	var pinRoom [24]pin
	leads := lightLeads(v, kind, leadRoom[:0])
	if len(leads) == 0 && len(v.missing) == 0 {
		return
	}
	headers := pinsOf(v, kind, pinRoom[:0])
	if len(headers) == 0 && len(v.missing) == 0 {
		return
	}
	worst, _ := spread(leads, headers)
	v.find(subject, worst.limit.Q(), worst.load.Q(), func() string {
		return fmt.Sprintf("the fullest header of %s carries %s of its %s", subject, worst.load.Q(), worst.limit.Q())
	})
}
