package predict_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/predict"
	"slipfit/core/unit"

	"github.com/stretchr/testify/require"
)

// Every build of the catalog that goes together comes to rest, at every activity, in any room up to 40 °C and 2500 m; all
// heat that goes in comes out by air, walls and the supply's own duct, air that comes in goes out again, and all that is
// drawn from the wall is in the parts, in the supply or on the ports.
func TestBuildsComeToRest(t *testing.T) {
	builds := 4000
	if testing.Short() {
		builds = 300
	}
	m := newMaker(t, 1)
	var p predict.Predictor
	most, total, runs := 0, 0, 0
	for range builds {
		b, n := m.build(), m.needs()
		f := p.Forecast(b, n)
		require.NotNil(t, f)
		for i := range f.Loads() {
			for _, day := range []predict.Day{predict.Ordinary, predict.Hottest} {
				r := f.Run(i, day)
				require.Empty(t, r.Missing)
				require.NoError(t, r.Err, "%s, %s, %s, %s on %s: %+v in a room of %v at %v m", b.Case.ID, b.Layout.ID, b.Processor.ID, b.Cooler.ID, b.Face, r.Load, r.RoomC, r.AltitudeM)
				most, total, runs = max(most, r.Evaluations), total+r.Evaluations, runs+1

				require.InEpsilon(t, r.HeatInW, r.CarriedW+r.WallsW+r.DuctW, 1e-3)
				require.Less(t, r.MassResidualKgS, 1e-6)
				require.InDelta(t, r.WallW.Expected, r.HeatInW+10, 0.1, "wall power is the heat in the case and 10 W on the ports")
				require.InDelta(t, r.WallW.Expected, r.DCW.Expected+r.LossW.Expected, 1e-9)
				for _, q := range append(r.Parts, r.Drives...) {
					require.Greater(t, q.TempC.Expected, r.RoomC)
					require.LessOrEqual(t, q.HeldW.Expected, q.AskedW+1e-9)
					require.False(t, math.IsNaN(q.TempC.Expected))
				}
				for _, q := range r.Parts {
					require.LessOrEqual(t, q.TempC.Expected, q.LimitC+0.01)
					if q.Kept.Expected < 0.999 {
						require.InDelta(t, q.LimitC, q.TempC.Expected, 0.01, "a part is held back only at its limit")
					}
				}
			}
		}
	}
	t.Logf("%d runs, %d evaluations of the network on average, %d at most", runs, total/runs, most)
}

// BenchmarkRun solves one build for one activity: mapping, supply's loss and equilibrium.
func BenchmarkRun(b *testing.B) {
	m := newMaker(b, 2)
	var p predict.Predictor
	n := m.needs()
	n.Loads = n.Loads[:1]
	x, y := m.build(), m.build()
	b.ReportAllocs()
	for b.Loop() {
		x, y = y, x
		if r := p.Forecast(x, n).Run(0, predict.Hottest); r.Err != nil {
			b.Fatal(r.Err)
		}
	}
}

// Parts in the open are no louder and hold no less than in any whole build that has them: a planner may turn a build away by
// them before it is whole.
func TestOpenIsNeverWorse(t *testing.T) {
	m := newMaker(t, 12)
	var p predict.Predictor
	for range 600 {
		b, n := m.build(), m.needs()
		f := p.Forecast(b, n)
		for i, l := range predict.Loads(n) {
			whole := f.Run(i, predict.Ordinary)
			for _, seats := range [][]build.Seat{
				{build.Graphics}, {build.Processor, build.Cooler}, {build.Case, build.Cooler}, {build.Supply}, {build.Archive}, {build.Fans},
				{build.Case, build.Processor, build.Cooler, build.Graphics, build.Supply, build.Boot, build.Archive, build.Fans},
			} {
				some := *b
				for s := range build.Seat(build.Seats) {
					if !build.SetOf(seats...).Has(s) {
						some.Clear(s)
					}
				}
				open := p.Open(&some, n, l, predict.Ordinary)
				require.NoError(t, open.Err)
				require.LessOrEqual(t, open.ChairDBA, whole.ChairDBA.Expected+1e-6, "%v of %s %s at %s", seats, b.Case.ID, b.Layout.ID, l.Activity)
				for _, q := range open.Parts {
					for _, w := range whole.Parts {
						if w.Seat == q.Seat {
							require.GreaterOrEqual(t, q.HeldW.Expected, w.HeldW.Expected-1e-6, "%s in %s", q.Name, b.Case.ID)
							require.LessOrEqual(t, q.TempC.Expected, w.TempC.Expected+1e-6, "%s in %s", q.Name, b.Case.ID)
						}
					}
				}
			}
		}
	}
}

// Memory, drives and cards make no build quieter, its air no cooler and no drive cooler, where that is said.
func TestLeast(t *testing.T) {
	m := newMaker(t, 15)
	var p, q predict.Predictor
	said, louder, unsaid, hot, second := 0, 0, 0, 0, 0
	for range 20000 {
		b, n := m.build(), m.needs()
		disks := slices.DeleteFunc(b.Tiers(), func(t build.Tier) bool { return !t.Drive.Disk || m.IntN(2) == 0 })
		for i := range predict.Asked(n) {
			day := predict.Day(m.IntN(2))
			less, more := p.Core(b, n).Least(i, day), q.Forecast(b, n).Run(i, day)
			name := fmt.Sprintf("%s %s: %s with %s on %s and %s", b.Case.ID, b.Layout.ID, b.Processor.ID, b.Cooler.ID, b.Board.ID, b.Supply.ID)
			some := *b
			if m.IntN(4) == 0 {
				some.Board = nil
			}
			heard := q.Forecast(b, n).Run(i, predict.Ordinary).ChairDBA.Expected
			wish := unit.Sound(math.Ceil(heard*1000)) - unit.Sound(m.IntN(2)*m.IntN(1000))
			if p.Core(&some, n).Louder(i, wish, disks) {
				require.Greater(t, heard*1000, float64(wish), name)
				louder++
			} else if heard*1000 > float64(wish) {
				unsaid++
			}
			if len(less) == 0 {
				continue
			}
			said++
			second += len(less) - 1
			airC, boardC, every := math.Inf(1), math.Inf(1), true
			for _, r := range less {
				airC = min(airC, r.Zones[0].AirC.Expected)
				c, known := r.BoardC()
				boardC, every = min(boardC, c), every && known
			}
			require.GreaterOrEqual(t, more.Zones[0].AirC.Expected, airC-1e-6, name)
			if every {
				require.GreaterOrEqual(t, more.Board.TempC.Expected, boardC-1e-6, name)
			}
			for _, d := range more.Drives {
				drive := b.Tiers()[slices.IndexFunc(b.Tiers(), func(x build.Tier) bool { return x.Seat == d.Seat })].Drive
				least := math.Inf(1)
				for _, r := range less {
					if c, known := r.CoolestDriveC(drive); known {
						least = min(least, c)
					}
				}
				placed := !slices.ContainsFunc(b.Assign(build.SetOf(build.Case, build.Graphics, build.Cards, build.Boot, build.Cache, build.Archive)).Drives,
					func(x build.DrivePlace) bool {
						return x.Seat == d.Seat && x.Drive.Form == part.FormM2 && x.Socket == nil
					})
				if !math.IsInf(least, 1) && placed { // the rule drive-slots turns away a module without a socket
					hot++
					require.GreaterOrEqual(t, d.TempC.Expected, least-1e-6, "%s in %s", d.Name, name)
				}
			}
		}
	}
	require.Greater(t, louder, 1000)
	require.Greater(t, hot, 500)
	require.Greater(t, second, 100)
	t.Logf("%d said, %d louder and %d louder unsaid, %d drives, %d with a supply that may start", said, louder, unsaid, hot, second)
}
