package rule

import (
	"math/rand/v2"
	"slices"
	"testing"

	"slipfit/catalog"
	"slipfit/core/brief"
	"slipfit/core/build"

	"github.com/stretchr/testify/require"
)

// TestSeatsThatDoNotMatter holds every rule to what it says of seats it does not look into: another part in one of them
// changes neither whether the build stands nor what it is worth. The planner asks only once by it.
func TestSeatsThatDoNotMatter(t *testing.T) {
	stock, err := catalog.Embedded()
	require.NoError(t, err)
	needs := &brief.Needs{}
	for res := range needs.By {
		needs.By[res] = brief.Need{Resource: brief.Resource(res), Floor: 1, Enough: 30_000, Weight: 100, Reason: "the test asks it"}
	}
	r := rand.New(rand.NewPCG(17, 3))
	changed := map[string]int{}
	for range 3000 {
		b := randomBuild(r, stock)
		for s := range build.Seat(build.Seats) {
			if r.IntN(4) == 0 {
				b.Clear(s)
			}
		}
		for _, rule := range All {
			other := *b
			i := slices.IndexFunc(rule.First, b.Filled)
			for at, s := range rule.First {
				if i >= 0 && at > i {
					randomSeat(r, &other, s, stock)
				}
			}
			for _, s := range rule.Filled {
				if b.Filled(s) {
					randomSeat(r, &other, s, stock)
				}
			}
			if len(rule.First) == 0 && len(rule.Filled) == 0 {
				continue
			}
			v := NewView(b, needs)
			stands, worth := found(v.Run(rule))
			v.Build = &other
			otherStands, otherWorth := found(v.Run(rule))
			require.Equal(t, stands, otherStands, "rule %s", rule.ID)
			require.Equal(t, worth, otherWorth, "rule %s", rule.ID)
			if worth > 0 {
				changed[rule.ID]++
			}
		}
	}
	for _, rule := range All {
		require.True(t, len(rule.First) == 0 && len(rule.Filled) == 0 || changed[rule.ID] > 50, "rule %s was never worth anything", rule.ID)
		require.True(t, build.SetOf(rule.Reads...).Holds(build.SetOf(slices.Concat(rule.First, rule.Filled)...)), "rule %s", rule.ID)
	}
}

func found(margins []Margin) (stands bool, worth int64) {
	for i := range margins {
		worth += margins[i].Worth
	}
	return passes(margins), worth
}
