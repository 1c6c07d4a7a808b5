package outcome

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"slipfit/catalog"
	"slipfit/core/brief"
	"slipfit/core/media"
	"slipfit/core/part"
	"slipfit/core/rule"

	"github.com/stretchr/testify/require"
)

func stock(t testing.TB) *part.Stock {
	t.Helper()
	s, err := catalog.Embedded()
	require.NoError(t, err)
	return s
}

// briefs is every brief under testdata, and one for each kind of activity in which nothing is said.
func briefs(t testing.TB) map[string]*brief.Brief {
	t.Helper()
	files, err := filepath.Glob("../../testdata/briefs/*.brief.json")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	all := map[string]*brief.Brief{}
	for _, f := range files {
		raw, err := os.ReadFile(f)
		require.NoError(t, err)
		b, err := brief.Read(f, raw)
		require.NoError(t, err)
		all[strings.TrimSuffix(filepath.Base(f), ".brief.json")] = b
	}
	for _, topic := range brief.Topics() {
		raw := `{"kind":"slipfit-brief","version":1,"title":"` + topic.Name + `","activities":[{"` + topic.Field + `":{}}]}`
		b, err := brief.Read(topic.Field, []byte(raw))
		require.NoError(t, err)
		all["nothing said of "+topic.Name] = b
	}
	return all
}

// floors is a machine that gives every floor of needs and not a point more, each tier on a drive of its own.
func floors(n *brief.Needs) *Have {
	h := &Have{}
	for r := range brief.Resource(brief.Resources) {
		h.By[r] = n.By[r].Floor
	}
	for _, c := range n.Decode {
		h.Reads = append(h.Reads, c.Codec)
	}
	for _, c := range n.Encode {
		h.Writes = append(h.Writes, c.Codec)
	}
	return h
}

// TestFloorsGiveWhatTheyWereMadeFor requires that a machine exactly at its floors reaches every aim of its brief.
func TestFloorsGiveWhatTheyWereMadeFor(t *testing.T) {
	s := stock(t)
	told := 0
	for name, b := range briefs(t) {
		n := b.Needs(s)
		h := floors(n)
		for i := range n.Aims {
			m := &n.Aims[i]
			f := Tell(m, h, &s.Calibration)
			told++
			if m.Want > 0 {
				require.Equal(t, rule.Snug, f.Verdict, "%s: %s: %s: %s for %s: %s", name, f.Activity, f.What, Say(f.Expected, f.Unit), Say(m.Want, f.Unit), f.Why)
			}
			require.LessOrEqual(t, f.Low, f.Expected)
			require.LessOrEqual(t, f.Expected, f.High)
			require.NotEmpty(t, f.Why)
			require.NotEmpty(t, f.Band)
			require.NotEmpty(t, f.Source)
		}
	}
	require.Greater(t, told, 90)
}

// TestEveryLimitPaysForWhatIsWanted gives each resource of each aim just what the activity and the others take, and everything
// else without end: the figure is what is wanted, to the thousandth, and with one unit less it is not reached.
func TestEveryLimitPaysForWhatIsWanted(t *testing.T) {
	s := stock(t)
	for name, b := range briefs(t) {
		n := b.Needs(s)
		for _, m := range n.Aims {
			for _, l := range m.Usual.Limits {
				if m.Want == 0 {
					continue
				}
				alone := m
				alone.Usual = brief.Law{Limits: []brief.Limit{l}}
				alone.High = alone.Usual
				h := floors(n)
				raw := l.Others + l.Fixed + l.Moving
				if free := l.Resource.Free(); free > 0 {
					raw = (raw*1000 + 1000 - free - 1) / (1000 - free)
				}
				require.LessOrEqual(t, raw, n.By[l.Resource].Floor, "%s: the need of %s covers %s", name, l.Resource, m.What)
				h.By[l.Resource] = raw
				f := Tell(&alone, h, &s.Calibration)
				require.Equal(t, rule.Snug, f.Verdict, "%s: %s by %s: %s", name, m.What, l.Resource, f.Why)
				require.InDelta(t, m.Want, f.Expected, float64(m.Want)/100+1, "%s: %s by %s: %s", name, m.What, l.Resource, f.Why)
				h.By[l.Resource] = raw - 2
				require.Equal(t, rule.Short, Tell(&alone, h, &s.Calibration).Verdict, "%s: %s by %s", name, m.What, l.Resource)
			}
		}
	}
}

// TestMoreNeverGivesLess raises one resource at a time from the floors: no figure gets worse, and each of those an aim reads
// makes some figure better at some height.
func TestMoreNeverGivesLess(t *testing.T) {
	s := stock(t)
	for name, b := range briefs(t) {
		n := b.Needs(s)
		for i := range n.Aims {
			m := &n.Aims[i]
			for r := range brief.Resource(brief.Resources) {
				h := floors(n)
				h.By[r] = n.By[r].Floor / 4
				before := Tell(m, h, &s.Calibration)
				for _, percent := range []int64{50, 75, 99, 100, 101, 150, 300, 1000} {
					h.By[r] = n.By[r].Floor * percent / 100
					after := Tell(m, h, &s.Calibration)
					if m.Unit.Time {
						require.LessOrEqual(t, after.Expected, before.Expected, "%s: %s with %d %% of %s", name, m.What, percent, r)
					} else {
						require.GreaterOrEqual(t, after.Expected, before.Expected, "%s: %s with %d %% of %s", name, m.What, percent, r)
					}
					before = after
				}
			}
		}
	}
}

// TestWorkedExamples checks the models against published examples.
func TestWorkedExamples(t *testing.T) {
	// Amdahl's table: p = 0.95 on 8 workers is 5.9259 times as fast (Amdahl 1967 in Gustafson 1988)
	h := &Have{}
	h.By[brief.SingleWork], h.By[brief.AllWork] = 1000, 8000
	r := job(&brief.Job{CoreMS: 59_259_259, Parallel: 95_000, Pieces: 1}, brief.Unit{Time: true}, h)
	require.InDelta(t, 10_000_000, r.value, 1000, "59 259.259 core seconds take 10 000 s")
	require.InDelta(t, 59_259_259/media.Amdahl(0.95, 8), r.value, 1)

	// the textbook's token ceiling: 100 GB/s and 3.5 GB of weights are 28.6 tokens a second
	h.By[brief.MemorySize], h.By[brief.MemoryRate] = 64*1024, 100_000
	tok := tokens(&brief.Tokens{WeightMB: 3500, Stream: 100_000}, brief.Unit{}, h)
	require.InDelta(t, 28_571, tok.value, 1)
	require.Equal(t, brief.MemoryRate.Title(), tok.by)

	// half of the weights on a card ten times as fast: the times add, 1/(0.5/10 + 0.5) = 1.818 times the pace
	h.By[brief.GraphicsMemory], h.By[brief.GraphicsRate] = 1669, 1_000_000 // 1669 MiB are 1750 MB
	split := tokens(&brief.Tokens{WeightMB: 3500, Stream: 100_000, OnCard: true}, brief.Unit{}, h)
	require.InDelta(t, 28_571*1.818, split.value, 60)
	require.Equal(t, brief.GraphicsMemory.Title(), split.by)

	// roofline: 10 TFLOP/s and 900 GB/s at an intensity of 6.25 give 5625 GFLOP/s; at 12 the peak (Williams and others 2009)
	for _, c := range []struct{ intensity, want float64 }{{6.25, 5_625}, {12, 10_000}, {0.125, 112.5}} {
		h.By[brief.ComputeWork], h.By[brief.GraphicsRate] = 10_000, 900
		got := roofline([]brief.Limit{{Resource: brief.ComputeWork, Moving: 10_000, Per: 10_000_000},
			{Resource: brief.GraphicsRate, Moving: 1000, Per: int64(c.intensity * 1_000_000)}}, brief.Unit{}, h)
		require.InDelta(t, c.want*1000, got.value, 1)
		require.InDelta(t, media.Roofline(10_000, 900, c.intensity)*1000, got.value, 1)
	}

	// 50 Mbit/s are 22.5 GB an hour; 2 TB hold 88.9 h
	h.By[brief.CacheSize] = 2_000_000
	hours := roofline([]brief.Limit{{Resource: brief.ArchiveWrite, Moving: 22_500, Per: 1000}}, brief.Unit{}, &Have{By: [brief.Resources]int64{brief.ArchiveWrite: 2_000_000}})
	require.InDelta(t, 88_888, hours.value, 1)
}

func TestUnsaidWidensTheBand(t *testing.T) {
	s := stock(t)
	read := func(said string) Figure {
		b, err := brief.Read("said", []byte(`{"kind":"slipfit-brief","version":1,"title":"x","activities":[{"photogrammetry":{`+said+`}}]}`))
		require.NoError(t, err)
		n := b.Needs(s)
		h := floors(n)
		for i := range n.Aims {
			if n.Aims[i].Unit.Time {
				return Tell(&n.Aims[i], h, &s.Calibration)
			}
		}
		t.Fatal("no time")
		return Figure{}
	}
	said := read(`"pictures":150,"megapixels":24,"wait_min":120,"objects_week":5,"objects_kept":200`)
	unsaid := read(``)
	require.Equal(t, said.Expected, unsaid.Expected)
	require.Greater(t, unsaid.High, said.High)
	require.Less(t, unsaid.Low, said.Low)
	require.NotContains(t, said.Band, "not said")
	require.Contains(t, unsaid.Band, "wider for what was not said")
	// the calibration's 40 % either way, and no more, where everything was said
	require.InDelta(t, float64(said.Expected)*0.6, said.Low, 2)
	require.InDelta(t, float64(said.Expected)*1.4, said.High, 2)
}

func TestSay(t *testing.T) {
	for _, c := range []struct {
		milli int64
		unit  brief.Unit
		want  string
	}{
		{2560, brief.Unit{One: "stream", Many: "streams"}, "2.56 streams"},
		{1000, brief.Unit{One: "stream", Many: "streams"}, "1 stream"},
		{88_888, brief.Unit{One: "hour", Many: "hours"}, "88.9 hours"},
		{1_234_567, brief.Unit{One: "hour", Many: "hours"}, "1235 hours"},
		{63_200, brief.Minutes, "63.2 minutes"},
		{150_000, brief.Minutes, "2 h 30 min"},
		{180_000, brief.Minutes, "3 h"},
		{500, brief.Minutes, "30 seconds"},
		{700, brief.Years, "8 months"},
		{85, brief.Years, "4 weeks"},
		{2740, brief.Years, "2.74 years"},
		{1 << 60, brief.Minutes, "any number of minutes"},
	} {
		require.Equal(t, c.want, Say(c.milli, c.unit))
	}
}
