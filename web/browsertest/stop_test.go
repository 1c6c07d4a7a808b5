//go:build !wasm

package browsertest

import (
	"testing"
	"time"

	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"
)

// countWorkers counts the workers that pages start from now on.
func (b *tab) countWorkers() {
	b.t.Helper()
	_, err := chromedp.Call(b.ctx, page.AddScriptToEvaluateOnNewDocument, page.AddScriptToEvaluateOnNewDocumentParams{Source: `
		window.workers = 0
		window.Worker = class extends Worker { constructor(...all) { super(...all); workers++ } }`})
	require.NoError(b.t, err)
}

// told waits until the planner tells something in its progress line: that it is searching, or what it has found.
func (b *tab) told(what string) {
	b.t.Helper()
	b.until(`document.querySelector('label[for=progress]')?.textContent.includes(': ` + what + `')`)
}

// TestStopGivesTheBestSoFar stops a plan as soon as it tells of a machine: the quietest to a tenth of a decibel, which is far from
// proven then.
func TestStopGivesTheBestSoFar(t *testing.T) {
	s, b := servePage(t), newTab(t, "")
	b.countWorkers()
	b.visit(s.url)
	b.startFrom("cutting-room")
	b.press("plan-quiet")
	b.told("found ")
	require.Regexp(t, `: found [\d.]+ dB\(A\) for \d+\.\d\d, perhaps [\d.]+ dB\(A\) less`, eval[string](b, `document.querySelector('label[for=progress]').textContent`))
	from := time.Now()
	b.press("stop-plan")
	b.until(`document.getElementById('proven')?.textContent.startsWith('The search ended before it was proven: another machine may be ')`)
	t.Logf("from Stop to the best so far: %v", time.Since(from).Round(10*time.Millisecond))
	require.Regexp(t, `(up to [\d.]+ dB\(A\) quieter|up to \d+\.\d\d cheaper)\.$`, eval[string](b, `document.getElementById('proven').textContent`))
	b.drawn()
	b.pictures("stopped")
	require.True(t, native[proof](t, "prove", map[string]any{"build": b.job().Build, "brief": b.job().Brief}).Stands)
	require.Equal(t, 1, eval[int](b, `workers`), "the worker lives on, with what it remembers")
	b.clean(s.url)
}

// TestStopAtOnce stops a plan twice: nothing of it is kept, and the page goes on with another worker.
func TestStopAtOnce(t *testing.T) {
	s, b := servePage(t), newTab(t, "")
	b.countWorkers()
	b.visit(s.url)
	b.startFrom("cutting-room")
	b.press("plan-quiet")
	b.told("searching")
	eval[bool](b, `(document.getElementById('stop-plan').click(), document.getElementById('stop-plan').click(), true)`)
	b.until(`document.getElementById('news').textContent === 'Filling the seats was stopped.'`)
	require.False(t, eval[bool](b, `Boolean(document.getElementById('proven'))`))
	require.Empty(t, b.job().Build)
	b.plan()
	require.Equal(t, 2, eval[int](b, `workers`))
	b.clean(s.url)
}
