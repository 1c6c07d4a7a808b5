package rule

import (
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"slipfit/catalog"
	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/unit"

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
	for _, id := range []string{"stock", "serve-boot", "wish-makers"} {
		require.NotZero(t, compared[id], id)
	}
}

// TestPurseHolds holds every rule that limits what everything bought may cost to that: of a build with a case it finds one margin, of what
// its lines come to, and none where nothing is limited.
func TestPurseHolds(t *testing.T) {
	stock, err := catalog.Embedded()
	require.NoError(t, err)
	r := rand.New(rand.NewPCG(31, 7))
	verdicts := map[Verdict]int{}
	owned, free := 0, 0
	for _, needs := range needsOfBriefs(t) {
		for range 100 {
			b := randomBuild(r, stock)
			b.Set(build.Option{Seat: build.Case, Part: stock.Cases[0], Layout: &stock.Cases[0].Layouts[0]})
			if r.IntN(3) > 0 {
				b.Owned = build.Set(r.Uint64())
			}
			n := *needs
			if r.IntN(5) == 0 {
				n.Budget = 0
			} else {
				n.Budget = max(1, b.Price()+unit.Money(r.IntN(3)-1)*unit.Money(1+r.IntN(2)*r.IntN(100_000)))
			}
			for _, rule := range All {
				if rule.Purse == nil {
					continue
				}
				most, limited := rule.Purse(&n)
				margins := NewView(b, &n).Run(rule)
				if !limited {
					require.Empty(t, margins, rule.ID)
					free++
					continue
				}
				require.Len(t, margins, 1, rule.ID)
				require.Equal(t, int64(most), margins[0].Have.N, rule.ID)
				require.Equal(t, int64(b.Price()), margins[0].Need.N, rule.ID)
				require.Equal(t, b.Price() <= most, margins[0].Verdict == Snug, rule.ID)
				verdicts[margins[0].Verdict]++
				if b.Owned != 0 {
					owned++
				}
			}
		}
	}
	require.Greater(t, verdicts[Snug], 100)
	require.Greater(t, verdicts[Short], 100)
	require.Greater(t, owned, 100)
	require.Greater(t, free, 100)
}

// TestBriefsCanBeServed requires that the generic stock serves every brief seat by seat, within its budget: the
// cheapest processor, card, memory and drives that pass the rules of serving, and the cheapest case, board, cooler and supply. What goes together is the planner's business.
func TestBriefsCanBeServed(t *testing.T) {
	stock, err := catalog.Embedded()
	require.NoError(t, err)
	for name, n := range needsOfBriefs(t) {
		t.Run(name, func(t *testing.T) {
			const dear = unit.Money(1 << 40)
			least := func(options []build.Option, rules ...*Rule) unit.Money {
				best := dear
				for _, o := range options {
					var b build.Build
					b.Set(o)
					if o.Price() < best && serves(&b, n, rules) {
						best = o.Price()
					}
				}
				return best
			}
			work := []*Rule{&ServeSingle, &ServeAllWork, &ServeThreads}
			pictures := []*Rule{&ServeDraw, &ServeCompute, &ServeGraphicsMemory}
			processors := options(build.Processor, stock.Processors, 1)
			card := least(options(build.Graphics, stock.Graphics, 1), pictures...)
			together := min(least(processors, append(work, pictures...)...), least(processors, work...)+card)
			memory := least(options(build.Memory, stock.Memory, 2), &ServeMemory)
			storage := dear
			drives := []*Rule{&ServeBoot, &ServeBootRead, &ServeCacheWrite, &ServeArchive, &ServeArchiveWrite, &ServeEndurance, &SingleCopy}
			for _, boot := range options(build.Boot, stock.Drives, 1) {
				for _, archive := range append(options(build.Archive, stock.Drives, 2), build.Option{Seat: build.Archive}) {
					var b build.Build
					b.Set(boot)
					b.Set(archive)
					if p := boot.Price() + archive.Price(); p < storage && serves(&b, n, drives) {
						storage = p
					}
				}
			}
			require.Less(t, together, dear, "no processor, or no card, of the stock serves")
			require.Less(t, memory, dear, "no memory of the stock serves")
			require.Less(t, storage, dear, "no drives of the stock serve")
			sum := together + memory + storage + least(options(build.Case, stock.Cases, 1)) + least(options(build.Board, stock.Boards, 1)) +
				least(options(build.Cooler, stock.Coolers, 1)) + least(options(build.Supply, stock.Supplies, 1))
			for _, c := range n.Decode {
				require.True(t, slices.ContainsFunc(stock.Processors, func(p *part.Processor) bool {
					return p.Graphics != nil && slices.Contains(p.Graphics.Decode, c.Codec)
				}) || slices.ContainsFunc(stock.Graphics, func(g *part.Graphics) bool { return slices.Contains(g.Decode, c.Codec) }), "no part reads %s", c.Codec)
			}
			for _, id := range stock.Shop.Labour {
				s, ok := part.Find(stock.Services, id)
				require.True(t, ok)
				sum += s.Price
			}
			t.Logf("processor and card %s, memory %s, drives %s; in all at least %s of %s", together, memory, storage, sum, n.Budget)
			require.LessOrEqual(t, sum, n.Budget, "the budget is short before anything has to fit")
		})
	}
}

// options is every part of a kind, each once and up to so many times.
func options[P interface{ Common() *part.Article }](s build.Seat, parts []P, most int) []build.Option {
	var list []build.Option
	for _, p := range parts {
		for count := 1; count <= most; count++ {
			o := build.Option{Seat: s, Part: p, Count: count}
			if c, ok := any(p).(*part.Case); ok {
				o.Layout = &c.Layouts[0]
			}
			list = append(list, o)
		}
	}
	return list
}

// serves reports a build that passes the rules.
func serves(b *build.Build, n *brief.Needs, rules []*Rule) bool {
	v := NewView(b, n)
	for _, r := range rules {
		for _, m := range v.Run(r) {
			if !m.Passes() && !m.Advice {
				return false
			}
		}
	}
	return true
}

// TestBoundsHold holds every rule to its bounds: none of them is negative on a build that the rule lets stand.
func TestBoundsHold(t *testing.T) {
	stock, err := catalog.Embedded()
	require.NoError(t, err)
	r := rand.New(rand.NewPCG(23, 3))
	stood, failed := map[string]int{}, map[string]int{}
	for _, n := range needsOfBriefs(t) {
		for range 200 {
			b := randomBuild(r, stock)
			v := NewView(b, n)
			for _, rule := range All {
				if len(rule.Bounds) == 0 {
					continue
				}
				margins := v.Run(rule)
				stands := passes(margins)
				if len(margins) == 0 && !v.both(build.Compulsory()...) {
					continue // a seat that it needs may be empty
				}
				least := int64(0)
				for i := range rule.Bounds {
					sum, stated := int64(0), true
					for _, s := range rule.Reads {
						gives, takes, known := v.Term(rule, &rule.Bounds[i], s)
						sum += gives - takes
						stated = stated && known
					}
					if stated {
						least = min(least, sum)
					}
				}
				if stands {
					stood[rule.ID]++
					require.Zero(t, least, "rule %s", rule.ID)
				} else if least < 0 {
					failed[rule.ID]++
				}
			}
		}
	}
	for _, rule := range All {
		if len(rule.Bounds) > 0 {
			require.Greater(t, stood[rule.ID], 100, "rule %s", rule.ID)
			require.Greater(t, failed[rule.ID], 100, "rule %s", rule.ID)
		}
	}
}

// suffices reports a build of which all terms are known of the sums that suffice for a rule, and none of the sums is negative.
func suffices(v *View, r *Rule) bool {
	var sums []Sum
	switch {
	case r.Sum != nil:
		sums = []Sum{*r.Sum}
	case r.Suffices != nil:
		sums = r.Suffices(v.Needs)
	default:
		return false
	}
	for i := range sums {
		left := int64(0)
		for _, s := range r.Reads {
			gives, takes, known := v.Term(r, &sums[i], s)
			if left += gives - takes; !known {
				return false
			}
		}
		if left < 0 {
			return false
		}
	}
	return true
}

// TestSufficesHolds holds every rule to the sums that suffice for it: a build stands by the rule where none of them is negative.
func TestSufficesHolds(t *testing.T) {
	stock, err := catalog.Embedded()
	require.NoError(t, err)
	r := rand.New(rand.NewPCG(29, 5))
	sufficed, failed := map[string]int{}, map[string]int{}
	for _, n := range needsOfBriefs(t) {
		for range 200 {
			b := randomBuild(r, stock)
			needs := *n
			if r.IntN(2) == 0 {
				needs.Place.Circuit.Set(unit.Current(1000 + r.IntN(3000)))
			}
			v := NewView(b, &needs)
			for _, rule := range All {
				stands := passes(v.Run(rule))
				switch {
				case suffices(v, rule):
					require.True(t, stands, "rule %s", rule.ID)
					sufficed[rule.ID]++
				case !stands:
					failed[rule.ID]++
				}
			}
		}
	}
	for _, rule := range All {
		if rule.Suffices != nil {
			require.Greater(t, sufficed[rule.ID], 100, "rule %s", rule.ID)
			require.Greater(t, failed[rule.ID], 20, "rule %s", rule.ID)
		}
	}
}
