package plan

import (
	"testing"

	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/unit"

	"github.com/stretchr/testify/require"
)

// TestNoMoreIsOwnedThanTheyHave asks with a part that the customer has already: as many of it are used as they have, and no more come free.
func TestNoMoreIsOwnedThanTheyHave(t *testing.T) {
	stock := generic(t)
	const kit, pack = "umbriq-plain-16-gb-3200", "aerlitt-leaf-120-x3"
	one, ok := part.Find(stock.Memory, kit)
	require.True(t, ok)
	three, ok := part.Find(stock.Fans, pack)
	require.True(t, ok)
	require.EqualValues(t, 3, three.Pack.Or(0))
	size := int64(one.Module.Or(0)) * int64(one.Modules.Or(1)) / int64(unit.GiB)
	least := func(gib int64, c Choice) Answer {
		n := order(unit.Money(300_000), brief.SingleWork, 1, 500, 1)
		n.By[brief.MemorySize] = brief.Need{Resource: brief.MemorySize, Floor: gib * int64(unit.GiB), Enough: gib * int64(unit.GiB), Weight: 1, Reason: "the test asks it"}
		c.Owned = true
		p, err := New(stock, Ask{Needs: n, Keep: []Choice{c}})
		require.NoError(t, err)
		return p.Least(t.Context())
	}
	a := least(size, Choice{Seat: build.Memory, Part: kit})
	require.Equal(t, Optimal, a.Status)
	require.Equal(t, 1, a.Build.Kits)
	require.Equal(t, Infeasible, least(2*size, Choice{Seat: build.Memory, Part: kit}).Status, "they have one")
	a = least(2*size, Choice{Seat: build.Memory, Part: kit, Count: 2})
	require.Equal(t, Optimal, a.Status)
	require.Equal(t, 2, a.Build.Kits)

	a = least(size, Choice{Seat: build.Fans, Part: pack})
	require.Equal(t, Optimal, a.Status)
	require.Len(t, a.Build.Fans, 1)
	require.Equal(t, 1, a.Build.Fans[0].Packs())
	require.NotEmpty(t, a.Build.Fans[0].Face)
}

// TestSeveralFansKeptAreAllMeant keeps two fans without saying where: neither is left out, so that nothing stands, for they hang nowhere.
func TestSeveralFansKeptAreAllMeant(t *testing.T) {
	keep := []Choice{{Seat: build.Fans, Part: "aerlitt-leaf-120"}, {Seat: build.Fans, Part: "norbrusk-reed-120"}}
	for _, c := range []struct {
		keep []Choice
		want Status
	}{{keep[:1], Optimal}, {keep[1:], Optimal}, {keep, Infeasible}} {
		p, err := New(generic(t), Ask{Needs: order(unit.Money(300_000), brief.SingleWork, 1, 500, 1), Keep: c.keep})
		require.NoError(t, err)
		require.Equal(t, c.want, p.Least(t.Context()).Status, "%v", c.keep)
	}
}
