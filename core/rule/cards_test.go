package rule

import (
	"math/rand/v2"
	"testing"

	"slipfit/catalog"
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/unit"

	"github.com/stretchr/testify/require"
)

// TestCardsFailEarly holds what the rule cards says of a few seats to its verdict on whole builds, with cards of every form: without a
// bracket, without a slot, and with figures that their sheets lack, in slots and beside risers.
func TestCardsFailEarly(t *testing.T) {
	stock, err := catalog.Embedded()
	require.NoError(t, err)
	r := rand.New(rand.NewPCG(7, 30))
	some := func(list ...int64) (f unit.Figure[unit.Whole]) {
		if i := r.IntN(len(list) + 1); i < len(list) {
			f.Set(unit.Whole(list[i]))
		}
		return f
	}
	slots, brackets, stood := 0, 0, 0
	for range 40_000 {
		b := randomBuild(r, stock)
		randomSeat(r, b, build.Case, stock)
		randomSeat(r, b, build.Board, stock)
		b.Cards = nil
		for range 1 + r.IntN(2) {
			c := *oneOf(stock.Cards, r)
			c.Slot, c.Brackets = some(0, 1, 1, 4, 8), some(0, 1, 1, 2)
			b.Cards = append(b.Cards, build.CardSet{Card: &c, Count: 1 + r.IntN(2)})
		}
		v := NewView(b, nil)
		stands := passes(v.Run(&Cards))
		alone := &build.Build{Board: b.Board, Graphics: b.Graphics, Cards: b.Cards}
		if slotless(NewView(alone, nil)) {
			require.False(t, stands, "%v in %s", b.Cards, b.Layout.ID)
			slots++
		}
		sum, known := int64(0), true
		for _, s := range Cards.Reads {
			gives, takes, told := v.Term(&Cards, &Cards.Bounds[0], s)
			sum, known = sum+gives-takes, known && told
		}
		if known && sum < 0 {
			require.False(t, stands, "%v in %s", b.Cards, b.Layout.ID)
			if b.Layout.Card.Mount != part.InSlot {
				brackets++
			}
		}
		if stands {
			stood++
		}
	}
	t.Logf("%d without slots, %d without brackets beside a riser, %d stood", slots, brackets, stood)
	require.Greater(t, slots, 1000)
	require.Greater(t, brackets, 1000)
	require.Greater(t, stood, 1000)
}
