package plan

import (
	"math/rand/v2"
	"testing"

	"slipfit/core/grow"

	"github.com/stretchr/testify/require"
)

// TestStrain holds the options that are no easier than one to what the rule itself says of them.
func TestStrain(t *testing.T) {
	grown, err := grow.Stock(generic(t), 600, 3)
	require.NoError(t, err)
	p, err := New(grown, Ask{Needs: briefed(t, grown)[0].needs})
	require.NoError(t, err)
	r := rand.New(rand.NewPCG(20, 26))
	said := map[string]int{}
	for _, q := range p.all() {
		if len(q.rule.Harder)+len(q.rule.Easier) == 0 {
			continue
		}
		f := p.newFactor(q)
		for range 60_000 {
			var options []int
			for _, c := range q.cols {
				options = append(options, r.IntN(len(p.cols[c].options)))
			}
			i := r.IntN(len(options))
			on := f.strain(p, q.cols[i])
			if on == nil || f.ask(p, options) != failed {
				continue
			}
			than, over := options[i], on.over(options[i])
			require.True(t, over.has(than))
			for o := over.next(0); o >= 0; o = over.next(o + 1) {
				require.True(t, on.noEasier(o, than))
				if options[i] = o; on.seen.of[o] != on.seen.of[than] && r.IntN(8) == 0 {
					require.EqualValues(t, failed, f.ask(p, options), "rule %s: %s is no easier than %s", q.rule.ID, p.cols[q.cols[i]].options[o].ID(), p.cols[q.cols[i]].options[than].ID())
					said[q.rule.ID]++
				}
			}
			for range 20 {
				o := r.IntN(len(p.cols[q.cols[i]].options))
				require.Equal(t, over.has(o), on.noEasier(o, than))
			}
		}
	}
	t.Log(said)
	require.Len(t, said, 4)
	for id, n := range said {
		require.Greater(t, n, 100, "rule %s", id)
	}
}
