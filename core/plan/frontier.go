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
	f := Frontier{Certificate: Certificate{Combinations: p.combinations()}}
	c := &f.Certificate
	if p.emptied() {
		a := p.infeasible(Answer{Certificate: *c})
		f.Status, f.Certificate, f.Cuts = a.Status, a.Certificate, a.Cuts
		return f
	}
	p.appraise()
	price := p.priceBound()
	c.Root.Price = unit.Money(p.fixed + price.root())
	least, s := p.least(ctx, price)
	c.Nodes, c.Checks = s.nodes, p.index.checks-p.asked
	switch {
	case least == nil && s.stopped:
		f.Status = Unknown
		return f
	case least == nil:
		a := p.infeasible(Answer{Certificate: *c})
		f.Status, f.Certificate, f.Cuts = a.Status, a.Certificate, a.Cuts
		return f
	}
	c.Final.Price = unit.Money(least.price)
	if s.stopped {
		c.Final.Price = min(c.Final.Price, max(c.Root.Price, unit.Money(p.fixed+s.open)))
		c.Gap.Price = unit.Money(least.price) - c.Final.Price
	}
	t := p.newStairs(ctx, []leaf{*least})
	c.Root.Worth = t.most
	t.run()
	c.Nodes += t.nodes
	c.Gap.Worth = t.missed
	c.Final.Worth = min(t.most, t.top().worth+t.missed)
	f.Status = Optimal
	if t.stopped || s.stopped {
		f.Status = Feasible
	}
	for i := range t.points {
		l := t.points[i]
		if !t.stopped {
			c.Nodes += t.first(&l)
		}
		f.Points = append(f.Points, Point{unit.Money(l.price), l.worth, p.build(&l)})
	}
	c.Checks = p.index.checks - p.asked
	return f
}

// stairs is a search for the whole frontier at once. It keeps the choices found that nothing found betters, and leaves out
// what cannot lie above them: for each step between two of them some bound says that nothing is both cheaper than the second and
// worth more than the first.
type stairs struct {
	*search
	points []leaf   // the cheapest first, each worth more than the one before
	steps  []corner // what lies beyond each point
	most   int64    // no choice is worth more
	missed int64    // how much more than the frontier what an end left unexplored may be worth at some price
}

// corner is the most a choice may cost by each bound, the search's own first, and be worth more than one point and cheaper than the
// next.
type corner struct {
	price, worth int64 // at most, what is settled left out; at least
	cost         []int64
}

func (p *Problem) newStairs(ctx context.Context, points []leaf) *stairs {
	frame := p.valueFrame()
	free := p.newBound(frame, weights{perPoint: scale})
	least := &points[0]
	t := &stairs{points: points, most: max(points[len(points)-1].worth, free.worthWithin(p.purse, free.root()))}
	rise, run := float64(t.most-least.worth+1), float64(max(p.purse+p.fixed-least.price, 1))
	middle := math.Log2(scale * rise / run)
	guards := []*bound{free, p.priceBound()}
	var main *bound
	for i := range steepness {
		x := middle + float64(i-steepness/2)
		b := p.newBound(frame, weights{perMinor: max(1, int64(math.Exp2(x))), perPoint: scale})
		t.most = max(points[len(points)-1].worth, min(t.most, b.worthWithin(p.purse, b.root())))
		if i == steepness/2 {
			main = b
		} else {
			guards = append(guards, b)
		}
	}
	t.search = newSearch(ctx, main, never, guards...)
	t.search.found = func(s *search) { t.put(s.leaf()) }
	t.search.aim, t.left = t.aim, t.miss
	t.survey()
	return t
}

// top is the choice worth most.
func (t *stairs) top() *leaf { return &t.points[len(t.points)-1] }

// put adds a choice unless one found is no dearer and worth no less, and drops those it betters.
func (t *stairs) put(l leaf) {
	at, _ := slices.BinarySearchFunc(t.points, l.price, func(x leaf, price int64) int { return cmp.Compare(x.price, price+1) })
	if at > 0 && t.points[at-1].worth >= l.worth {
		return
	}
	from, to := at, at
	if at > 0 && t.points[at-1].price == l.price {
		from--
	}
	for to < len(t.points) && t.points[to].worth <= l.worth {
		to++
	}
	t.points = slices.Replace(t.points, from, to, l)
	t.survey()
}

// survey works out what lies beyond the points.
func (t *stairs) survey() {
	t.steps = t.steps[:0]
	for i := range t.points {
		k := corner{price: t.p.purse, worth: t.points[i].worth + 1}
		if i+1 < len(t.points) {
			k.price = t.points[i+1].price - t.p.fixed - 1
		}
		k.cost = append(k.cost, t.costFor(k.price, k.worth))
		for _, g := range t.guards {
			k.cost = append(k.cost, g.costFor(k.price, k.worth))
		}
		t.steps = append(t.steps, k)
	}
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
		t.missed = max(t.missed, worth-k.worth+1)
	}
}

// first replaces a choice by the first in tie order that costs and serves the same.
func (t *stairs) first(l *leaf) (nodes int64) {
	var guards []*bound
	for i := range t.guards {
		guards = append(guards, t.guards[i].bound)
	}
	s := newSearch(t.ctx, t.bound, t.costFor(l.price-t.p.fixed, l.worth), guards...)
	for i, g := range guards {
		s.guards[i].limit = g.costFor(l.price-t.p.fixed, l.worth)
	}
	s.tidy = true
	s.found = func(s *search) {
		if x := s.leaf(); x.price == l.price && x.worth == l.worth {
			*l = x
			s.stop = true
		}
	}
	s.run()
	return s.nodes
}
