package outcome

import (
	"math"
	"strings"
	"testing"

	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/predict"
	"slipfit/core/rule"
	"slipfit/core/unit"

	"github.com/stretchr/testify/require"
)

// cutter is a whole machine for the cutting room with a cooler and a card to be named.
const cutter = `{"kind":"slipfit-build","version":1,"layout":"tower","seats":[{"seat":"case","part":"kestrane-plain-38"},
{"seat":"board","part":"tolvane-grange-t60"},{"seat":"processor","part":"quillmar-tern-740"},{"seat":"cooler","part":"COOLER"},
{"seat":"memory","part":"umbriq-plain-64-gb-2-x-32-5600"},{"seat":"graphics","part":"calderby-lantern-50-two"},
{"seat":"supply","part":"amblewick-even-650"},{"seat":"boot","part":"pallmark-quire-4-2-tb"},{"seat":"archive","part":"archivane-rack-8-tb"}]}`

func cutterWith(t *testing.T, cooler string) *build.Build {
	t.Helper()
	b, err := build.Read("cutter", []byte(strings.Replace(cutter, "COOLER", cooler, 1)), stock(t))
	require.NoError(t, err)
	return b
}

func figures(t *testing.T, b *build.Build, n *brief.Needs) []Figure {
	return Figures(b, n, &stock(t).Calibration)
}

// cool is what a build would do if heat took nothing.
func cool(t *testing.T, b *build.Build, n *brief.Needs) []Figure {
	h := Of(b, n)
	var list []Figure
	for i := range n.Aims {
		list = append(list, Tell(&n.Aims[i], h, &stock(t).Calibration))
	}
	return append(list, lives(b, n)...)
}

// TestHeatTakesNothingWhereNothingIsHeldBack requires the same outcomes, to the bit, of builds that hold what is asked of them
// on the hottest day.
func TestHeatTakesNothingWhereNothingIsHeldBack(t *testing.T) {
	b := cutterWith(t, "norbrusk-forge-160")
	for name, said := range briefs(t) {
		n := said.Needs(stock(t))
		n.Place.Room, n.Place.Hottest = unit.Known(unit.Temperature(15_000)), unit.Known(unit.Temperature(15_000))
		require.Equal(t, cool(t, b, n), figures(t, b, n), name)
	}
}

// TestHeatSlowsTheWork puts sinks on the processor that cannot carry its power away: the work's rate falls as the cube root of
// the power held, what the processor has no part in stays, and the band reaches to the hottest day.
func TestHeatSlowsTheWork(t *testing.T) {
	s := stock(t)
	said, err := brief.Read("film", []byte(`{"kind":"slipfit-brief","version":1,"title":"x","activities":[{"hours_week":20,
		"modelling":{"renders_on":"processor","pictures":10,"wait_min":600}}],"place":{"room_c":24,"hottest_c":34}}`))
	require.NoError(t, err)
	n := said.Needs(s)
	const rendered = "10 pictures of 1920 × 1080 with 256 samples, rendered in one go"
	figure := func(list []Figure, what string) Figure {
		for _, f := range list {
			if f.What == what {
				return f
			}
		}
		t.Fatal(what)
		return Figure{}
	}
	slowest := int64(0)
	for _, cooler := range []string{"norbrusk-flat-63", "peltwick-penny-92", "peltwick-penny-45"} {
		b := cutterWith(t, cooler)
		free, held := figure(cool(t, b, n), rendered), figure(figures(t, b, n), rendered)

		f := new(predict.Predictor).Forecast(b, n)
		ordinary, hottest := f.Run(0, predict.Ordinary).Parts[0], f.Run(0, predict.Hottest).Parts[0]
		require.Less(t, ordinary.HeldW.Expected, ordinary.AskedW, cooler)
		require.InDelta(t, ordinary.LimitC, ordinary.TempC.Expected, 0.01, "held back only at its limit")
		kept := math.Cbrt(ordinary.HeldW.Expected / ordinary.AskedW)
		// both one-thread and all-thread points fall alike, so the time grows as 1/kept; what the system takes beside stays
		require.InEpsilon(t, float64(free.Expected)/kept, held.Expected, 0.02, cooler)
		require.Greater(t, held.Expected, free.Expected)
		require.Greater(t, held.Expected, slowest, "the weaker the sink, the longer it takes")
		slowest = held.Expected

		hot := math.Cbrt(hottest.HeldW.Expected / hottest.AskedW)
		require.Less(t, hot, kept)
		require.InEpsilon(t, float64(free.High)/hot, held.High, 0.03, "the band goes to the hottest day")
		require.InEpsilon(t, float64(free.Low)/kept, held.Low, 0.02)
		require.Contains(t, held.Why, "keeps "+unit.Share(math.Round(kept*100_000)).Q().String()+" of its speed")
		require.Contains(t, held.Band, "hottest day")

		require.Equal(t, figure(cool(t, b, n), "projects kept"), figure(figures(t, b, n), "projects kept"))
	}
}

// TestHeatOfTheCard slows what the card does and nothing else.
func TestHeatOfTheCard(t *testing.T) {
	s := stock(t)
	b := cutterWith(t, "norbrusk-forge-160")
	card := *b.Graphics
	card.CoreFixed = unit.Known(unit.Resistance(400)) // 0.4 K/W: 180 W and more cannot leave it
	b.Graphics = &card
	said, err := brief.Read("game", []byte(`{"kind":"slipfit-brief","version":1,"title":"x","activities":[{"games":{"class":"traced","width_px":3840,"height_px":2160,"frames_s":120}}]}`))
	require.NoError(t, err)
	n := said.Needs(s)
	free, held := cool(t, b, n)[0], figures(t, b, n)[0]
	require.Equal(t, "pictures a second", held.What)
	require.Equal(t, brief.DrawWork.Title(), free.By)
	p := new(predict.Predictor).Forecast(b, n).Run(0, predict.Ordinary).Parts[1]
	require.Less(t, p.HeldW.Expected, p.AskedW)
	require.InEpsilon(t, float64(free.Expected)*math.Cbrt(p.HeldW.Expected/p.AskedW), held.Expected, 0.02)
}

// TestHeatNotKnown requires that a sheet without the figures of its heat leaves what it slows unknown, and that a build not
// whole enough to be predicted is told as if it held.
func TestHeatNotKnown(t *testing.T) {
	s := stock(t)
	said := briefs(t)["nothing said of software"]
	n := said.Needs(s)
	b := cutterWith(t, "norbrusk-forge-160")
	processor := *b.Processor
	processor.Limit = unit.Figure[unit.Temperature]{}
	b.Processor = &processor
	f := figures(t, b, n)[0]
	require.Equal(t, rule.Unknown, f.Verdict)
	require.Equal(t, []string{"quillmar-tern-740: limit_c"}, f.Missing)
	require.NotEqual(t, rule.Unknown, figures(t, b, n)[1].Verdict, "memory has no part in it: %s", figures(t, b, n)[1].What)

	b.Clear(build.Cooler)
	require.Equal(t, cool(t, b, n), figures(t, b, n))
}
