package plan

import (
	"context"
	"errors"
	"slices"
)

// Conflict is a smallest set of demands that cannot all be met: with any one of them given up, the rest can.
type Conflict struct {
	Demands []Demand // none where nothing that is asked stands in the way: the stock itself holds no build
	Cuts    []Cut    // what the rules took away under these demands alone, heaviest first

	// Unfinished tells of demands that cannot all be met, but of which some may not be needed for that: the context ended before
	// the smallest set was found.
	Unfinished bool
}

// ErrStands is the error of asking why not where a build stands.
var ErrStands = errors.New("a build stands that meets everything asked")

// WhyNot finds out which demands of an ask cannot all be met, by QuickXplain (Junker, AAAI 2004): those that come first
// in Demands are held to where there is a choice. The error is ErrStands, or the context's where it ends before it is known that
// not everything can be met, or says what the stock does not know. Told, which may be nil, hears how far it is: what is found is
// how many demands are known not to be met together.
func (x *Index) WhyNot(ctx context.Context, ask Ask, told func(Course)) (Conflict, error) {
	e := newExplainer(ctx, x, ask)
	e.listen(told, func() int { return len(e.failing) })
	everything := e.keeping(nil)
	switch stands, err := e.stands(everything); {
	case err != nil:
		return Conflict{}, err
	case stands:
		return Conflict{}, ErrStands
	}
	core, err := e.core(everything)
	if err != nil && !e.watch.ended {
		return Conflict{}, err
	}
	c := Conflict{Unfinished: err != nil}
	for _, i := range core {
		c.Demands = append(c.Demands, e.all[i])
	}
	p, err := x.Problem(e.only(core))
	if err != nil {
		return Conflict{}, err
	}
	c.Cuts = p.infeasible(Answer{}).Cuts
	return c, nil
}

// explainer asks whether some of an ask's demands can be met together.
type explainer struct {
	watch   *watch
	index   *Index
	ask     Ask
	all     []Demand
	failing []int   // the fewest demands known not to be met together, of those that are being explained
	cores   [][]int // smallest sets of demands known not to be met together
	met     [][]int // sets of demands that a build was found to meet
	like    *bound  // on price, of the first problem posed that had one
}

func newExplainer(ctx context.Context, index *Index, ask Ask) *explainer {
	x := &explainer{watch: newWatch(ctx, nil), index: index, ask: ask, all: Demands(index.stock, ask)}
	x.watch.look()
	return x
}

// listen has somebody, who may be nil, told how many nodes were looked at and how much is found.
func (x *explainer) listen(told func(Course), found func() int) {
	if told != nil {
		x.watch.told = func(c Course) { told(Course{Nodes: c.Nodes, Found: found()}) }
	}
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

// pose poses the ask with no other demands than these.
func (x *explainer) pose(keep []int) (*Problem, error) {
	p, err := x.index.Problem(x.only(keep))
	if err == nil {
		p.watch, p.like = x.watch, x.like
	}
	return p, err
}

// stands reports a build that meets these demands. The error is the context's where that ends the search.
func (x *explainer) stands(keep []int) (bool, error) {
	if x.known(keep) != nil {
		return false, nil
	}
	if slices.ContainsFunc(x.met, func(met []int) bool { return covers(met, keep) }) {
		return true, nil
	}
	p, err := x.pose(keep)
	if err != nil {
		return false, err
	}
	l, settled := p.some(0)
	if !settled {
		return false, context.Cause(x.watch.ctx)
	}
	if x.like == nil {
		x.like = p.priced
	}
	if l != nil {
		x.met = append(x.met, keep)
	}
	return l != nil, nil
}

// known is a smallest set known not to be met together among some demands; nil where none is.
func (x *explainer) known(among []int) []int {
	if i := slices.IndexFunc(x.cores, func(core []int) bool { return covers(among, core) }); i >= 0 {
		return x.cores[i]
	}
	return nil
}

// core finds a smallest set of demands that cannot be met together, among some that cannot; none where even no demand
// at all is met. Where the context ends that, it is the smallest known, and the error is the context's.
func (x *explainer) core(among []int) ([]int, error) {
	x.failing = among
	switch stands, err := x.stands(nil); {
	case err != nil:
		return among, err
	case !stands:
		return nil, nil
	}
	core, err := x.explain(nil, false, among)
	if err != nil {
		core = slices.Clone(x.failing)
	}
	slices.Sort(core)
	if err == nil {
		x.cores = append(x.cores, core)
	}
	return core, err
}

// explain finds a smallest set among the candidates that cannot be met beside what is held to; all of both cannot. grew says that
// something was added to what is held to since it was last asked about.
func (x *explainer) explain(held []int, grew bool, candidates []int) ([]int, error) {
	x.fail(slices.Concat(held, candidates))
	if grew {
		switch stands, err := x.stands(held); {
		case err != nil:
			return nil, err
		case !stands:
			x.fail(held)
			return nil, nil
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

// fail notes demands that cannot be met together.
func (x *explainer) fail(demands []int) {
	if len(demands) < len(x.failing) {
		x.failing = demands
	}
}
