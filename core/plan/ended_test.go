package plan

import (
	"context"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/rule"

	"github.com/stretchr/testify/require"
)

// countdown is a context that ends when it has been looked at so many times, whatever the clock says; never where that is nought.
type countdown struct {
	context.Context
	left  int
	looks int
	done  chan struct{}
}

func endsAfter(t *testing.T, looks int) *countdown {
	return &countdown{Context: t.Context(), left: looks, done: make(chan struct{})}
}

func (c *countdown) Done() <-chan struct{} {
	if c.looks++; c.looks == c.left {
		close(c.done)
	}
	return c.done
}

// Err tells that it has ended.
func (c *countdown) Err() error {
	if c.left > 0 && c.looks >= c.left {
		return context.DeadlineExceeded
	}
	return nil
}

// hurry is a stock and an ask whose questions are ended early. Looks follow each other so closely that a question can be ended
// nearly anywhere.
type hurry struct {
	t     *testing.T
	r     *rand.Rand
	stock *part.Stock
	ask   Ask
	every int // work between two looks
	tries int // ends of a question that are tried
	early int // answers that were ended early
	found int // those of them with something found
}

// problem poses the ask anew, on an index of its own.
func (e *hurry) problem() *Problem {
	e.t.Helper()
	p, err := New(e.stock, e.ask)
	require.NoError(e.t, err)
	p.watch.every = e.every
	return p
}

// ends asks a question to its end, and then again and again with a context that ends after fewer looks: after few, and anywhere.
func (e *hurry) ends(question func(ctx context.Context)) {
	whole := endsAfter(e.t, 0)
	question(whole)
	for i := range e.tries {
		after := i + 1
		switch {
		case i > e.tries/2:
			after = 1 + e.r.IntN(whole.looks)
		case i > 2:
			after = 1 + int(math.Pow(float64(whole.looks), e.r.Float64()))
		}
		question(endsAfter(e.t, after))
	}
}

// stands holds a build that is found to its proof.
func (e *hurry) stands(b *build.Build) {
	e.t.Helper()
	if b != nil {
		proof := rule.Prove(b, e.ask.Needs)
		require.True(e.t, proof.Stands())
	}
}

// ended counts an answer that was ended early, and holds one that claims a proof to the answer known.
func (e *hurry) ended(a, known *Answer) {
	e.t.Helper()
	e.stands(a.Build)
	switch a.Status {
	case Infeasible:
		require.Equal(e.t, Infeasible, known.Status)
		require.Nil(e.t, a.Build)
	case Optimal:
		require.Equal(e.t, Optimal, known.Status)
		require.Equal(e.t, known.Price, a.Price)
		require.Equal(e.t, known.Worth, a.Worth)
		require.Zero(e.t, a.Certificate.Gap)
	case Feasible:
		e.found++
		fallthrough
	case Unknown:
		e.early++
		require.Equal(e.t, a.Status == Feasible, a.Build != nil)
	}
}

// rising holds what is told while a question is asked: nothing goes back, and at no time is a bound beyond what is found.
func (e *hurry) rising(p *Problem, better func(was, is *Course) bool) *Course {
	last := &Course{Bound: Bound{Worth: math.MaxInt64}}
	p.Told = func(c Course) {
		require.GreaterOrEqual(e.t, c.Nodes, last.Nodes)
		require.GreaterOrEqual(e.t, c.Done, last.Done)
		require.GreaterOrEqual(e.t, c.Found, min(last.Found, 1))
		require.GreaterOrEqual(e.t, c.Bound.Price, last.Bound.Price)
		require.GreaterOrEqual(e.t, c.Bound.Volume, last.Bound.Volume)
		require.GreaterOrEqual(e.t, c.Bound.Noise, last.Bound.Noise)
		require.LessOrEqual(e.t, c.Bound.Worth, last.Bound.Worth)
		if last.Found > 0 {
			require.True(e.t, better(last, &c), "%+v after %+v", c, *last)
		}
		*last = c
	}
	return last
}

// least ends the search for the least price, and for the most value, the least noise and the smallest case.
func (e *hurry) plans() {
	t := e.t
	least := e.problem().Least(t.Context())
	e.ends(func(ctx context.Context) {
		p := e.problem()
		told := e.rising(p, func(was, is *Course) bool { return is.Best.Price <= was.Best.Price })
		a := p.Least(ctx)
		e.ended(&a, &least)
		if least.Build == nil {
			return
		}
		require.LessOrEqual(t, a.Certificate.Final.Price, least.Price)
		require.LessOrEqual(t, told.Bound.Price, least.Price)
		if a.Build != nil {
			require.GreaterOrEqual(t, a.Price, least.Price)
			require.Equal(t, a.Price-a.Certificate.Final.Price, a.Certificate.Gap.Price)
			if told.Found > 0 {
				require.LessOrEqual(t, a.Price, told.Best.Price)
			}
		}
	})
	best := e.problem().Best(t.Context())
	e.ends(func(ctx context.Context) {
		p := e.problem()
		valued := false // the search for value has begun
		told := e.rising(p, func(was, is *Course) bool {
			valued = valued || is.Bound.Worth < math.MaxInt64
			return !valued || is.Best.Worth > was.Best.Worth || is.Best.Worth == was.Best.Worth && is.Best.Price <= was.Best.Price
		})
		a := p.Best(ctx)
		e.ended(&a, &best)
		if best.Build == nil {
			return
		}
		require.GreaterOrEqual(t, told.Bound.Worth, best.Worth)
		if a.Build != nil {
			c := &a.Certificate
			require.LessOrEqual(t, a.Worth, best.Worth)
			require.GreaterOrEqual(t, c.Final.Worth, best.Worth)
			require.LessOrEqual(t, c.Final.Price, best.Price)
			require.Equal(t, c.Final.Worth-a.Worth, c.Gap.Worth)
			require.Equal(t, a.Price-c.Final.Price, c.Gap.Price)
		}
	})
	small := e.problem().Small(t.Context())
	e.ends(func(ctx context.Context) {
		p := e.problem()
		told := e.rising(p, func(was, is *Course) bool { return is.Best.Volume <= was.Best.Volume })
		a := p.Small(ctx)
		e.ended(&a, &small)
		if small.Build == nil {
			return
		}
		require.LessOrEqual(t, told.Bound.Volume, small.Build.Case.Volume.Or(0))
		if c := &a.Certificate; a.Build != nil && small.Certificate.Root.Volume > 0 {
			require.LessOrEqual(t, c.Final.Volume, small.Certificate.Final.Volume)
			require.Equal(t, a.Build.Case.Volume.Or(0), c.Final.Volume+c.Gap.Volume)
			if c.Gap.Volume == 0 {
				require.LessOrEqual(t, c.Final.Price, small.Price)
				require.Equal(t, a.Price-c.Final.Price, c.Gap.Price)
			}
		}
	})
}

// quiet ends the search for the least noise.
func (e *hurry) quiet() {
	t := e.t
	quiet := e.problem().Quiet(t.Context())
	e.ends(func(ctx context.Context) {
		p := e.problem()
		told := e.rising(p, func(was, is *Course) bool { return is.Best.Noise <= was.Best.Noise })
		a := p.Quiet(ctx)
		e.ended(&a, &quiet)
		if quiet.Build == nil {
			return
		}
		require.LessOrEqual(t, told.Bound.Noise, quiet.Certificate.Final.Noise)
		if c := &a.Certificate; a.Build != nil {
			require.LessOrEqual(t, c.Final.Noise, quiet.Certificate.Final.Noise)
			level, known := Heard(a.Build, e.ask.Needs)
			require.True(t, known)
			require.LessOrEqual(t, level, c.Final.Noise+c.Gap.Noise)
			if c.Gap.Noise == 0 {
				require.LessOrEqual(t, c.Final.Price, quiet.Price)
			}
		}
	})
}

// frontier ends the search for what every price buys: no build serves more than the frontier told at its price by more than the gap.
func (e *hurry) frontier() {
	t := e.t
	whole := e.problem().Frontier(t.Context())
	e.ends(func(ctx context.Context) {
		p := e.problem()
		told := e.rising(p, func(was, is *Course) bool { return is.Best.Price <= was.Best.Price || is.Best.Worth >= was.Best.Worth })
		f := p.Frontier(ctx)
		switch c := &f.Certificate; f.Status {
		case Infeasible:
			require.Equal(t, Infeasible, whole.Status)
		case Unknown:
			e.early++
			require.Empty(t, f.Points)
		case Optimal:
			require.Len(t, f.Points, len(whole.Points))
			for i := range f.Points {
				e.stands(f.Points[i].Build)
				require.Equal(t, whole.Points[i].Price, f.Points[i].Price)
				require.Equal(t, whole.Points[i].Worth, f.Points[i].Worth)
			}
		case Feasible:
			e.early++
			e.found++
			require.LessOrEqual(t, c.Final.Price, whole.Points[0].Price)
			require.LessOrEqual(t, told.Bound.Price, whole.Points[0].Price)
			require.GreaterOrEqual(t, told.Bound.Worth, whole.Points[len(whole.Points)-1].Worth)
			require.Equal(t, f.Points[0].Price, c.Final.Price+c.Gap.Price)
			for _, x := range f.Points {
				e.stands(x.Build)
			}
			for _, point := range whole.Points {
				told := int64(0)
				for _, x := range f.Points {
					if x.Price <= point.Price {
						told = x.Worth
					}
				}
				if point.Price >= f.Points[0].Price {
					require.LessOrEqual(t, point.Worth, told+c.Gap.Worth)
					require.LessOrEqual(t, point.Worth, c.Final.Worth)
				}
			}
		}
	})
}

// open ends the look at what is open.
func (e *hurry) open() {
	t := e.t
	whole := e.problem().Open(t.Context())
	e.ends(func(ctx context.Context) {
		p := e.problem()
		e.rising(p, func(was, is *Course) bool { return true })
		left := 0
		for i, w := range p.Open(ctx) {
			known := &whole[i]
			require.Equal(t, known.Part, w.Part)
			e.stands(w.Build())
			switch w.State {
			case Infeasible, Optimal:
				require.Equal(t, known.State, w.State)
				require.Equal(t, known.Price, w.Price)
			case Feasible:
				e.found++
				require.GreaterOrEqual(t, w.Price, known.Price)
				fallthrough
			default:
				left++
			}
		}
		e.early += min(left, 1)
	})
}

// explained ends the search for a conflict and for repairs.
func (e *hurry) explained() {
	t := e.t
	conflict, failed := NewIndex(e.stock).WhyNot(t.Context(), e.ask, nil)
	if failed == ErrStands {
		return
	}
	require.NoError(t, failed)
	e.ends(func(ctx context.Context) {
		x := newExplainer(ctx, NewIndex(e.stock), e.ask)
		x.watch.every = e.every
		core, err := x.core(x.keeping(nil))
		if err == nil {
			require.Len(t, core, len(conflict.Demands))
			return
		}
		require.ErrorIs(t, err, context.DeadlineExceeded)
		e.early++
		stands, err := newExplainer(t.Context(), NewIndex(e.stock), e.ask).stands(core)
		require.NoError(t, err)
		require.False(t, stands)
		if len(core) < len(x.all) {
			e.found++
		}
	})
	repairs, complete, err := NewIndex(e.stock).Repairs(t.Context(), e.ask, 2, nil)
	require.NoError(t, err)
	require.True(t, complete)
	e.ends(func(ctx context.Context) {
		list, complete, err := NewIndex(e.stock).Repairs(ctx, e.ask, 2, nil)
		require.NoError(t, err)
		if complete {
			require.Len(t, list, len(repairs))
		} else {
			e.early++
			e.found += min(len(list), 1)
		}
		for _, r := range list {
			proof := rule.Prove(r.Answer.Build, e.ask.dropping(r.Drops).Needs)
			require.True(t, proof.Stands())
			known := slices.IndexFunc(repairs, func(k Repair) bool {
				return slices.EqualFunc(k.Drops, r.Drops, func(a, b Demand) bool { return a.Text == b.Text })
			})
			require.GreaterOrEqual(t, known, 0)
			require.GreaterOrEqual(t, r.Answer.Price, repairs[known].Answer.Price)
			require.LessOrEqual(t, r.Answer.Certificate.Final.Price, repairs[known].Answer.Price)
		}
	})
}

// TestEndedAnywhere ends every question at many places on small stocks: what is answered then is true, and so is all that was told
// on the way.
func TestEndedAnywhere(t *testing.T) {
	stocks := generic(t)
	cores := anchors(t, stocks)
	for _, q := range []struct {
		name        string
		of          func(*hurry)
		seeds       uint64
		early, some int // more than so many are ended early, more than so many of them with something found
	}{
		{"plans", (*hurry).plans, 60, 300, 5}, {"quiet", (*hurry).quiet, 30, 30, 5}, {"frontier", (*hurry).frontier, 120, 50, 5},
		{"open", (*hurry).open, 80, 80, 20}, {"explained", (*hurry).explained, 40, 300, 10},
	} {
		t.Run(q.name, func(t *testing.T) {
			early, some := 0, 0
			for seed := range q.seeds {
				r := rand.New(rand.NewPCG(seed, 41))
				stock := smallStock(r, stocks, cores[r.IntN(len(cores))])
				e := &hurry{t: t, r: r, stock: stock, ask: Ask{Needs: someNeeds(r, stock)}, every: 1 + r.IntN(200), tries: 12}
				q.of(e)
				early, some = early+e.early, some+e.found
			}
			t.Logf("%d ended early, %d of them with something found", early, some)
			require.Greater(t, early, q.early)
			require.Greater(t, some, q.some)
		})
	}
}

// model is a problem written down.
func model(t *testing.T, p *Problem, valued bool) *Model {
	t.Helper()
	m, err := p.Model(t.Context(), valued)
	require.NoError(t, err)
	return m
}

// TestEndedModel ends the writing of a problem at many places: it is whole, the same as ever, or the context's error.
func TestEndedModel(t *testing.T) {
	stocks := generic(t)
	cores := anchors(t, stocks)
	ended := 0
	for seed := range uint64(20) {
		r := rand.New(rand.NewPCG(seed, 43))
		stock := smallStock(r, stocks, cores[r.IntN(len(cores))])
		e := &hurry{t: t, r: r, stock: stock, ask: Ask{Needs: someNeeds(r, stock)}, every: 1 + r.IntN(200), tries: 12}
		valued := r.IntN(2) == 0
		whole := model(t, e.problem(), valued).LP(Objective{Worth: valued})
		e.ends(func(ctx context.Context) {
			p := e.problem()
			done := 0.0
			p.Told = func(c Course) {
				require.GreaterOrEqual(t, c.Done, done)
				done = c.Done
			}
			m, err := p.Model(ctx, valued)
			if err != nil {
				require.ErrorIs(t, err, context.DeadlineExceeded)
				require.Nil(t, m)
				ended++
				return
			}
			require.Equal(t, string(whole), string(m.LP(Objective{Worth: valued})))
		})
	}
	t.Logf("%d ended early", ended)
	require.Greater(t, ended, 100)
}

// TestEndedOnTheCatalog ends the questions of TestEndedAnywhere on the whole catalog with briefs that are soon answered.
func TestEndedOnTheCatalog(t *testing.T) {
	stock := generic(t)
	for _, q := range []struct {
		name        string
		of          func(*hurry)
		briefs      []string
		early, some int
	}{
		{"plans", (*hurry).plans, []string{"family", "silent-studio", "statistician"}, 20, 10},
		{"quiet", (*hurry).quiet, []string{"bird-sound", "silent-studio"}, 5, 3},
		{"frontier", (*hurry).frontier, []string{"bird-sound", "family", "statistician"}, 10, 10},
	} {
		t.Run(q.name, func(t *testing.T) {
			early, some := 0, 0
			for _, tr := range briefed(t, stock) {
				if slices.Contains(q.briefs, tr.name) {
					e := &hurry{t: t, r: rand.New(rand.NewPCG(7, 42)), stock: stock, ask: Ask{Needs: tr.needs}, every: pollEvery / 8, tries: 10}
					q.of(e)
					early, some = early+e.early, some+e.found
				}
			}
			t.Logf("%d ended early, %d of them with something found", early, some)
			require.Greater(t, early, q.early)
			require.Greater(t, some, q.some)
		})
	}
}
