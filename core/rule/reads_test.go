package rule

import (
	"math/rand/v2"
	"testing"

	"slipfit/catalog"
	"slipfit/core/build"
	"slipfit/core/part"

	"github.com/stretchr/testify/require"
)

// TestReadsIsWhole holds every rule to what it says it reads: filling, changing or emptying any other seat leaves its
// margins as they are. The planner tables of pairs rest on it.
func TestReadsIsWhole(t *testing.T) {
	stock, err := catalog.Embedded()
	require.NoError(t, err)
	const builds = 300
	r := rand.New(rand.NewPCG(20, 32))
	found := map[string]int{}
	for range builds {
		b := randomBuild(r, stock)
		for _, rule := range All {
			want := inWords(b, rule)
			found[rule.ID] += len(want)
			for s := range build.Seat(build.Seats) {
				if build.SetOf(rule.Reads...).Has(s) {
					continue
				}
				other := *b
				other.Clear(s)
				require.Equal(t, want, inWords(&other, rule), "rule %s looks at seat %s, which it does not say", rule.ID, s)
				randomSeat(r, &other, s, stock)
				require.Equal(t, want, inWords(&other, rule), "rule %s looks at seat %s, which it does not say", rule.ID, s)
			}
		}
	}
	for _, rule := range All {
		if rule.Group == Fit && rule.ID != "desk" { // desk asks only where the brief names a place
			require.NotZero(t, found[rule.ID], "rule %s never applied in %d builds", rule.ID, builds)
		}
	}
}

// TestRuleSaysItself checks that a rule carries what the sheets and the page print of it.
func TestRuleSaysItself(t *testing.T) {
	seen := map[string]bool{}
	for _, r := range All {
		require.False(t, seen[r.ID], "two rules %s", r.ID)
		seen[r.ID] = true
		require.NotEmpty(t, r.Doc, r.ID)
		require.NotEmpty(t, r.Source, r.ID)
		require.NotEmpty(t, r.Reads, r.ID)
		require.LessOrEqual(t, len([]rune(r.Title)), 60, "title of %s", r.ID)
		require.NotContains(t, r.Title[len(r.Title)-1:], ".", "title of %s", r.ID)
	}
}

type marginInWords struct {
	Subject, Have, Need, Verdict, Why string
	Advice                            bool
}

// inWords is what a rule finds of a build, in words.
func inWords(b *build.Build, r *Rule) []marginInWords {
	var list []marginInWords
	for _, m := range NewView(b, nil).Run(r) {
		list = append(list, marginInWords{m.Subject, m.Have.String(), m.Need.String(), m.Verdict.String(), m.Why(), m.Advice})
	}
	return list
}

// randomBuild fills seats with any parts of the stock, whether they go together or not; some stay empty.
func randomBuild(r *rand.Rand, stock *part.Stock) *build.Build {
	var b build.Build
	for s := range build.Seat(build.Seats) {
		if r.IntN(8) > 0 {
			randomSeat(r, &b, s, stock)
		}
	}
	return &b
}

// randomSeat puts any part of the stock in a seat.
func randomSeat(r *rand.Rand, b *build.Build, s build.Seat, stock *part.Stock) {
	o := build.Option{Seat: s, Count: 1 + r.IntN(3), Face: part.Face(part.Front.Values()[r.IntN(5)])}
	switch s {
	case build.Case:
		c := oneOf(stock.Cases, r)
		o.Part, o.Layout = c, &c.Layouts[r.IntN(len(c.Layouts))]
		if o.Layout.Plate != nil {
			o.Plate = r.IntN(int(o.Layout.Plate.Steps) + 1)
		}
	case build.Board:
		o.Part = oneOf(stock.Boards, r)
	case build.Processor:
		o.Part = oneOf(stock.Processors, r)
	case build.Cooler:
		o.Part = oneOf(stock.Coolers, r)
	case build.Memory:
		o.Part = oneOf(stock.Memory, r)
	case build.Graphics:
		o.Part = oneOf(stock.Graphics, r)
	case build.Supply:
		o.Part = oneOf(stock.Supplies, r)
	case build.Boot, build.Cache, build.Archive:
		o.Part = oneOf(stock.Drives, r)
	case build.Fans:
		o.Part = oneOf(stock.Fans, r)
	case build.Cards:
		o.Part = oneOf(stock.Cards, r)
	case build.Screens:
		o.Part = oneOf(stock.Monitors, r)
	case build.UPS:
		o.Part = oneOf(stock.UPS, r)
	case build.Services:
		o.Part = oneOf(stock.Services, r)
	}
	b.Set(o)
}

func oneOf[P interface{}](list []P, r *rand.Rand) P { return list[r.IntN(len(list))] }
