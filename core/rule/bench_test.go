package rule

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// TestRulesInTheirPlace checks that each rule has a file of its own named after it and that the groups follow each other as
// the schedule lists them.
func TestRulesInTheirPlace(t *testing.T) {
	for i, r := range All {
		file := strings.ReplaceAll(r.ID, "-", "_") + ".go"
		source, err := os.ReadFile(file)
		require.NoError(t, err, "rule %s", r.ID)
		require.Contains(t, string(source), `"`+r.ID+`"`, file)
		require.NotNil(t, r.Check, r.ID)
		require.NotEmpty(t, r.Title, r.ID)
		if i > 0 {
			require.GreaterOrEqual(t, r.Group, All[i-1].Group, "rule %s of group %s stands after %s", r.ID, r.Group, All[i-1].ID)
		}
	}
}

// BenchmarkProve proves the whole bench build under no needs and under a few. The aim is less than a millisecond.
func BenchmarkProve(b *testing.B) {
	for _, c := range []struct{ name, needs string }{
		{"parts", `{}`},
		{"needs", `{"screens":[{"width_px":3840,"height_px":2160,"refresh_hz":60,"bits_per_colour":10,"count":2,"owned":true}],
			"by":{"wired":{"floor":1000,"enough":2500},"memory-size":{"floor":16384,"enough":32768}},
			"loads":[{"Activity":"drawing","Processor":50000,"Graphics":80000,"Memory":50000,"Drives":10000,"Hours":1200},
			{"Activity":"writing","Processor":5000,"Hours":800}]}`},
	} {
		b.Run(c.name, func(b *testing.B) {
			build, needs := bench(b, ruleCase{Needs: []byte(c.needs)})
			b.ReportAllocs()
			for b.Loop() {
				Prove(build, needs)
			}
		})
	}
}

// BenchmarkRule runs each rule alone on the bench build, as the planner does.
func BenchmarkRule(b *testing.B) {
	build, needs := bench(b, ruleCase{})
	for _, r := range All {
		b.Run(r.ID, func(b *testing.B) {
			v := NewView(build, needs)
			b.ReportAllocs()
			for b.Loop() {
				v.Run(r)
			}
		})
	}
}
