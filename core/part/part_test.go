package part

import (
	"testing"

	"slipfit/core/unit"

	"github.com/stretchr/testify/require"
)

func TestFind(t *testing.T) {
	parts := []*Fan{{Article: Article{ID: "a"}}, {Article: Article{ID: "b"}}}
	got, ok := Find(parts, "b")
	require.True(t, ok)
	require.Same(t, parts[1], got)
	_, ok = Find(parts, "c")
	require.False(t, ok)
}

// TestHolePitch: hole pitches of fans; 120, 140 and 200 mm as a public CAD model has them, 80 and 92 mm from memory of the
// industry's pattern.
func TestHolePitch(t *testing.T) {
	for size, pitch := range map[unit.Length]unit.Length{40: 32_000, 80: 71_500, 92: 82_500, 120: 105_000, 140: 124_500, 200: 154_000} {
		require.Equal(t, pitch, HolePitch(size*unit.Millimetre), "%d mm", size)
	}
}

func TestLinkFamilies(t *testing.T) {
	for _, word := range LinkKind("").Values() {
		l := LinkKind(word)
		require.Contains(t, word, l.Family()+"-")
	}
}

func TestArticlesListsEveryKind(t *testing.T) {
	s := &Stock{
		Cases: []*Case{{}}, Boards: []*Board{{}}, Processors: []*Processor{{}}, Coolers: []*Cooler{{}}, Memory: []*Memory{{}},
		Graphics: []*Graphics{{}}, Supplies: []*Supply{{}}, Drives: []*Drive{{}}, Fans: []*Fan{{}}, Monitors: []*Monitor{{}},
		Cards: []*Card{{}}, UPS: []*UPS{{}}, Services: []*Service{{}},
	}
	require.Len(t, s.Articles(), 13)
	require.Same(t, &s.Services[0].Article, s.Articles()[12])
}
