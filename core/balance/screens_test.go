package balance

import (
	"testing"

	"slipfit/catalog"
	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/plan"
	"slipfit/core/rule"

	"github.com/stretchr/testify/require"
)

// TestIdleMoneyOfDifferentScreens puts two different screens in the place of the two alike that are planned for two modes: the cheapest
// build around them costs less than any with one kind, nothing of it is idle, and a dearer supply is idle by its difference.
func TestIdleMoneyOfDifferentScreens(t *testing.T) {
	stock, err := catalog.Embedded()
	require.NoError(t, err)
	said, err := brief.Read("two", []byte(`{"kind":"slipfit-brief","version":1,"title":"Two screens","activities":[{"office":{"web_pages":20,"people":1,"files_gb":50}}],
"screens":[{"width_px":3840,"height_px":2160,"refresh_hz":60,"bits_per_colour":8,"count":1},{"width_px":2560,"height_px":1440,"refresh_hz":144,"bits_per_colour":8,"count":1}]}`))
	require.NoError(t, err)
	j := planned(t, "two screens", said, stock)
	require.Len(t, j.build.Screens, 1)
	alike := seatPrice(j.build, build.Screens)

	b := with(j.build, build.Option{Seat: build.Screens})
	for _, id := range []string{"lumenby-pane-27-u", "lumenby-pane-27-q-fast"} {
		m, ok := part.Find(stock.Monitors, id)
		require.True(t, ok)
		b.Screens = append(b.Screens, build.ScreenSet{Monitor: m, Count: 1})
	}
	idle, err := IdleOf(t.Context(), b, j.needs, plan.NewIndex(stock), nil)
	require.NoError(t, err)
	require.True(t, idle.Found)
	require.Equal(t, b.Screens, idle.Cheapest.Screens)
	require.Less(t, idle.Least, j.build.Price(), "two alike cost %s", alike)
	p := rule.Prove(idle.Cheapest, j.needs)
	require.True(t, p.Stands())
	again, err := IdleOf(t.Context(), idle.Cheapest, j.needs, plan.NewIndex(stock), nil)
	require.NoError(t, err)
	require.Zero(t, again.Total, "nothing of the cheapest is idle")
	require.LessOrEqual(t, again.Bound, again.Least)

	for _, s := range stock.Supplies {
		dearer := with(idle.Cheapest, build.Option{Seat: build.Supply, Part: s, Count: 1})
		if proof := rule.Prove(dearer, j.needs); s.Price <= idle.Cheapest.Supply.Price || !proof.Stands() {
			continue
		}
		more, err := IdleOf(t.Context(), dearer, j.needs, plan.NewIndex(stock), nil)
		require.NoError(t, err)
		require.Equal(t, s.Price-idle.Cheapest.Supply.Price, more.Total)
		return
	}
	t.Fatal("no dearer supply stands")
}
