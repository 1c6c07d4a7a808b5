package predict

import (
	"testing"

	"slipfit/core/brief"
	"slipfit/core/chart"
	"slipfit/core/unit"

	"github.com/stretchr/testify/require"
)

// Against room temperature everything rises that is not steered, the level does not fall, and the ends are the runs of those
// rooms; against load power rises in a straight line of the shares, less what the supply makes of it.
func TestSeries(t *testing.T) {
	n := &brief.Needs{Loads: []brief.Load{{Activity: "games", Processor: 60_000, Graphics: 60_000, Memory: 60_000, Drives: 20_000}}}
	n.Place.Room, n.Place.Noise = unit.Known(unit.Temperature(15_000)), unit.Known(unit.Sound(35_000))
	var p Predictor
	f := p.Forecast(tower(t, "norbrusk-post-120", ""), n)
	room := f.AgainstRoom(0, 15, 39, 6)
	require.Equal(t, []float64{15, 19, 23, 27, 31, 35, 39}, room.X)
	require.NoError(t, room.Trouble())
	require.Equal(t, f.Run(0, Ordinary).Parts[0].TempC.Expected, room.Runs[0].Parts[0].TempC.Expected)
	for i := 1; i < len(room.Runs); i++ {
		before, r := room.Runs[i-1], room.Runs[i]
		require.Greater(t, r.Zones[0].AirC.Expected, before.Zones[0].AirC.Expected)
		require.Greater(t, r.Parts[0].TempC.Expected, before.Parts[0].TempC.Expected)
		require.GreaterOrEqual(t, r.ChairDBA.Expected, before.ChairDBA.Expected)
	}
	load := f.AgainstLoad(0, Ordinary, 4)
	require.Equal(t, []float64{0, 25, 50, 75, 100}, load.X)
	require.Equal(t, f.Run(0, Ordinary).WallW.Expected, load.Runs[4].WallW.Expected)
	require.InDelta(t, 60_000, float64(load.Runs[4].Load.Processor), 0)
	for i := 1; i < 5; i++ {
		require.Greater(t, load.Runs[i].WallW.Expected, load.Runs[i-1].WallW.Expected)
	}

	figure, err := room.Figure("room", "Games against room temperature", &n.Place)
	require.NoError(t, err)
	require.Len(t, figure.Panel, 4)
	svg := chart.Lines(figure)
	require.Contains(t, svg, "wished for")
	require.Contains(t, svg, "limit of the graphics card")
	require.Contains(t, svg, "front fans of the case")
}

// A figure that no sheet states is told in place of a drawing.
func TestSeriesTellsWhatIsMissing(t *testing.T) {
	b := tower(t, "norbrusk-post-120", "")
	g := *b.Graphics
	g.CoreAir = unit.Figure[unit.Resistance]{}
	b.Graphics = &g
	var p Predictor
	s := p.Forecast(b, nil).AgainstRoom(0, 15, 35, 4)
	_, err := s.Figure("room", "Room", &brief.Place{})
	require.ErrorContains(t, err, "calderby-lantern-60: core_air_k_w")
}
