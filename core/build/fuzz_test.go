package build

import (
	"testing"

	"slipfit/core/format"
	"slipfit/core/part"

	"github.com/stretchr/testify/require"
)

// FuzzRead reads whatever comes: an error or a build, never both or a panic, and a build that was read is written and read
// again as the same file.
func FuzzRead(f *testing.F) {
	stock := &part.Stock{
		Cases:  []*part.Case{{Article: part.Article{ID: "box"}, Layouts: []part.Layout{{ID: "flat", Plate: &part.Plate{Step: 5000, Steps: 3}}, {ID: "high"}}}},
		Memory: []*part.Memory{{Article: part.Article{ID: "kit"}}},
		Fans:   []*part.Fan{{Article: part.Article{ID: "fan"}}},
	}
	f.Add([]byte(`{"kind":"slipfit-build","version":1,"layout":"flat","plate":2,"seats":[{"seat":"case","part":"box"},{"seat":"memory","part":"kit","count":2},{"seat":"fans","part":"fan","count":3,"face":"top"}]}`))
	f.Add([]byte(`{"kind":"slipfit-build","version":1,"seats":[{"seat":"case","part":"box"},{"seat":"case","part":"box"}]}`))
	f.Add([]byte(`{"kind":"slipfit-build","version":1,"plate":9,"seats":[]}`))
	f.Fuzz(func(t *testing.T, data []byte) {
		b, err := Read("fuzz", data, stock)
		if err != nil {
			require.Nil(t, b)
			return
		}
		once := format.Write(b.File())
		again, err := Read("written", once, stock)
		require.NoError(t, err)
		require.Equal(t, string(once), string(format.Write(again.File())))
	})
}
