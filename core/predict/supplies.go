package predict

import (
	"cmp"
	"crypto/sha256"
	"fmt"
	"math"
	"slices"

	"slipfit/core/air"
	"slipfit/core/feed"
	"slipfit/core/part"
)

// Supplies are power supplies of which one feeds a build, whichever it is. Those whose sheets lack a figure are left out: no build
// with one stands by a rule that predicts.
//
// A supply with air of its own leaves the case alone. One that breathes air of the case drives some out, or lets some in. Of all of
// them no fan drives more than the strongest, and no way is freer than the freest. So in one chamber no less air goes through the case
// with both of these than with a supply that drives air out; and with the freest way and a fan that stands still no less than with
// one that lets air in. More air is cooler air: the argument is the one at Run.steady. With its way closed a case is
// warmest. A coolant need not follow the case's air, and one of two chambers may grow warmer with more air through the other: of such
// builds nothing is said.
type Supplies struct {
	list  []supply
	index []int // by place in what they were made of: theirs in the list, −1 for those left out
	best  supply
	name  string
}

// NewSupplies lists them.
func NewSupplies(list []*part.Supply) *Supplies {
	s := &Supplies{}
	sum := sha256.New()
	for _, p := range list {
		var m model
		s.index = append(s.index, -1)
		if one := m.supplied(p); len(m.missing) == 0 {
			s.index[len(s.index)-1] = len(s.list)
			s.list = append(s.list, one)
			fmt.Fprintln(sum, p.ID, one.form, one.rating, one.level, one.curve, one.zeroToW, one.low, one.fan)
		}
	}
	if len(s.list) > 0 {
		s.best = s.atBest(nil, 0, math.Inf(1), math.Inf(1))
	}
	s.name = fmt.Sprintf("%d supplies %x", len(s.list), sum.Sum(nil))
	return s
}

// GroupSupplies sorts supplies by how loud they are, all in all, into so many groups at most, and tells which is in which and at what place.
func GroupSupplies(list []*part.Supply, most int) (groups []*Supplies, of, place []int) {
	return grouped(list, most, func(s *supply, loadW float64) float64 { return max(0, s.source.PowerDBA(s.rpm(loadW))) })
}

// GroupByAir is GroupSupplies by how much air their fans blow.
func GroupByAir(list []*part.Supply, most int) (groups []*Supplies, of, place []int) {
	return grouped(list, most, func(s *supply, loadW float64) float64 {
		return s.rpm(loadW) / max(1, s.fan.RatedRPM) * s.fan.FreeM3PerS
	})
}

// grouped sorts supplies by what a figure comes to at usual loads.
func grouped(list []*part.Supply, most int, figure func(s *supply, loadW float64) float64) (groups []*Supplies, of, place []int) {
	order, sum := make([]int, len(list)), make([]float64, len(list))
	for i, p := range list {
		var m model
		s := m.supplied(p)
		order[i] = i
		for _, loadW := range usualLoadsW {
			sum[i] += figure(&s, loadW)
		}
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(sum[a], sum[b]) })
	of, place = make([]int, len(list)), make([]int, len(list))
	for g := range min(most, len(list)) {
		var some []*part.Supply
		for _, i := range order[g*len(list)/most : (g+1)*len(list)/most] {
			of[i], place[i], some = g, len(some), append(some, list[i])
		}
		groups = append(groups, NewSupplies(some))
	}
	return groups, of, place
}

// usualLoadsW are loads that supplies are compared at, W.
var usualLoadsW = [...]float64{100, 200, 300, 450, 600}

// blown is the air that a watt of load, of so much or more, brings through the fan of any of them, m³/s, at most.
func (s *Supplies) blown(loadW float64) float64 {
	most := 0.0
	for i := range s.list {
		if x := &s.list[i]; x.carries(loadW) {
			most = max(most, x.blown())
		}
	}
	return most
}

// carries reports a load that a supply is planned for (rule supply-steady).
func (s *supply) carries(loadW float64) bool { return plannedLoad*float64(s.rating)/1000 >= loadW }

// atBest is a supply whose fan drives as much as the strongest does at a load, where it starts by another, through a way as free as the
// freest, makes no sound, and loses nothing; or stands still, until zeroToW is set to nought. What does not carry the least load is left out,
// and what a layout takes no supply of its form (rule supply-form), where one is given.
func (s *Supplies) atBest(l *part.Layout, leastW, loadW, mostW float64) supply {
	const leastPa = 1e-3
	drivePa, impedance := leastPa, math.Inf(1)
	for i := range s.list {
		x := &s.list[i]
		if !x.carries(leastW) || l != nil && !slices.Contains(l.Supply.Forms, x.form) {
			continue
		}
		turns := 0.0
		if x.zeroToW <= mostW {
			turns = x.rpm(max(loadW, x.zeroToW)) / x.fan.RatedRPM
		}
		drivePa = max(drivePa, turns*turns*x.fan.ShutoffPa)
		impedance = min(impedance, x.fan.Impedance())
	}
	if math.IsInf(impedance, 1) {
		impedance = s.list[0].fan.Impedance()
	}
	fan := air.Fan{ShutoffPa: drivePa, FreeM3PerS: math.Sqrt(drivePa / impedance), RatedRPM: 1000}
	return supply{any: true, rating: 1, zeroToW: math.Inf(1), fan: fan, low: fan.RatedRPM}
}

// lossW is the most that stays in one of them at a load.
func (s *Supplies) lossW(loadW float64) float64 {
	most := 0.0
	for i := range s.list {
		for _, line := range [...]feed.Line{feed.Line115, feed.Line230} {
			if share, _ := s.list[i].efficiency(loadW, line); share > 0 {
				most = max(most, loadW/share-loadW)
			}
		}
	}
	return most
}

// asksW is what a run's parts but fans draw, W, where none is at its limit.
func (r *Run) asksW() float64 {
	m := &r.forecast.model
	sum := m.boardW + m.lightsW + m.brings(&r.Load) + r.besidesW + m.pumpW + devicesW
	for i := range m.parts {
		sum += between(m.parts[i].rest, m.parts[i].most, share(&r.Load, m.parts[i].seat))
	}
	return sum
}

// fansW is what its fans draw at full speed, W.
func (m *model) fansW() float64 {
	sum := 0.0
	for i := range m.air.Consumers {
		f := &m.air.Consumers[i].Fans
		sum += float64(f.Count) * f.Fan.RatedPowerW
	}
	for i := range m.air.Paths {
		if p := &m.air.Paths[i]; p.OwnOf == 0 {
			sum += float64(p.Fans.Count) * p.Fans.Fan.RatedPowerW
		}
	}
	return sum
}

// feeds is what a run asks of a supply, whichever it is: without fans, with all at full speed, and with all that may come besides, W.
func (r *Run) feeds() (leastW, loadW, mostW float64) {
	m := &r.forecast.model
	leastW = r.asksW()
	loadW = leastW + m.fansW()
	return leastW, loadW, loadW + m.coolerMostW() + max(0, r.mostW-r.besidesW)
}

// anySupply sets the supply of a run that may be any of several.
func (m *model) anySupply(r *Run) {
	s := &m.supply
	if s.duct >= 0 {
		return
	}
	leastW, loadW, mostW := r.feeds()
	all := r.forecast.besides.supplies
	path := &m.air.Paths[s.path]
	if s.closed {
		s.lossW = all.lossW(mostW)
		return
	}
	best := all.atBest(m.b.Layout, leastW, loadW, mostW)
	path.Fans.Fan, s.fan, s.low = best.fan, best.fan, best.low
	path.EachImpedance = packImpedance * best.fan.Impedance()
}
