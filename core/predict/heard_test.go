package predict_test

import (
	"math"
	"testing"

	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/predict"
	"slipfit/core/sound"

	"github.com/stretchr/testify/require"
)

// A build is no quieter than its parts come to one by one: what its core is heard at with an ideal cooler, alone or as one of several that
// differ in their supplies, its cooler in that air, and its disks. Where figures for several supplies are no more than those for each, a
// search may ask of all at once.
func TestHeard(t *testing.T) {
	m := newMaker(t, 41)
	var p, q predict.Predictor
	said, near, chosen := 0, 0, 0
	for range 12000 {
		b, n := m.build(), m.needs()
		if b.Layout.Chambers || b.Cooler.Air == nil {
			continue
		}
		besides := m.besides(b, n, 0)
		for load := range predict.Asked(n) {
			name := b.Case.ID + " " + b.Layout.ID + ": " + b.Processor.ID + " with " + b.Cooler.ID + " and " + b.Supply.ID
			run := q.Forecast(b, n).Run(load, predict.Ordinary)
			actual := run.PowerDBA.Expected
			sum := func(list []predict.Heard) (dBA float64, known bool) {
				least := math.Inf(1)
				for _, h := range list {
					own, known := p.CoolerPW(b, n, load, predict.InletOf(h.InletC))
					if !known {
						return 0, false
					}
					least = min(least, h.PW+own)
				}
				return sound.Sum(10*math.Log10(least), predict.Besides{}.Disks(b)), true
			}
			list := p.Heard(b, n, besides, load)
			if len(list) == 0 {
				continue
			}
			dBA, known := sum(list)
			if !known {
				continue
			}
			require.LessOrEqual(t, dBA, actual+1e-3, name)
			said++
			if dBA > actual-0.5 {
				near++
			}
			open := *b
			open.Supply = nil
			others := []*part.Supply{pick(m, m.stock.Supplies), b.Supply, pick(m, m.stock.Supplies)}
			choir := p.Choir(&open, n, besides.Fed(predict.NewSupplies(others)), load)
			if choir == nil || !carried(q.Forecast(b, n), b.Supply) {
				continue
			}
			least, with := choir.Least(), choir.With(nil, 1)
			require.NotEmpty(t, with, name)
			for _, h := range with {
				require.LessOrEqual(t, least.PW, h.PW, name)
				require.LessOrEqual(t, least.InletC, h.InletC, name)
			}
			if any, known := sum(with); known {
				require.LessOrEqual(t, any, actual+1e-3, "one of several, "+name)
				chosen++
			}
		}
	}
	t.Logf("%d builds, %d of them within half a decibel, %d as one of several", said, near, chosen)
	require.Greater(t, said, 3000)
	require.Greater(t, near, said/3)
	require.Greater(t, chosen, 2000)
}

// The figure that says what sockets the modules of a tier sit in is what their temperature goes by.
func TestBareIn(t *testing.T) {
	m := newMaker(t, 42)
	var p predict.Predictor
	bare := map[predict.Bare]int{}
	for range 4000 {
		b, n := m.build(), m.needs()
		for _, tier := range []build.Seat{build.Boot, build.Archive} {
			for _, d := range p.Forecast(b, n).Run(0, predict.Hottest).Drives {
				of := b.Boot
				if tier == build.Archive {
					of = b.Archive
				}
				if d.Seat != tier || of.Drive.Form != part.FormM2 || of.Drive.Sink.Or(true) || of.Drive.SinkAir.Or(0) >= 20_000 || !placed(b, tier) {
					continue
				}
				in := predict.BareIn(b, tier)
				require.Equal(t, in == predict.Naked, d.Bare != "", "%s on %s", of.Drive.ID, b.Board.ID)
				bare[in]++
			}
		}
	}
	require.Greater(t, bare[predict.Naked], 50)
	require.Greater(t, bare[predict.Sunk], 50)
}
