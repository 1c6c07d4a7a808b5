package main

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

func TestMedianAndWorst(t *testing.T) {
	require.Equal(t, int64(0), median(nil))
	require.Equal(t, int64(7), median([]int64{7}))
	require.Equal(t, int64(5), median([]int64{9, 1, 5}))
	require.Equal(t, int64(4), median([]int64{9, 1, 5, 3}))
	figures := []int64{3, 2, 1}
	require.Equal(t, int64(2), median(figures))
	require.Equal(t, []int64{3, 2, 1}, figures, "the figures stay in their order")
	require.Equal(t, int64(0), worst(nil))
	require.Equal(t, int64(9), worst([]int64{4, 9, 1}))
}

func TestRatios(t *testing.T) {
	require.Equal(t, 2.5, ratio(5, 2))
	require.Equal(t, 0.0, ratio(5, 0))
	require.InDelta(t, 1, exponent(3, 120, 500, 20_000), 1e-12)
	require.InDelta(t, 2, exponent(3, 12, 500, 1000), 1e-12)
	require.InDelta(t, 0, exponent(3, 3, 500, 1000), 1e-12)
	require.Equal(t, 0.25, share(1, 4))
	require.Equal(t, 0.0, share(1, 0))
}

func TestSum(t *testing.T) {
	c := sum([]sample{
		{Figure: 10, Proven: true, Found: true},
		{Figure: 30, Proven: true}, // proven that there is none
		{Figure: 500, Found: true, Gap: 0.02},
		{Figure: 400, Found: true, Gap: 0.11},
		{Figure: 450},
	})
	require.Equal(t, cell{asked: 5, proven: 2, answered: 2, median: 400, worst: 500, gap: 0.11}, c)
	require.Equal(t, []string{"0.40 µs / 0.50 µs", "2 of 5 proven", "to 11 % gap", "1 without answer"}, c.lines(named(leastNew)))
	require.Equal(t, []string{"not asked"}, new(cell).lines(named(leastNew)))
	held := sum([]sample{{Figure: 150_400_000}, {Figure: 12_000_000}, {Figure: 1_230_000}})
	require.Equal(t, []string{"12.0 MB / 150 MB"}, held.lines(named(weight)))
}

func TestGoals(t *testing.T) {
	g := goal{2000, 10 * ms, 100 * time.Millisecond}
	at := func(middle, most int64, proven int) *cell {
		return &cell{asked: 3, proven: proven, median: middle, worst: most}
	}
	for _, c := range []struct {
		*cell
		met bool
	}{
		{at(10*ms, 100*ms, 3), true},
		{at(10*ms+1, 100*ms, 3), false},
		{at(10*ms, 100*ms+1, 3), false},
		{at(10*ms, 100*ms, 2), false}, // one answer not proven
		{&cell{}, false},
	} {
		require.Equal(t, c.met, c.meets(g), "%+v", *c.cell)
	}
	require.True(t, at(10*ms, 9000*ms, 3).meets(goal{2000, 10 * ms, 0}), "no goal for the worst")

	m := named(bestNew)
	require.Equal(t, "2,000: 10 ms, worst 100 ms, met", at(10*ms, 100*ms, 3).held(m, m.goals[0], "2,000"))
	require.Equal(t, "2,000: 10 ms, worst 100 ms, MISSED", at(10*ms, 100*ms, 2).held(m, m.goals[0], "2,000"))
	require.Equal(t, "2,000: 10 ms, worst 100 ms, not asked", new(cell).held(m, m.goals[0], "2,000"))
	m = named(weight)
	require.Equal(t, "20,000: 200 MB, met", at(200_000_000, 300_000_000, 3).held(m, m.goals[0], "20,000"))
}

func TestWorkerTimes(t *testing.T) {
	m := named(leastNew)
	like := func(brief string, figure int64, price int64, proven bool) sample {
		s := sample{Measure: leastNew, Column: 2000, Seed: 1, Brief: brief, Figure: figure, Proven: proven, Found: true}
		s.Price = 100
		s.Worth = price
		return s
	}
	native := []sample{like("a", 10, 1, true), like("b", 20, 2, true), like("c", 30, 3, true), like("d", 5, 4, false)}
	lean := like("a", 1, 1, true)
	lean.Lean = true
	p := &paged{samples: []sample{like("a", 30, 1, true), like("b", 80, 2, true), like("c", 210, 3, true), like("d", 900, 4, true)}}
	both, apart := p.pairs(m, append(native, lean))
	require.Len(t, both, 4)
	require.Zero(t, apart)
	proven, middle, most := times(both)
	require.Equal(t, 3, proven)
	require.Equal(t, 4.0, middle) // 80 for 20
	require.Equal(t, 7.0, most)   // 210 for 30

	p.samples[1].Worth++
	_, apart = p.pairs(m, native)
	require.Equal(t, 1, apart)
}

func TestSolversCompared(t *testing.T) {
	s := &solved{samples: []yard{
		{"glpsol", leastOutside, 0, 10, 40, true, true},
		{"glpsol", leastOutside, 0, 10, 900, true, true},
		{"glpsol", leastOutside, 0, 10, 70, true, true},
		{"glpsol", leastOutside, 0, 10, 5000, false, false},
		{"cbc", leastOutside, 0, 10, 40, true, true},
		{"cbc", leastOutside, 0, 10, 40, true, false},
		{"clasp", leastOutside, 0, 10, 40, false, false},
	}}
	require.Equal(t, []string{"× 7.00 / × 90.0", "3 of 4 equal and proven"}, s.compared("glpsol", leastOutside, 0))
	require.Equal(t, []string{"1 optima DIFFER", "1 of 2 equal and proven"}, s.compared("cbc", leastOutside, 0))
	require.Equal(t, []string{"no ratio", "0 of 1 equal and proven"}, s.compared("clasp", leastOutside, 0))
	require.Equal(t, []string{"not asked"}, s.compared("glpsol", leastOutside, 2000))
}

func TestAlike(t *testing.T) {
	few := []sample{{Brief: "a", Seed: 1, Figure: 40}, {Brief: "b", Seed: 2, Figure: 90}}
	many := []sample{{Brief: "a", Seed: 1, Figure: 4}, {Brief: "a", Seed: 2, Figure: 5}, {Brief: "b", Seed: 2, Figure: 6}, {Brief: "c", Seed: 1, Figure: 7}}
	require.Equal(t, []sample{many[0], many[2]}, alike(many, few))
	require.Equal(t, few, alike(few, many))
	require.Empty(t, alike(many, nil))
}

func TestPercent(t *testing.T) {
	require.Equal(t, "0.12", percent(0.00123))
	require.Equal(t, "9.9", percent(0.0987))
	require.Equal(t, "63", percent(0.6321))
	require.Equal(t, "271", percent(2.714))
}

func TestGrouped(t *testing.T) {
	require.Equal(t, "462", grouped(462))
	require.Equal(t, "20,000", grouped(20_000))
	require.Equal(t, "1,234,567", grouped(1_234_567))
}
