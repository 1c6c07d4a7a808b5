package plan

import (
	"math/rand/v2"
	"slices"
	"testing"

	"slipfit/core/grow"

	"github.com/stretchr/testify/require"
)

// TestCompany holds what is noted of the options that stand beside one, of each looked at and of all that were turned away with it, to the
// rules asked one by one.
func TestCompany(t *testing.T) {
	grown, err := grow.Stock(generic(t), 1500, 5)
	require.NoError(t, err)
	p, err := New(grown, Ask{Needs: briefed(t, grown)[0].needs})
	require.NoError(t, err)
	r := rand.New(rand.NewPCG(11, 30))
	apart, together, unasked := 0, 0, 0
	for c := range p.cols {
		for q := range p.cols {
			if c == q || len(p.match(c, q).quick) == 0 {
				continue
			}
			m := p.match(c, q)
			for range 12 {
				o := r.IntN(len(p.cols[c].options))
				with := m.company(p, o)
				asked := map[int]bool{}
				for range 40 {
					j := r.IntN(len(p.cols[q].options))
					m.joins(p, with, o, j)
					asked[j] = true
				}
				for j := range p.cols[q].options {
					if !with.looked.has(j) {
						continue
					}
					stands := !slices.ContainsFunc(m.quick, func(f *factor) bool { return f.two(p, c, o, q, j) == failed })
					require.Equal(t, stands, with.stand.has(j), "%s beside %s", p.cols[q].options[j].ID(), p.cols[c].options[o].ID())
					switch {
					case stands:
						together++
					case asked[j]:
						apart++
					default:
						unasked++
					}
				}
			}
		}
	}
	t.Logf("%d stand together, %d apart, %d more turned away with them", together, apart, unasked)
	require.Greater(t, apart, 1000)
	require.Greater(t, together, 1000)
	require.Greater(t, unasked, 1000)
}
