package predict_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"slipfit/core/brief"
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

// Memory, drives and cards make no build quieter, where that is said.
func TestLouder(t *testing.T) {
	m := newMaker(t, 15)
	var p, q, other predict.Predictor
	louder, anyLouder, unsaid, quiet, louderSo, unsaidSo, anySo, between, anyBetween, anyCooler := 0, 0, 0, 0, 0, 0, 0, 0, 0, 0
	for range 20000 {
		b, n := m.build(), m.needs()
		disks := slices.DeleteFunc(b.Tiers(), func(t build.Tier) bool { return !t.Drive.Disk || m.IntN(2) == 0 })
		holding := *b
		for _, t := range b.Tiers() {
			if !slices.Contains(disks, t) {
				holding.Clear(t.Seat)
			}
		}
		disksDBA := predict.Besides{}.Disks(&holding)
		counted := some(m)
		besides := m.besides(b, n, counted)
		fed := m.supplies(b)
		for i := range predict.Loads(n) {
			if i == len(predict.Loads(n))-2 && i > 0 {
				continue // everything at work, which is not asked of
			}
			alone := *b
			if m.IntN(4) == 0 {
				alone.Board = nil
			}
			heard := q.Forecast(b, n).Run(i, predict.Ordinary).ChairDBA.Expected
			wish := unit.Sound(math.Ceil(heard*1000)) - unit.Sound(m.IntN(2)*m.IntN(1000))
			name := fmt.Sprintf("%s %s: %s with %s on %s and %s, besides %s", b.Case.ID, b.Layout.ID, b.Processor.ID, b.Cooler.ID, b.Board.ID, b.Supply.ID, besides)
			if p.Louder(&alone, n, m.besides(b, n, 0), i, wish, disksDBA) {
				require.Greater(t, heard*1000, float64(wish), name)
				louder++
			} else if heard*1000 > float64(wish) {
				unsaid++
			}
			alone.Supply = nil
			if any := p.Core(&alone, n, m.besides(b, n, 0).Fed(fed)); any != nil && carried(q.Forecast(b, n), b.Supply) && any.Louder(i, wish, disksDBA) {
				require.Greater(t, heard*1000, float64(wish), "with any of several supplies, "+name)
				anyLouder++
			}
			if p.LouderBetween(b, n, counted, besides, i, wish, disksDBA) {
				require.Greater(t, heard*1000, float64(wish), "between two amounts, "+name)
				between++
			}
			alone.Board = b.Board
			if p.LouderBetween(&alone, n, counted, besides.Fed(fed), i, wish, disksDBA) && carried(q.Forecast(b, n), b.Supply) {
				require.Greater(t, heard*1000, float64(wish), "between two amounts with any of several supplies, "+name)
				anyBetween++
			}
			open := *b
			open.Supply, open.Board = nil, nil
			if p.LouderWithAnyCooler(b, n, m.besides(b, n, 0), i, wish, disksDBA) {
				require.Greater(t, heard*1000, float64(wish), "with any air cooler, "+name)
				anyCooler++
			}
			if p.LouderWithAnyCooler(&open, n, m.besides(b, n, 0).Fed(fed), i, wish, disksDBA) && carried(q.Forecast(b, n), b.Supply) {
				require.Greater(t, heard*1000, float64(wish), "with any air cooler and any of several supplies, "+name)
				anyCooler++
			}
			if w := p.Warmth(b, n, counted, besides); w != nil {
				if over, _ := w.Louder(i, wish); over {
					require.Greater(t, heard*1000, float64(wish), name)
				}
			}
			if p.LouderSo(&alone, n, predict.Besides{}.Fed(fed), i, wish) && carried(q.Forecast(b, n), b.Supply) {
				require.Greater(t, heard*1000, float64(wish), "just so with any of several supplies, "+name)
				anySo++
			}
			if q.LouderSo(b, n, predict.Besides{}, i, wish) {
				require.Greater(t, heard*1000, float64(wish), "just so, "+name)
				louderSo++
			} else if b.Layout.Chambers && heard*1000 > float64(wish) {
				unsaidSo++
			}
			granted := wish + unit.Sound(m.IntN(3000))
			if w := other.Warmth(b, n, everyWarmth, m.besides(b, n, everyWarmth)); w.Quiet(i, granted) {
				require.LessOrEqual(t, heard*1000, float64(granted), name)
				quiet++
			}
			if p.TooLoud(b, n, i, wish) {
				require.Greater(t, heard*1000, float64(wish), name)
			}
		}
	}
	require.Greater(t, louder, 8000)
	require.Greater(t, anyLouder, 4000)
	require.Greater(t, quiet, 4000)
	require.Greater(t, louderSo, 2000)
	require.Greater(t, anySo, 500)
	require.Greater(t, anyCooler, 400)
	require.Greater(t, between, 1000)
	require.Greater(t, anyBetween, 300)
	t.Logf("%d louder, %d with any supply, and %d louder unsaid, %d quiet; in two chambers %d louder just so, %d unsaid, %d between amounts, %d with any supply; %d with any air cooler", louder, anyLouder, unsaid, quiet, louderSo, unsaidSo, between, anyBetween, anyCooler)
}

// What memory, drives and cards bring into a case, as far as it is counted, lets no part hold more, no converter and no drive stay
// cooler, where that is said.
func TestWarmth(t *testing.T) {
	m := newMaker(t, 16)
	var p, q, each, other, last predict.Predictor
	var held, board, seated, anywhere, fed, fedDrive, cool, boardCool, drivesCool tally
	for range 20000 {
		b, n := m.build(), m.needs()
		counted := some(m)
		besides := m.besides(b, n, counted)
		w := p.Warmth(b, n, counted, besides)
		require.NotNil(t, w)
		open := *b
		open.Supply = nil
		any := other.Warmth(&open, n, counted, besides.Fed(m.supplies(b)))
		for i := range predict.Asked(n) {
			f := q.Forecast(b, n)
			r := f.Run(i, f.Day())
			name := fmt.Sprintf("%s %s: %s with %s on %s and %s, counting %b", b.Case.ID, b.Layout.ID, b.Processor.ID, b.Cooler.ID, b.Board.ID, b.Supply.ID, counted)
			kept := 1.0
			for _, part := range r.Parts {
				kept = min(kept, part.Kept.Expected)
			}
			held.see(t, w.HeldBack(i, 0.97), kept < 0.97, name)
			over := r.Board.TempC.Expected > r.Board.LimitC
			board.see(t, w.BoardOver(i, 0.97), over || kept < 0.97, name)
			if bears := w.BoardBearsW(i, 0.97); !math.IsInf(bears, 1) {
				warms := *b
				warms.Board = nil
				for s := range build.Seat(build.Seats) {
					if !counted.Has(s) {
						warms.Clear(s)
					}
				}
				if predict.Brings(&warms, &predict.Asked(n)[i]) >= bears {
					require.True(t, over || kept < 0.97, name)
				}
			}
			any := any
			if !carried(f, b.Supply) {
				any = nil
			}
			if any != nil {
				fed.see(t, any.BoardOver(i, 0.97), over || kept < 0.97, "with any of several supplies, "+name)
				fed.see(t, any.HeldBack(i, 0.97), kept < 0.97, "with any of several supplies, "+name)
			}
			whole := last.Warmth(b, n, everyWarmth, m.besides(b, n, everyWarmth))
			cool.see(t, whole.Cool(i), !slices.ContainsFunc(r.Parts, func(p predict.Part) bool { return p.TempC.Expected > p.LimitC-0.5 }) && kept == 1, name)
			boardCool.see(t, whole.BoardCool(i), !over, name)
			drivesCool.see(t, whole.DrivesCool(i), !slices.ContainsFunc(r.Drives, func(d predict.Part) bool { return d.TempC.Expected > d.LimitC }), name)
			for _, d := range r.Drives {
				over := d.TempC.Expected > d.LimitC
				seated.see(t, w.DriveOver(i, d.Seat), over, d.Name+" in "+name)
				if any != nil {
					fedDrive.see(t, any.DriveOver(i, d.Seat), over, d.Name+" with any of several supplies in "+name)
				}
				if one := each.Warmth(b, n, counted&build.SetOf(d.Seat), predict.Besides{}); one != nil && placed(b, d.Seat) {
					anywhere.see(t, one.DriveOverAnywhere(i), over, d.Name+" in "+name)
				}
			}
		}
	}
	for name, x := range map[string]tally{"held back": held, "board": board, "drive where it sits": seated, "drive anywhere": anywhere, "any supply": fed, "drive with any supply": fedDrive, "cool": cool, "board cool": boardCool, "drives cool": drivesCool} {
		t.Logf("%s: %d of %d said", name, x.said, x.true)
		require.Greater(t, x.said, x.true/8, name)
		require.Greater(t, x.said, 30, name)
	}
}

// carried reports a supply that is planned to carry everything at work (rule supply-steady).
func carried(f *predict.Forecast, by *part.Supply) bool {
	r := f.Run(len(f.Loads())-2, predict.Ordinary)
	asks := 0.0
	for _, p := range r.Parts {
		asks += p.AskedW - p.HeldW.Expected
	}
	return r.DCW.Expected+asks <= 0.9*float64(by.Rating.Or(0))/1000
}

// supplies is a build's own and some others.
func (m maker) supplies(b *build.Build) *predict.Supplies {
	list := []*part.Supply{b.Supply}
	for range m.IntN(6) {
		list = append(list, pick(m, m.stock.Supplies))
	}
	m.Shuffle(len(list), func(i, j int) { list[i], list[j] = list[j], list[i] })
	return predict.NewSupplies(list)
}

// tally counts how often something was said, and how often it was so.
type tally struct{ said, true int }

func (x *tally) see(t *testing.T, said, so bool, name string) {
	require.False(t, said && !so, name)
	if said {
		x.said++
	}
	if so {
		x.true++
	}
}

// everyWarmth is the seats that only warm a build.
var everyWarmth = build.SetOf(predict.Warming...)

// some is all of the seats that only warm a build, or some of them.
func some(m maker) build.Set {
	counted := everyWarmth
	if m.IntN(2) == 0 {
		for s := range build.Seat(build.Seats) {
			if m.IntN(3) == 0 {
				counted &^= build.SetOf(s)
			}
		}
	}
	return counted
}

// besides is what a build brings into its case besides the seats that are counted, and what it brings in all.
func (m maker) besides(b *build.Build, n *brief.Needs, counted build.Set) predict.Besides {
	asked := predict.Asked(n)
	least, upTo, most := make([]int, len(asked)), make([]int, len(asked)), make([]int, len(asked))
	rest, all := *b, *b
	for s := range build.Seat(build.Seats) {
		if counted.Has(s) || !everyWarmth.Has(s) {
			rest.Clear(s)
		}
		if !everyWarmth.Has(s) {
			all.Clear(s)
		}
	}
	share := m.Float64()
	for i := range asked {
		least[i] = int(share * predict.Brings(&rest, &asked[i]))
		upTo[i] = int(predict.Brings(&rest, &asked[i])) + 1 + m.IntN(10)
		most[i] = int(predict.Brings(&all, &asked[i])) + 1 + m.IntN(30)
	}
	return predict.NewBesides(least, upTo, most)
}

// placed reports that the modules of a tier have a socket; the rule drive-slots turns away those without.
func placed(b *build.Build, tier build.Seat) bool {
	return !slices.ContainsFunc(b.Assign(build.SetOf(build.Case, build.Graphics, build.Cards, build.Boot, build.Cache, build.Archive)).Drives,
		func(x build.DrivePlace) bool {
			return x.Seat == tier && x.Drive.Form == part.FormM2 && x.Socket == nil
		})
}
