package rule

import (
	"math/rand/v2"
	"os"
	"path/filepath"
	"testing"

	"slipfit/catalog"
	"slipfit/core/brief"
	"slipfit/core/build"

	"github.com/stretchr/testify/require"
)

// needsOfBriefs is the needs of every brief under testdata from the generic stock.
func needsOfBriefs(t *testing.T) map[string]*brief.Needs {
	t.Helper()
	stock, err := catalog.Embedded()
	require.NoError(t, err)
	files, err := filepath.Glob("../../testdata/briefs/*.brief.json")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	all := map[string]*brief.Needs{}
	for _, f := range files {
		raw, err := os.ReadFile(f)
		require.NoError(t, err)
		b, err := brief.Read(f, raw)
		require.NoError(t, err)
		all[filepath.Base(f)] = b.Needs(stock)
	}
	return all
}

// TestReadsIsWholeUnderNeeds holds the rules that ask nothing without a brief to what they say they read, under the needs of
// every brief.
func TestReadsIsWholeUnderNeeds(t *testing.T) {
	stock, err := catalog.Embedded()
	require.NoError(t, err)
	r := rand.New(rand.NewPCG(19, 86))
	found := map[string]int{}
	for name, n := range needsOfBriefs(t) {
		n.Wish.Avoid, n.Wish.Prefer, n.Wish.InStock = []string{stock.Drives[0].Maker}, []string{stock.Boards[0].Maker}, r.IntN(2) == 0
		for range 25 {
			b := randomBuild(r, stock)
			for _, rule := range All {
				if rule.Group < Serve {
					continue
				}
				want := underNeeds(b, n, rule)
				found[rule.ID] += len(want)
				for s := range build.Seat(build.Seats) {
					if build.SetOf(rule.Reads...).Has(s) {
						continue
					}
					other := *b
					other.Clear(s)
					require.Equal(t, want, underNeeds(&other, n, rule), "%s: rule %s looks at seat %s, which it does not say", name, rule.ID, s)
					randomSeat(r, &other, s, stock)
					require.Equal(t, want, underNeeds(&other, n, rule), "%s: rule %s looks at seat %s, which it does not say", name, rule.ID, s)
				}
			}
		}
	}
	for _, rule := range All {
		if rule.Group >= Serve && rule.ID != "stock-drives" {
			require.NotZero(t, found[rule.ID], "rule %s never applied", rule.ID)
		}
	}
}

func underNeeds(b *build.Build, n *brief.Needs, r *Rule) []marginInWords {
	var list []marginInWords
	for _, m := range NewView(b, n).Run(r) {
		list = append(list, marginInWords{m.Subject, m.Have.String(), m.Need.String(), m.Verdict.String(), m.Why(), m.Advice})
	}
	return list
}

// TestSumsAgree holds every rule declared as a sum to its terms: gives − takes over the seats is the margin its check finds.
func TestSumsAgree(t *testing.T) {
	stock, err := catalog.Embedded()
	require.NoError(t, err)
	r := rand.New(rand.NewPCG(11, 3))
	compared := map[string]int{}
	for _, n := range needsOfBriefs(t) {
		n.Wish.InStock, n.Wish.Avoid = true, []string{stock.Drives[0].Maker}
		for range 40 {
			b := randomBuild(r, stock)
			for _, rule := range All {
				if rule.Sum == nil {
					continue
				}
				v := NewView(b, n)
				margins := v.Run(rule)
				if len(margins) == 0 || margins[0].Verdict == Unknown {
					continue
				}
				require.Len(t, margins, 1, rule.ID)
				diff := margins[0].Diff().N
				var sum int64
				v = NewView(b, n)
				v.Run(rule)
				for _, s := range rule.Reads {
					gives, takes := rule.Sum.Term(v, s)
					require.GreaterOrEqual(t, gives, int64(0))
					require.GreaterOrEqual(t, takes, int64(0))
					sum += gives - takes
					if !b.Filled(s) {
						require.Zero(t, gives, "%s gives from the empty seat %s", rule.ID, s)
						require.Zero(t, takes, "%s takes for the empty seat %s", rule.ID, s)
					}
				}
				require.Equal(t, diff, sum, rule.ID)
				compared[rule.ID]++
			}
		}
	}
	for _, id := range []string{"budget", "stock", "serve-boot", "wish-makers"} {
		require.NotZero(t, compared[id], id)
	}
}
