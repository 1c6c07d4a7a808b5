package brief

import (
	"testing"

	"slipfit/core/unit"

	"github.com/stretchr/testify/require"
)

// TestPractice checks common practice on a working video editor, in a scenario of its own: about 64 GB as two modules, ten
// or more cores' worth of work, boot and work in hand on about 2 TB, an archive of about 4 TB.
func TestPractice(t *testing.T) {
	n := briefs(t)["cutting-room"].Needs(workshop(t))
	require.Equal(t, int64(64*unit.GiB), n.By[MemorySize].Floor)
	require.Contains(t, n.By[MemorySize].Reason, "2 × 32 GiB")
	require.GreaterOrEqual(t, n.By[AllWork].Floor, int64(10_000), "ten reference cores")
	require.Equal(t, int64(2*unit.Terabyte), Sold(BootSize, n.By[BootSize].Floor+n.By[CacheSize].Floor))
	require.Equal(t, int64(4*unit.Terabyte), Sold(ArchiveSize, n.By[ArchiveSize].Floor))
	require.Less(t, n.By[BootRead].Floor, int64(7000))
	require.Greater(t, n.By[BootRead].Floor, int64(300), "no disk starts it")
	require.Less(t, n.By[ArchiveWrite].Floor, int64(150), "a disk will do for what is kept")

	// common practice: system memory for 1080 lines 16 GB, 2160 lines 32 GB, effects 64 GB and more
	memory := func(w, h unit.Whole, f Finish) int64 {
		b := Brief{Activities: []Activity{{Video: &Video{Width: unit.Known(w), Height: unit.Known(h), Rate: unit.Known[unit.Whole](25),
			Streams: unit.Known[unit.Whole](1), Level: f}}}}
		return b.Needs(workshop(t)).By[MemorySize].Floor / int64(unit.GiB)
	}
	require.LessOrEqual(t, memory(1920, 1080, Cuts), int64(16))
	require.Equal(t, int64(32), memory(3840, 2160, Cuts))
	require.Equal(t, int64(64), memory(3840, 2160, Effects))

	// a gamer's maps load from the fast tier, films sit on the slow one
	games := (&Brief{Activities: []Activity{{Games: &Games{}}}}).Needs(workshop(t))
	films := (&Brief{Activities: []Activity{{Games: &Games{}}, {Office: &Office{Films: unit.Known[unit.Whole](300)}}}}).Needs(workshop(t))
	require.GreaterOrEqual(t, games.By[BootSize].Floor, int64(6*80*unit.Gigabyte))
	require.Zero(t, games.By[ArchiveSize].Floor)
	require.GreaterOrEqual(t, films.By[ArchiveSize].Floor, int64(300*filmHourMB))
	require.Less(t, films.By[BootSize].Floor-games.By[BootSize].Floor, int64(100*unit.Gigabyte))
}

// TestGamesGraphicsMemory holds graphics memory against common practice: 8 GB at 1080 lines, 12 GB at 1440, 16 GB at 2160
// with high textures.
func TestGamesGraphicsMemory(t *testing.T) {
	for _, c := range []struct {
		w, h     unit.Whole
		from, to int64
	}{{1920, 1080, 6, 8}, {2560, 1440, 8, 12}, {3840, 2160, 10, 16}} {
		b := Brief{Activities: []Activity{{Games: &Games{Class: GameTraced, Width: unit.Known(c.w), Height: unit.Known(c.h), Rate: unit.Known[unit.Whole](60)}}}}
		n := b.Needs(workshop(t)).By[GraphicsMemory]
		require.GreaterOrEqual(t, n.Floor, c.from*int64(unit.GiB))
		require.LessOrEqual(t, n.Floor, c.to*int64(unit.GiB))
		require.GreaterOrEqual(t, n.Enough, c.to*int64(unit.GiB))
	}
}

// TestRates holds footage against the published and the usual rates of media-rates.csv.
func TestRates(t *testing.T) {
	const mbit = 1_000_000
	require.EqualValues(t, 183_500_800, FootageVC3.bitPerS(1920, 1080, 25), "VC-3 CID 1235 at 25, SMPTE ST 2019-1")
	require.EqualValues(t, 1036_800_000, FootageUncoded.bitPerS(1920, 1080, 25), "uncompressed 4:2:2 10-bit, computed")
	require.EqualValues(t, 100*mbit, FootageH264.bitPerS(3840, 2160, 30), "common practice")
	require.EqualValues(t, 200*mbit, FootageHEVC422.bitPerS(3840, 2160, 60), "common practice")
	require.EqualValues(t, 400*mbit, FootageIntra.bitPerS(3840, 2160, 30), "common practice")
}
