//go:build !wasm

// Package browsertest runs the real page, as it is built and served, in a real browser.
package browsertest

import (
	"context"
	"errors"
	"fmt"
	"net"
	"net/http"
	"net/http/httptest"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"slipfit/web"

	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/network"
	js "github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/cdproto/target"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"
)

// patience bounds one step in the browser. The machine may be busy with other work.
const patience = 60 * time.Second

// The programs under test, built once: the page as shipped, and a page and worker that serve as probes.
var pageDir, probeDir string

func TestMain(m *testing.M) {
	code, err := buildAndRun(m)
	if err != nil {
		fmt.Fprintln(os.Stderr, "browser tests:", err)
		code = 1
	}
	os.Exit(code)
}

func buildAndRun(m *testing.M) (int, error) {
	if _, err := browserPath(); err != nil {
		return 1, err
	}
	dir, err := os.MkdirTemp("", "slipfit-site-")
	if err != nil {
		return 1, err
	}
	defer os.RemoveAll(dir)
	pageDir, probeDir = filepath.Join(dir, "page"), filepath.Join(dir, "probe")
	for _, b := range []struct{ out, source string }{
		{filepath.Join(pageDir, "page.wasm"), "slipfit/wasm/page"},
		{filepath.Join(pageDir, "worker.wasm"), "slipfit/wasm/worker"},
		{filepath.Join(probeDir, "page.wasm"), "slipfit/web/browsertest/probe"},
		{filepath.Join(probeDir, "worker.wasm"), "slipfit/web/browsertest/probeworker"},
	} {
		build := exec.Command("go", "build", "-trimpath", "-buildvcs=false", "-ldflags", "-s -w", "-o", b.out, b.source)
		build.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
		if out, err := build.CombinedOutput(); err != nil {
			return 1, fmt.Errorf("%s: %w\n%s", strings.Join(build.Args, " "), err, out)
		}
	}
	root, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		return 1, fmt.Errorf("go env GOROOT: %w", err)
	}
	start, err := os.ReadFile(filepath.Join(strings.TrimSpace(string(root)), "lib", "wasm", "wasm_exec.js"))
	if err != nil {
		return 1, err
	}
	for _, dir := range []string{pageDir, probeDir} {
		if err := os.WriteFile(filepath.Join(dir, "wasm_exec.js"), start, 0o644); err != nil {
			return 1, err
		}
	}
	return m.Run(), nil
}

// browserPath finds the browser. Without one nothing here can be tested, and that is a failure.
func browserPath() (string, error) {
	for _, name := range []string{"chromium", "chromium-browser"} {
		if path, err := exec.LookPath(name); err == nil {
			return path, nil
		}
	}
	return "", errors.New("no chromium to test the page in: install it (Debian: apt-get install chromium)")
}

// open reads the built programs of a folder as a site.
func open(t *testing.T, dir string) *web.Site {
	t.Helper()
	s, err := web.Open(dir)
	require.NoError(t, err)
	return s
}

// server is a handler at an address, which can be changed and can be stopped for good.
type server struct {
	url     string
	handler atomic.Value // of http.HandlerFunc
	stop    func()
	served  atomic.Int64
}

func serve(t *testing.T, h http.Handler) *server {
	t.Helper()
	s := &server{}
	s.show(h)
	l, err := net.Listen("tcp", "127.0.0.1:0")
	require.NoError(t, err)
	real := &http.Server{Handler: http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		s.served.Add(1)
		s.handler.Load().(http.HandlerFunc)(w, r)
	})}
	done := make(chan struct{})
	go func() { defer close(done); real.Serve(l) }()
	s.url = "http://" + l.Addr().String()
	s.stop = sync.OnceFunc(func() { real.Close(); <-done })
	t.Cleanup(s.stop)
	return s
}

// show puts another handler at the same address.
func (s *server) show(h http.Handler) { s.handler.Store(http.HandlerFunc(h.ServeHTTP)) }

// servePage serves the page as shipped, at the root.
func servePage(t *testing.T) *server { return serveSite(t, pageDir) }

func serveSite(t *testing.T, dir string) *server {
	t.Helper()
	h, err := open(t, dir).Handler("")
	require.NoError(t, err)
	return serve(t, h)
}

// tab is one tab of a browser of its own, with a fresh profile. Whatever it asks of other machines goes to
// a recorder instead, from the page and from its workers alike.
type tab struct {
	t   *testing.T
	ctx context.Context

	mu       sync.Mutex
	console  []string // what the page wrote to the console, warnings and errors of the browser included
	requests []string
	outside  []string
}

// newTab starts a browser. Profile, if not empty, is the JSON of its preferences.
func newTab(t *testing.T, profile string) *tab {
	t.Helper()
	path, err := browserPath()
	require.NoError(t, err)
	b := &tab{t: t}
	recorder := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		b.note(&b.outside, r.Method+" "+r.URL.String()+" "+r.Host)
		http.Error(w, "outside", http.StatusBadGateway)
	}))
	t.Cleanup(recorder.Close)
	dir := t.TempDir()
	if profile != "" {
		require.NoError(t, os.MkdirAll(filepath.Join(dir, "Default"), 0o755))
		require.NoError(t, os.WriteFile(filepath.Join(dir, "Default", "Preferences"), []byte(profile), 0o644))
	}
	// What the browser asks for by itself goes nowhere and is not counted.
	nowhere := httptest.NewServer(http.NotFoundHandler())
	t.Cleanup(nowhere.Close)
	ctx, stop := chromedp.NewExecAllocator(context.Background(),
		chromedp.ExecPath(path), chromedp.UserDataDir(dir), chromedp.ProxyServer(nowhere.URL),
		chromedp.Headless, chromedp.NoSandbox, chromedp.DisableGPU, chromedp.NoFirstRun,
		chromedp.Flag("disable-features", "AutofillServerCommunication"), chromedp.Flag("disable-quic", true), chromedp.Flag("disable-background-networking", true),
		chromedp.Flag("disable-component-update", true), chromedp.Flag("disable-sync", true),
		chromedp.Flag("disable-dev-shm-usage", true), chromedp.Flag("hide-scrollbars", true))
	t.Cleanup(stop)
	browser, stop := chromedp.NewContext(ctx)
	t.Cleanup(func() { chromedp.Cancel(browser); stop() })
	require.NoError(t, chromedp.Do(browser), "the browser starts")
	b.ctx, stop = chromedp.NewContext(browser, chromedp.WithNewBrowserContext(func(p *target.CreateBrowserContextParams) {
		p.ProxyServer = recorder.URL
	}))
	t.Cleanup(stop)
	require.NoError(t, chromedp.Do(b.ctx), "the tab opens")
	require.NoError(t, chromedp.Listen(b.ctx, b.hear))
	return b
}

func (b *tab) hear(event any) {
	switch e := event.(type) {
	case *network.EventRequestWillBeSent:
		b.note(&b.requests, e.Request.URL)
	case *js.EventConsoleAPICalled:
		var text []string
		for _, a := range e.Args {
			text = append(text, string(a.Value)+a.Description)
		}
		b.note(&b.console, string(e.Type)+": "+strings.Join(text, " "))
	case *js.EventExceptionThrown:
		b.note(&b.console, "exception: "+e.ExceptionDetails.Text)
	case *log.EventEntryAdded:
		b.note(&b.console, string(e.Entry.Level)+": "+e.Entry.Text+" "+e.Entry.URL)
	}
}

func (b *tab) note(list *[]string, text string) {
	b.mu.Lock()
	defer b.mu.Unlock()
	*list = append(*list, text)
}

func (b *tab) noted(list *[]string) []string {
	b.mu.Lock()
	defer b.mu.Unlock()
	return append([]string(nil), *list...)
}

// do runs steps, each within the bounds of patience.
func (b *tab) do(steps ...chromedp.Action[chromedp.Void]) {
	b.t.Helper()
	for _, step := range steps {
		ctx, cancel := context.WithTimeout(b.ctx, patience)
		err := chromedp.Do(ctx, step)
		cancel()
		require.NoError(b.t, err, "console: %q", b.noted(&b.console))
	}
}

// eval returns the value of an expression, awaited if it is a promise.
func eval[T any](b *tab, expression string) T {
	b.t.Helper()
	ctx, cancel := context.WithTimeout(b.ctx, patience)
	defer cancel()
	value, err := chromedp.Run(ctx, chromedp.Evaluate[T](expression, chromedp.EvalAwaitPromise))
	require.NoError(b.t, err, "%s\nconsole: %q", expression, b.noted(&b.console))
	return value
}

// until waits for an expression to be true.
func (b *tab) until(expression string) {
	b.t.Helper()
	deadline := time.Now().Add(patience)
	for !eval[bool](b, "Boolean("+expression+")") {
		require.True(b.t, time.Now().Before(deadline), "never true: %s\nconsole: %q", expression, b.noted(&b.console))
		time.Sleep(30 * time.Millisecond)
	}
}

// answered is true once the page runs and its worker has answered it.
var answered = `document.querySelector('[data-field=core] dd')?.textContent === ` + "'slipfit core, " + runtime.Version() + "'"

// laid is true once all that comes piece by piece is in the page.
const laid = `!document.querySelector('[data-laid=false]')`

// visit goes to an address and waits until the page runs, its worker has answered, and the face that the
// address names is up.
func (b *tab) visit(address string) {
	b.t.Helper()
	b.do(chromedp.Navigate(address))
	b.until(answered)
	b.until(`!document.getElementById('app-wasm-loader')`)
	b.until(`document.querySelector('.conversation, .sheet[data-side=back]') && ` + laid)
	if u, err := url.Parse(address); err == nil && u.Fragment != "" {
		b.until(`document.querySelector('.sheet').dataset.side === '` + u.Fragment + `'`)
	}
}

// kept waits until the browser has the page for use without a network.
func (b *tab) kept() {
	b.t.Helper()
	b.until(`navigator.serviceWorker.getRegistration().then(r => r?.active?.state === 'activated')`)
}

// clean asserts that nothing has gone wrong that the page did not show: no error and no breach of the policy
// on the console, and no request to anywhere but the page's own origin.
func (b *tab) clean(own ...string) {
	b.t.Helper()
	for _, line := range b.noted(&b.console) {
		require.NotRegexp(b.t, `^(error|exception|warning|assert)`, line)
	}
	requests := b.noted(&b.requests)
	require.NotEmpty(b.t, requests, "the recording of requests works")
	for _, address := range requests {
		u, err := url.Parse(address)
		require.NoError(b.t, err)
		if u.Scheme != "blob" && u.Scheme != "data" {
			require.Contains(b.t, own, u.Scheme+"://"+u.Host, "request to %s", address)
		}
	}
	require.Empty(b.t, b.noted(&b.outside), "requests that left this machine")
}
