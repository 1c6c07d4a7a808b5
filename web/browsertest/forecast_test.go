//go:build !wasm

package browsertest

import (
	"fmt"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"
)

// frontPages is the most A4 pages that the drawing side of the example may take.
const frontPages = 2

func TestForecastOnThePageAndOnPaper(t *testing.T) {
	s, b := servePage(t), newTab(t, "")
	b.visit(s.url)
	b.startFrom(example)
	b.plan()
	now := b.job()
	want := native[struct {
		Runs []struct {
			Activity, Day string
			Figures       []struct {
				Name                string
				Low, Expected, High float64
			}
		}
	}](t, "predict", map[string]any{"brief": now.Brief, "build": now.Build})
	require.NotEmpty(t, want.Runs)
	require.NotEmpty(t, want.Runs[0].Figures)

	eval[bool](b, `document.getElementById('prediction').open = true`)
	b.until(fmt.Sprintf(`document.querySelectorAll('#prediction [data-run]').length === %d`, len(want.Runs)))
	eval[bool](b, `document.querySelector('#prediction [data-run]').open = true`)
	b.until(`document.querySelector('#prediction .figures')`)
	shown := eval[[][]string](b, `[...document.querySelectorAll('#prediction .figures tbody tr')].map(e => [...e.children].slice(0, 4).map(x => x.textContent))`)
	require.Len(t, shown, len(want.Runs[0].Figures))
	for i, f := range want.Runs[0].Figures {
		require.Equal(t, []string{f.Name, fmt.Sprint(f.Low), fmt.Sprint(f.Expected), fmt.Sprint(f.High)}, shown[i])
	}

	// The drawing prints on as few pages as it takes, the machine and its parts on the first.
	drawing, err := chromedp.Run(b.ctx, chromedp.PrintToPDF(chromedp.PDFPreferCSSPageSize()))
	require.NoError(t, err)
	keep(t, "drawing.pdf", drawing)
	pages := strings.Split(strings.TrimSuffix(pdfText(t, drawing), "\f"), "\f")
	require.LessOrEqual(t, len(pages), frontPages)
	require.Contains(t, pages[0], "LIST OF PARTS")
	require.Contains(t, strings.Join(pages, ""), "SCHEDULE OF MARGINS")

	b.press("turn")
	b.until(`document.querySelector('.leaf h2')?.textContent === 'Quote'`)
	b.press("paper-forecast")
	b.until(`document.querySelector('.leaf h2')?.textContent === 'Forecast'`)
	require.Positive(t, eval[int](b, `document.querySelectorAll('.leaf figure svg').length`), "its graphs are drawn")
	b.keepsInside("forecast")
	b.do(chromedp.EmulateViewport(360, 800))
	require.Empty(t, eval[[]string](b, access), "forecast")
	b.do(chromedp.EmulateViewport(1280, 800))
	b.picture("forecast.png")
	paper, err := chromedp.Run(b.ctx, chromedp.PrintToPDF(chromedp.PDFPreferCSSPageSize()))
	require.NoError(t, err)
	keep(t, "forecast.pdf", paper)
	text := pdfText(t, paper)
	require.Contains(t, text, want.Runs[0].Figures[0].Name)
	require.NotContains(t, text, "Turn the sheet over", "no controls on paper")
	require.False(t, strings.Contains(text, "Quote"), "one paper at a time")
	b.clean(s.url)
}

func TestBalanceTakesTheNextStepAndEqualsGoIn(t *testing.T) {
	s, b := servePage(t), newTab(t, "")
	b.visit(s.url)
	b.startFrom(example)
	b.plan()
	now := b.job()
	asked := map[string]any{"brief": now.Brief, "build": now.Build}
	want := native[struct {
		Activities []struct {
			Activity string
			Tight    *struct{ Title, Why string } `json:"limited_by"`
			Step     *struct {
				Seat  string
				To    struct{ Part, Name string }
				Costs quantity
			}
		}
	}](t, "balance", asked)
	require.NotEmpty(t, want.Activities)
	first := want.Activities[0]
	require.NotNil(t, first.Step, "the first activity can be taken further")

	b.until(`document.getElementById('balance')`)
	eval[bool](b, `document.getElementById('balance').open = true`)
	b.until(fmt.Sprintf(`document.querySelectorAll('#balance [data-balance]').length === %d`, len(want.Activities)))
	eval[bool](b, `document.querySelector('#balance [data-balance]').open = true`)
	b.until(`document.querySelector('#balance .step')`)
	require.Equal(t, first.Tight.Why+".", eval[string](b, `document.querySelector('#balance .limit').textContent`))
	step := eval[string](b, `document.querySelector('#balance .step p').textContent`)
	require.Contains(t, step, first.Step.To.Name)
	require.Contains(t, step, first.Step.Costs.Text)
	b.picture("balance.png")
	eval[bool](b, `(document.querySelector('#balance .step button').click(), true)`)
	b.until(fmt.Sprintf(`document.querySelector('.part[data-seat=%s]')?.dataset.part === %q`, first.Step.Seat, first.Step.To.Part))
	b.press("undo")
	b.until(fmt.Sprintf(`document.querySelector('.part[data-seat=%s]')?.dataset.part !== %q`, first.Step.Seat, first.Step.To.Part))

	// The first seat that has an equal of another maker.
	seat, part := "", ""
	for _, l := range native[proof](t, "prove", asked).Parts {
		with := map[string]any{"brief": now.Brief, "build": now.Build, "seat": l.Seat}
		if e := native[struct{ Parts []struct{ Part string } }](t, "equals", with); l.Seat != "services" && len(e.Parts) > 0 {
			seat, part = l.Seat, e.Parts[0].Part
			break
		}
	}
	require.NotEmpty(t, seat, "some part of this build has an equal")
	b.press("change-" + seat)
	b.press("equals")
	b.until(`document.querySelector('.equals .tried')?.dataset.equal === ` + quoted(t, part))
	b.picture("equals.png")
	eval[bool](b, `(document.querySelector('.equals .tried button').click(), true)`)
	b.until(fmt.Sprintf(`document.querySelector('.part[data-seat=%s]')?.dataset.part === %q`, seat, part))
	b.clean(s.url)
}
