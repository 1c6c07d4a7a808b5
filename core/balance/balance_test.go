package balance

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"slipfit/catalog"
	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/outcome"
	"slipfit/core/part"
	"slipfit/core/plan"
	"slipfit/core/rule"

	"github.com/stretchr/testify/require"
)

// job is a brief of testdata with its needs and the cheapest build that serves them.
type job struct {
	name  string
	said  *brief.Brief
	needs *brief.Needs
	stock *part.Stock
	build *build.Build
}

// jobs is every brief under testdata, planned once for all tests.
func jobs(t *testing.T) []job {
	t.Helper()
	list, err := plannedOnce()
	require.NoError(t, err)
	require.Len(t, list, 8)
	return list
}

var plannedOnce = sync.OnceValues(func() ([]job, error) {
	stock, err := catalog.Embedded()
	if err != nil {
		return nil, err
	}
	files, err := filepath.Glob("../../testdata/briefs/*.brief.json")
	if err != nil {
		return nil, err
	}
	var list []job
	for _, f := range files {
		raw, err := os.ReadFile(f)
		if err != nil {
			return nil, err
		}
		said, err := brief.Read(f, raw)
		if err != nil {
			return nil, err
		}
		j, err := leastFor(strings.TrimSuffix(filepath.Base(f), ".brief.json"), said, stock)
		if err != nil {
			return nil, err
		}
		list = append(list, j)
	}
	return list, nil
})

// leastFor plans a brief.
func leastFor(name string, said *brief.Brief, stock *part.Stock) (job, error) {
	j := job{name: name, said: said, needs: said.Needs(stock), stock: stock}
	p, err := plan.New(stock, plan.Ask{Needs: j.needs})
	if err != nil {
		return j, err
	}
	ctx, cancel := context.WithTimeout(context.Background(), time.Minute)
	defer cancel()
	a := p.Least(ctx)
	if a.Status != plan.Optimal {
		return j, fmt.Errorf("%s: %s", name, a.Status)
	}
	j.build = a.Build
	return j, nil
}

func planned(t *testing.T, name string, said *brief.Brief, stock *part.Stock) job {
	t.Helper()
	j, err := leastFor(name, said, stock)
	require.NoError(t, err)
	return j
}

// TestBetterPartsNeverGiveLess replaces the processor, the card, the memory and the drives of every planned build: where a part
// gives at least as much of every resource, no outcome is worse.
func TestBetterPartsNeverGiveLess(t *testing.T) {
	compared := 0
	for _, j := range jobs(t) {
		was := outcome.Figures(j.build, j.needs, &j.stock.Calibration)
		have := outcome.Of(j.build, j.needs)
		for _, s := range []build.Seat{build.Processor, build.Graphics, build.Memory, build.Boot, build.Archive} {
			for _, o := range options(j.stock, j.build, s) {
				if o.Part == nil {
					continue
				}
				other := with(j.build, o)
				gives := outcome.Of(other, j.needs)
				better := len(gives.Reads) >= len(have.Reads)
				for r := range brief.Resource(brief.Resources) {
					better = better && gives.By[r] >= have.By[r] && len(gives.Missing[r]) == 0
				}
				if !better {
					continue
				}
				for i, f := range outcome.Figures(other, j.needs, &j.stock.Calibration) {
					if i >= len(was) || f.What != was[i].What || f.Activity == "system" {
						continue
					}
					compared++
					if f.Unit.Time {
						require.LessOrEqual(t, f.Expected, was[i].Expected, "%s: %s with %s", j.name, f.What, o.ID())
					} else {
						require.GreaterOrEqual(t, f.Expected, was[i].Expected, "%s: %s with %s", j.name, f.What, o.ID())
					}
				}
			}
		}
	}
	require.Greater(t, compared, 500)
}

// TestStepsGoFurther requires of every step up that it stands, costs what it says, and gives more of what held the activity
// back.
func TestStepsGoFurther(t *testing.T) {
	steps := 0
	for _, j := range jobs(t) {
		for _, a := range Of(t.Context(), j.build, j.said, j.stock).Activities {
			if a.Step == nil {
				continue
			}
			steps++
			other := with(j.build, a.Step.To)
			if a.Step.Also != nil {
				other = with(other, *a.Step.Also)
			}
			free := *j.needs
			free.Budget = 0
			p := rule.Prove(other, &free)
			require.True(t, p.Stands(), "%s: %s", j.name, a.Step.To.ID())
			require.Equal(t, other.Price()-j.build.Price(), a.Step.Costs)
			require.Greater(t, a.Step.Have.N, a.Tight.Have.N)
		}
	}
	require.Greater(t, steps, 8)
}

// TestEquals requires that an equal is of another maker, keeps the set of verdicts of every rule and moves no outcome by more
// than 3 %, and that a seat with a part of several makers in the stock has some.
func TestEquals(t *testing.T) {
	found := 0
	for _, j := range jobs(t) {
		was := outcome.Figures(j.build, j.needs, &j.stock.Calibration)
		for s := range build.Services {
			if !j.build.Filled(s) {
				continue
			}
			list, _, err := Equals(t.Context(), j.build, j.needs, j.stock, s, nil)
			require.NoError(t, err)
			for i, e := range list {
				found++
				require.NotEqual(t, maker(j.build, s), e.Option.Part.Common().Maker)
				other := with(j.build, e.Option)
				p := rule.Prove(other, j.needs)
				require.True(t, p.Stands(), "%s: %s", j.name, e.Option.ID())
				for k, f := range outcome.Figures(other, j.needs, &j.stock.Calibration) {
					require.InDelta(t, was[k].Expected, f.Expected, float64(was[k].Expected)*0.031+1, "%s: %s: %s", j.name, e.Option.ID(), f.What)
				}
				if i > 0 {
					require.GreaterOrEqual(t, e.Apart, list[i-1].Apart)
				}
			}
		}
	}
	require.NotZero(t, found)
	_, _, err := Equals(t.Context(), &build.Build{}, nil, &part.Stock{}, build.Graphics, nil)
	require.ErrorContains(t, err, "seat graphics of the build is empty")
}

func maker(b *build.Build, s build.Seat) string {
	for _, l := range b.Lines() {
		if l.Seat == s {
			return l.Article.Maker
		}
	}
	return ""
}

// TestOwnedPartsCostNothingAndAreNotIdle gives the customer their card: it is free, checked like any other, and no idle money.
func TestOwnedPartsCostNothingAndAreNotIdle(t *testing.T) {
	for _, j := range jobs(t) {
		if j.name != "game-maker" {
			continue
		}
		b := *j.build
		free := j.build.Graphics.Price
		b.Owned |= build.SetOf(build.Graphics)
		idle, err := IdleOf(t.Context(), &b, j.needs, plan.NewIndex(j.stock), nil)
		require.NoError(t, err)
		require.Equal(t, j.build.Price()-free, idle.Price)
		require.True(t, idle.Found)
		require.Equal(t, b.Graphics.ID, idle.Cheapest.Graphics.ID, "the cheapest build uses the card too")
		for _, w := range idle.Parts {
			require.NotEqual(t, build.Graphics, w.Seat)
		}
		p := rule.Prove(&b, j.needs)
		require.True(t, p.Stands(), "and it is checked like any other")
	}
}

// TestStepsServeAndSpendWhatTheySay holds every step of every seat to its own whole build: a step up stands, costs what it says
// and serves what it names further; a step down is cheaper in its seat and in all, and stands but for what it gives up.
func TestStepsServeAndSpendWhatTheySay(t *testing.T) {
	ups, downs, gives := 0, 0, 0
	for _, j := range jobs(t) {
		if j.name != "game-maker" && j.name != "family" && j.name != "bird-sound" {
			continue
		}
		free := *j.needs
		free.Budget = 0
		have := plan.Serving(j.build, j.needs)
		steps, err := Steps(t.Context(), j.build, j.needs, plan.NewIndex(j.stock), nil)
		require.NoError(t, err)
		for _, s := range steps {
			for _, stride := range []*Stride{s.Up, s.Down} {
				if stride == nil {
					continue
				}
				require.True(t, stride.Proven)
				require.Equal(t, stride.Build.Price()-j.build.Price(), stride.Costs)
				require.NotEmpty(t, stride.Changed)
				p := rule.Prove(stride.Build, &free)
				require.Equal(t, len(stride.Gives) == 0, p.Stands(), "%s: %s", j.name, s.Seat)
				for _, m := range p.Margins {
					if !m.Advice && !m.Passes() {
						require.Equal(t, rule.Serve, m.Rule.Group, "only what is served is given up")
					}
				}
			}
			if up := s.Up; up != nil {
				ups++
				more := free
				more.By[up.Resource].Floor = have[up.Resource] + 1
				now, then := rule.Prove(j.build, &more), rule.Prove(up.Build, &more)
				require.False(t, now.Stands(), "%s: %s is served so far already", j.name, up.Resource)
				require.True(t, then.Stands())
				require.Empty(t, up.Gives)
			}
			if down := s.Down; down != nil {
				downs++
				gives += len(down.Gives)
				require.Negative(t, int64(down.Costs))
				require.Less(t, seatPrice(down.Build, s.Seat), seatPrice(j.build, s.Seat))
			}
		}
	}
	require.Greater(t, ups, 8)
	require.Greater(t, downs, 3)
	require.Positive(t, gives)
}

// TestTwinIsEqualInEverySeat gives the stock a twin of another maker for the part in each seat of builds: it is the nearest equal,
// moves nothing, and costs the same.
func TestTwinIsEqualInEverySeat(t *testing.T) {
	tried := map[build.Seat]bool{}
	for _, j := range jobs(t) {
		b := with(j.build, build.Option{Seat: build.UPS, Part: j.stock.UPS[0], Count: 1})
		if b.Fans == nil {
			b = with(b, build.Option{Seat: build.Fans, Part: j.stock.Fans[0], Count: int(j.stock.Fans[0].Pack.Or(1)), Face: part.Front})
		}
		for s := range build.Services {
			if !b.Filled(s) {
				continue
			}
			stock, id := twinned(j.stock, b, s)
			list, _, err := Equals(t.Context(), b, j.needs, stock, s, nil)
			require.NoError(t, err)
			require.True(t, slices.ContainsFunc(list, func(e Equal) bool {
				return e.Option.ID() == id && e.Apart == 0 && e.Costs == 0
			}), "%s: %s", j.name, s)
			require.Zero(t, list[0].Apart)
			tried[s] = true
		}
	}
	for s := range build.Services {
		require.True(t, tried[s], "seat %s was never filled", s)
	}
}

// twinned is a stock with a twin of the part in a seat, by another maker, and the twin's id.
func twinned(stock *part.Stock, b *build.Build, s build.Seat) (*part.Stock, string) {
	more := *stock
	rename := func(a *part.Article) string {
		a.ID, a.Maker = a.ID+"-twin", "Twin"
		return a.ID
	}
	switch s {
	case build.Case:
		return &more, twin(&more.Cases, b.Case, func(p *part.Case) string { return rename(&p.Article) })
	case build.Board:
		return &more, twin(&more.Boards, b.Board, func(p *part.Board) string { return rename(&p.Article) })
	case build.Processor:
		return &more, twin(&more.Processors, b.Processor, func(p *part.Processor) string { return rename(&p.Article) })
	case build.Cooler:
		return &more, twin(&more.Coolers, b.Cooler, func(p *part.Cooler) string { return rename(&p.Article) })
	case build.Memory:
		return &more, twin(&more.Memory, b.Memory, func(p *part.Memory) string { return rename(&p.Article) })
	case build.Graphics:
		return &more, twin(&more.Graphics, b.Graphics, func(p *part.Graphics) string { return rename(&p.Article) })
	case build.Supply:
		return &more, twin(&more.Supplies, b.Supply, func(p *part.Supply) string { return rename(&p.Article) })
	case build.Fans:
		return &more, twin(&more.Fans, b.Fans[0].Fan, func(p *part.Fan) string { return rename(&p.Article) })
	case build.Cards:
		return &more, twin(&more.Cards, b.Cards[0].Card, func(p *part.Card) string { return rename(&p.Article) })
	case build.Screens:
		return &more, twin(&more.Monitors, b.Screens[0].Monitor, func(p *part.Monitor) string { return rename(&p.Article) })
	case build.UPS:
		return &more, twin(&more.UPS, b.UPS, func(p *part.UPS) string { return rename(&p.Article) })
	}
	drive := map[build.Seat]*part.Drive{build.Boot: b.Boot.Drive, build.Cache: b.Cache.Drive, build.Archive: b.Archive.Drive}[s]
	return &more, twin(&more.Drives, drive, func(p *part.Drive) string { return rename(&p.Article) })
}

// twin adds a renamed copy of a part to a list.
func twin[P any](list *[]*P, p *P, rename func(*P) string) string {
	again := *p
	id := rename(&again)
	*list = append(slices.Clone(*list), &again)
	return id
}
