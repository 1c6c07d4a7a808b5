//go:build !wasm

package web

import (
	"math"
	"regexp"
	"testing"

	"github.com/maxence-charriere/go-app/v9/pkg/app"
	"github.com/stretchr/testify/require"
)

func known(v float64, text string) Mark { return Mark{At: v, Text: text, Known: true} }

// attributeOf reads one attribute of the part of a drawing with this name.
func attributeOf(t *testing.T, html, part, name string) string {
	t.Helper()
	element := regexp.MustCompile(`<\w+[^>]*data-part="` + part + `"[^>]*>`).FindString(html)
	require.NotEmpty(t, element, "no part %s", part)
	value := regexp.MustCompile(` ` + name + `="([^"]*)"`).FindStringSubmatch(element)
	require.NotNil(t, value, "no %s on %s", name, element)
	return value[1]
}

func TestRulerPlaces(t *testing.T) {
	// The scale ends 4 % past the larger figure, so a figure f of a largest m lies at f / 1.04 m.
	cases := []struct {
		name             string
		ruler            Ruler
		x, width, filled string
	}{
		{"more than needed", Ruler{Have: known(165, ""), Need: known(132, ""), Verdict: "loose"}, "76.92%", "19.23%", "url(#hatch-loose)"},
		{"less than needed", Ruler{Have: known(132, ""), Need: known(165, ""), Verdict: "short"}, "76.92%", "19.23%", "url(#hatch-short)"},
		{"exactly the need", Ruler{Have: known(50, ""), Need: known(50, ""), Verdict: "snug"}, "96.15%", "0.00%", "url(#hatch-snug)"},
		{"have is missing", Ruler{Need: known(50, ""), Verdict: "unknown"}, "0.00%", "96.15%", "url(#hatch-unknown)"},
		{"both are missing", Ruler{Verdict: "unknown"}, "0.00%", "0.00%", "url(#hatch-unknown)"},
		{"have is below zero", Ruler{Have: known(-3, ""), Need: known(50, ""), Verdict: "clash"}, "0.00%", "96.15%", "url(#hatch-clash)"},
		{"a word without a fill is never drawn as a fit", Ruler{Have: known(2, ""), Need: known(1, ""), Verdict: "fine"}, "48.08%", "48.08%", "url(#hatch-unknown)"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			html := c.ruler.draw().String()
			require.Equal(t, c.x, attributeOf(t, html, "between", "x"))
			require.Equal(t, c.width, attributeOf(t, html, "between", "width"))
			require.Equal(t, c.filled, attributeOf(t, html, "between", "fill"))
		})
	}
}

func TestRulerSaysInWordsWhatItDraws(t *testing.T) {
	r := &Ruler{Title: "Cooler height", Have: known(165, "165 mm"), Need: known(158, "158 mm"), Margin: "+7 mm", Verdict: "snug"}
	text := regexp.MustCompile(`\s+`).ReplaceAllString(regexp.MustCompile(`<[^>]*>`).ReplaceAllString(app.HTMLString(r.Render()), " "), " ")
	require.Equal(t, " Cooler height snug 0 50 100 150 have 165 mm need 158 mm margin +7 mm ", text)
	missing := &Ruler{Title: "Cooler height", Need: known(158, "158 mm"), Verdict: "unknown"}
	require.Contains(t, app.HTMLString(missing.Render()), "not known")
}

func TestLargeScaleIsReadAndStaysInside(t *testing.T) {
	html := app.HTMLString((&Ruler{Need: known(337500, "337 500 MB/s"), Have: known(0, "0 MB/s"), Verdict: "short"}).Render())
	require.Contains(t, html, "300\u202f000")
	require.Regexp(t, `text-anchor="end"[^>]*>\s*350\x{202f}000`, html)
}

func TestScaleSteps(t *testing.T) {
	cases := []struct{ largest, step float64 }{
		{1, 0.2}, {7, 1}, {10, 2}, {15, 2}, {16, 2}, {17, 5}, {40, 5}, {41, 10}, {80, 10}, {81, 10}, {165, 50}, {1000, 200}, {0.3, 0.05},
	}
	for _, c := range cases {
		require.InDelta(t, c.step, scaleFor(c.largest).step, 1e-12, "largest %g", c.largest)
	}
	for _, none := range []float64{0, -1, math.NaN(), math.Inf(1)} {
		require.Equal(t, scale{}, scaleFor(none))
	}
}

func TestEveryVerdictHasItsFill(t *testing.T) {
	require.Len(t, verdicts, 5)
	for _, v := range verdicts {
		require.Contains(t, hatches, `id="hatch-`+v.word+`"`)
		require.Equal(t, "url(#hatch-"+v.word+")", fill(v.word))
	}
}

func TestTitleBlockPrintsBlanks(t *testing.T) {
	block := &TitleBlock{Job: "2041", Revision: "B"}
	html := app.HTMLString(block.Render())
	require.Regexp(t, `(?s)data-field="job".*?2041`, html)
	require.Regexp(t, `(?s)data-field="customer".*?–`, html)
}
