package outcome

import (
	"testing"

	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/unit"

	"github.com/stretchr/testify/require"
)

// TestBinary checks decimal sizes against what a system shows (IEC 80000-13; reference rows 1, 2, 4 and 8 TB).
func TestBinary(t *testing.T) {
	for _, c := range []struct {
		mb   int64
		want string
	}{{2_000_000, "1.82 TiB"}, {4_000_000, "3.64 TiB"}, {8_000_000, "7.28 TiB"}, {1_000_000, "931 GiB"}, {500_000, "466 GiB"}} {
		require.Equal(t, c.want, binary(c.mb))
	}
}

// TestTiersOnOneDriveAndOnThree puts the tiers of the cutting room on one drive of 4 TB and on three.
func TestTiersOnOneDriveAndOnThree(t *testing.T) {
	n := briefs(t)["cutting-room"].Needs(stock(t))
	drive := func(gb unit.Storage, tbw unit.Endurance) *part.Drive {
		d := &part.Drive{Capacity: unit.Known(gb * unit.Gigabyte), Endures: unit.Known(tbw)}
		d.Maker, d.Name = "Maker", "drive"
		return d
	}
	one := &build.Build{Boot: build.Storage{Drive: drive(4000, 2400), Count: 1}}
	s := StorageOf(n, one)
	require.Len(t, s.Tiers, 3)
	for _, tier := range s.Tiers {
		require.Equal(t, "boot drive", tier.Drive.On)
		require.Equal(t, "4000 GB", tier.Drive.Capacity.String())
		require.Equal(t, "3.64 TiB", tier.Drive.Binary)
		// everything is written to it: 2400 TB rated ÷ (10 000 + 13 692 + 7161) GB a year = 77.8 years
		require.Equal(t, "77.8 years", tier.Drive.Years.String())
	}
	// who writes what of it unfolds to the sum, tier by tier and in the outcome
	require.Equal(t, "office 2000 GB + sound 1000 GB + system 7000 GB", s.Tiers[0].Writers)
	var sum brief.Written
	for _, w := range n.Writes {
		sum.Boot, sum.Cache, sum.Archive = sum.Boot+w.Boot, sum.Cache+w.Cache, sum.Archive+w.Archive
	}
	require.Equal(t, n.Written, sum)
	life := lives(one, n)
	require.Len(t, life, 1)
	require.Regexp(t, `^2400 TB it is rated for ÷ 30.853 GB written a year: office 2100 GB \+ sound \d+.\d+ GB \+ system 7000 GB \+ video \d+.\d+ GB$`, life[0].Why)
	left := n.By[brief.CacheSize].Floor + n.By[brief.ArchiveSize].Floor
	require.Equal(t, int64(4*unit.Terabyte)-left, s.Tiers[0].Drive.Left.N, "what cache and archive leave of it")
	require.Contains(t, s.One, "could hold everything")

	disk := drive(4000, 0)
	disk.Disk = true
	three := &build.Build{Boot: build.Storage{Drive: drive(500, 300), Count: 1}, Cache: build.Storage{Drive: drive(1000, 600), Count: 1}, Archive: build.Storage{Drive: disk, Count: 1}}
	s = StorageOf(n, three)
	require.Equal(t, "cache drive", s.Tiers[1].Drive.On)
	require.Equal(t, "1000 GB", s.Tiers[1].Drive.Left.String())
	// 551 GB of work in hand on 1000 GB
	require.InDelta(t, 55.2, s.Tiers[1].Drive.Fill.Float(), 0.1)
	require.Equal(t, "43.8 years", s.Tiers[1].Drive.Years.String(), "600 TB ÷ 13.692 TB a year")
	require.Nil(t, s.Tiers[2].Drive.Years, "a disk has no rated writing")
	require.Contains(t, s.Tiers[2].Kind, "hard disk will do")

	// a gamer's maps belong on the fast tier, films on the slow one
	family := StorageOf(briefs(t)["family"].Needs(stock(t)), nil)
	require.Contains(t, family.Tiers[0].Why, "maps load from the fast tier")
	require.Contains(t, family.Tiers[2].Why, "films")
	require.Contains(t, family.One, "will do")
	require.Nil(t, family.Tiers[0].Drive)
}

// TestDiskIsTooSlowForSomeArchives: what is written faster than a disk holds asks for solid state.
func TestDiskIsTooSlowForSomeArchives(t *testing.T) {
	b, err := brief.Read("server", []byte(`{"kind":"slipfit-brief","version":1,"title":"x","activities":[{"server":{"fast":true}}]}`))
	require.NoError(t, err)
	s := StorageOf(b.Needs(stock(t)), nil)
	require.Contains(t, s.Tiers[1].Kind, "solid state: 250 MB/s")
}
