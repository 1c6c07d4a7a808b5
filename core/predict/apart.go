package predict

import (
	"slices"

	"slipfit/core/air"
	"slipfit/core/build"
	"slipfit/core/feed"
	"slipfit/core/unit"
)

// A supply that breathes room air changes nothing in the case, and what it gives follows from what the case draws. So the case is
// brought to rest without it, and of a core but once, whichever such supply feeds it.

// solveApart brings a machine to rest without such a supply.
func (m *model) solveApart(s *air.Solver, out *air.Result) error {
	m.run(0, 0)
	return s.Solve(&m.air, out)
}

// addApart adds it to a machine at rest.
func (m *model) addApart(out *air.Result, line feed.Line) {
	dc := m.dc(out)
	loss := m.loss(dc, line)
	m.run(loss, dc)
	at := &out.Consumers[m.supply.duct]
	at.HeldW, at.RPM = loss, m.supply.rpm(dc)
	out.HeatInW += loss
	out.DuctW += loss
}

// indoors is a core without such a supply, at rest, at what was asked so far.
type indoors struct {
	predictor *Predictor
	fans      []build.FanSet
	at        map[duty]*atRest
	consumers []air.ConsumerState // room for those of the last one asked for
}

// duty is what settles a core: what is asked of its parts, the room, and all other heat in the board's chamber.
type duty struct {
	processor, graphics unit.Share
	roomC, heatW        float64
}

// atRest is what it comes to.
type atRest struct {
	result air.Result
	err    error
}

// indoors is a core without its supply, by its key; nil where that breathes the case's air.
func (p *Predictor) indoors(b *build.Build, k core) *indoors {
	if own, stated := b.Layout.Supply.OwnAir.Get(); !stated || !own {
		return nil
	}
	k.supply, k.supplies, k.besides = nil, nil, ""
	x, kept := p.apart.get(k, coresKept)
	if !kept || !slices.Equal(x.fans, b.Fans) {
		x = &indoors{predictor: p, fans: slices.Clone(b.Fans), at: map[duty]*atRest{}}
		p.apart.put(k, x, coresKept)
	}
	return x
}

// solve brings a machine with that core to rest, for a run. What it gives is good until it is asked again.
func (x *indoors) solve(m *model, r *Run) (*air.Result, error) {
	k := duty{r.Load.Processor, r.Load.Graphics, r.RoomC, m.air.Zones[boardZone].HeatW}
	rest := x.at[k]
	if rest == nil {
		rest = &atRest{}
		rest.err = m.solveApart(&x.predictor.solver, &rest.result)
		x.at[k] = rest
	}
	if rest.err != nil {
		return nil, rest.err
	}
	out := rest.result
	x.consumers = append(x.consumers[:0], out.Consumers...)
	out.Consumers = x.consumers
	m.addApart(&out, mainsLine(&r.forecast.needs.Place))
	return &out, nil
}
