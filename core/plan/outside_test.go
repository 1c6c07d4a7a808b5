//go:build !js

package plan

import (
	"bytes"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"reflect"
	"regexp"
	"slices"
	"strconv"
	"testing"

	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/grow"
	"slipfit/core/part"
	"slipfit/core/rule"
	"slipfit/core/unit"

	"github.com/crillab/gophersat/solver"
	"github.com/stretchr/testify/require"
)

// outside solves a written model with a pseudo-boolean solver that knows nothing of parts: the price or the value of the
// optimum, what is settled included, and the option picked in every column; ok is false where it proves that nothing stands.
func outside(t *testing.T, m *Model, o Objective) (optimum int64, pick []int, ok bool) {
	t.Helper()
	pb, err := solver.ParseOPB(bytes.NewReader(m.OPB(o)))
	require.NoError(t, err)
	if pb.Status == solver.Unsat {
		return 0, nil, false
	}
	a := solver.New(pb).Optimal(nil, nil)
	if a.Status == solver.Unsat {
		return 0, nil, false
	}
	require.Equal(t, solver.Sat, a.Status)
	pick = make([]int, len(m.cols))
	for c, at := range m.at {
		pick[c] = -1
		for option, v := range at {
			if v >= 0 && v < len(a.Model) && a.Model[v] {
				require.Equal(t, -1, pick[c], "two options in one seat")
				pick[c] = option
			}
		}
		require.GreaterOrEqual(t, pick[c], 0, "a seat without an option")
	}
	if o.Worth {
		return m.reach(o) - int64(a.Weight), pick, true
	}
	return m.reach(o) + int64(a.Weight), pick, true
}

// build makes the build of a pick.
func (m *Model) build(p *Problem, pick []int) *build.Build {
	b := p.base
	for c, o := range pick {
		b.Set(m.cols[c].options[o])
	}
	return &b
}

// outsideAll solves by no-goods: whatever the solver finds is put to the real rules, and what fails is excluded with all
// that the failing rule cannot tell from it, until what it finds stands.
func outsideAll(t *testing.T, p *Problem, m *Model, o Objective) (optimum int64, rounds int, ok bool) {
	t.Helper()
	for {
		optimum, pick, ok := outside(t, m, o)
		if !ok {
			return 0, rounds, false
		}
		proof := rule.Prove(m.build(p, pick), p.ask.Needs)
		if proof.Stands() {
			return optimum, rounds, true
		}
		rounds++
		m.noGood(t, p, pick)
	}
}

// noGood excludes a pick and all that the rule which fails it cannot tell from it; of several the one of fewest columns.
func (m *Model) noGood(t *testing.T, p *Problem, pick []int) {
	t.Helper()
	var best *factor
	for _, f := range p.many {
		options := slices.Clone(f.others)
		for _, c := range f.open {
			options[f.at[c]] = pick[c]
		}
		if (best == nil || len(f.open) < len(best.open)) && f.ask(p, options) == failed {
			best = f
		}
	}
	require.NotNil(t, best, "the rules fail what the planner would let stand")
	in := make([]set, len(best.open))
	for i, c := range best.open {
		k := best.look(p).by[best.at[c]]
		in[i] = make(set, len(m.live[c]))
		for o := m.live[c].next(0); o >= 0; o = m.live[c].next(o + 1) {
			if k.of[o] == k.of[pick[c]] {
				in[i].add(o)
			}
		}
	}
	m.notAll(best.rule.ID, best.open, in)
}

// exact is the problem without the rules that no rows can hold, and its model, which leaves nothing out.
func exact(t *testing.T, stock *part.Stock, needs *brief.Needs, valued bool) (*Problem, *Model) {
	t.Helper()
	ask := Ask{Needs: needs}
	for {
		p, err := New(stock, ask)
		require.NoError(t, err)
		m := model(t, p, valued)
		if len(m.Left()) == 0 {
			return p, m
		}
		for _, r := range m.Left() {
			ask.Lift = append(ask.Lift, r.ID)
		}
	}
}

// TestLeastOutside holds the least price to what a general solver proves of the exported model: without the rules that the
// model leaves out, and with all of them.
func TestLeastOutside(t *testing.T) {
	stock := generic(t)
	for _, tr := range briefed(t, stock) {
		t.Run(tr.name, func(t *testing.T) { leastOutside(t, stock, tr.needs) })
	}
}

func leastOutside(t *testing.T, stock *part.Stock, needs *brief.Needs) {
	t.Helper()
	p, m := exact(t, stock, needs, false)
	price, pick, ok := outside(t, m, Objective{})
	a := p.Least(t.Context())
	require.Equal(t, a.Status == Optimal, ok)
	require.Equal(t, int64(a.Price), price)
	if ok {
		require.Equal(t, price, int64(m.build(p, pick).Price()))
	}

	p, err := New(stock, Ask{Needs: needs})
	require.NoError(t, err)
	price, rounds, ok := outsideAll(t, p, model(t, p, false), Objective{})
	b := p.Least(t.Context())
	require.Equal(t, b.Status == Optimal, ok)
	require.Equal(t, int64(b.Price), price)
	t.Logf("rules of rows alone %v; all rules %v after %d no-goods", a.Price, b.Price, rounds)
}

// TestBestOutside holds the greatest value and its least price to what a general solver proves, on stocks of some hundred
// parts drawn from the catalog: what it answers of more takes it minutes.
func TestBestOutside(t *testing.T) {
	all := generic(t)
	stand := 0
	for seed, tr := range briefed(t, all) {
		share := 3
		if slices.Contains([]string{"cutting-room", "local-models", "museum-pottery"}, tr.name) {
			share = 4
		}
		t.Run(tr.name, func(t *testing.T) {
			if bestOutside(t, drawn(all, share, uint64(seed)), tr.needs) {
				stand++
			}
		})
	}
	require.Greater(t, stand, 4)
}

// drawn draws a stock of so great a share of every kind of part.
func drawn(all *part.Stock, share int, seed uint64) *part.Stock {
	r := rand.New(rand.NewPCG(seed, 9))
	s := *all
	s.Cases, s.Boards = sample(r, all.Cases, len(all.Cases)/share), sample(r, all.Boards, len(all.Boards)/share)
	s.Processors, s.Memory = sample(r, all.Processors, len(all.Processors)/share), sample(r, all.Memory, len(all.Memory)/share)
	s.Coolers, s.Graphics = sample(r, all.Coolers, len(all.Coolers)/share), sample(r, all.Graphics, len(all.Graphics)/share)
	s.Supplies, s.Drives = sample(r, all.Supplies, len(all.Supplies)/share), sample(r, all.Drives, len(all.Drives)/share)
	s.Cards = sample(r, all.Cards, len(all.Cards)/share)
	return &s
}

func bestOutside(t *testing.T, stock *part.Stock, needs *brief.Needs) bool {
	t.Helper()
	p, err := New(stock, Ask{Needs: needs})
	require.NoError(t, err)
	a := p.Best(t.Context())
	if a.Status == Infeasible {
		_, _, ok := outsideAll(t, p, model(t, p, false), Objective{})
		require.False(t, ok)
		return false
	}
	m := model(t, p, true)
	worth, rounds, ok := outsideAll(t, p, m, Objective{Worth: true})
	require.Equal(t, a.Status == Optimal, ok)
	require.Equal(t, a.Worth, worth)
	price, more, ok := outsideAll(t, p, m, Objective{AtLeast: worth})
	require.True(t, ok)
	require.Equal(t, int64(a.Price), price)
	t.Logf("value %d for %v after %d and %d no-goods", a.Worth, a.Price, rounds, more)
	return true
}

// TestWrittenForOthers gives the files written to a solver of linear programs, GLPK's glpsol, where it is installed: the same
// least price, the same greatest value and the same least price of that, on the whole catalog.
func TestWrittenForOthers(t *testing.T) {
	if _, err := exec.LookPath("glpsol"); err != nil {
		t.Skip("glpsol is not installed (Debian: glpk-utils)")
	}
	stock := generic(t)
	for _, tr := range briefed(t, stock) {
		t.Run(tr.name, func(t *testing.T) {
			p, m := exact(t, stock, tr.needs, true)
			best := p.Best(t.Context())
			require.Equal(t, Optimal, best.Status)
			require.Equal(t, best.Worth, m.Settled()+solved(t, m.LP(Objective{Worth: true})))
			require.Equal(t, best.Price, m.Fixed()+unit.Money(solved(t, m.LP(Objective{AtLeast: best.Worth}))))
			least := p.Least(t.Context())
			require.Equal(t, least.Price, m.Fixed()+unit.Money(solved(t, m.LP(Objective{}))))
		})
	}
}

// solved is the optimum that glpsol finds of a file.
func solved(t *testing.T, lp []byte) int64 {
	t.Helper()
	in, out := filepath.Join(t.TempDir(), "model.lp"), filepath.Join(t.TempDir(), "optimum.txt")
	require.NoError(t, os.WriteFile(in, lp, 0o644))
	said, err := exec.Command("glpsol", "--lp", in, "-o", out).CombinedOutput()
	require.NoError(t, err, "%s", said)
	text, err := os.ReadFile(out)
	require.NoError(t, err)
	require.Contains(t, string(text), "INTEGER OPTIMAL")
	found := regexp.MustCompile(`Objective: .* = ([0-9.e+-]+) \(`).FindSubmatch(text)
	require.NotNil(t, found, "%s", text[:min(len(text), 400)])
	optimum, err := strconv.ParseFloat(string(found[1]), 64)
	require.NoError(t, err)
	return int64(math.Round(optimum))
}

// TestGrownOutside does both on stocks grown from a seed.
func TestGrownOutside(t *testing.T) {
	for _, seed := range []uint64{1, 2} {
		stock, err := grow.Stock(generic(t), 800, seed)
		require.NoError(t, err)
		for _, tr := range briefed(t, stock) {
			if slices.Contains([]string{"bird-sound", "museum-pottery"}, tr.name) {
				t.Run(fmt.Sprintf("%s-%d", tr.name, seed), func(t *testing.T) { leastOutside(t, stock, tr.needs) })
			}
		}
	}
}

// TestModelHoldsTheRules puts picks near and far from a good build to the rows and to the real rules: what the rows let stand
// passes every rule that is not left out, at the worth the rows tell, and what the rules let stand satisfies every row.
func TestModelHoldsTheRules(t *testing.T) {
	stock := generic(t)
	r := rand.New(rand.NewPCG(11, 4))
	held, broken := 0, 0
	for _, tr := range briefed(t, stock) {
		if !slices.Contains([]string{"cutting-room", "museum-pottery", "silent-studio"}, tr.name) {
			continue
		}
		p, err := New(stock, Ask{Needs: tr.needs})
		require.NoError(t, err)
		m := model(t, p, true)
		left := m.Left()
		near := m.pick(t, p.Least(t.Context()).Build)
		for range 1500 {
			pick := slices.Clone(near)
			for range 1 + r.IntN(3) {
				c := r.IntN(len(pick))
				asked := wanted(p.cols[c].seat, tr.needs)
				if o := r.IntN(len(p.cols[c].options)); asked == nil || asked(p.cols[c].options[o]) {
					pick[c] = o
				}
			}
			b := m.build(p, pick)
			proof := rule.Prove(b, tr.needs)
			worth, holds := m.hold(pick)
			if proof.Stands() {
				require.True(t, holds, "%s: the rows exclude a build that stands: %v", tr.name, pick)
			}
			if !holds {
				broken++
				continue
			}
			held++
			require.Equal(t, proof.Worth, worth, "%s: %v", tr.name, pick)
			for _, margin := range proof.Margins {
				if !margin.Advice && !margin.Passes() {
					require.Contains(t, left, margin.Rule, "%s: the rows let %v stand", tr.name, pick)
				}
			}
		}
	}
	require.Greater(t, held, 300)
	require.Greater(t, broken, 300)
}

// pick finds the option of every column that a build has.
func (m *Model) pick(t *testing.T, b *build.Build) []int {
	t.Helper()
	pick := make([]int, len(m.cols))
	for c, col := range m.cols {
		pick[c] = slices.IndexFunc(col.options, func(o build.Option) bool {
			x := *b
			x.Set(o)
			return reflect.DeepEqual(x, *b)
		})
		require.GreaterOrEqual(t, pick[c], 0, "seat %s", col.seat)
	}
	return pick
}

// hold evaluates the rows at a pick: whether some ways of the valued factors satisfy them all, and the worth then.
func (m *Model) hold(pick []int) (worth int64, holds bool) {
	on := make([]bool, len(m.vars))
	worth = m.settled
	for c, o := range pick {
		v := m.at[c][o]
		if v < 0 {
			return 0, false
		}
		on[v] = true
		worth += m.vars[v].worth
	}
	of := map[int][]*row{} // by way: the rows it stands in
	for i := range m.rows {
		for _, t := range m.rows[i].terms {
			if t.v >= m.sets[len(m.cols)-1].to {
				of[t.v] = append(of[t.v], &m.rows[i])
			}
		}
	}
	for _, s := range m.sets[len(m.cols):] {
		for v := s.from; v < s.to; v++ {
			on[v] = true
			if !slices.ContainsFunc(of[v], func(r *row) bool { return !r.holds(on) }) {
				worth += m.vars[v].worth
				break
			}
			on[v] = false
		}
	}
	return worth, !slices.ContainsFunc(m.rows, func(r row) bool { return !r.holds(on) })
}

func (r *row) holds(on []bool) bool {
	sum := int64(0)
	for _, t := range r.terms {
		if on[t.v] {
			sum += t.k
		}
	}
	return sum == r.least || !r.exactly && sum > r.least
}
