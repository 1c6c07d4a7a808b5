package predict

import (
	"math"
	"math/rand/v2"
	"testing"

	"slipfit/catalog"
	"slipfit/core/air"
	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/part"

	"github.com/stretchr/testify/require"
)

// tower is an ordinary machine of the catalog: air cooler or radiator, a card of 300 W, everything at work.
func tower(t *testing.T, cooler string, face part.Face) *build.Build {
	t.Helper()
	s, err := catalog.Embedded()
	require.NoError(t, err)
	b := &build.Build{Kits: 1, Face: face, Memory: s.Memory[0]}
	find := func(ok bool) { t.Helper(); require.True(t, ok) }
	var ok bool
	b.Case, ok = part.Find(s.Cases, "kestrane-plain-38")
	find(ok)
	b.Layout = &b.Case.Layouts[0]
	b.Board, ok = part.Find(s.Boards, "mistrand-loom-t80")
	find(ok)
	b.Processor, ok = part.Find(s.Processors, "quillmar-tern-540")
	find(ok)
	b.Cooler, ok = part.Find(s.Coolers, cooler)
	find(ok)
	b.Graphics, ok = part.Find(s.Graphics, "calderby-lantern-60")
	find(ok)
	b.Boot.Drive, ok = part.Find(s.Drives, "tessorin-folio-4-1-tb")
	find(ok)
	b.Boot.Count = 1
	for _, x := range s.Supplies {
		if x.Rating.Or(0) == 750_000 && x.Level == part.Gold && x.Form == part.SupplyATX {
			b.Supply = x
		}
	}
	require.NotNil(t, b.Supply)
	return b
}

// The band of every temperature, of wall power and of the level agrees with twice the standard deviation of sampled
// machines. The inputs are drawn here, apart from the code that spreads a run: normal, independent, each with the standard
// uncertainty that package air suggests and band.go states. It is a first-order band: it holds as long as no part comes near
// its limit, where it would call every fan to full speed.
func TestBandsAgreeWithSampling(t *testing.T) {
	for name, b := range map[string]*build.Build{
		"air cooler":   tower(t, "norbrusk-post-120", ""),
		"top radiator": tower(t, "aerlitt-loop-240", part.Top),
	} {
		t.Run(name, func(t *testing.T) {
			var p Predictor
			f := p.Forecast(b, &brief.Needs{Loads: []brief.Load{{Activity: "work", Processor: 60_000, Graphics: 60_000, Memory: 60_000, Drives: 50_000}}})
			r := f.Run(0, Ordinary).Spread()
			require.NoError(t, r.Err)
			m := &f.model
			m.duty(r)
			require.NoError(t, m.solve(&p.solver, &p.result, 1))

			watched := func(x *Run) []Band {
				return []Band{x.Parts[0].TempC, x.Parts[1].TempC, x.Zones[0].AirC, x.Drives[0].TempC, x.WallW, x.Board.TempC}
			}
			bands := watched(r)
			const samples = 4000
			rng := rand.New(rand.NewPCG(8, 8))
			sum, squares := make([]float64, len(bands)), make([]float64, len(bands))
			for range samples {
				in := sampled(&m.air, rng)
				require.NoError(t, p.solver.Solve(&in, &p.result))
				moved := Run{Load: r.Load, RoomC: r.RoomC, AltitudeM: r.AltitudeM, ChairM: r.ChairM, forecast: f}
				m.read(&moved, &in, &p.result, f)
				rest := func(b, inlet Band, u float64) float64 { return (b.Expected - inlet.Expected) * u * rng.NormFloat64() }
				for i, y := range watched(&moved) {
					x := y.Expected
					switch i {
					case 4:
						x *= 1 + efficiencyU/0.9*rng.NormFloat64()
					case 3:
						x += rng.NormFloat64() + rest(moved.Drives[0].TempC, moved.Drives[0].InletC, math.Hypot(0.1, 0.05))
					case 5:
						x += rng.NormFloat64() + rest(moved.Board.TempC, moved.Board.InletC, 0.1)
					default:
						x += rng.NormFloat64()
					}
					sum[i] += x
					squares[i] += x * x
				}
			}
			for i, b := range bands {
				mean := sum[i] / samples
				u := 2 * math.Sqrt(squares[i]/samples-mean*mean)
				require.InEpsilon(t, u, (b.High-b.Low)/2, 0.08, "figure %d", i)
				require.InDelta(t, mean, b.Expected, 0.15*u, "figure %d", i)
			}
		})
	}
}

func sampled(m *air.Machine, rng *rand.Rand) air.Machine {
	c := clone(m)
	tol := air.SuggestedTolerances()
	share := func(u float64) float64 { return 1 + u*rng.NormFloat64() }
	c.RoomC += tol.RoomK * rng.NormFloat64()
	opening, beta := share(openingU), betaU*rng.NormFloat64()
	for z := range c.Zones {
		c.Zones[z].HeatW *= share(tol.PowerShare)
		c.Zones[z].LeakImpedance *= opening
	}
	for i := range c.Paths {
		s := share(tol.FanFlowShare)
		c.Paths[i].Fans.Fan.FreeM3PerS *= s
		c.Paths[i].Fans.Fan.ShutoffPa *= s * s
		c.Paths[i].SharedImpedance *= opening
		c.Paths[i].Radiator.UAWPerK /= share(tol.ResistanceShare)
	}
	for k := range c.Consumers {
		x := &c.Consumers[k]
		x.PowerW *= share(tol.PowerShare)
		s := share(tol.ResistanceShare)
		x.RFixKPerW *= s
		x.RFlowKPerW *= s
		if x.Medium == air.ToZoneAir {
			x.Beta = min(1, max(0, x.Beta+beta))
		}
	}
	return c
}

// A band holds its expected figure, and is worked out once.
func TestSpreadHoldsExpected(t *testing.T) {
	var p Predictor
	r := p.Forecast(tower(t, "norbrusk-post-120", ""), nil).Run(0, Ordinary)
	before := r.Parts[0].TempC
	require.Equal(t, before.Low, before.High)
	r.Spread()
	r.each(func(b *Band, k figure) {
		require.LessOrEqual(t, b.Low, b.Expected)
		require.GreaterOrEqual(t, b.High, b.Expected)
		if k == temperature && b.Expected > 1 {
			require.Greater(t, b.High-b.Low, 2.0, "a reading misses by its sensor at least")
		}
	})
	require.Equal(t, before.Expected, r.Parts[0].TempC.Expected)
	after := *r
	r.Spread()
	require.Equal(t, after.Parts[0], r.Parts[0])
}
