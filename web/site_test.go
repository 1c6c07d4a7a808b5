//go:build !wasm

package web

import (
	"compress/gzip"
	"io"
	"io/fs"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// standIn returns a site whose programs are only bytes: enough for everything but running it.
func standIn(t *testing.T, edition string) *Site {
	t.Helper()
	dir := t.TempDir()
	for _, name := range []string{pageProgram, workerProgram, startScript} {
		text := strings.Repeat(name+" ", 400) + edition
		require.NoError(t, os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644))
	}
	s, err := Open(dir)
	require.NoError(t, err)
	return s
}

func TestOpenNamesWhatIsMissing(t *testing.T) {
	dir := t.TempDir()
	_, err := Open(dir)
	require.EqualError(t, err, dir+": no page.wasm: build the page with `make page`")
	require.NoError(t, os.WriteFile(filepath.Join(dir, pageProgram), nil, 0o644))
	_, err = Open(dir)
	require.EqualError(t, err, dir+": no worker.wasm: build the page with `make page`")
}

func TestFindBuilt(t *testing.T) {
	t.Chdir(t.TempDir())
	_, err := FindBuilt()
	require.ErrorContains(t, err, "build it with `make page`")
	require.NoError(t, os.MkdirAll("build/site", 0o755))
	require.NoError(t, os.WriteFile("build/site/page.wasm", nil, 0o644))
	dir, err := FindBuilt()
	require.NoError(t, err)
	require.Equal(t, filepath.Join("build", "site"), dir)
}

func TestAssembleIsReproducible(t *testing.T) {
	first, err := standIn(t, "1").assemble("/shop/fit", "x")
	require.NoError(t, err)
	for range 20 { // go-app writes attributes in the order of a map
		again, err := standIn(t, "1").assemble("/shop/fit", "x")
		require.NoError(t, err)
		require.Equal(t, first, again)
	}
	other, err := standIn(t, "2").assemble("/shop/fit", "x")
	require.NoError(t, err)
	require.NotEqual(t, first["/app-worker.js"], other["/app-worker.js"], "other programs are another version")
}

func TestAssembledPage(t *testing.T) {
	f, err := standIn(t, "1").assemble("/shop/fit", "Laying out")
	require.NoError(t, err)
	html := string(f["/"])
	require.NotContains(t, html, "127.0.0.1")
	require.NotContains(t, html, "localhost")
	require.NotContains(t, html, "og:url")
	require.NotContains(t, html, "user-scalable")
	require.NotRegexp(t, ` aria-[a-z]+[ >]`, html, "an ARIA attribute without a value means nothing")
	require.NotContains(t, html, "style=", "the policy blocks style attributes")
	require.NotContains(t, strings.ReplaceAll(html, `xmlns="http://www.w3.org/2000/svg"`, ""), "http:")
	require.NotContains(t, html, "https:")
	require.Less(t, strings.Index(html, "Content-Security-Policy"), strings.Index(html, "<script"), "the policy comes first")
	require.Contains(t, html, `src="/shop/fit/web/storage.js"`)
	require.Contains(t, html, `src="/shop/fit/web/start.js"`)
	require.Contains(t, html, "What the customer said", "the sheet can be read before the program has come")
	require.Contains(t, string(f["/manifest.webmanifest"]), `"scope": "/shop/fit/"`)
	require.Contains(t, string(f["/app.js"]), `"/shop/fit/web/page.wasm"`)
	offline := string(f["/app-worker.js"])
	for name := range f {
		if name != "/app-worker.js" {
			require.Contains(t, offline, `"/shop/fit`+name+`"`, "every file is kept offline")
		}
	}
	require.NotContains(t, offline, "{{")
}

func TestAssembleRefusesPrefix(t *testing.T) {
	for _, bad := range []string{"/", "shop", "/shop/", "/../x", "//x", `/a"b`, "/a b", "/a?b"} {
		_, err := standIn(t, "1").assemble(bad, "x")
		require.ErrorContains(t, err, "want nothing, or a plain path", "prefix %q", bad)
	}
}

func get(t *testing.T, h http.Handler, method, path string, headers ...string) *http.Response {
	t.Helper()
	r := httptest.NewRequest(method, path, nil)
	for i := 0; i+1 < len(headers); i += 2 {
		r.Header.Set(headers[i], headers[i+1])
	}
	w := httptest.NewRecorder()
	h.ServeHTTP(w, r)
	return w.Result()
}

func TestHandler(t *testing.T) {
	s := standIn(t, "1")
	h, err := s.Handler("/fit")
	require.NoError(t, err)

	r := get(t, h, "GET", "/fit/web/page.wasm", "Accept-Encoding", "br, gzip;q=0.8")
	require.Equal(t, 200, r.StatusCode)
	require.Equal(t, "application/wasm", r.Header.Get("Content-Type"))
	require.Equal(t, "gzip", r.Header.Get("Content-Encoding"))
	require.Equal(t, "Accept-Encoding", r.Header.Get("Vary"))
	require.Equal(t, "4001", r.Header.Get("X-Raw-Length"))
	require.Equal(t, policy, r.Header.Get("Content-Security-Policy"))
	require.Equal(t, "no-cache", r.Header.Get("Cache-Control"))
	unpacked, err := gzip.NewReader(r.Body)
	require.NoError(t, err)
	body, err := io.ReadAll(unpacked)
	require.NoError(t, err)
	require.Equal(t, s.programs[pageProgram], body)
	tag := r.Header.Get("ETag")

	for _, refuse := range []string{"", "gzip;q=0", "br"} {
		plain := get(t, h, "GET", "/fit/web/page.wasm", "Accept-Encoding", refuse)
		require.Empty(t, plain.Header.Get("Content-Encoding"), "Accept-Encoding %q", refuse)
		require.NotEqual(t, tag, plain.Header.Get("ETag"), "packed and plain are told apart")
	}
	again := get(t, h, "GET", "/fit/web/page.wasm", "Accept-Encoding", "gzip", "If-None-Match", tag)
	require.Equal(t, 304, again.StatusCode)

	require.Equal(t, 200, get(t, h, "GET", "/fit/").StatusCode)
	require.Equal(t, 200, get(t, h, "GET", "/fit/index.html").StatusCode)
	require.Equal(t, 404, get(t, h, "GET", "/").StatusCode)
	require.Equal(t, 404, get(t, h, "GET", "/fit/web/other").StatusCode)
	moved := get(t, h, "GET", "/fit")
	require.Equal(t, 301, moved.StatusCode)
	require.Equal(t, "/fit/", moved.Header.Get("Location"))
	post := get(t, h, "POST", "/fit/")
	require.Equal(t, 405, post.StatusCode)
	require.Equal(t, "GET, HEAD", post.Header.Get("Allow"))
	head := get(t, h, "HEAD", "/fit/")
	body, err = io.ReadAll(head.Body)
	require.NoError(t, err)
	require.Empty(t, body)
}

func TestExport(t *testing.T) {
	s := standIn(t, "1")
	dir := filepath.Join(t.TempDir(), "shop", "fit")
	require.NoError(t, s.Export(dir, "/shop/fit"))
	own := filepath.Join(dir, "their.txt")
	require.NoError(t, os.WriteFile(own, []byte("kept"), 0o644))
	require.NoError(t, s.Export(dir, "/shop/fit"), "an export over an earlier one")
	kept, err := os.ReadFile(own)
	require.NoError(t, err)
	require.Equal(t, "kept", string(kept))

	other := t.TempDir()
	require.NoError(t, s.Export(other, "/shop/fit"))
	count := 0
	require.NoError(t, filepath.WalkDir(other, func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		count++
		require.NotContains(t, d.Name(), ".slipfit-", "no temporary file is left")
		relative, err := filepath.Rel(other, name)
		require.NoError(t, err)
		a, err := os.ReadFile(name)
		require.NoError(t, err)
		b, err := os.ReadFile(filepath.Join(dir, relative))
		require.NoError(t, err)
		require.Equal(t, a, b, relative)
		return nil
	}))
	require.Equal(t, 21, count)
}

func TestExportSaysWhereItFails(t *testing.T) {
	file := filepath.Join(t.TempDir(), "file")
	require.NoError(t, os.WriteFile(file, nil, 0o644))
	require.ErrorContains(t, standIn(t, "1").Export(file, ""), file)
}
