package plan

import (
	"context"
	"errors"
	"slices"

	"slipfit/core/part"
)

// Conflict is a smallest set of demands that cannot all be met: with any one of them given up, the rest can.
type Conflict struct {
	Demands []Demand // none where nothing that is asked stands in the way: the stock itself holds no build
	Cuts    []Cut    // what the rules took away under these demands alone, heaviest first
}

// ErrStands is the error of asking why not where a build stands.
var ErrStands = errors.New("a build stands that meets everything asked")

// WhyNot finds out which demands of an ask cannot all be met, by QuickXplain (Junker, AAAI 2004): those that come first
// in Demands are held to where there is a choice. The error is ErrStands, or the context's where it ends the search, or
// says what the stock does not know.
func WhyNot(ctx context.Context, stock *part.Stock, ask Ask) (Conflict, error) {
	x := newExplainer(ctx, NewIndex(stock), ask)
	everything := x.keeping(nil)
	switch stands, err := x.stands(everything); {
	case err != nil:
		return Conflict{}, err
	case stands:
		return Conflict{}, ErrStands
	}
	core, err := x.core(everything)
	if err != nil {
		return Conflict{}, err
	}
	var c Conflict
	for _, i := range core {
		c.Demands = append(c.Demands, x.all[i])
	}
	p, err := x.index.Problem(x.only(core))
	if err != nil {
		return Conflict{}, err
	}
	c.Cuts = p.infeasible(Answer{}).Cuts
	return c, nil
}

// explainer asks whether some of an ask's demands can be met together.
type explainer struct {
	ctx   context.Context
	index *Index
	ask   Ask
	all   []Demand
}

func newExplainer(ctx context.Context, x *Index, ask Ask) *explainer {
	return &explainer{ctx: ctx, index: x, ask: ask, all: Demands(x.stock, ask)}
}

// keeping lists the demands that are not dropped.
func (x *explainer) keeping(drop []int) []int {
	var keep []int
	for i := range x.all {
		if !slices.Contains(drop, i) {
			keep = append(keep, i)
		}
	}
	return keep
}

// only is the ask with no other demands than these.
func (x *explainer) only(keep []int) Ask {
	var drop []Demand
	for _, i := range x.keeping(keep) {
		drop = append(drop, x.all[i])
	}
	return x.ask.dropping(drop)
}

// stands reports a build that meets these demands.
func (x *explainer) stands(keep []int) (bool, error) {
	p, err := x.index.Problem(x.only(keep))
	if err != nil {
		return false, err
	}
	found, settled := p.any(x.ctx)
	if !settled {
		return false, context.Cause(x.ctx)
	}
	return found, nil
}

// core finds a smallest set of demands that cannot be met together, among some that cannot; none where even no demand
// at all is met.
func (x *explainer) core(among []int) ([]int, error) {
	switch stands, err := x.stands(nil); {
	case err != nil:
		return nil, err
	case !stands:
		return nil, nil
	}
	core, err := x.explain(nil, false, among)
	slices.Sort(core)
	return core, err
}

// explain finds a smallest set among the candidates that cannot be met beside what is held to. grew says that something
// was added to that since it was last asked about.
func (x *explainer) explain(held []int, grew bool, candidates []int) ([]int, error) {
	if grew {
		if stands, err := x.stands(held); err != nil || !stands {
			return nil, err
		}
	}
	if len(candidates) == 1 {
		return candidates, nil
	}
	half := len(candidates) / 2
	first, second := candidates[:half], candidates[half:]
	late, err := x.explain(slices.Concat(held, first), true, second)
	if err != nil {
		return nil, err
	}
	early, err := x.explain(slices.Concat(held, late), len(late) > 0, first)
	if err != nil {
		return nil, err
	}
	return slices.Concat(early, late), nil
}

// any reports whether some build stands; settled is false where the context ended the search before that was known.
func (p *Problem) any(ctx context.Context) (found, settled bool) {
	if p.emptied() {
		return false, true
	}
	s := newSearch(ctx, p.priceBound(), p.purse)
	s.found = func(s *search) { found, s.stop = true, true }
	s.run()
	return found, found || !s.stopped
}
