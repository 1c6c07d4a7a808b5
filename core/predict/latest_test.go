package predict

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
)

// What was asked for among the last so many is kept, and never more than twice as many.
func TestLatest(t *testing.T) {
	const most = 4
	var l latest[int, int]
	_, kept := l.get(1, most)
	require.False(t, kept)
	asked, r := []int{}, rand.New(rand.NewPCG(3, 5))
	for range 3000 {
		k := r.IntN(10)
		if v, kept := l.get(k, most); kept {
			require.Equal(t, 10*k, v)
		} else {
			last := asked[max(0, len(asked)-most):]
			require.NotContains(t, last, k)
			l.put(k, 10*k, most)
		}
		asked = append(asked, k)
		require.LessOrEqual(t, len(l.young), most)
		require.LessOrEqual(t, len(l.old), most)
	}
	for i := range most {
		l.put(100+i, i, most)
	}
	_, kept = l.get(100, most)
	require.True(t, kept)
	for i := range 2 * most {
		l.put(200+i, i, most)
	}
	_, kept = l.get(100, most)
	require.False(t, kept)
}
