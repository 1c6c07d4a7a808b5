package scene

import (
	"encoding/json"
	"encoding/xml"
	"flag"
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"strconv"
	"strings"
	"testing"

	"slipfit/catalog"
	"slipfit/core/build"
	"slipfit/core/format"
	"slipfit/core/part"

	"github.com/stretchr/testify/require"
)

var update = flag.Bool("update", false, "write the golden drawings anew")

// bench reads the stock of testdata/rules/bench.json.
func bench(t *testing.T) *part.Stock {
	t.Helper()
	raw, err := os.ReadFile("../../testdata/rules/bench.json")
	require.NoError(t, err)
	var doc struct{ Stock map[string]json.RawMessage }
	require.NoError(t, json.Unmarshal(raw, &doc))
	var s part.Stock
	for kind, into := range map[string]any{"cases": &s.Cases, "boards": &s.Boards, "processors": &s.Processors, "coolers": &s.Coolers,
		"memory": &s.Memory, "graphics": &s.Graphics, "supplies": &s.Supplies, "drives": &s.Drives, "fans": &s.Fans} {
		require.NoError(t, format.Value(kind, doc.Stock[kind], into))
	}
	return &s
}

// drawn are the builds of the golden drawings, with the clearances they dimension.
var drawn = []struct {
	name, build string
	dimensions  []Dimension
	overlaps    int
}{
	{"tower", `{"kind":"slipfit-build","version":1,"title":"Tower with an air cooler","seats":[{"seat":"case","part":"tower"},{"seat":"board","part":"board-atx"},
		{"seat":"processor","part":"cpu"},{"seat":"cooler","part":"air"},{"seat":"memory","part":"kit-tall"},{"seat":"graphics","part":"card"},
		{"seat":"supply","part":"supply-650"},{"seat":"boot","part":"ssd"},{"seat":"archive","part":"disk","count":2}]}`,
		[]Dimension{{Rule: "cooler-raised"}, {Rule: "cooler-height"}, {Rule: "graphics-height"}, {Rule: "graphics-length"}, {Rule: "cooler-card"}}, 0},
	{"sandwich", `{"kind":"slipfit-build","version":1,"title":"Sandwich with the plate moved and a plug against the panel","layout":"air","plate":3,"seats":[{"seat":"case","part":"sandwich"},
		{"seat":"board","part":"board-itx"},{"seat":"processor","part":"cpu"},{"seat":"cooler","part":"low"},{"seat":"memory","part":"kit"},
		{"seat":"graphics","part":"card"},{"seat":"supply","part":"supply-sfx"},{"seat":"boot","part":"ssd"}]}`,
		[]Dimension{{Rule: "graphics-thickness"}, {Rule: "cooler-height"}, {Rule: "supply-length"}, {Rule: "graphics-length"}, {Rule: "graphics-height"}}, 1},
	{"radiator-in-the-way", `{"kind":"slipfit-build","version":1,"title":"Radiators that do not go in","seats":[{"seat":"case","part":"tower"},{"seat":"board","part":"board-atx"},
		{"seat":"processor","part":"cpu"},{"seat":"cooler","part":"liquid-360","face":"front"},{"seat":"memory","part":"kit"},{"seat":"graphics","part":"card-12"},
		{"seat":"supply","part":"supply-850"},{"seat":"boot","part":"ssd"},{"seat":"fans","part":"fan-120","count":2,"face":"top"}]}`,
		[]Dimension{{Rule: "radiator-card", Subject: "length"}, {Rule: "radiator-mount", Subject: "length"}, {Rule: "graphics-height"}}, 1},
}

// TestDrawings compares drawings byte for byte with those under testdata/scene, which were looked at; -update writes them.
func TestDrawings(t *testing.T) {
	stock := bench(t)
	for _, d := range drawn {
		t.Run(d.name, func(t *testing.T) {
			b, err := build.Read(d.name, []byte(d.build), stock)
			require.NoError(t, err)
			s := Of(b)
			require.Empty(t, s.Unknown)
			require.Len(t, s.Overlaps(), d.overlaps)
			got := Draw(s, Drawing{Title: b.Title, Dimensions: d.dimensions, List: true})
			require.Equal(t, string(got), string(Draw(Of(b), Drawing{Title: b.Title, Dimensions: d.dimensions, List: true})), "the same scene gives the same bytes")
			sound(t, got)
			file := "../../testdata/scene/" + d.name + ".svg"
			if *update {
				require.NoError(t, os.MkdirAll("../../testdata/scene", 0o755))
				require.NoError(t, os.WriteFile(file, got, 0o644))
			}
			want, err := os.ReadFile(file)
			require.NoError(t, err)
			require.Equal(t, string(want), string(got))
		})
	}
}

// sound checks that a drawing is well-formed, names itself, obeys a page that forbids inline styles, and stays on its paper.
func sound(t *testing.T, svg []byte) {
	t.Helper()
	d := xml.NewDecoder(strings.NewReader(string(svg)))
	title := false
	var width, height float64
	for {
		token, err := d.Token()
		if err == io.EOF {
			break
		}
		require.NoError(t, err)
		e, ok := token.(xml.StartElement)
		if !ok {
			continue
		}
		title = title || e.Name.Local == "title"
		at := map[string]float64{}
		for _, a := range e.Attr {
			at[a.Name.Local], _ = strconv.ParseFloat(a.Value, 64)
			if a.Name.Local == "viewBox" {
				_, err := fmt.Sscanf(a.Value, "0 0 %g %g", &width, &height)
				require.NoError(t, err)
			}
		}
		switch e.Name.Local {
		case "rect":
			if !has(e, "keep-out") && !has(e, "clash") {
				require.True(t, at["x"] >= 0 && at["y"] >= 0 && at["x"]+at["width"] <= width+0.01 && at["y"]+at["height"] <= height+0.01, "%v is off the paper", e.Attr)
			}
		case "circle":
			require.True(t, at["cx"] > 0 && at["cx"] < width && at["cy"] > 0 && at["cy"] < height, "%v is off the paper", e.Attr)
		}
		for _, a := range e.Attr {
			require.NotEqual(t, "style", a.Name.Local)
			require.False(t, strings.HasPrefix(a.Name.Local, "on"))
			require.NotContains(t, a.Value, "NaN")
			require.NotContains(t, a.Value, "Inf")
		}
	}
	require.True(t, title)
	require.NotContains(t, string(svg), "http://www.w3.org/1999", "nothing is linked")
}

func has(e xml.StartElement, class string) bool {
	for _, a := range e.Attr {
		if a.Name.Local == "class" && a.Value == class {
			return true
		}
	}
	return false
}

// TestDrawingsOfAnything draws builds of any parts, most of which cannot be built, with every clearance dimensioned.
func TestDrawingsOfAnything(t *testing.T) {
	stock, err := catalog.Embedded()
	require.NoError(t, err)
	r := rand.New(rand.NewPCG(4, 4))
	for range 150 {
		b := random(r, stock)
		s := Of(b)
		var all []Dimension
		for _, m := range s.Meetings {
			all = append(all, Dimension{Rule: m.Rule, Subject: m.Subject})
		}
		sound(t, Draw(s, Drawing{Dimensions: all}))
	}
}

// TestMissingFigures checks that a scene leaves out what it cannot place and names it.
func TestMissingFigures(t *testing.T) {
	stock := bench(t)
	b, err := build.Read("tower", []byte(drawn[0].build), stock)
	require.NoError(t, err)
	b.Graphics = &part.Graphics{Article: b.Graphics.Article, PlugSide: "top"}
	b.Supply = &part.Supply{Article: b.Supply.Article, Form: part.SupplyATX}
	b.Cooler = &part.Cooler{Article: b.Cooler.Article, Air: &part.AirCooler{}}
	s := Of(b)
	for _, name := range []string{"graphics card", "power supply", "cooler fins", "cooler base", "cooler fan"} {
		require.Contains(t, s.Unknown, name)
		_, found := s.Find(name)
		require.False(t, found, name)
	}
	_, found := s.Find("main board")
	require.True(t, found)
	sound(t, Draw(s, Drawing{Dimensions: []Dimension{{Rule: "graphics-length"}}}))
	sound(t, Draw(Of(&build.Build{}), Drawing{}))
	require.Contains(t, string(Draw(s, Drawing{})), "its sheet lacks figures: graphics card")
}

// TestBoardStandards holds the frame to published figures of the microATX and Mini-ITX documents (reference sheet of
// mechanical figures, check vectors 9 to 11): distances between holes, slot centre lines.
func TestBoardStandards(t *testing.T) {
	require.EqualValues(t, 1570, slotAt(1))
	require.EqualValues(t, -18750, slotAt(2))
	require.EqualValues(t, -39070, slotAt(3))
	require.EqualValues(t, -120350, slotAt(7))
	var c, f, j, a, m [2]float64
	for _, h := range boardHoles {
		at := [2]float64{float(h.y), float(h.v)}
		switch at {
		case [2]float64{0, 0}:
			c = at
		case [2]float64{157.48, 22.86}:
			f = at
		case [2]float64{157.48, 154.94}:
			j = at
		case [2]float64{-124.46, 0}:
			a = at
		case [2]float64{-45.72, 0}:
			m = at
		}
	}
	apart := func(p, q [2]float64) float64 {
		x, y := p[0]-q[0], p[1]-q[1]
		return x*x + y*y
	}
	require.InDelta(t, 159.13*159.13, apart(c, f), 4)
	require.InDelta(t, 220.92*220.92, apart(c, j), 5)
	require.InDelta(t, 132.08*132.08, apart(f, j), 3)
	require.InDelta(t, 78.74*78.74, apart(a, m), 2)
	lo, hi := edges(part.MiniITX)
	require.EqualValues(t, 170*mm, hi-lo)
	lo, hi = edges(part.ATX)
	require.EqualValues(t, 304_800, hi-lo)
	lo, hi = edges(part.MicroATX)
	require.InDelta(t, 243_840, int64(hi-lo), 200)
}
