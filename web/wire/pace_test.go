package wire

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

func TestPace(t *testing.T) {
	var p Pace
	now := time.Date(2026, 1, 2, 3, 4, 5, 0, time.UTC)
	due := func(after time.Duration, note string) bool {
		now = now.Add(after)
		return p.Due(note, now)
	}
	require.True(t, due(0, "laying out the stock"))
	require.True(t, due(time.Millisecond, "searching"), "what is begun is told at once")
	require.False(t, due(time.Millisecond, "searching"), "but once")
	require.False(t, due(time.Millisecond, "searching, 12 tried"))
	require.False(t, due(246*time.Millisecond, "found 985.20, perhaps 20.00 less, 300 tried"))
	require.True(t, due(2*time.Millisecond, "found 985.20, perhaps 20.00 less, 310 tried"), "four times a second")
	told := 0
	for range 1000 {
		if due(time.Millisecond, "found 985.20, perhaps 10.00 less, 999 tried") {
			told++
		}
	}
	require.Equal(t, 4, told)
}
