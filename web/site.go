//go:build !wasm

package web

import (
	"crypto/sha256"
	"embed"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"net/http"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"

	"github.com/maxence-charriere/go-app/v9/pkg/app"
)

//go:embed *.css icons script
var assets embed.FS

// policy is the page's content security policy, sent as a header and kept in the page for hosts that send
// none. It allows the page its own files and nothing else; compiling WebAssembly has a keyword of its own.
const policy = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; img-src 'self'; " +
	"connect-src 'self'; manifest-src 'self'; worker-src 'self'; base-uri 'none'; form-action 'none'"

// lengthHeader carries the unpacked length of a file that is sent packed, for the page's own progress.
const lengthHeader = "X-Raw-Length"

// The programs that `make page` builds.
const (
	pageProgram   = "page.wasm"
	workerProgram = "worker.wasm"
	startScript   = "wasm_exec.js"
)

// Site is the page with both of its programs, ready to serve or to write out.
type Site struct{ programs map[string][]byte }

// Open reads the programs that `make page` has put into dir.
func Open(dir string) (*Site, error) {
	s := &Site{programs: map[string][]byte{}}
	for _, name := range []string{pageProgram, workerProgram, startScript} {
		data, err := os.ReadFile(filepath.Join(dir, name))
		if errors.Is(err, fs.ErrNotExist) {
			return nil, fmt.Errorf("%s: no %s: build the page with `make page`", dir, name)
		}
		if err != nil {
			return nil, fmt.Errorf("page: %w", err)
		}
		s.programs[name] = data
	}
	return s, nil
}

// FindBuilt returns the first of the places where a built page is looked for that holds one: the folder
// "site" beside the executable, then build/site under the working directory.
func FindBuilt() (string, error) {
	places := []string{filepath.Join("build", "site")}
	if executable, err := os.Executable(); err == nil {
		places = slices.Insert(places, 0, filepath.Join(filepath.Dir(executable), "site"))
	}
	for _, dir := range places {
		if _, err := os.Stat(filepath.Join(dir, pageProgram)); err == nil {
			return dir, nil
		}
	}
	return "", fmt.Errorf("no built page in %s: build it with `make page`", strings.Join(places, " or "))
}

// files is everything that is shipped, by path below the place where the page is mounted. "/" is the page.
type files map[string][]byte

// assemble makes the files for a page mounted at prefix: "" for the root, else like "/shop/fit". Label stands
// on the page while its program loads; "{progress}" in it becomes a number of percent. The same input gives
// the same bytes.
func (s *Site) assemble(prefix, label string) (files, error) {
	if prefix != "" && (prefix != path.Clean(prefix) || prefix == "/" || !strings.HasPrefix(prefix, "/") || strings.ContainsAny(prefix, `"'<>?#\% `)) {
		return nil, fmt.Errorf("prefix %q: want nothing, or a plain path such as /shop/fit", prefix)
	}
	out := files{
		"/wasm_exec.js":         s.programs[startScript],
		"/web/" + pageProgram:   s.programs[pageProgram],
		"/web/" + workerProgram: s.programs[workerProgram],
	}
	for shipped, source := range map[string]string{
		"/app.css":          "loader.css",
		"/web/style.css":    "style.css",
		"/web/sheet.css":    "sheet.css",
		"/web/parts.css":    "parts.css",
		"/web/said.css":     "said.css",
		"/web/machine.css":  "machine.css",
		"/web/paper.css":    "paper.css",
		"/web/print.css":    "print.css",
		"/web/worker.js":    "script/worker.js",
		"/web/storage.js":   "script/storage.js",
		"/web/start.js":     "script/start.js",
		"/web/icon.svg":     "icons/icon.svg",
		"/web/icon-192.png": "icons/icon-192.png",
		"/web/icon-512.png": "icons/icon-512.png",
	} {
		out[shipped] = asset(source)
	}
	// The version is the hash of every file, the generated ones included, so they are generated twice: once
	// to be hashed, once to hold the hash.
	Routes()
	if err := out.generate(prefix, label, "0"); err != nil {
		return nil, err
	}
	if err := out.generate(prefix, label, out.hash()); err != nil {
		return nil, err
	}
	return out, nil
}

// asset returns a file that is part of this program.
func asset(name string) []byte {
	data, err := assets.ReadFile(name)
	if err != nil {
		panic(err)
	}
	return data
}

// generate adds the files that go-app makes, and the script that keeps the page offline.
func (f files) generate(prefix, label, version string) error {
	h := &app.Handler{
		Name: "slipfit", ShortName: "slipfit", Title: "slipfit: the sheet",
		Description:             "Specifies a desktop machine for the work it has to do, and proves that it goes together.",
		BackgroundColor:         "#f4efe2",
		ThemeColor:              "#f4efe2",
		LoadingLabel:            label,
		Lang:                    "en",
		Version:                 version,
		WasmContentLengthHeader: lengthHeader,
		Resources:               mount{prefix},
		Styles:                  []string{"/web/style.css", "/web/parts.css", "/web/sheet.css", "/web/said.css", "/web/machine.css", "/web/paper.css", "/web/print.css"},
		Scripts:                 []string{"/web/storage.js", "/web/start.js"},
		Icon: app.Icon{Default: "/web/icon-192.png", Large: "/web/icon-512.png",
			SVG: "/web/icon.svg", AppleTouch: "/web/icon-192.png"},
	}
	for _, name := range []string{"/", "/app.js", "/manifest.webmanifest"} {
		r, err := http.NewRequest(http.MethodGet, name, nil)
		if err != nil {
			return fmt.Errorf("page: %w", err)
		}
		answer := &capture{header: http.Header{}}
		h.ServeHTTP(answer, r)
		if answer.status != http.StatusOK || len(answer.body) == 0 {
			return fmt.Errorf("page: %s is not generated: status %d, %d bytes", name, answer.status, len(answer.body))
		}
		f[name] = answer.body
	}
	html, err := tidy(string(f["/"]))
	if err != nil {
		return err
	}
	f["/"] = []byte(html)
	delete(f, "/app-worker.js")
	f["/app-worker.js"] = f.offlineScript(prefix, version)
	return nil
}

// offlineScript fills in the list of files to keep: every one that is shipped.
func (f files) offlineScript(prefix, version string) []byte {
	var list []string
	for _, name := range slices.Sorted(maps.Keys(f)) {
		list = append(list, prefix+name)
	}
	encoded, err := json.MarshalIndent(list, "", "  ")
	if err != nil {
		panic(err)
	}
	return []byte(strings.NewReplacer("{{.Version}}", version, "{{.ResourcesToCache}}", string(encoded)).
		Replace(string(asset("script/offline.js"))))
}

func (f files) hash() string {
	sum := sha256.New()
	for _, name := range slices.Sorted(maps.Keys(f)) {
		fmt.Fprintf(sum, "%s %d\n", name, len(f[name]))
		sum.Write(f[name])
	}
	return fmt.Sprintf("%x", sum.Sum(nil)[:12])
}

// mount tells go-app where the page lies.
type mount struct{ prefix string }

func (m mount) Package() string { return m.prefix }
func (m mount) Static() string  { return m.prefix }
func (m mount) AppWASM() string { return m.prefix + "/web/" + pageProgram }

// capture takes what go-app would send.
type capture struct {
	header http.Header
	status int
	body   []byte
}

func (c *capture) Header() http.Header { return c.header }

func (c *capture) WriteHeader(status int) {
	if c.status == 0 {
		c.status = status
	}
}

func (c *capture) Write(data []byte) (int, error) {
	c.WriteHeader(http.StatusOK)
	c.body = append(c.body, data...)
	return len(data), nil
}
