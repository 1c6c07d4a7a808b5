//go:build !wasm

package browsertest

import (
	"fmt"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"
)

// watchTasks records every task of 50 ms or more (Long Tasks API, W3C) from the first line of the page on. Requests are not
// recorded any more: for that the browser copies every file in a task of the page's thread, which is none of the page's own.
func (b *tab) watchTasks() {
	b.t.Helper()
	_, err := chromedp.Call(b.ctx, network.Disable, cdp.Empty{})
	require.NoError(b.t, err)
	_, err = chromedp.Call(b.ctx, page.AddScriptToEvaluateOnNewDocument, page.AddScriptToEvaluateOnNewDocumentParams{Source: `
		window.tasks = []
		window.watch = new PerformanceObserver(list => tasks.push(...list.getEntries().map(e => e.duration)))
		watch.observe({type: 'longtask', buffered: true})
		window.compiled = 0
		const compile = WebAssembly.compileStreaming
		WebAssembly.compileStreaming = async (...all) => { const from = performance.now(), made = await compile(...all); compiled = performance.now() - from; return made }`})
	require.NoError(b.t, err)
}

// tasks tells the long tasks since it was last asked, once the page has come to rest.
func (b *tab) tasks(what string) []float64 {
	b.t.Helper()
	list := eval[[]float64](b, `new Promise(done => {
		const rest = (since) => setTimeout(() => { tasks.push(...watch.takeRecords().map(e => e.duration)); tasks.length === since ? done(tasks.splice(0)) : rest(tasks.length) }, 600)
		rest(-1) })`)
	var told []string
	for _, ms := range list {
		told = append(told, fmt.Sprintf("%.0f", ms))
	}
	b.t.Logf("%-8s long tasks, ms: %s", what, strings.Join(told, " "))
	return list
}

// TestLongTasksAreWatched tells the tasks over 50 ms of every step of the job; how long they are depends on what else the
// machine does, so that only the recorder is held to account.
func TestLongTasksAreWatched(t *testing.T) {
	s, b := servePage(t), newTab(t, "")
	b.watchTasks()
	b.visit(s.url)
	// The recorder must be able to catch something.
	eval[bool](b, `new Promise(done => setTimeout(() => { const end = performance.now() + 70; while (performance.now() < end); done(true) }))`)
	require.NotEmpty(t, b.tasks("open"))
	t.Logf("fetching and compiling the page's program, which the browser does beside the page: %.0f ms", eval[float64](b, `compiled`))
	b.do(chromedp.Navigate("about:blank"))
	b.visit(s.url)
	b.tasks("again")
	b.startFrom("cutting-room")
	b.tasks("begin")
	b.plan()
	b.until(`document.querySelector('.outcome')`)
	b.tasks("plan")
	b.press("change-cooler")
	b.until(`document.getElementById('trial')`)
	b.tasks("try")
	was := eval[string](b, `document.querySelector('.part[data-seat=cooler]').dataset.part`)
	eval[bool](b, `([...document.querySelectorAll('#trial > .tried-list .tried')].find(e => e.dataset.part !== `+quoted(t, was)+`).querySelector('button').click(), true)`)
	b.until(`document.querySelector('.part[data-seat=cooler]').dataset.part !== ` + quoted(t, was))
	b.tasks("swap")
	b.press("undo")
	b.until(`document.querySelector('.part[data-seat=cooler]').dataset.part === ` + quoted(t, was))
	b.tasks("undo")
	b.press("turn")
	b.until(`document.querySelector('.leaf')`)
	b.tasks("turn")
	b.press("turn")
	b.until(`document.querySelector('.views-drawn')`)
	b.tasks("back")
	b.do(chromedp.Navigate("about:blank"))
	b.visit(s.url)
	b.drawn()
	b.tasks("reopen")
}
