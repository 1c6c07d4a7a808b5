package plan

import (
	"cmp"
	"context"
	"math"
	"slices"

	"slipfit/core/build"
	"slipfit/core/unit"
)

// Point is a price at which more is served than at any lower one, with a build for it.
type Point struct {
	Price unit.Money // before tax
	Worth int64      // value points
	Build *build.Build
}

// Frontier is what every price buys: the builds for which nothing cheaper serves as much.
type Frontier struct {
	Status Status  // Optimal: no build of the catalog lies above the frontier; Feasible: one may, by as much as the gap says
	Points []Point // the cheapest first, each the first in tie order of its price and value
	// Certificate: the root is the least price and the most value before anything was decided; Gap.Worth is how much more than
	// the frontier some build may serve at a price, Gap.Price how much cheaper than the first point one may be.
	Certificate Certificate
	Cuts        []Cut // where the status is infeasible
}

// steepness is how many prices of a value point the frontier's search is held to beside price alone and value alone, each
// twice the one before.
const steepness = 8

// Frontier finds every price within the budget at which more value can be had than for less, from the cheapest build that
// stands to the one that serves most.
func (p *Problem) Frontier(ctx context.Context) Frontier {
	p.begin(ctx)
	f := Frontier{Certificate: Certificate{Combinations: p.combinations()}}
	c := &f.Certificate
	if p.emptied() {
		a := p.infeasible(Answer{Certificate: *c})
		f.Status, f.Certificate, f.Cuts = a.Status, a.Certificate, a.Cuts
		return f
	}
	low := p.least()
	least := low.best
	c.Root.Price = unit.Money(p.fixed + low.bound.root())
	c.Nodes, c.Checks = p.watch.course.Nodes, p.index.checks-p.asked
	switch {
	case least == nil && !low.proven():
		f.Status = Unknown
		return f
	case least == nil:
		a := p.infeasible(Answer{Certificate: *c})
		f.Status, f.Certificate, f.Cuts = a.Status, a.Certificate, a.Cuts
		return f
	}
	c.Final.Price = unit.Money(least.price)
	if !low.proven() {
		c.Final.Price = min(c.Final.Price, unit.Money(low.floor()))
		c.Gap.Price = unit.Money(least.price) - c.Final.Price
	}
	w := &staircase{watch: p.watch, points: []leaf{*least}}
	w.climb(p.shares())
	c.Root.Worth, c.Gap.Worth = w.most, w.missed
	top := w.points[len(w.points)-1].worth
	c.Final.Worth = min(w.most, top+w.missed)
	f.Status = Optimal
	if !low.proven() || w.missed > 0 {
		f.Status = Feasible
	}
	for i := range w.points {
		l := &w.points[i]
		f.Points = append(f.Points, Point{unit.Money(l.price), l.worth, p.build(l)})
	}
	c.Nodes, c.Checks = p.watch.course.Nodes, p.index.checks-p.asked
	return f
}

// staircase is the choices found that nothing found betters, as the shares of a problem are searched one after the other.
type staircase struct {
	watch  *watch
	points []leaf // the cheapest first, each worth more than the one before
	tied   bool   // whether choices on the points count, not those above them
	most   int64  // no choice is worth more
	missed int64  // how much more than the frontier what an end left unexplored may be worth at some price
}

// climb searches every share, then puts the first in tie order into each point.
func (w *staircase) climb(shares []*share) {
	w.most = w.points[0].worth
	for _, part := range shares {
		w.most = max(w.most, part.most)
	}
	w.watch.servesNoMore(w.most)
	for _, part := range shares {
		switch t := part.reduced(w); {
		case t != nil:
			t.run()
		case w.watch.ended:
			w.pass(part)
		}
	}
	w.tied = true
	for _, part := range shares {
		if t := part.reduced(w); t != nil {
			for i := range w.points {
				t.first(&w.points[i])
			}
		}
	}
}

// stairs is a search of one share for what lies above a staircase. It leaves out what cannot: for each step between two points
// some bound says that nothing is both cheaper than the second and worth more than the first.
type stairs struct {
	*search
	w     *staircase
	most  int64    // no choice of the share is worth more
	steps []corner // what lies beyond each point
}

// corner is the most a choice may cost by each bound, the search's own first, and be worth more than one point and cheaper than the
// next.
type corner struct {
	price, worth int64 // at most, what is settled left out; at least
	cost         []int64
}

// newStairs makes the bounds of a search; nil where the context ends that.
func (p *share) newStairs(w *staircase) *stairs {
	if w.watch.ended {
		return nil
	}
	frame := p.valueBound().frame
	free := p.newBound(frame, weights{perPoint: scale})
	first, last := &w.points[0], &w.points[len(w.points)-1]
	t := &stairs{w: w, most: min(p.most, free.worthWithin(p.purse, free.root()))}
	rise, run := float64(max(p.most, last.worth)-first.worth+1), float64(max(p.purse+p.fixed-first.price, 1))
	middle := math.Log2(scale * rise / run)
	guards := []*bound{free, p.priceBound()}
	var main *bound
	for i := range steepness {
		if w.watch.ended {
			return nil
		}
		x := middle + float64(i-steepness/2)
		b := p.newBound(frame, weights{perMinor: max(1, int64(math.Exp2(x))), perPoint: scale})
		t.most = min(t.most, b.worthWithin(p.purse, b.root()))
		if i == steepness/2 {
			main = b
		} else {
			guards = append(guards, b)
		}
	}
	t.search = newSearch(main, never, guards...)
	t.search.found = func(s *search) {
		if w.put(s.leaf()) {
			t.survey()
		}
	}
	t.search.aim, t.left = t.aim, t.miss
	t.survey()
	return t
}

// reduced is the search of a share without the options that no choice above the staircase can use, as far as the bounds can tell;
// nil where the share has none above it, or where the context ends that.
func (p *share) reduced(w *staircase) *stairs {
	for {
		t := p.newStairs(w)
		if t == nil || !t.aim(0, t.root()) {
			return nil
		}
		live := t.useful(t.limit)
		for i := range t.guards {
			for c, keep := range t.guards[i].useful(t.guards[i].limit) {
				live[c].keep(keep)
			}
		}
		q := p.within(live)
		switch {
		case q == nil || w.watch.ended:
			return nil
		case q.count()*10 > p.count()*9:
			return t
		}
		q.appraise()
		p = &share{q, t.most}
	}
}

// pass notes how much more than the frontier a share may be worth that is not searched, by bounds that take each column by itself.
func (w *staircase) pass(part *share) {
	frame := part.blankFrame(-1)
	var bounds []*bound
	for x := 0; x < 27; x += 3 {
		bounds = append(bounds, part.rough(frame, weights{perMinor: 1 << x, perPoint: scale}))
	}
	cheapest := part.rough(frame, weights{perMinor: 1}).root()
	for i, l := range w.points {
		price := part.purse
		if i+1 < len(w.points) {
			price = w.points[i+1].price - part.fixed - 1
		}
		if cheapest > price {
			continue
		}
		worth := part.most
		for _, b := range bounds {
			worth = min(worth, b.worthWithin(price, b.root()))
		}
		w.missed = max(w.missed, worth-l.worth)
	}
}

// put adds a choice unless one found is no dearer and worth no less, and drops those it betters.
func (w *staircase) put(l leaf) bool {
	at, _ := slices.BinarySearchFunc(w.points, l.price, func(x leaf, price int64) int { return cmp.Compare(x.price, price+1) })
	if at > 0 && w.points[at-1].worth >= l.worth {
		return false
	}
	from, to := at, at
	if at > 0 && w.points[at-1].price == l.price {
		from--
	}
	for to < len(w.points) && w.points[to].worth <= l.worth {
		to++
	}
	w.points = slices.Replace(w.points, from, to, l)
	c := &w.watch.course
	c.Found = len(w.points)
	c.Best.Price, c.Best.Worth = unit.Money(w.points[0].price), w.points[len(w.points)-1].worth
	return true
}

// survey works out what is looked for: what lies above the points, or on them.
func (t *stairs) survey() {
	t.steps = t.steps[:0]
	for i, l := range t.w.points {
		if t.w.tied {
			t.steps = append(t.steps, t.corner(corner{price: l.price - t.p.fixed, worth: l.worth}))
			continue
		}
		k := corner{price: t.p.purse, worth: l.worth + 1}
		if i+1 < len(t.w.points) {
			k.price = t.w.points[i+1].price - t.p.fixed - 1
		}
		t.steps = append(t.steps, t.corner(k))
	}
}

// corner works out what a choice may cost by each bound.
func (t *stairs) corner(k corner) corner {
	k.cost = append(k.cost, t.costFor(k.price, k.worth))
	for _, g := range t.guards {
		k.cost = append(k.cost, g.costFor(k.price, k.worth))
	}
	return k
}

// aim sets the limits of all bounds to what choices beyond the frontier may cost where no choice costs less than so much by the
// search's own bound, nor less than the guards say at depth d; false where there is no such choice.
func (t *stairs) aim(d int, least int64) bool {
	t.limit = -never
	for i := range t.guards {
		t.guards[i].limit = -never
	}
	for i := range t.steps {
		if k := &t.steps[i]; t.allowed(k, d, least) {
			t.limit = max(t.limit, k.cost[0])
			for j := range t.guards {
				t.guards[j].limit = max(t.guards[j].limit, k.cost[j+1])
			}
		}
	}
	return t.limit >= least
}

// allowed reports a step in which no bound excludes what follows.
func (t *stairs) allowed(k *corner, d int, least int64) bool {
	if least > k.cost[0] {
		return false
	}
	for j := range t.guards {
		if t.guards[j].value[d] > k.cost[j+1] {
			return false
		}
	}
	return true
}

// miss notes how much more than the frontier a choice may be worth that is left unexplored.
func (t *stairs) miss(d int, least int64) {
	for i := range t.steps {
		k := &t.steps[i]
		if !t.allowed(k, d, least) {
			continue
		}
		worth := min(t.most, t.worthWithin(k.price, least))
		for j := range t.guards {
			if g := &t.guards[j]; g.perPoint > 0 {
				worth = min(worth, g.worthWithin(k.price, g.value[d]))
			}
		}
		t.w.missed = max(t.w.missed, worth-k.worth+1)
	}
}

// first replaces a point by the first choice of the share in tie order that costs and serves the same, where that comes before it.
func (t *stairs) first(l *leaf) {
	k := t.corner(corner{price: l.price - t.p.fixed, worth: l.worth})
	if t.watch.ended || !t.allowed(&k, 0, t.root()) {
		return
	}
	guards := make([]*bound, len(t.guards))
	for i := range guards {
		guards[i] = t.guards[i].bound
	}
	s := newSearch(t.bound, k.cost[0], guards...)
	for i := range guards {
		s.guards[i].limit = k.cost[i+1]
	}
	s.tidy = true
	s.aim = func(d int, least int64) bool { return least <= k.cost[0] && !s.after(l, d) }
	s.found = func(s *search) {
		if x := s.leaf(); x.price == l.price && x.worth == l.worth {
			if t.p.before(&x, l) {
				*l = x
			}
			s.stop = true
		}
	}
	s.run()
}

// after reports that what is decided at depth d comes later in tie order than a choice, whatever is decided after it.
func (s *search) after(l *leaf, d int) bool {
	for _, c := range s.order[:d] {
		if s.pick[c] != l.pick[c] {
			return s.pick[c] > l.pick[c]
		}
	}
	return false
}
