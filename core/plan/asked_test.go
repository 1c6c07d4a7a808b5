package plan

import (
	"slices"
	"testing"

	"slipfit/core/rule"

	"github.com/stretchr/testify/require"
)

// earlyAsks is how often the early queries of a problem were asked that are slow to ask.
func earlyAsks(p *Problem) int {
	n := 0
	for _, f := range p.many {
		if f.early != nil && f.cost > 0 {
			n += f.query.asks
		}
	}
	return n
}

// TestWholeChoicesAreAskedNothingEarly: whether a whole choice stands its rules say, and what they say needs no early query. It holds of a
// choice remembered, and of options put into one for open choices, which are found to stand or not as the rules prove it.
func TestWholeChoicesAreAskedNothingEarly(t *testing.T) {
	stock := generic(t)
	stood, fell := 0, 0
	for _, trade := range briefed(t, stock) {
		needs := *trade.needs
		needs.Budget = 0 // so that no option is too dear
		p, err := New(stock, Ask{Needs: &needs})
		require.NoError(t, err)
		p.begin(t.Context())
		found := p.least().best
		require.NotNil(t, found, trade.name)
		p, err = New(stock, Ask{Needs: &needs})
		require.NoError(t, err)
		p.begin(t.Context())
		require.True(t, p.admits(found), trade.name)
		w := &opening{Problem: p, tells: make([][]*factor, len(p.cols))}
		for _, col := range p.cols {
			w.best = append(w.best, make([]*leaf, len(col.options)))
		}
		for c, col := range p.cols {
			for o := col.live.next(0); o >= 0; o = col.live.next(o + 1) {
				clear(w.best[c])
				w.swap(found, c, o)
				if o%7 > 0 {
					continue
				}
				with := leaf{pick: slices.Clone(found.pick)}
				with.pick[c] = o
				proof := rule.Prove(p.build(&with), &needs)
				require.Equal(t, proof.Stands(), w.best[c][o] != nil, "%s: %s", trade.name, col.options[o].ID())
				if proof.Stands() {
					stood++
				} else {
					fell++
				}
			}
		}
		require.Zero(t, earlyAsks(p), trade.name)
	}
	require.Greater(t, stood, 50)
	require.Greater(t, fell, 50)
}

// TestOnlyPredictionsMadeCount runs one search twice on one index: the effort of the second is its nodes, for all that is predicted is
// remembered by then, and that of the first is more by a round number of predictions; but where nothing is predicted.
func TestOnlyPredictionsMadeCount(t *testing.T) {
	stock := generic(t)
	var predicting []string
	for _, r := range rule.All {
		if cost(&query{rule: r}) > 0 {
			predicting = append(predicting, r.ID)
		}
	}
	for _, trade := range briefed(t, stock) {
		x := NewIndex(stock)
		effort := func(lift ...string) (effort, nodes int64) {
			p, err := x.Problem(Ask{Needs: trade.needs, Lift: lift})
			require.NoError(t, err)
			p.begin(t.Context())
			s := newSearch(p.priceBound(), p.purse)
			s.found = func(s *search) { s.limit = s.leaf().price - p.fixed - 1 }
			s.run()
			return s.effort, p.watch.course.Nodes
		}
		figures, nodes := effort(predicting...)
		require.Equal(t, nodes, figures, trade.name)
		first, nodes := effort(rule.Noise.ID) // what that hears of cores no index keeps
		require.Greater(t, first, nodes, trade.name)
		require.Zero(t, (first-nodes)%slowEffort, trade.name)
		again, nodes := effort(rule.Noise.ID)
		require.Equal(t, nodes, again, trade.name)
	}
}

// TestAllSuppliesCountOnce asks of all supplies whether a build fails whichever of them feeds it: it counts as a prediction
// the first time, where one is made, and as nothing after that.
func TestAllSuppliesCountOnce(t *testing.T) {
	stock := generic(t)
	made := 0
	for _, trade := range briefed(t, stock) {
		p, err := New(stock, Ask{Needs: trade.needs})
		require.NoError(t, err)
		p.begin(t.Context())
		s := newSearch(p.priceBound(), p.purse)
		x := p.fedBy()
		for _, f := range p.many {
			if f.twins == nil {
				continue
			}
			f.twins.list = make([]*factor, 1+len(x.groups))
			ask := func() (effort, asked int64) {
				effort, asked = s.effort, p.index.checks
				s.failsWith(&due{factor: f}, 0, x.all)
				return s.effort - effort, p.index.checks - asked
			}
			effort, asked := ask()
			require.Equal(t, slowEffort*min(1, asked), effort, "%s: %s", trade.name, f.rule.ID)
			made += int(asked)
			effort, _ = ask()
			require.Zero(t, effort, "%s: %s", trade.name, f.rule.ID)
		}
	}
	require.Greater(t, made, 20)
}
