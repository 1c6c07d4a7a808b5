package rule

import (
	"fmt"
	"slices"

	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// Cards is the slots and bracket openings left by the graphics card against the add-in cards.
var Cards = Rule{
	ID:    "cards",
	Group: Mate,
	Title: "There is a free slot and bracket for every card",
	Doc: `brackets, where there are add-in cards: have = bracket openings of the layout; need = openings the graphics card takes +
	openings of the add-in cards
slots: have = cards that find a slot of their own; need = cards, the graphics card among them
A card goes in any slot at least as long as its edge and no farther than the last bracket opening. A graphics card in the board's
	own slot hides the slots its width and its cooler's thickness cover; on a riser it hides none, and add-in cards with a bracket have
	no place then. Which lanes a card gets beside the drives is the rule lanes. When short: a thinner graphics card, another board or
	layout, or the same thing over USB.`,
	Source: "slot pitch 20.32 mm, one bracket a slot: microATX specification 1.2; that a slot takes any shorter card: PCI Express Card Electromechanical specification, from memory",
	Reads:  []build.Seat{build.Case, build.Board, build.Graphics, build.Cards},
	Harder: []string{"Graphics.Slots", "Graphics.Thickness", "CardSet.Count"},
	Easier: []string{"CardSpace.Brackets"},
	Early:  []Early{{Seats: []build.Seat{build.Board, build.Cards}, Fails: slotless}, {Seats: []build.Seat{build.Board, build.Graphics, build.Cards}, Fails: slotless}},
	Bounds: []Sum{{Kind: unit.Number, Term: bracketsTerm}},
	Check: func(v *View) []Margin {
		if !v.both(build.Case, build.Board) || v.Graphics == nil && len(v.Cards) == 0 {
			return nil
		}
		if len(v.Cards) > 0 {
			openings := figure(v, v.Layout.Card.Brackets, &v.Case.Article, "card.brackets")
			var need unit.Whole
			if v.Graphics != nil {
				need = figure(v, v.Graphics.Slots, &v.Graphics.Article, "bracket_slots")
			}
			for i := range v.Cards {
				need += figure(v, v.Cards[i].Card.Brackets, &v.Cards[i].Card.Article, "brackets") * unit.Whole(v.Cards[i].Count)
			}
			v.find("brackets", openings.Q(), need.Q(), func() string {
				return fmt.Sprintf("%s in the rear wall, and the cards take %d", plural(openings, "bracket opening"), need)
			})
		}
		placing := v.Assign(build.SetOf(build.Case, build.Graphics, build.Cards))
		placed, rests := 0, false
		var out string
		for i := range placing.Cards {
			switch p := &placing.Cards[i]; p.State {
			case build.In:
				placed++
			case build.Unsure:
				placed++
				rests = true
			default:
				rests = true // on figures, if one is missing
				if out = "the graphics card"; p.Card != nil {
					out = p.Card.Name
				}
			}
		}
		if rests {
			cardFigures(v)
		}
		cards := len(placing.Cards)
		v.find("slots", unit.Count(placed), unit.Count(cards), func() string {
			if placed < cards {
				return fmt.Sprintf("%s, and no slot is left for %s", plural(cards, "card"), out)
			}
			return plural(cards, "card") + agree(cards, " in a slot of its own", " in slots of their own")
		})
		return v.margins
	},
}

// slotless reports cards that find no slots of their own in any case: one that leaves the graphics card in its slot and has brackets for all
// has the most, as long as every other card has a bracket, for which there is no place beside a riser.
func slotless(v *View) bool {
	if v.Board == nil || slices.ContainsFunc(v.Cards, func(c build.CardSet) bool { return !hung(c.Card) }) {
		return false
	}
	return slices.ContainsFunc(v.Assign(build.SetOf(build.Graphics, build.Cards)).Cards, func(p build.CardPlace) bool { return p.Slot == nil })
}

// hung reports a card that takes a slot and a bracket, as far as its sheet says.
func hung(c *part.Card) bool { return c.Slot.Or(1) > 0 && c.Brackets.Or(1) > 0 }

// everyBracket is more than any case has.
const everyBracket = 1000

// bracketsTerm is the sum of bracket openings of a case and cards. Beside a riser none is left for a card that takes a slot; what hangs
// in no slot is not counted.
func bracketsTerm(v *View, s build.Seat) (gives, takes int64) {
	switch {
	case s == build.Case && v.Case != nil && v.Layout.Card.Mount == part.InSlot:
		gives = int64(figure(v, v.Layout.Card.Brackets, &v.Case.Article, "card.brackets"))
	case s == build.Graphics && v.Graphics != nil:
		takes = int64(figure(v, v.Graphics.Slots, &v.Graphics.Article, "bracket_slots"))
	case s == build.Cards && !slices.ContainsFunc(v.Cards, func(c build.CardSet) bool { return hung(c.Card) }):
		gives = everyBracket
	case s == build.Cards:
		for _, c := range v.Cards {
			takes += int64(figure(v, c.Card.Brackets, &c.Card.Article, "brackets")) * int64(c.Count)
		}
	}
	return gives, takes
}

// cardFigures notes the figures that placing cards in slots rests on and some sheet lacks.
func cardFigures(v *View) {
	for i := range v.Board.Cards {
		figure(v, v.Board.Cards[i].Size, &v.Board.Article, "slots.size_lanes")
		figure(v, v.Board.Cards[i].Place, &v.Board.Article, "slots.place")
	}
	for i := range v.Cards {
		figure(v, v.Cards[i].Card.Slot, &v.Cards[i].Card.Article, "slot_lanes")
	}
}
