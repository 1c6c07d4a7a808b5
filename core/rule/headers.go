package rule

import (
	"fmt"

	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// Headers is the board's pin headers against the leads of case, cooler, fans and cards.
var Headers = Rule{
	ID:    "headers",
	Group: Mate,
	Title: "Every lead finds a header",
	Doc: `For each kind of header: have = headers on the board and on cards and hubs; need = leads of the case's front panel,
	of fans, pump and lighting, and of cards and hubs that hang on a header
Fan leads are those of the case's own fans, the cooler's and the added ones. Where fans outnumber headers but a splitter keeps
	every header within its current, the margin advises the splitters; where it does not, a fan hub fed from the supply is needed.
	A pump has a header to itself: a pump header, or a fan header that carries it. A front socket whose lead finds no header stays
	dead; a Type-C lead does not go on a 19-pin header. Lighting that finds no header stays dark, which is a fault only where the
	customer wishes for it. Never join a 5 V lead to a 12 V header: it destroys the lights.`,
	Source: "common practice; front headers: board practice",
	Reads:  []build.Seat{build.Case, build.Board, build.Cooler, build.Fans, build.Cards},
	Bounds: []Sum{
		frontHeaders(part.HeaderSwitches), frontHeaders(part.HeaderUSB2), frontHeaders(part.HeaderUSB19), frontHeaders(part.HeaderUSBC),
		frontHeaders(part.HeaderAudio),
	},
	Check: func(v *View) []Margin {
		if !v.both(build.Case, build.Board, build.Cooler) {
			return nil
		}
		fanHeaders(v)
		frontHeader(v, part.HeaderSwitches, "switches and lamps")
		frontHeader(v, part.HeaderUSB2, "front USB 2.0")
		frontHeader(v, part.HeaderUSB19, "front USB 19-pin")
		frontHeader(v, part.HeaderUSBC, "front USB Type-C")
		frontHeader(v, part.HeaderAudio, "front audio")
		lightHeader(v, part.HeaderARGB, "5 V lighting")
		lightHeader(v, part.HeaderRGB, "12 V lighting")
		return v.margins
	},
}

// fanHeaders finds the margins of the pump and of the fans.
func fanHeaders(v *View) {
	if v.Cooler.Liquid != nil {
		pumps := headersOf(v, part.HeaderPump)
		fans := headersOf(v, part.HeaderFan)
		switch {
		case pumps == 0 && fans > 0 && len(v.missing) == 0:
			v.advise("pump", unit.Whole(0).Q(), unit.Whole(1).Q(), say("%s has no pump header: the pump takes a fan header, set to full speed in the firmware", v.Board.Name))
		default:
			v.find("pump", pumps.Q(), unit.Whole(1).Q(), say("%s has %s for the pump", v.Board.Name, plural(pumps, "header")))
		}
	}
	have := headersOf(v, part.HeaderFan) + headersOf(v, part.HeaderPump)
	taken := cardLeads(v, part.HeaderFan)
	var leadRoom [32]unit.Current
	var pinRoom [24]pin
	leads := fanLeads(v, leadRoom[:0])
	need := unit.Whole(len(leads)) + taken
	if v.Cooler.Liquid != nil {
		need++
	}
	board := v.Board
	if have >= need || len(v.missing) > 0 {
		v.find("fans", have.Q(), need.Q(), func() string {
			return fmt.Sprintf("%s for fans and pump on %s and its hubs, %s", plural(have, "header"), board.Name, plural(need, "lead"))
		})
		return
	}
	if _, ok := spread(leads, fanPins(v, pinRoom[:0])); ok {
		v.advise("fans", have.Q(), need.Q(), func() string {
			return fmt.Sprintf("%s for %s: add %s, which %s every header within its current", plural(have, "header"), plural(need, "fan and pump lead"), plural(need-have, "splitter"), agree(need-have, "keeps", "keep"))
		})
		return
	}
	v.find("fans", have.Q(), need.Q(), func() string {
		return fmt.Sprintf("%s for %s, too many for splitters: add a fan hub that the supply feeds", plural(have, "header"), plural(need, "fan and pump lead"))
	})
}

// fanPins appends the headers that fans may hang on: the pump, where there is one, has the strongest pump header to itself,
// or else the strongest fan header.
func fanPins(v *View, list []pin) []pin {
	list = pinsOf(v, part.HeaderPump, list)
	if v.Cooler != nil && v.Cooler.Liquid != nil && len(list) > 0 {
		return pinsOf(v, part.HeaderFan, list[1:])
	}
	list = pinsOf(v, part.HeaderFan, list)
	if v.Cooler != nil && v.Cooler.Liquid != nil && len(list) > 0 {
		return list[1:]
	}
	return list
}

// frontHeaders is the sum of a kind of front-panel header: what board and cards have less what the case and cards ask.
func frontHeaders(kind part.HeaderKind) Sum {
	return Sum{
		Kind: unit.Number,
		Term: func(v *View, s build.Seat) (gives, takes int64) {
			switch {
			case s == build.Board && v.Board != nil:
				gives = int64(countHeaders(v, v.Board.Headers, kind, &v.Board.Article, "headers.count"))
			case s == build.Case && v.Case != nil:
				takes = int64(frontLeads(v, kind))
			case s == build.Cards:
				gives, takes = int64(cardHeaders(v, kind)), int64(cardLeads(v, kind))
			}
			return gives, takes
		},
	}
}

// frontLeads counts the leads of a kind that the case's front panel has.
func frontLeads(v *View, kind part.HeaderKind) unit.Whole {
	var leads unit.Whole
	for i := range v.Case.FrontPorts {
		if p := &v.Case.FrontPorts[i]; p.Kind == kind {
			leads += figure(v, p.Leads, &v.Case.Article, "front_ports.leads")
		}
	}
	return leads
}

// frontHeader finds the margin of a kind of front-panel lead.
func frontHeader(v *View, kind part.HeaderKind, subject string) {
	leads := frontLeads(v, kind) + cardLeads(v, kind)
	if leads == 0 && len(v.missing) == 0 {
		return
	}
	have := headersOf(v, kind)
	board := v.Board
	v.find(subject, have.Q(), leads.Q(), func() string {
		if have >= leads {
			return fmt.Sprintf("%s for %s of %s", plural(have, "header"), plural(leads, "lead"), subject)
		}
		return fmt.Sprintf("%s of %s, and %s has %s: another board, or a hub or card that gives one", plural(leads, "lead"), subject, board.Name, plural(have, "such header"))
	})
}

// lightHeader finds the margin of a kind of lighting lead.
func lightHeader(v *View, kind part.HeaderKind, subject string) {
	var leadRoom [32]unit.Current
	var pinRoom [24]pin
	leads := lightLeads(v, kind, leadRoom[:0])
	if len(leads) == 0 && len(v.missing) == 0 {
		return
	}
	have := headersOf(v, kind)
	need := unit.Whole(len(leads)) + cardLeads(v, kind)
	wanted, said := v.Needs.Wish.Lighting.Get()
	switch {
	case have >= need || len(v.missing) > 0:
		v.find(subject, have.Q(), need.Q(), func() string {
			return fmt.Sprintf("%s for %s of %s", plural(have, "header"), plural(need, "lead"), subject)
		})
	case have == 0 && !(said && wanted):
		v.advise(subject, have.Q(), need.Q(), func() string {
			return fmt.Sprintf("no header for %s of %s: it stays dark unless a lighting hub is added; never join 5 V and 12 V leads", plural(need, "lead"), subject)
		})
	default:
		if _, ok := spread(leads, pinsOf(v, kind, pinRoom[:0])); ok {
			v.advise(subject, have.Q(), need.Q(), func() string {
				return fmt.Sprintf("%s for %s of %s: add %s, which %s every header within its current", plural(have, "header"), plural(need, "lead"), subject, plural(need-have, "splitter"), agree(need-have, "keeps", "keep"))
			})
			return
		}
		v.find(subject, have.Q(), need.Q(), func() string {
			return fmt.Sprintf("%s for %s of %s: add a lighting hub that the supply feeds; never join 5 V and 12 V leads", plural(have, "header"), plural(need, "lead"), subject)
		})
	}
}
