//go:build !js

package main

import (
	"bytes"
	"encoding/json"
	"io"
	"os"
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

// TestMain is the program itself where the tests have it measure in a process of its own.
func TestMain(m *testing.M) {
	if len(os.Args) > 1 && os.Args[1] == "-json" {
		main()
		return
	}
	os.Exit(m.Run())
}

// TestRun prints the table of a tiny stock, measured as the page's worker is.
func TestRun(t *testing.T) {
	var out bytes.Buffer
	require.NoError(t, run([]string{"-sizes", "100", "-seeds", "1", "-four", "-outside", "0"}, &out, io.Discard))
	for _, row := range []string{
		"100: 103 parts, grown from seed 1, 8 briefs asked\n", "With every rule\n", "least price, new index ", "8 of 8 proven",
		"10,000: 30 ms, worst 100 ms, not asked", "heap with a kept index", "The page's worker (js/wasm): not asked",
	} {
		require.Contains(t, out.String(), row)
	}
}

// TestLines reads what -json prints of a tiny stock: every question is told before it is asked, and all are proven.
func TestLines(t *testing.T) {
	var out bytes.Buffer
	require.NoError(t, run([]string{"-sizes", "100", "-seeds", "1", "-four", "-json"}, &out, io.Discard))
	var r reading
	for lines := json.NewDecoder(&out); ; {
		var l line
		if err := lines.Decode(&l); err == io.EOF {
			break
		} else {
			require.NoError(t, err)
		}
		if l.Got != nil && l.Got.Measure != weight {
			require.NotNil(t, r.asking)
			require.Equal(t, r.asking.Measure, l.Got.Measure)
		}
		r.take(l)
	}
	require.Nil(t, r.asking)
	require.Equal(t, []stocked{{Column: 100, Parts: 103, Asked: 8, Of: 8}}, r.stocks)
	asked := map[string]int{}
	for _, s := range r.samples {
		require.True(t, s.Proven, "%+v", s)
		require.Positive(t, s.Figure)
		asked[s.Measure]++
	}
	require.Equal(t, map[string]int{leastNew: 8, leastKept: 8, bestNew: 8, bestKept: 8, tight: 8, open: 5, weight: 8}, asked)
}

// TestRemoteEnds ends a process that answers one question and never the next: that one stands in the table without an answer.
func TestRemoteEnds(t *testing.T) {
	set := &setting{sizes: []int{100}, seeds: 1, deadline: time.Second, patience: 300 * time.Millisecond}
	says := `echo '{"asking":{"measure":"least-new","column":100}} {"got":{"measure":"least-new","column":100,"figure":7,"proven":true}} {"asking":{"measure":"best-new","column":100}}'; exec sleep 60`
	var r reading
	require.NoError(t, set.remote([]string{"sh", "-c", says}, &r, io.Discard))
	require.Len(t, r.samples, 2)
	require.Equal(t, sample{Measure: leastNew, Column: 100, Figure: 7, Proven: true}, r.samples[0])
	require.Equal(t, bestNew, r.samples[1].Measure)
	require.False(t, r.samples[1].Proven)
	require.Positive(t, r.samples[1].Figure)
	require.Len(t, r.hung, 1)

	require.ErrorContains(t, set.remote([]string{"sh", "-c", "echo no; exec sleep 60"}, &r, io.Discard), "sh -c echo no")
	require.ErrorContains(t, set.remote([]string{"sh", "-c", "echo wrong >&2; exit 3"}, &r, io.Discard), "exit status 3: wrong")
}

func TestRunRefuses(t *testing.T) {
	for wrong, args := range map[string][]string{
		`sizes: got "many"`:                   {"-sizes", "many"},
		`sizes: got "0"`:                      {"-sizes", "0"},
		`got "extra", want flags alone`:       {"extra"},
		"seeds, deadline and patience: got 0": {"-seeds", "0"},
		"parts: got 30000":                    {"-sizes", "30000", "-json"},
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
