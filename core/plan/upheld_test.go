package plan

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/unit"

	"github.com/stretchr/testify/require"
)

// cooledStock is a stock of processors of one socket, dear and cheap whatever they draw, coolers of which those for more heat stand
// higher, and cases with more room or less, beside what else a build that stands holds: what cools one processor fits few of the cases,
// so that two seats leave a third none.
func cooledStock(r *rand.Rand, all *part.Stock, b *build.Build) *part.Stock {
	alike := slices.DeleteFunc(slices.Clone(all.Processors), func(p *part.Processor) bool { return p.Socket != b.Processor.Socket })
	s := &part.Stock{
		Shop: all.Shop, Services: all.Services, Processors: with(sample(r, alike, 5), b.Processor),
		Boards: []*part.Board{b.Board}, Memory: []*part.Memory{b.Memory}, Supplies: []*part.Supply{b.Supply}, Drives: []*part.Drive{b.Boot.Drive},
	}
	s.Graphics = with(s.Graphics, b.Graphics)
	for i := range 3 {
		p := *b.Processor
		p.ID += fmt.Sprint("-", i)
		for _, heat := range []*unit.Figure[unit.Power]{&p.TDP, &p.Sustained, &p.Boost} {
			heat.Set(heat.Or(0) * unit.Power(40+30*i) / 100)
		}
		p.Price = unit.Money(5000 + r.IntN(6000))
		s.Processors = append(s.Processors, &p)
	}
	for i := range 6 {
		c, air := *b.Cooler, *b.Cooler.Air
		c.ID += fmt.Sprint("-", i)
		c.Air = &air
		air.Height.Set(air.Height.Or(0) * unit.Length(40+12*i) / 100)
		c.Rated.Set(c.Rated.Or(0) * unit.Power(20+20*i) / 100)
		c.Price += unit.Money(r.IntN(3000))
		s.Coolers = append(s.Coolers, &c)
		h := *b.Case
		h.ID += fmt.Sprint("-", i)
		h.Layouts = []part.Layout{*b.Layout}
		h.Layouts[0].Cooler.Set(b.Layout.Cooler.Or(0) * unit.Length(30+10*i) / 100)
		h.Price += unit.Money(r.IntN(8000))
		s.Cases = append(s.Cases, &h)
	}
	return s
}

// TestSeatsLeftNone compares the planner with trying everything where options must be passed over because they leave another seat none.
func TestSeatsLeftNone(t *testing.T) {
	stocks := generic(t)
	cores := slices.DeleteFunc(anchors(t, stocks), func(b *build.Build) bool { return b.Cooler == nil || b.Cooler.Air == nil })
	var seen agreement
	for seed := range uint64(60) {
		r := rand.New(rand.NewPCG(seed, 21))
		stock := cooledStock(r, stocks, cores[r.IntN(len(cores))])
		ask := Ask{Needs: order(unit.Money(60_000+r.Int64N(300_000)),
			brief.SingleWork, 1, 500+r.IntN(1500), 1+r.IntN(50), brief.AllWork, 1, 5000+r.IntN(40_000), 1+r.IntN(50))}
		seen.see(t, seed, stock, ask)
	}
	t.Log(seen)
	require.Greater(t, seen.stand, 10)
	require.Greater(t, seen.possible, 200)
	require.Greater(t, seen.impossible, 200)
}

// agreement counts the stocks that hold a build, and the parts that are possible and that are not.
type agreement struct{ stand, possible, impossible int }

func (x agreement) String() string {
	return fmt.Sprintf("%d stocks hold a build; %d parts possible, %d not", x.stand, x.possible, x.impossible)
}

// see compares what the planner says of a stock with trying everything.
func (x *agreement) see(t *testing.T, seed uint64, stock *part.Stock, ask Ask) {
	t.Helper()
	if bruteAgrees(t, stock, ask) {
		x.stand++
	}
	if t.Failed() {
		t.Fatalf("seed %d", seed)
	}
	can, cannot := openAgrees(t, stock, ask)
	x.possible, x.impossible = x.possible+can, x.impossible+cannot
}
