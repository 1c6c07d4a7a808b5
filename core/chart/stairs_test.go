package chart

import (
	"encoding/xml"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// TestStairs draws three points with one rung, and finds each by its place in the drawing.
func TestStairs(t *testing.T) {
	s := Stairs{ID: "f", Title: "What every price buys", Desc: "Three points.", XName: "price", YName: "served", YUnit: "%",
		X: []float64{1000, 1200, 1500}, Y: []float64{30, 60, 64}, Marked: 1, Limit: 1600, LimitName: "can be spent", Width: 640, Height: 280}
	drawn := s.Draw()
	require.NoError(t, xml.Unmarshal([]byte(drawn), new(struct{})))
	require.Equal(t, drawn, s.Draw(), "the same bytes every time")
	require.Equal(t, 3, strings.Count(drawn, `class="chart-point"`))
	require.Equal(t, 1, strings.Count(drawn, `r="7.5"`))
	require.Contains(t, drawn, "can be spent")
	g := s.grid()
	require.Less(t, g.px(1000), g.px(1200))
	require.Greater(t, g.py(30), g.py(60), "more is higher")
	require.LessOrEqual(t, g.px(1600), s.Width-stairsRight)
	for i := range s.X {
		require.Equal(t, i, s.Nearest(g.px(s.X[i])+4, g.py(s.Y[i])-3))
	}
	require.Equal(t, -1, (&Stairs{}).Nearest(0, 0))
}
