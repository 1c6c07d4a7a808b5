//go:build !js

package main

import (
	"bytes"
	"encoding/json"
	"io"
	"os/exec"
	"testing"
	"time"

	"slipfit/catalog"

	"github.com/stretchr/testify/require"
)

// tiny is a stock so small that it meets but one of the orders.
const tiny = 60

// TestSolversAgree puts the orders of a tiny stock to the solvers installed: every one proves the planner's
// optima.
func TestSolversAgree(t *testing.T) {
	set := &setting{sizes: []int{tiny}, deadline: time.Minute, patience: time.Minute, four: true, outside: tiny}
	found, err := set.solvers(io.Discard)
	require.NoError(t, err)
	for i := range yardsticks {
		name := yardsticks[i].name
		t.Run(name, func(t *testing.T) {
			if _, err := exec.LookPath(name); err != nil {
				require.Contains(t, found.missing, name)
				t.Skipf("%s is not installed", name)
			}
			asked := map[string]int{}
			for _, y := range found.samples {
				if y.solver == name {
					asked[y.question]++
					require.True(t, y.proven, y.question)
					require.True(t, y.equal, y.question)
				}
			}
			require.Equal(t, map[string]int{leastOutside: 1, bestOutside: 1}, asked)
		})
	}
}

// TestRun prints the table of a tiny stock, and measures it as the page's worker is.
func TestRun(t *testing.T) {
	var out bytes.Buffer
	require.NoError(t, run([]string{"-sizes", "100", "-seeds", "1", "-four", "-outside", "0"}, &out, io.Discard))
	for _, row := range []string{"With every rule\n", "least price, new index ", "8 of 8 proven", "10,000: 30 ms, worst 100 ms, not asked", "heap with a kept index", "The page's worker (js/wasm): not asked"} {
		require.Contains(t, out.String(), row)
	}

	out.Reset()
	require.NoError(t, run([]string{"-sizes", "100", "-seeds", "1", "-four", "-json"}, &out, io.Discard))
	var r reading
	require.NoError(t, json.Unmarshal(out.Bytes(), &r))
	require.Equal(t, []stocked{{Column: 100, Parts: 103, Asked: 8, Of: 8}}, r.Stocks)
	asked := map[string]int{}
	for _, s := range r.Samples {
		require.True(t, s.Proven, "%+v", s)
		require.Positive(t, s.Figure)
		asked[s.Measure]++
	}
	require.Equal(t, map[string]int{leastNew: 8, leastKept: 8, bestNew: 8, bestKept: 8, tight: 8, open: 5, heap: 8}, asked)
}

func TestRunRefuses(t *testing.T) {
	for wrong, args := range map[string][]string{
		`sizes: got "many"`:             {"-sizes", "many"},
		`got "extra", want flags alone`: {"extra"},
		"seeds and deadline: got 0":     {"-seeds", "0"},
		"parts: got 30000":              {"-sizes", "30000", "-four"},
	} {
		require.ErrorContains(t, run(args, io.Discard, io.Discard), wrong)
	}
}

// TestSized thins every kind evenly and grows from the seed.
func TestSized(t *testing.T) {
	generic, err := catalog.Embedded()
	require.NoError(t, err)
	s, err := sized(generic, tiny, 1)
	require.NoError(t, err)
	require.Len(t, s.Boards, len(generic.Boards)*tiny/len(generic.Articles()))
	require.Equal(t, []int{1, 3, 5}, thinned([]int{0, 1, 2, 3, 4, 5}, 1, 2))
	s, err = sized(generic, 500, 1)
	require.NoError(t, err)
	require.Len(t, s.Articles(), 500)
	s, err = sized(generic, 0, 1)
	require.NoError(t, err)
	require.Same(t, generic, s)
}
