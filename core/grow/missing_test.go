package grow_test

import (
	"math/rand/v2"
	"reflect"
	"strings"
	"testing"
	"testing/fstest"

	"slipfit/catalog"
	"slipfit/core/grow"
	"slipfit/core/part"

	"github.com/stretchr/testify/require"
)

// forget unsets figures at random, one in so many.
func forget(v reflect.Value, r *rand.Rand, oneIn int) {
	switch {
	case v.Kind() == reflect.Pointer && !v.IsNil():
		forget(v.Elem(), r, oneIn)
	case v.Kind() == reflect.Slice:
		for i := range v.Len() {
			forget(v.Index(i), r, oneIn)
		}
	case v.Kind() == reflect.Struct && strings.HasPrefix(v.Type().Name(), "Figure["):
		if r.IntN(oneIn) == 0 {
			v.SetZero()
		}
	case v.Kind() == reflect.Struct:
		for i := range v.NumField() {
			forget(v.Field(i), r, oneIn)
		}
	}
}

// TestMissingFiguresStayMissing: a shop whose sheets state little can grow its catalog too; nothing is made up.
func TestMissingFiguresStayMissing(t *testing.T) {
	for seed, oneIn := range []int{1, 2, 2, 3, 5, 10} {
		from := embedded(t)
		from.Calibration = part.Calibration{}
		r := rand.New(rand.NewPCG(uint64(seed), 1))
		for _, list := range []any{from.Cases, from.Boards, from.Processors, from.Coolers, from.Memory, from.Graphics, from.Supplies, from.Drives, from.Fans, from.Monitors, from.Cards, from.UPS} {
			forget(reflect.ValueOf(list), r, oneIn)
		}
		for i, b := range embedded(t).Boards { // sharing names the ports, so the loader asks for them
			from.Boards[i].SATA = b.SATA
		}
		s, err := grow.Stock(from, 1500, uint64(seed))
		require.NoError(t, err)
		fsys := fstest.MapFS{}
		for _, f := range grow.Files(s) {
			fsys[f.Name] = &fstest.MapFile{Data: f.Data}
		}
		_, err = catalog.Load(fsys)
		require.NoError(t, err, "one figure in %d missing", oneIn)
		if oneIn == 1 {
			require.Zero(t, s.Graphics[len(s.Graphics)-1].Length)
			require.Zero(t, s.UPS[len(s.UPS)-1].Real)
			require.Zero(t, s.Drives[len(s.Drives)-1].Write)
		}
	}
}
