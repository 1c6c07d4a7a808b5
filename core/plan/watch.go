package plan

import (
	"context"
	"math"

	"slipfit/core/unit"
)

// Course is what a question has come to while the planner still searches.
type Course struct {
	Done  float64 // share of what is to be looked at, 0 to 1; nought where it cannot be told
	Nodes int64   // partial builds looked at
	Found int     // builds found, as far as they count: one of a plan, the points of a frontier, the repairs
	Best  Bound   // what the best of them comes to; of a frontier the least price and the most value
	Bound Bound   // nothing is better than this; Worth is math.MaxInt64 while nothing is known of it
}

// watch is kept over one question. It counts the work, looks at the context now and then, and tells how far the question is. Once
// the context has ended, a bound that is being made says no more than it knows, and a search leaves what it has not explored.
type watch struct {
	ctx    context.Context
	told   func(Course) // nil where nobody listens
	course Course
	nearer func() // brings the course up to date with the search that runs; nil where that knows no more
	work   int    // since the last look, in steps
	every  int    // how much work passes between two looks
	ended  bool   // the context has ended
}

// pollEvery is how much work passes between two looks at the context, in steps. A step through what is known already counts for one, a node
// or a question to a rule for asking, one that is predicted for predicting.
const (
	pollEvery  = 4096
	asking     = 16
	predicting = 512
)

// begin starts a question. What an earlier one that was ended made in haste is made anew.
func (p *Problem) begin(ctx context.Context) {
	if p.watch.ended {
		p.priced, p.appraised = nil, false
	}
	every := p.watch.every
	p.watch = newWatch(ctx, p.Told)
	p.watch.every = every
	p.watch.look()
}

func newWatch(ctx context.Context, told func(Course)) *watch {
	return &watch{ctx: ctx, told: told, course: Course{Bound: Bound{Worth: math.MaxInt64}}, every: pollEvery}
}

// poll counts work.
func (w *watch) poll(work int) {
	if w.work += work; w.work >= w.every {
		w.look()
	}
}

// look looks at the context, reports whether it has ended, and tells how far the question is.
func (w *watch) look() bool {
	w.work = 0
	select {
	case <-w.ctx.Done():
		w.ended = true
	default:
		w.tell()
	}
	return w.ended
}

// tell tells how far the question is.
func (w *watch) tell() {
	if w.told == nil {
		return
	}
	if w.nearer != nil {
		w.nearer()
	}
	w.told(w.course)
}

// found notes the best choice so far.
func (w *watch) found(l *leaf) {
	w.course.Found = 1
	w.course.Best.Price, w.course.Best.Worth = unit.Money(l.price), l.worth
}

// cheaper notes a choice that costs less than the best so far.
func (w *watch) cheaper(l *leaf) {
	if w.course.Found == 0 || unit.Money(l.price) < w.course.Best.Price {
		w.found(l)
	}
}

// costsNoLess notes that no build costs less.
func (w *watch) costsNoLess(price int64) {
	w.course.Bound.Price = max(w.course.Bound.Price, unit.Money(price))
}

// servesNoMore notes that no build serves more.
func (w *watch) servesNoMore(worth int64) { w.course.Bound.Worth = min(w.course.Bound.Worth, worth) }
