package rule

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestTightest(t *testing.T) {
	for _, c := range []struct {
		about, needs, want string
		none               bool
	}{
		{"the bench's 12 GiB card is a quarter of the way, its 8000 points are half", `{"by":{"all-work":{"floor":6000,"enough":10000,"weight":50},"graphics-memory":{"floor":10240,"enough":18432,"weight":10}}}`, "graphics memory", false},
		{"what is short comes first", `{"by":{"single-work":{"floor":1100,"enough":1200,"weight":1},"graphics-memory":{"floor":12288,"enough":18432,"weight":90}}}`, "one-thread work", false},
		{"equally far: the heavier need", `{"by":{"single-work":{"floor":1000,"enough":1200,"weight":1},"graphics-memory":{"floor":12288,"enough":18432,"weight":90}}}`, "graphics memory", false},
		{"everything is enough", `{"by":{"single-work":{"floor":500,"enough":1000,"weight":1}}}`, "", true},
		{"nothing is asked", `{}`, "", true},
	} {
		b, n := bench(t, ruleCase{Needs: json.RawMessage(c.needs)})
		m, ok := Tightest(b, n)
		require.Equal(t, !c.none, ok, c.about)
		require.Equal(t, c.want, m.Subject, c.about)
	}
}
