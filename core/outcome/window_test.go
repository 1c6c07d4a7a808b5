package outcome

import (
	"testing"

	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/rule"
	"slipfit/core/unit"

	"github.com/stretchr/testify/require"
)

const reach = "how far back the archive reaches at this pace"

// reaches is that outcome of the museum's pots on drives: 120 objects × 1.25 × 9720 MB are 1458 GB to be kept, beside 20 GB of
// letters, and six objects a week × 52 × 1.25 × 9720 MB are 3790.8 GB a year.
func reaches(t *testing.T, b *build.Build) (Figure, bool) {
	t.Helper()
	for _, f := range figures(t, b, briefs(t)["museum-pottery"].Needs(stock(t))) {
		if f.What == reach && f.Activity == "photogrammetry" {
			return f, true
		}
	}
	return Figure{}, false
}

func drive(gb unit.Storage, disk bool) build.Storage {
	d := &part.Drive{Capacity: unit.Known(gb * unit.Gigabyte), Disk: disk}
	d.Maker, d.Name = "Maker", "drive"
	if !disk {
		d.Endures = unit.Known(unit.Endurance(1200))
	}
	return build.Storage{Drive: d, Count: 1}
}

// TestArchiveIsAWindow holds how far back an archive reaches to kept ÷ a year's new work, worked out beside the model, on an archive
// of just enough, one to spare, one too small, and on a boot drive that holds everything.
func TestArchiveIsAWindow(t *testing.T) {
	const yearly, kept, letters = 3790.8, 1458.0, 20.0
	for _, c := range []struct {
		what    string
		build   build.Build
		room    float64 // GB for the pots: 15 % of the archive is kept free, the letters lie there too
		verdict rule.Verdict
		says    string
	}{
		{"just enough", build.Build{Boot: drive(1000, false), Archive: drive(1739, true)}, 1739*0.85 - letters, rule.Snug,
			"it holds the 1458 GB to be kept with 0 % to spare and is never full"},
		{"room to spare", build.Build{Boot: drive(1000, false), Archive: drive(4000, true)}, 4000*0.85 - letters, rule.Snug,
			"it holds the 1458 GB to be kept with 131.8 % to spare and is never full: at 3791 GB a year what is older than 11 months makes way, to copies elsewhere or for good"},
		{"too small", build.Build{Boot: drive(1000, false), Archive: drive(1000, true)}, 1000*0.85 - letters, rule.Short,
			"only 830 GB of the 1458 GB to be kept fit: at 3791 GB a year what is older than 11 weeks makes way"},
		// system and programs ask 250 GB and the work in hand 534 GB of the same drive
		{"on the boot drive", build.Build{Boot: drive(4000, false)}, (4000-250-534)*0.85 - letters, rule.Snug,
			"it holds the 1458 GB to be kept with 86.1 % to spare and is never full"},
	} {
		f, told := reaches(t, &c.build)
		require.True(t, told, c.what)
		require.Equal(t, c.verdict, f.Verdict, "%s: %s", c.what, f.Why)
		require.InDelta(t, c.room/yearly*1000, f.Expected, 2, "%s: %s", c.what, f.Why)
		require.InDelta(t, kept/yearly*1000, f.Want, 1, "what the brief asks")
		require.Contains(t, f.Why, c.says, c.what)
	}
	require.Equal(t, "20 weeks", Say(385, brief.Years), "the brief asks weeks, in a person's words")
}

// TestArchiveOfPublishedRates holds hours and reach of an archive of 6 TB, of which 15 % is kept free, to published rates: VC-3 CID
// 1235 at 25 frames is 183.5 Mbit/s (SMPTE ST 2019-1), which is 82.575 GB an hour; capture of 1080 lines at 60 frames 50 Mbit/s and
// 22.5 GB an hour (common practice, row of testdata/reference/media/rates.csv).
func TestArchiveOfPublishedRates(t *testing.T) {
	for _, c := range []struct {
		activity, hours string
		gbHour, weekly  float64
	}{
		{`{"video":{"format":"vc-3-high","width_px":1920,"height_px":1080,"frames_s":25,"hours_kept":50,"new_hours_week":5}}`, "hours of footage the archive holds", 82.575, 5},
		{`{"hours_week":10,"live":{"width_px":1920,"height_px":1080,"frames_s":60,"hours_kept":100}}`, "hours of recordings the archive holds", 22.5, 10},
	} {
		h := &Have{}
		h.By[brief.ArchiveSize] = 6 * int64(unit.Terabyte)
		hours := told(t, c.activity, c.hours, h)
		require.InEpsilon(t, 6000*0.85/c.gbHour*1000, hours.Expected, 0.0001, hours.Why)
		back := told(t, c.activity, reach, h)
		require.InEpsilon(t, 6000*0.85/c.gbHour/c.weekly/52*1000, back.Expected, 0.005, back.Why)
	}
}

// TestNoWindowWhereNothingComesIn requires that no reach is told of an archive that nothing new comes into.
func TestNoWindowWhereNothingComesIn(t *testing.T) {
	b, err := brief.Read("said", []byte(`{"kind":"slipfit-brief","version":1,"title":"x","activities":[{"video":{"new_hours_week":0}},{"photography":{"pictures_year":0}}]}`))
	require.NoError(t, err)
	for _, m := range b.Needs(stock(t)).Aims {
		require.NotEqual(t, reach, m.What, m.Activity)
	}
}

// TestUnsaidBandIsOfWhatWasNotSaid holds the band of one outcome to what another did not say: 60 hours of films at 5.4 GB beside
// files that were not said, 200 GB taken with room for 500, on 1000 GB of which 15 % is kept free. The films may be from
// 850 − 500 GB on up to 850 − 80 GB, as far off in proportion, each a quarter off for common practice.
func TestUnsaidBandIsOfWhatWasNotSaid(t *testing.T) {
	s := stock(t)
	b, err := brief.Read("said", []byte(`{"kind":"slipfit-brief","version":1,"title":"x","activities":[{"office":{"web_pages":20,"people":1,"film_hours":60}}]}`))
	require.NoError(t, err)
	n := b.Needs(s)
	h := floors(n)
	h.By[brief.ArchiveSize] = int64(unit.Terabyte)
	for i := range n.Aims {
		if n.Aims[i].What != "hours of films the archive holds" {
			continue
		}
		f := Tell(&n.Aims[i], h, &s.Calibration)
		require.InDelta(t, 650/5.4*1000, f.Expected, 2)
		require.InDelta(t, 350/5.4/1.25*1000, f.Low, 2)
		require.InDelta(t, 770/5.4/0.75*1000, f.High, 2)
		require.Contains(t, f.Band, "wider for what was not said")
		return
	}
	t.Fatal("no films")
}
