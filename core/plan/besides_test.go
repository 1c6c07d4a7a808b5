package plan

import (
	"slices"
	"testing"

	"slipfit/core/build"
	"slipfit/core/predict"
	"slipfit/core/rule"

	"github.com/stretchr/testify/require"
)

// An early question is told what the options that are live bring at least and at most in the seats it leaves out, by how much more those may
// bring that it speaks of too, and what all bring at most.
func TestBesides(t *testing.T) {
	stock := generic(t)
	told, warmer := 0, 0
	for _, tr := range briefed(t, stock) {
		p, err := NewIndex(stock).Problem(Ask{Needs: tr.needs})
		require.NoError(t, err)
		n := len(predict.Asked(tr.needs))
		bring := func(seats []build.Seat) (least, most []int) { // mW
			least, most = make([]int, n), make([]int, n)
			for _, s := range seats {
				c := p.cols[p.colOf[s]]
				var of [][]float64
				for _, o := range c.live.list() {
					var alone build.Build
					alone.Set(c.options[o])
					of = append(of, rule.NewView(&alone, tr.needs).Brings())
				}
				for i := range n {
					by := func(a, b []float64) int { return int(a[i]*1000) - int(b[i]*1000) }
					least[i] += int(slices.MinFunc(of, by)[i] * 1000)
					most[i] += int(slices.MaxFunc(of, by)[i] * 1000)
				}
			}
			return least, most
		}
		whole := func(mW []int, up int) (list []int) {
			for _, x := range mW {
				list = append(list, x/1000+up)
			}
			return list
		}
		for _, q := range p.all() {
			if q.early == nil || len(q.early.Warms) == 0 || q.early.Warms[0] == build.Board || p.colOf[build.Cards] < 0 {
				continue
			}
			q.early, q.fed = &rule.Early{Seats: q.early.Seats, Warms: q.early.Warms, Warmer: q.early.Warmer}, nil
			least, upTo := bring(q.early.Warms)
			for _, s := range q.early.Warmer {
				if coolest, warmest := bring([]build.Seat{s}); !slices.Contains(q.early.Warms, s) {
					for i := range upTo {
						upTo[i] += warmest[i] - coolest[i]
					}
					warmer++
				}
			}
			_, most := bring(predict.Warming)
			want := predict.NewBesides(whole(least, 0), whole(upTo, 1), whole(most, 1))
			require.Equal(t, want.String(), p.besides(q).Heard(0).String(), "%s of %v", q.rule.ID, q.early.Seats)
			told++
		}
	}
	require.Greater(t, told, 40)
	require.Greater(t, warmer, 20)
}
