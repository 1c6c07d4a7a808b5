package balance

import (
	"context"
	"testing"
	"time"

	"slipfit/catalog"
	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/plan"
	"slipfit/core/predict"
	"slipfit/core/rule"
	"slipfit/core/unit"

	"github.com/stretchr/testify/require"
)

// editor is a working video editor with a generous mid-four-figure budget, in a scenario of its own: four cameras of 2160
// lines, ten bits, full colour, on a desk with room for twenty litres.
const editor = `{"kind":"slipfit-brief","version":1,"title":"Four cameras on a small desk","activities":[
{"hours_week":40,"video":{"format":"h265-10bit-422","width_px":3840,"height_px":2160,"frames_s":25,"streams":4,"finish":"grade",
"hours_kept":35,"hours_in_hand":8,"new_hours_week":3}},
{"at_once":true,"office":{"web_pages":20,"people":1,"files_gb":200}}],
"screens":[{"width_px":3840,"height_px":2160,"refresh_hz":60,"bits_per_colour":10,"count":1}],
"place":{"chair_mm":1000,"noise_dba":45,"stands":"desk-right"},
"wishes":{"volume_l":20,"upgrade_years":4},"budget_minor":550000}`

// TestEditorLandsOnPractice checks common practice through the planner's best: about 64 GB as two modules on a small board, ten
// or more cores, about 2 TB of solid state for boot and cache together or apart, a disk archive of 4 TB, a supply of 750 to 1000 W in the small form.
func TestEditorLandsOnPractice(t *testing.T) {
	stock, err := catalog.Embedded()
	require.NoError(t, err)
	said, err := brief.Read("editor", []byte(editor))
	require.NoError(t, err)
	n := said.Needs(stock)
	p, err := plan.New(stock, plan.Ask{Needs: n})
	require.NoError(t, err)
	ctx, cancel := context.WithTimeout(t.Context(), 2*time.Minute)
	defer cancel()
	a := p.Best(ctx)
	require.Equal(t, plan.Optimal, a.Status)
	b := a.Build

	require.Equal(t, 1, b.Kits)
	require.Equal(t, unit.Whole(2), b.Memory.Modules.Or(0), "two modules")
	require.Equal(t, 32*unit.GiB, b.Memory.Module.Or(0), "of 32 GB")
	require.Equal(t, part.MiniITX, b.Board.Form, "a small board")
	require.GreaterOrEqual(t, b.Processor.Cores.Or(0), unit.Whole(10))
	require.False(t, b.Boot.Drive.Disk)
	fast := b.Boot.Drive.Capacity.Or(0)
	if b.Cache.Drive != nil {
		require.False(t, b.Cache.Drive.Disk)
		fast += b.Cache.Drive.Capacity.Or(0)
	}
	require.GreaterOrEqual(t, fast, 2*unit.Terabyte)
	require.LessOrEqual(t, fast, 4*unit.Terabyte)
	require.True(t, b.Archive.Drive.Disk)
	require.Equal(t, 4*unit.Terabyte, b.Archive.Drive.Capacity.Or(0))
	require.Contains(t, []part.SupplyForm{part.SupplySFX, part.SupplySFXL}, b.Supply.Form)
	require.GreaterOrEqual(t, b.Supply.Rating.Or(0), 750*unit.Watts)
	require.LessOrEqual(t, b.Supply.Rating.Or(0), 1000*unit.Watts)
	require.NotNil(t, b.Cooler.Liquid, "a processor of that power in a small case is cooled by a radiator")
}

// TestRadiatorOfThreeFans checks the 360 mm (3 × 120 mm) radiator of common practice where a case takes it: in a roomy case such
// radiators stand under the strongest processors, at the front or the top.
func TestRadiatorOfThreeFans(t *testing.T) {
	stock, err := catalog.Embedded()
	require.NoError(t, err)
	said, err := brief.Read("editor", []byte(editor))
	require.NoError(t, err)
	said.Wish.Volume = unit.Known[unit.Millilitre](60_000)
	n := said.Needs(stock)
	cooler, ok := part.Find(stock.Coolers, "aerlitt-loop-360")
	require.True(t, ok)
	p, err := plan.New(stock, plan.Ask{Needs: n, Keep: []plan.Choice{{Seat: build.Cooler, Part: cooler.ID}}})
	require.NoError(t, err)
	ctx, cancel := context.WithTimeout(t.Context(), time.Minute)
	defer cancel()
	a := p.Least(ctx)
	require.Equal(t, plan.Optimal, a.Status)
	require.NotNil(t, a.Build.Mount())
	require.Contains(t, []part.Face{part.Front, part.Top, part.Side, part.Bottom}, a.Build.Face)
	proof := rule.Prove(a.Build, n)
	require.True(t, proof.Stands())
	require.GreaterOrEqual(t, a.Build.Processor.Cores.Or(0), unit.Whole(10))
}

// TestWhatThreeFansBuy says why the planner's best for the roomy case has no such radiator, which the trade would fit there: an
// air cooler of a third of its price holds every watt the work asks, so that no outcome changes, and the machine is as quiet
// within a decibel. What the radiator buys is a cooler processor, and nobody asked for that: it is idle money, part by part.
func TestWhatThreeFansBuy(t *testing.T) {
	stock, err := catalog.Embedded()
	require.NoError(t, err)
	said, err := brief.Read("editor", []byte(editor))
	require.NoError(t, err)
	said.Wish.Volume = unit.Known[unit.Millilitre](60_000)
	n := said.Needs(stock)
	best := func(keep ...plan.Choice) *build.Build {
		p, err := plan.New(stock, plan.Ask{Needs: n, Keep: keep})
		require.NoError(t, err)
		ctx, cancel := context.WithTimeout(t.Context(), time.Minute)
		defer cancel()
		a := p.Best(ctx)
		require.Equal(t, plan.Optimal, a.Status)
		return a.Build
	}
	plain := best()
	require.NotNil(t, plain.Cooler.Air)
	three := best(plan.Choice{Seat: build.Case, Part: plain.Case.ID}, plan.Choice{Seat: build.Cooler, Part: "aerlitt-loop-360"})
	require.Equal(t, unit.Whole(3), three.Cooler.Liquid.Sections.Or(0))
	require.Equal(t, plain.Processor, three.Processor)
	require.GreaterOrEqual(t, three.Cooler.Price, 2*plain.Cooler.Price)

	video := func(b *build.Build) *predict.Run {
		f := new(predict.Predictor).Forecast(b, n)
		for i, l := range f.Loads() {
			if l.Activity == "all at once" {
				return f.Run(i, predict.Hottest)
			}
		}
		t.Fatal("no load")
		return nil
	}
	air, loop := video(plain), video(three)
	require.Equal(t, 1.0, air.Parts[0].Kept.Expected)
	require.Equal(t, 1.0, loop.Parts[0].Kept.Expected)
	require.Greater(t, air.Parts[0].TempC.Expected-loop.Parts[0].TempC.Expected, 10.0, "what it buys, K")
	require.InDelta(t, air.ChairDBA.Expected, loop.ChairDBA.Expected, 1, "dB(A)")
	require.Empty(t, changes(plain, three, n, stock), "no outcome")
	idle := Parts(t.Context(), three, n, stock)
	named := false
	for _, w := range idle.Parts {
		named = named || w.Seat == build.Cooler && w.Nothing() && w.Saves > 0
	}
	require.True(t, named, "the radiator is idle money")
}
