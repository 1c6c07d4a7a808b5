package balance

import (
	"fmt"
	"slices"
	"testing"

	"slipfit/catalog"
	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/outcome"
	"slipfit/core/part"
	"slipfit/core/plan"
	"slipfit/core/rule"
	"slipfit/core/unit"

	"github.com/stretchr/testify/require"
)

// TestWishesReachTheBuild plans the same work under one wish after another and looks for it in the cheapest build.
func TestWishesReachTheBuild(t *testing.T) {
	stock, err := catalog.Embedded()
	require.NoError(t, err)
	plans := func(t *testing.T, wishes, more string, keep ...plan.Choice) (*build.Build, *brief.Needs) {
		t.Helper()
		said, err := brief.Read("wish", []byte(fmt.Sprintf(`{"kind":"slipfit-brief","version":1,"title":"x","activities":[
			{"photography":{"megapixels":24,"pictures_year":4000,"years_kept":3,"layers":3}},{"office":{}}],
			"screens":[{"width_px":2560,"height_px":1440,"refresh_hz":60,"bits_per_colour":8,"count":1,"owned":true}],
			"wishes":{%s}%s}`, wishes, more)))
		require.NoError(t, err)
		n := said.Needs(stock)
		p, err := plan.New(stock, plan.Ask{Needs: n, Keep: keep})
		require.NoError(t, err)
		a := p.Least(t.Context())
		require.Equal(t, plan.Optimal, a.Status)
		proof := rule.Prove(a.Build, n)
		require.True(t, proof.Stands())
		return a.Build, n
	}
	plain, _ := plans(t, ``, ``)

	t.Run("size", func(t *testing.T) {
		b, _ := plans(t, `"volume_l":12`, ``)
		require.Greater(t, plain.Case.Volume.Or(0), unit.Millilitre(12_000), "it would be larger without the wish")
		require.LessOrEqual(t, b.Case.Volume.Or(0), unit.Millilitre(12_000))
	})
	t.Run("noise", func(t *testing.T) {
		b, n := plans(t, ``, `,"place":{"noise_dba":27,"chair_mm":800}`)
		v := rule.NewView(b, n)
		margins := v.Run(&rule.Noise)
		require.NotEmpty(t, margins)
		for _, m := range margins {
			require.LessOrEqual(t, m.Need.N, int64(27_000), "predicted at the chair")
		}
	})
	for _, wants := range []bool{true, false} {
		t.Run(fmt.Sprint("glass ", wants), func(t *testing.T) {
			b, _ := plans(t, fmt.Sprintf(`"glass":%v`, wants), ``)
			require.Equal(t, wants, slices.Contains(b.Case.Glazed, part.Side))
		})
	}
	t.Run("lighting", func(t *testing.T) {
		b, _ := plans(t, `"lighting":false`, ``)
		for _, l := range b.Lines() {
			require.False(t, l.Article.Lighting.Or(false), l.Article.ID)
		}
	})
	t.Run("makers to avoid", func(t *testing.T) {
		avoid := plain.Processor.Maker
		b, _ := plans(t, fmt.Sprintf(`"avoid_makers":[%q]`, avoid), ``)
		for _, l := range b.Lines() {
			require.NotEqual(t, avoid, l.Article.Maker)
		}
		require.Greater(t, b.Price(), plain.Price())
	})
	t.Run("makers to prefer", func(t *testing.T) {
		b, n := plans(t, ``, ``)
		list, _, err := Equals(t.Context(), b, n, stock, build.Supply, nil)
		require.NoError(t, err)
		require.NotEmpty(t, list)
		last := list[len(list)-1].Option
		n.Wish.Prefer = []string{last.Part.Common().Maker}
		list, _, err = Equals(t.Context(), b, n, stock, build.Supply, nil)
		require.NoError(t, err)
		require.True(t, list[0].Liked, "equals of makers they like come first")
		require.Equal(t, last.Part.Common().Maker, list[0].Option.Part.Common().Maker)
	})
	t.Run("in stock", func(t *testing.T) {
		b, _ := plans(t, `"in_stock":true`, ``)
		for _, l := range b.Lines() {
			require.GreaterOrEqual(t, int(l.Article.Stock), l.Count, l.Article.ID)
		}
	})
	t.Run("owned", func(t *testing.T) {
		owned := plan.Choice{Seat: build.Graphics, Part: "calderby-lantern-30", Owned: true}
		b, _ := plans(t, ``, ``, owned)
		require.Equal(t, owned.Part, b.Graphics.ID)
		for _, l := range b.Lines() {
			if l.Seat == build.Graphics {
				require.True(t, l.Owned)
				require.Zero(t, l.Price())
			}
		}
	})
	t.Run("upgrade horizon", func(t *testing.T) {
		b, n := plans(t, `"upgrade_years":9`, ``)
		require.EqualValues(t, 9000, n.By[brief.Endurance].Floor)
		told := 0
		for _, f := range outcome.Figures(b, n, &stock.Calibration) {
			if f.Activity == "system" {
				told++
				require.GreaterOrEqual(t, f.Expected, int64(9000))
				require.EqualValues(t, 9000, f.Want)
			}
		}
		require.NotZero(t, told)
		v := rule.NewView(b, n)
		for _, m := range v.Run(&rule.GrowthPower) {
			require.Equal(t, 100*unit.Watts, unit.Power(m.Need.N), "watts for a later card are looked for")
		}
	})
	t.Run("power cut", func(t *testing.T) {
		b, _ := plans(t, `"ups_min":8`, ``)
		require.NotNil(t, b.UPS)
	})
}
