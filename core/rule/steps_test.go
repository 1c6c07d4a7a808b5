package rule

import (
	"math/rand/v2"
	"slices"
	"testing"

	"slipfit/catalog"
	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/unit"

	"github.com/stretchr/testify/require"
)

// TestSteps holds every rule to the steps it names: a figure that reaches the same of their values gives the same verdicts.
func TestSteps(t *testing.T) {
	stock, err := catalog.Embedded()
	require.NoError(t, err)
	// stepped sets a figure of the part in a seat that has one to another value
	stepped := map[string]func(b *build.Build, s build.Seat, to func(was int64) int64) bool{
		"Drive.Read": func(b *build.Build, s build.Seat, to func(was int64) int64) bool {
			for _, in := range []struct {
				seat build.Seat
				of   *build.Storage
			}{{build.Boot, &b.Boot}, {build.Cache, &b.Cache}, {build.Archive, &b.Archive}} {
				if in.seat != s || in.of.Drive == nil {
					continue
				}
				was, known := in.of.Drive.Read.Get()
				other := *in.of.Drive
				other.Read.Set(unit.Throughput(to(int64(was))))
				in.of.Drive = &other
				return known
			}
			return false
		},
	}
	r := rand.New(rand.NewPCG(20, 52))
	for _, rule := range All {
		for _, step := range rule.Steps {
			require.Contains(t, stepped, step.Field, "rule %s", rule.ID)
			changed, failed, told := 0, 0, 0
			for range 20_000 {
				b := randomBuild(r, stock)
				n := &brief.Needs{}
				for _, res := range []brief.Resource{brief.BootRead, brief.CacheWrite, brief.ArchiveWrite} {
					if r.IntN(2) == 0 {
						n.By[res] = brief.Need{Resource: res, Floor: r.Int64N(12_000), Reason: "the test asks it"}
					}
				}
				want := verdicts(b, rule, n)
				from := step.From(n)
				slices.Sort(from)
				other := *b
				s := build.Seat(r.IntN(int(build.Seats)))
				any := int64(0)
				if !stepped[step.Field](&other, s, func(was int64) int64 {
					at, _ := slices.BinarySearch(from, was+1)
					low, high := int64(0), from[len(from)-1]*2
					if at > 0 {
						low = from[at-1]
					}
					if at < len(from) {
						high = from[at]
					}
					any = r.Int64N(from[len(from)-1])
					return low + r.Int64N(max(high-low, 1))
				}) {
					continue
				}
				changed++
				require.Equal(t, want, verdicts(&other, rule, n), "rule %s, %s", rule.ID, step.Field)
				if slices.ContainsFunc(want, func(m Margin) bool { return !m.Verdict.Passes() }) {
					failed++
				}
				stepped[step.Field](&other, s, func(int64) int64 { return any })
				if !slices.EqualFunc(want, verdicts(&other, rule, n), func(a, b Margin) bool { return a.Verdict == b.Verdict }) {
					told++
				}
			}
			t.Logf("%s, %s: %d figures changed within their step, %d builds failed; of any value %d changed a verdict", rule.ID, step.Field, changed, failed, told)
			require.Greater(t, changed, 1000)
			require.Greater(t, failed, 100)
			require.Greater(t, told, 10)
		}
	}
}

// verdicts is what a rule finds of a build that counts: every verdict that is not advice, and what it is worth.
func verdicts(b *build.Build, r *Rule, n *brief.Needs) []Margin {
	var list []Margin
	for _, m := range NewView(b, n).Run(r) {
		if !m.Advice {
			list = append(list, Margin{Subject: m.Subject, Verdict: m.Verdict, Worth: m.Worth})
		}
	}
	return list
}
