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
	c.Root.Price = unit.Money(low.root())
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
	w := &staircase{p: p, watch: p.watch, points: []leaf{*least}}
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
	p      *Problem
	watch  *watch
	points []leaf // the cheapest first, each worth more than the one before
	most   int64  // no choice is worth more
	missed int64  // how much more than the frontier what an end left unexplored may be worth at some price
}

// climb searches every share.
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
}

// stairs is a search of one share for what lies above a staircase. It leaves out what cannot: for each step between two points
// some bound says that nothing is both cheaper than the second and worth more than the first.
type stairs struct {
	*search // its corners lie beyond each point
	w       *staircase
	most    int64 // no choice of the share is worth more
}

// newStairs makes the bounds of a search; nil where the context ends that.
func (p *share) newStairs(w *staircase) *stairs {
	if w.watch.ended {
		return nil
	}
	frame := p.valueBound().frame
	free := p.newBound(frame, weights{perPoint: scale}, never)
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
		b := p.newBound(frame, weights{perMinor: max(1, int64(math.Exp2(x))), perPoint: scale}, never)
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
	t.left = t.miss
	t.survey()
	return t
}

// reduced is the search of a share without the options that no choice above the staircase can use, as far as the bounds can tell;
// nil where the share has none above it, or where the context ends that.
func (p *share) reduced(w *staircase) *stairs {
	for {
		t := p.newStairs(w)
		if t == nil || !t.nearest(0, t.root()) {
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
		p = &share{Problem: q, most: t.most}
	}
}

// pass notes how much more than the frontier a share may be worth that is not searched, by bounds that take each column by itself.
func (w *staircase) pass(part *share) {
	frame := part.blankFrame(part.usual(-1))
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

// put adds a choice unless one found betters it, which is no dearer and worth no less, and of two alike the first in tie order; it
// drops those it betters.
func (w *staircase) put(l leaf) bool {
	at, _ := slices.BinarySearchFunc(w.points, l.price, func(x leaf, price int64) int { return cmp.Compare(x.price, price+1) })
	if at > 0 {
		x := &w.points[at-1]
		if x.worth > l.worth || x.worth == l.worth && (x.price < l.price || !w.p.before(&l, x)) {
			return false
		}
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

// survey works out what is looked for: what lies above the points, and on them what comes before them in tie order.
func (t *stairs) survey() {
	corners := t.corners[:0]
	for i := range t.w.points {
		l := t.w.points[i]
		price := t.p.purse
		if i+1 < len(t.w.points) {
			price = t.w.points[i+1].price - t.p.fixed - 1
		}
		corners = append(corners, corner{price: price, worth: l.worth + 1}, corner{price: l.price - t.p.fixed, worth: l.worth, rival: &l})
	}
	t.seek(corners...)
}

// miss notes how much more than the frontier a choice may be worth that is left unexplored.
func (t *stairs) miss(d int, least int64) {
	for i := range t.corners {
		k := &t.corners[i]
		if k.rival != nil || !t.allows(k, d, least) {
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
