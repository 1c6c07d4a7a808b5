//go:build !wasm

package browsertest

import (
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"
)

func TestPageRunsAndItsWorkerAnswers(t *testing.T) {
	s, b := servePage(t), newTab(t, "")
	b.visit(s.url)
	require.Equal(t, "The drawing", eval[string](b, `document.querySelector('h1').textContent`))
	b.kept()
	b.clean(s.url)
}

// The recorder must be able to catch something, or the assertion in clean says nothing.
func TestRecorderCatchesOutsideRequests(t *testing.T) {
	bad := http.HandlerFunc(func(w http.ResponseWriter, _ *http.Request) {
		w.Header().Set("Content-Type", "text/html")
		w.Write([]byte(`<img src="http://example.invalid/a.png"><p id="x">x`))
	})
	s, b := serve(t, bad), newTab(t, "")
	b.do(chromedp.Navigate(s.url))
	b.until(`document.getElementById('x')`)
	require.Contains(t, strings.Join(b.noted(&b.outside), "\n"), "example.invalid")
	require.Contains(t, strings.Join(b.noted(&b.requests), "\n"), "example.invalid")
}

func TestPolicyHoldsInPage(t *testing.T) {
	s, b := servePage(t), newTab(t, "")
	b.visit(s.url)
	refused := func(what string) string {
		return `new Promise(done => {
			document.addEventListener('securitypolicyviolation', e => done(e.effectiveDirective), {once: true});
			` + what + `; setTimeout(() => done('allowed'), 5000)})`
	}
	require.Equal(t, "connect-src", eval[string](b, refused(`fetch('http://example.invalid/').catch(() => {})`)))
	require.Equal(t, "img-src", eval[string](b, refused(`new Image().src = 'http://example.invalid/a.png'`)))
	require.Equal(t, "style-src-attr", eval[string](b, refused(`document.body.setAttribute('style', 'color:red')`)))
	require.Empty(t, b.noted(&b.outside))
}

func TestOfflineAfterOneVisit(t *testing.T) {
	s, b := servePage(t), newTab(t, "")
	b.visit(s.url)
	b.kept()
	s.stop()
	before := s.served.Load()
	b.do(chromedp.Reload())
	b.until(answered)
	for _, address := range []string{"/", "/?x=1", "/#back", "/index.html", "/other/place"} {
		b.do(chromedp.Navigate("about:blank"))
		b.visit(s.url + address)
	}
	require.Equal(t, before, s.served.Load())
	require.Empty(t, b.noted(&b.outside))
}

// Without the page's own copy the same reload must fail, or the test above shows nothing.
func TestOfflineNeedsTheKeptCopy(t *testing.T) {
	s, b := servePage(t), newTab(t, "")
	b.visit(s.url)
	b.kept()
	eval[bool](b, `navigator.serviceWorker.getRegistration().then(r => r.unregister())`)
	s.stop()
	require.Error(t, chromedp.Do(b.ctx, chromedp.Navigate(s.url+"/")))
}

func TestNewEditionIsOfferedAndTakesOver(t *testing.T) {
	s, b := servePage(t), newTab(t, "")
	b.visit(s.url)
	b.kept()
	eval[bool](b, `caches.open('of the shop').then(c => c.put('/theirs', new Response('x'))).then(() => true)`)
	b.visit(s.url) // now under the control of the kept copy

	second := t.TempDir()
	require.NoError(t, os.CopyFS(second, os.DirFS(pageDir)))
	f, err := os.OpenFile(filepath.Join(second, "wasm_exec.js"), os.O_APPEND|os.O_WRONLY, 0)
	require.NoError(t, err)
	_, err = f.WriteString("\n// second edition\n")
	require.NoError(t, err)
	require.NoError(t, f.Close())
	h, err := open(t, second).Handler("")
	require.NoError(t, err)
	s.show(h)

	const hasSecond = `fetch('/wasm_exec.js').then(r => r.text()).then(x => x.includes('second edition'))`
	b.visit(s.url)
	b.until(`document.querySelector('.edition button')`)
	require.False(t, eval[bool](b, hasSecond), "the old edition stays whole until the user changes over")
	b.visit(s.url)
	b.until(`document.querySelector('.edition button')`)
	eval[bool](b, `document.old = true`)
	b.do(chromedp.Click(chromedp.CSS(".edition button")))
	b.until(`!document.old && ` + answered)
	require.True(t, eval[bool](b, hasSecond))
	require.False(t, eval[bool](b, `!!document.querySelector('.edition button')`))
	names := eval[[]string](b, `caches.keys()`)
	require.Len(t, names, 2, "one copy of the page, and what is the shop's: %q", names)
	require.Contains(t, names, "of the shop")
	b.clean(s.url)
}

func TestExportUnderASubPath(t *testing.T) {
	root := t.TempDir()
	require.NoError(t, open(t, pageDir).Export(filepath.Join(root, "shop", "fit"), "/shop/fit"))
	s, b := serve(t, http.FileServer(http.Dir(root))), newTab(t, "")
	b.visit(s.url + "/shop/fit/")
	b.kept()
	b.do(chromedp.Click(chromedp.CSS("#turn")))
	b.until(`document.querySelector('.sheet').dataset.side === 'back'`)
	require.Equal(t, s.url+"/shop/fit/#back", eval[string](b, `location.href`))
	b.clean(s.url)
	s.stop()
	for _, address := range []string{"/shop/fit/", "/shop/fit/?x=1"} {
		b.do(chromedp.Navigate("about:blank"))
		b.visit(s.url + address)
	}
}

func TestInAFrameWithBlockedStorage(t *testing.T) {
	s := servePage(t)
	shop := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, _ *http.Request) {
		w.Header().Set("Content-Type", "text/html")
		w.Write([]byte(`<!DOCTYPE html><iframe title="sheet" width="900" height="700" src="` + s.url + `/"></iframe>`))
	}))
	t.Cleanup(shop.Close)
	b := newTab(t, `{"profile":{"default_content_setting_values":{"cookies":2}}}`)
	// Another name of this machine is another site to the browser.
	b.do(chromedp.Navigate(strings.Replace(shop.URL, "127.0.0.1", "localhost", 1)))
	frame := b.frame(s.url)
	frame.until(answered)
	require.True(t, eval[bool](frame, `'value' in Object.getOwnPropertyDescriptor(window, 'localStorage')`),
		"storage really is blocked here: the page put its own in the place of the browser's")
	frame.do(chromedp.Click(chromedp.CSS("#turn")))
	frame.until(`document.querySelector('.sheet').dataset.side === 'back'`)
	require.Empty(t, b.noted(&b.outside))
}

// frame returns the frame of a tab that shows this origin, as a tab of its own.
func (b *tab) frame(origin string) *tab {
	b.t.Helper()
	frame := &tab{t: b.t}
	require.Eventually(b.t, func() bool {
		targets, err := chromedp.Targets(b.ctx)
		require.NoError(b.t, err)
		for _, target := range targets {
			if target.Type == "iframe" && strings.HasPrefix(target.URL, origin) {
				var stop func()
				frame.ctx, stop = chromedp.NewContext(b.ctx, chromedp.WithTargetID(target.TargetID))
				b.t.Cleanup(stop)
				return true
			}
		}
		return false
	}, patience, 50*1e6)
	require.NoError(b.t, chromedp.Do(frame.ctx))
	return frame
}

func TestProgressOfLoadingIsAPercentage(t *testing.T) {
	s, b := servePage(t), newTab(t, "")
	_, err := chromedp.Call(b.ctx, network.SetCacheDisabled, network.SetCacheDisabledParams{CacheDisabled: true})
	require.NoError(t, err)
	b.do(chromedp.Navigate(s.url))
	b.until(answered)
	const label = `fetch('/web/page.wasm').then(async r => {
		const body = await r.arrayBuffer();
		return Number(r.headers.get('X-Raw-Length')) === body.byteLength && r.headers.get('Content-Encoding') === 'gzip'})`
	require.True(t, eval[bool](b, label))
}

func TestPageThatDoesNotArriveSaysWhatToDo(t *testing.T) {
	whole, err := open(t, pageDir).Handler("")
	require.NoError(t, err)
	s, b := serve(t, http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if r.URL.Path == "/web/page.wasm" {
			http.Error(w, "gone", http.StatusServiceUnavailable)
			return
		}
		whole.ServeHTTP(w, r)
	})), newTab(t, "")
	b.do(chromedp.Navigate(s.url))
	b.until(`document.getElementById('app-wasm-loader-label')?.textContent.startsWith('The page did not arrive whole. Look to the connection')`)
}
