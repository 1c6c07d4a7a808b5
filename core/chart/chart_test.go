package chart

import (
	"encoding/xml"
	"io"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

func sample() Figure {
	return Figure{
		ID: "f", Title: "Heat & <noise>", XName: "room", XUnit: "°C", X: []float64{10, 20, 30},
		Panel: []Panel{
			{Title: "Temperatures", Unit: "°C", Line: []Line{
				{Name: "processor", Mid: []float64{40, 50, 60}, Low: []float64{38, 48, 58}, High: []float64{42, 52, 62}, Limit: 60, LimitName: "limit of the processor"},
				{Name: "card", Mid: []float64{41, 51, 60.2}},
				{Name: "air", Mid: []float64{41, 51, 60.1}, Limit: 60, LimitName: "limit of the air"},
			}},
			{Title: "Level", Unit: "dB(A)", Zero: true, Line: []Line{{Name: "machine", Mid: []float64{20, 25, 30}}}},
			{Title: "Nothing", Unit: "W"},
		},
	}
}

// A drawing is well-formed XML, carries its title and description for those who do not see it, and no style of its own.
func TestDrawingIsWellFormed(t *testing.T) {
	svg := Lines(sample())
	d := xml.NewDecoder(strings.NewReader(svg))
	ids := map[string]bool{}
	for {
		token, err := d.Token()
		if err == io.EOF {
			break
		}
		require.NoError(t, err)
		if start, ok := token.(xml.StartElement); ok {
			for _, a := range start.Attr {
				require.NotEqual(t, "style", a.Name.Local)
				if a.Name.Local == "id" {
					require.False(t, ids[a.Value], "id %s twice", a.Value)
					ids[a.Value] = true
				}
			}
		}
	}
	require.Equal(t, map[string]bool{"f-title": true, "f-desc": true}, ids)
	require.Contains(t, svg, `role="img"`)
	require.Contains(t, svg, `aria-labelledby="f-title f-desc"`)
	require.Contains(t, svg, "<title id=\"f-title\">Heat &amp; &lt;noise&gt;</title>")
	require.Contains(t, svg, "Against room from 10 to 30 °C. Temperatures: processor from 40 to 60 °C, card from 41 to 60.2 °C")
	require.Contains(t, svg, "limit of the processor, limit of the air", "one line for two limits at one height")
	require.Equal(t, svg, Lines(sample()), "the same bytes again")
}

// Points lie where the axes say: the first panel's plot begins at (46, 70), 230 wide and 190 high, over 10 to 30 °C and 38
// to 62 °C in steps of 5, so 35 to 65.
func TestPointsLieOnTheScale(t *testing.T) {
	svg := Lines(sample())
	y := func(v float64) string { return num(70 + 190 - 190*(v-35)/30) }
	require.Contains(t, svg, `d="M46 `+y(40)+`L161 `+y(50)+`L276 `+y(60)+`"`)
	require.Contains(t, svg, `d="M46 `+y(42)+`L161 `+y(52)+`L276 `+y(62)+`L276 `+y(58)+`L161 `+y(48)+`L46 `+y(38)+`Z"`)
}

// Axes have four to eight steps of 1, 2 or 5 and hold all values.
func TestScales(t *testing.T) {
	for _, c := range [][2]float64{{0, 1}, {0, 7}, {3, 4.2}, {-5, 5}, {12, 1234}, {0.001, 0.0042}, {99.5, 100}} {
		s := scaleOf(c[:], false)
		n := len(s.ticks()) - 1
		require.True(t, n >= 3 && n <= 8, "%v: %d steps of %v", c, n, s.step)
		require.LessOrEqual(t, s.low, c[0]+1e-9)
		require.GreaterOrEqual(t, s.high, c[1]-1e-9)
		lead := s.step / math.Pow(10, math.Floor(math.Log10(s.step)+1e-9))
		require.Contains(t, []float64{1, 2, 5}, math.Round(lead*1e6)/1e6)
	}
	require.Less(t, scaleOf(nil, false).low, scaleOf(nil, false).high)
	require.Less(t, scaleOf([]float64{4, 4}, false).low, 4.0)
}

// Names beside the ends keep apart and stay in the panel's height.
func TestNamesKeepApart(t *testing.T) {
	svg := Lines(sample())
	at := func(name string) float64 {
		i := strings.Index(svg, ">"+name+"</text>")
		require.Positive(t, i, name)
		head := svg[strings.LastIndex(svg[:i], `y="`)+3 : i]
		var y float64
		for _, r := range head {
			if r == '.' || r < '0' || r > '9' {
				break
			}
			y = 10*y + float64(r-'0')
		}
		return y
	}
	ys := []float64{at("card"), at("air"), at("processor")}
	require.GreaterOrEqual(t, math.Abs(ys[0]-ys[1]), minGap-1)
	require.GreaterOrEqual(t, math.Abs(ys[1]-ys[2]), minGap-1)
}
