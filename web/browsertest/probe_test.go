//go:build !wasm

package browsertest

import (
	"context"
	"encoding/json"
	"fmt"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/browser"
	"github.com/chromedp/cdproto/dom"
	"github.com/chromedp/cdproto/page"
	js "github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/cdproto/storage"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"
)

// probe calls the function of that name in the probe page and returns what its promise came to.
func (b *tab) probe(arguments ...string) string {
	b.t.Helper()
	quoted, err := json.Marshal(arguments)
	require.NoError(b.t, err)
	return eval[string](b, fmt.Sprintf(`probe(...%s).catch(e => 'refused: ' + e)`, quoted))
}

func visitProbe(t *testing.T) (*server, *tab) {
	s, b := serveSite(t, probeDir), newTab(t, "")
	b.do(chromedp.Navigate(s.url))
	b.until(`window.probe`)
	return s, b
}

func TestWorkerInTheBrowser(t *testing.T) {
	_, b := visitProbe(t)
	require.Equal(t, `{"a":[1,2]} ["half way"]`, b.probe("call", "echo", `{"a":[1,2]}`))
	long := `"` + strings.Repeat("é", 1<<20) + `"`
	require.Equal(t, long+` ["half way"]`, b.probe("call", "echo", long))
	require.Equal(t, `refused: verb "none" is not one of the probe`, b.probe("call", "none", `1`))
	require.Equal(t, `"after"`, b.probe("call and cancel", "spin", `"after"`), "a call that never ends is ended")
	require.Equal(t, `"after"`, b.probe("call and cancel", "seek", `"after"`))
	require.Equal(t, `true`, b.probe("call and stop", "seek"), "a call that looks at its context is stopped and answers")
	require.Equal(t, `refused: stopped before anything was found`, b.probe("call and stop", "spin"))
	require.Equal(t, `refused: worker stopped: it came to its end`, b.probe("call", "exit", `1`))
	require.Equal(t, `3 ["half way"]`, b.probe("call", "echo", `3`), "and a new worker takes over")
}

func TestPageStaysLiveWhileTheWorkerIsBusy(t *testing.T) {
	_, b := visitProbe(t)
	eval[bool](b, `(probe('call', 'spin', '1'), true)`)
	gap := eval[float64](b, `new Promise(done => {
		let last = performance.now(), worst = 0, left = 60;
		const frame = () => {
			const now = performance.now();
			worst = Math.max(worst, now - last); last = now;
			if (--left) requestAnimationFrame(frame); else done(worst);
		};
		requestAnimationFrame(frame)})`)
	// The worker spins for ever: a page that waited for it would not draw one frame.
	require.Less(t, gap, 1000.0, "milliseconds between two frames")
}

func TestWorkerScriptThatIsNotThere(t *testing.T) {
	whole, err := open(t, probeDir).Handler("")
	require.NoError(t, err)
	s, b := serve(t, http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if r.URL.Path == "/web/worker.js" {
			http.NotFound(w, r)
			return
		}
		whole.ServeHTTP(w, r)
	})), newTab(t, "")
	b.do(chromedp.Navigate(s.url))
	b.until(`window.probe`)
	require.Equal(t, "refused: worker stopped: its script does not load", b.probe("call", "echo", "1"))
}

func TestStoreKeepsRecords(t *testing.T) {
	_, b := visitProbe(t)
	require.Equal(t, "false ", b.probe("get", "job/1"))
	large := strings.Repeat("a margin of 7 mm · ", 1<<18) // about 5 MB
	require.Equal(t, "", b.probe("put", "job/1", large))
	require.Equal(t, "", b.probe("put", "job/2", "first"))
	require.Equal(t, "", b.probe("put", "job/2", "second"))
	require.Equal(t, "", b.probe("put", "stock", "x"))
	b.do(chromedp.Reload())
	b.until(`window.probe`)
	require.Equal(t, "true "+large, b.probe("get", "job/1"))
	require.Equal(t, "true second", b.probe("get", "job/2"))
	require.Equal(t, `["job/1" "job/2"]`, b.probe("list", "job/"))
	require.Equal(t, "", b.probe("delete", "job/1"))
	require.Equal(t, "", b.probe("delete", "job/1"), "deleting what is not there is no error")
	require.Equal(t, `["job/2"]`, b.probe("list", "job/"))
	require.Equal(t, "true ", func() string { b.probe("put", "empty", ""); return b.probe("get", "empty") }())
}

func TestStoreRefusesAndKeepsWhenFull(t *testing.T) {
	s, b := visitProbe(t)
	b.kept() // the copy of the page takes room too
	// Set before the first write: the browser remembers for a while how much room there was.
	bytes := eval[float64](b, `navigator.storage.estimate().then(e => e.usage)`) + 4_000_000
	_, err := chromedp.Call(b.ctx, storage.OverrideQuotaForOrigin, storage.OverrideQuotaForOriginParams{Origin: s.url, QuotaSize: &bytes})
	require.NoError(t, err)
	require.Equal(t, "", b.probe("put", "job", "kept"))
	refusal := b.probe("put", "job", strings.Repeat("x", 20_000_000))
	require.Regexp(t, `^refused: store: put "job": QuotaExceededError`, refusal)
	require.Equal(t, "true kept", b.probe("get", "job"), "the earlier record is still there")
}

func TestStoreBlockedInAFrame(t *testing.T) {
	s := serveSite(t, probeDir)
	shop := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, _ *http.Request) {
		w.Header().Set("Content-Type", "text/html")
		w.Write([]byte(`<!DOCTYPE html><iframe title="probe" src="` + s.url + `/"></iframe>`))
	}))
	t.Cleanup(shop.Close)
	b := newTab(t, `{"profile":{"default_content_setting_values":{"cookies":2}}}`)
	b.do(chromedp.Navigate(strings.Replace(shop.URL, "127.0.0.1", "localhost", 1)))
	frame := b.frame(s.url)
	frame.until(`window.probe`)
	require.Regexp(t, `^refused: store: this browser keeps no records for this page: `, frame.probe("put", "job", "x"))
	require.Equal(t, `1 ["half way"]`, frame.probe("call", "echo", "1"))
}

func TestSaveFile(t *testing.T) {
	_, b := visitProbe(t)
	dir := t.TempDir()
	_, err := chromedp.CallBrowser(b.ctx, browser.SetDownloadBehavior, browser.SetDownloadBehaviorParams{
		Behavior: browser.SetDownloadBehaviorBehaviorAllow, DownloadPath: dir,
		BrowserContextID: chromedp.FromContext(b.ctx).BrowserContextID})
	require.NoError(t, err)
	b.probe("save", "job 2041.json", "{\"für\": \"die Werkstatt\"}")
	name := filepath.Join(dir, "job 2041.json")
	require.Eventually(t, func() bool { _, err := os.Stat(name); return err == nil }, patience, 20*1e6)
	data, err := os.ReadFile(name)
	require.NoError(t, err)
	require.Equal(t, "{\"für\": \"die Werkstatt\"}", string(data))
}

func TestOpenFile(t *testing.T) {
	_, b := visitProbe(t)
	name := filepath.Join(t.TempDir(), "brief.json")
	require.NoError(t, os.WriteFile(name, []byte("{\"place\": \"Büro\"}"), 0o644))
	require.Equal(t, "brief.json: {\"place\": \"Büro\"}", b.choose(name))
	require.Equal(t, "refused: no file chosen", b.choose())
	large := filepath.Join(t.TempDir(), "large.json")
	f, err := os.Create(large)
	require.NoError(t, err)
	require.NoError(t, f.Truncate(64<<20+1))
	require.NoError(t, f.Close())
	require.Equal(t, "refused: large.json: 67108865 bytes, want at most 67108864", b.choose(large))
}

// choose has the page ask for a file, and answers as the user would: with one, or with none.
func (b *tab) choose(files ...string) string {
	b.t.Helper()
	_, err := chromedp.Call(b.ctx, page.SetInterceptFileChooserDialog,
		page.SetInterceptFileChooserDialogParams{Enabled: true})
	require.NoError(b.t, err)
	ctx, cancel := context.WithTimeout(b.ctx, patience)
	defer cancel()
	opened, err := chromedp.Run(ctx, chromedp.WaitEvent(page.FileChooserOpened, nil, chromedp.Evaluate[chromedp.Void](
		`window.chosen = undefined; probe('open', '.json').then(x => window.chosen = x, e => window.chosen = 'refused: ' + e); 0`,
		func(p *js.EvaluateParams) { gesture := true; p.UserGesture = &gesture })))
	require.NoError(b.t, err)
	if len(files) > 0 {
		_, err = chromedp.Call(b.ctx, dom.SetFileInputFiles,
			dom.SetFileInputFilesParams{Files: files, BackendNodeID: opened.BackendNodeID})
		require.NoError(b.t, err)
	} else {
		// What the browser tells the input when the user closes the window without choosing.
		node, err := chromedp.Call(b.ctx, dom.ResolveNode, dom.ResolveNodeParams{BackendNodeID: opened.BackendNodeID})
		require.NoError(b.t, err)
		_, err = chromedp.Call(b.ctx, js.CallFunctionOn, js.CallFunctionOnParams{ObjectID: node.Object.ObjectID,
			FunctionDeclaration: `function() { this.dispatchEvent(new Event('cancel')) }`})
		require.NoError(b.t, err)
	}
	b.until(`window.chosen !== undefined`)
	return eval[string](b, `window.chosen`)
}
