package scene

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"slipfit/catalog"
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/rule"
	"slipfit/core/unit"

	"github.com/stretchr/testify/require"
)

// geometric are the margins whose sign boxes must show. A rule found by several margins in turn is held by the pair of
// boxes of that name.
var geometric = []struct {
	rule    *rule.Rule
	subject string // "" where the rule finds one margin
}{
	{&rule.GraphicsLength, ""}, {&rule.GraphicsThickness, ""}, {&rule.GraphicsHeight, ""},
	{&rule.CoolerHeight, ""}, {&rule.CoolerRaised, ""}, {&rule.CoolerMemory, "under"}, {&rule.CoolerMemory, "beside"},
	{&rule.CoolerBoard, "base"}, {&rule.CoolerBoard, "fins"}, {&rule.CoolerCard, ""},
	{&rule.RadiatorMount, "length"}, {&rule.RadiatorMount, "thickness"},
	{&rule.RadiatorCard, "length"}, {&rule.RadiatorCard, "thickness"}, {&rule.RadiatorMemory, "under"}, {&rule.RadiatorBoard, ""},
	{&rule.SupplyLength, ""}, {&rule.CardLength, ""},
	{&rule.FanPlaces, "front, thickness"}, {&rule.FanPlaces, "rear, thickness"}, {&rule.FanPlaces, "top, thickness"},
	{&rule.FanPlaces, "bottom, thickness"}, {&rule.FanPlaces, "side, thickness"},
}

// TestRulesAgainstBoxes holds the rules of fit to the boxes: on thousands of random builds, most of which cannot be built,
// a rule's margin is negative where and only where its two boxes overlap, by as many micrometres.
func TestRulesAgainstBoxes(t *testing.T) {
	stock, err := catalog.Embedded()
	require.NoError(t, err)
	r := rand.New(rand.NewPCG(1, 2026))
	good, bad := map[string]int{}, map[string]int{}
	for range 6000 {
		b := random(r, stock)
		s := Of(b)
		over := map[string]unit.Length{} // deepest overlap of a margin's boxes
		for _, o := range s.Overlaps() {
			k := o.Rule + "/" + o.Subject
			over[k] = max(over[k], o.By)
		}
		v := rule.NewView(b, nil)
		lower := inLowerSlot(b)
		for _, g := range geometric {
			name := g.rule.ID + "/" + g.subject
			r, subject := g.rule, g.subject
			switch {
			case lower && name == "graphics-thickness/":
				r, subject = &rule.GraphicsSlot, "wall"
			case lower && name == "radiator-card/thickness":
				r, subject = &rule.GraphicsSlot, "radiator"
			case name == "card-length/" && !placed(&s):
				continue // no slot is left for the card, which rule lanes finds
			case name == "radiator-memory/under" && s.Over && b.Board.Form != part.MiniITX:
				continue // on a larger board that stands on its head the modules are far from the top; the rule does not count on it
			}
			need, found := unit.Length(0), false
			for _, m := range v.Run(r) {
				require.NotEqual(t, rule.Unknown, m.Verdict, "%s: %s", name, m.Why())
				if m.Subject == subject {
					found = true
					need = max(need, unit.Length(-m.Diff().N))
				}
			}
			require.Equal(t, need, over[name], "%s: the rule says %s too much, the boxes %s\n%s", name, need.Q(), over[name].Q(), tell(b))
			if found {
				good[name]++
			}
			if need > 0 {
				bad[name]++
			}
		}
	}
	for _, g := range geometric {
		name := g.rule.ID + "/" + g.subject
		t.Logf("%-28s %5d found, %5d of them negative", name, good[name], bad[name])
		require.NotZero(t, good[name]-bad[name], "%s never held", name)
		require.NotZero(t, bad[name], "%s was never broken", name)
	}
}

// inLowerSlot reports a card that hangs in a slot that is not in the first bracket place: graphics-slot holds it.
func inLowerSlot(b *build.Build) bool {
	if b.Layout.Card.Mount != part.InSlot {
		return false
	}
	slot := b.Assign(build.SetOf(build.Case, build.Board, build.Graphics)).Cards[0].Slot
	return slot != nil && slot.Place.Or(1) > 1
}

// placed reports whether an add-in card found a slot.
func placed(s *Scene) bool {
	for _, b := range s.Boxes {
		if b.Seat == build.Cards {
			return true
		}
	}
	return false
}

func tell(b *build.Build) string {
	s := ""
	for _, l := range b.Lines() {
		s += fmt.Sprintf("%s %s x%d; ", l.Seat, l.Article.ID, l.Count)
	}
	if b.Layout != nil {
		s += fmt.Sprintf("layout %s plate %d radiator %q", b.Layout.ID, b.Plate, b.Face)
	}
	return s
}

// random is a build of any parts, with some figures moved so that limits are met and missed by little.
func random(r *rand.Rand, stock *part.Stock) *build.Build {
	c := *oneOf(r, stock.Cases)
	l := c.Layouts[r.IntN(len(c.Layouts))]
	l.Card.Length = moved(r, l.Card.Length, 80)
	l.Card.Thickness = moved(r, l.Card.Thickness, 30)
	l.Card.Height = moved(r, l.Card.Height, 30)
	l.Cooler = moved(r, l.Cooler, 40)
	l.Supply.Length = moved(r, l.Supply.Length, 40)
	l.FanPlaces = append([]part.FanPlace(nil), l.FanPlaces...)
	for i := range l.FanPlaces {
		l.FanPlaces[i].Thickness = moved(r, l.FanPlaces[i].Thickness, 20)
	}
	b := &build.Build{Case: &c, Layout: &l}
	if l.Plate != nil {
		b.Plate = r.IntN(int(l.Plate.Steps) + 1)
	}
	board := *oneOf(r, stock.Boards)
	board.SocketAt.Card = moved(r, board.SocketAt.Card, 30)
	board.SocketAt.SinkHigh = moved(r, board.SocketAt.SinkHigh, 20)
	board.SocketAt.SinkAt = moved(r, board.SocketAt.SinkAt, 10)
	b.Board, b.Processor = &board, oneOf(r, stock.Processors)
	b.Cooler, b.Face = oneOf(r, stock.Coolers), oneOf(r, []part.Face{part.Front, part.Top, part.Side, part.Bottom, part.Rear})
	if len(l.Radiators) > 0 && b.Cooler.Liquid != nil && r.IntN(4) > 0 {
		b.Face = l.Radiators[r.IntN(len(l.Radiators))].Face
	}
	b.Memory, b.Kits = oneOf(r, stock.Memory), 1+r.IntN(2)
	b.Graphics, b.Supply = oneOf(r, stock.Graphics), oneOf(r, stock.Supplies)
	b.Boot = build.Storage{Drive: oneOf(r, stock.Drives), Count: 1}
	if len(l.FanPlaces) > 0 {
		fan := *oneOf(r, stock.Fans)
		b.Fans = []build.FanSet{{Fan: &fan, Count: 1, Face: l.FanPlaces[r.IntN(len(l.FanPlaces))].Face}}
	}
	b.Cards = []build.CardSet{{Card: oneOf(r, stock.Cards), Count: 1}}
	return b
}

// moved is a figure moved by up to so many millimetres either way, to a tenth, never under 1 mm.
func moved(r *rand.Rand, f unit.Figure[unit.Length], by int) unit.Figure[unit.Length] {
	v, ok := f.Get()
	if !ok {
		return f
	}
	return unit.Known(max(mm, v+unit.Length(r.IntN(20*by+1)-10*by)*mm/10))
}

func oneOf[P any](r *rand.Rand, list []P) P { return list[r.IntN(len(list))] }
