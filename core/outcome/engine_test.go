package outcome

import (
	"testing"

	"slipfit/core/brief"
	"slipfit/core/part"
	"slipfit/core/rule"

	"github.com/stretchr/testify/require"
)

// told is one outcome of a brief of one activity on what a build gives.
func told(t *testing.T, activity, what string, h *Have) Figure {
	t.Helper()
	b, err := brief.Read("said", []byte(`{"kind":"slipfit-brief","version":1,"title":"x","activities":[`+activity+`]}`))
	require.NoError(t, err)
	n := b.Needs(stock(t))
	for i := range n.Aims {
		if n.Aims[i].What == what {
			return Tell(&n.Aims[i], h, &stock(t).Calibration)
		}
	}
	t.Fatal(what)
	return Figure{}
}

// editing is a machine of 1500 points a thread, so many in all, and so much computing.
func editing(all, compute int64) *Have {
	h := &Have{Reads: []part.Codec{part.CodecHEVC}}
	h.By[brief.SingleWork], h.By[brief.AllWork], h.By[brief.ComputeWork] = 1500, all, compute
	return h
}

const (
	exported = "ten minutes of programme written out"
	// 3840 × 2160 × 25 × 600 s = 124.416 × 10^9 pixels
	gpx = 124.416
)

// TestEngineWritesTheExport holds an export with a hardware engine to the slowest of reading, grading and writing, worked out
// beside the model: an engine takes 2 s for 10^9 pixels, reading and mixing 20 000 points × 1.25 × 0.75 on threads of which
// 95 % spread, after what the system takes beside, grading 2400 graphics points.
func TestEngineWritesTheExport(t *testing.T) {
	const job = `{"video":{"format":"h265-10bit-420","width_px":3840,"height_px":2160,"frames_s":25,"finish":"grade","delivers":"h264-8bit-420"}}`
	threads := func(points, single, all float64) float64 {
		return gpx * points / 1000 * 1000 * (0.05/single + 0.95/(all-1000))
	}
	minutes := func(seconds float64) float64 { return seconds * 1000 / 60 }
	for _, c := range []struct {
		what         string
		all, compute int64
		writes       []part.Codec
		seconds      float64
		by           string
	}{
		{"no engine: the threads read and write", 21_000, 4000, nil, threads(32_000, 1500, 21_000), brief.AllWork.Title()},
		{"an engine, and threads enough: the engine sets it", 31_000, 4000, []part.Codec{part.CodecH264}, gpx * 2, "the encoding engine"},
		{"an engine, and few threads: reading sets it", 7000, 4000, []part.Codec{part.CodecH264}, threads(18_750, 1500, 7000), brief.AllWork.Title()},
		{"an engine, and a weak card: grading sets it", 21_000, 800, []part.Codec{part.CodecH264}, gpx * 2400 / 800, brief.ComputeWork.Title()},
		{"an engine of another format is none", 21_000, 4000, []part.Codec{part.CodecAV1}, threads(32_000, 1500, 21_000), brief.AllWork.Title()},
	} {
		h := editing(c.all, c.compute)
		h.Writes = c.writes
		f := told(t, job, exported, h)
		require.InDelta(t, minutes(c.seconds), f.Expected, minutes(c.seconds)*0.002, "%s: %s", c.what, f.Why)
		require.Equal(t, c.by, f.By, "%s: %s", c.what, f.Why)
		require.InDelta(t, float64(f.Expected)*0.6, f.Low, 2, c.what)
	}

	// many threads write faster than an engine does: the quicker way is taken, and an engine never makes it slower
	without := editing(120_000, 60_000)
	without.By[brief.SingleWork] = 3000
	with := *without
	with.Writes = []part.Codec{part.CodecH264}
	require.Less(t, told(t, job, exported, without).Expected, int64(minutes(gpx*2)))
	require.Equal(t, told(t, job, exported, without), told(t, job, exported, &with))

	// without an engine that reads, a third more is left to the threads
	deaf := editing(7000, 4000)
	deaf.Reads, deaf.Writes = nil, []part.Codec{part.CodecH264}
	f := told(t, job, exported, deaf)
	require.InDelta(t, minutes(threads(25_000, 1500, 7000)), f.Expected, 50, f.Why)
	require.Contains(t, f.Why, "no engine reads h265-10bit-420")
}

// TestEngineKeepsUpWithItsLevel holds the engine's pace to common practice: one engine writes 2160 lines at 60 frames a second and
// little more, so that ten minutes of them take ten minutes where nothing else sets the time, four times 1080 lines at 60.
func TestEngineKeepsUpWithItsLevel(t *testing.T) {
	h := editing(30_000, 60_000)
	h.Writes = []part.Codec{part.CodecH264}
	for _, c := range []struct {
		size    string
		minutes float64
	}{{`"width_px":3840,"height_px":2160,"frames_s":60`, 10}, {`"width_px":1920,"height_px":1080,"frames_s":60`, 2.5}} {
		f := told(t, `{"video":{"format":"vc-3-high",`+c.size+`,"finish":"cuts","delivers":"h264-8bit-420"}}`, exported, h)
		require.Equal(t, "the encoding engine", f.By, f.Why)
		require.InEpsilon(t, c.minutes*1000, f.Expected, 0.01, f.Why)
	}
}

// TestEngineWritesNoPictureTooLarge requires that no engine is reckoned with for pictures above the format's highest level.
func TestEngineWritesNoPictureTooLarge(t *testing.T) {
	large := func(format string) string {
		return `{"video":{"width_px":7680,"height_px":4320,"frames_s":25,"delivers":"` + format + `"}}`
	}
	h := editing(31_000, 20_000)
	h.Writes = []part.Codec{part.CodecH264, part.CodecHEVC}
	require.NotContains(t, told(t, large("h264-8bit-420"), exported, h).Why, "engine writes")
	require.Contains(t, told(t, large("h265-10bit-420"), exported, h).Why, "an engine writes h265-10bit-420")
}

// TestLiveWithoutAnEngine requires that the processor writes what no engine writes, and that a picture no engine keeps up with
// asks for it from the start.
func TestLiveWithoutAnEngine(t *testing.T) {
	const sent = "pictures a second sent without dropping one"
	show := `{"live":{"width_px":1920,"height_px":1080,"frames_s":60,"cameras":1}}`
	// 0.1244 × 10^9 pixels a second: mixing takes 0.1244 × 2 × 3200 = 797 points, writing 0.1244 × 32 000 = 3982
	h := &Have{Writes: []part.Codec{part.CodecH264}}
	h.By[brief.AllWork], h.By[brief.DrawWork] = 1000+797, 10_000
	require.Equal(t, rule.Snug, told(t, show, sent, h).Verdict)
	h.Writes = nil
	f := told(t, show, sent, h)
	require.Equal(t, rule.Short, f.Verdict)
	require.InDelta(t, 60_000*797/(797+3982), f.Expected, 20)
	require.Contains(t, f.Why, "no engine writes h264-8bit-420")

	fast, err := brief.Read("fast", []byte(`{"kind":"slipfit-brief","version":1,"title":"x","activities":[{"live":{"width_px":3840,"height_px":2160,"frames_s":120}}]}`))
	require.NoError(t, err)
	n := fast.Needs(stock(t))
	require.Empty(t, n.Encode, "995 million pixels a second are more than the 500 of an engine")
	require.Greater(t, n.By[brief.AllWork].Floor, int64(32_000*995/1000))
}
