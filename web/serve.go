//go:build !wasm

package web

import (
	"bytes"
	"compress/gzip"
	"context"
	"crypto/sha256"
	"errors"
	"fmt"
	"net"
	"net/http"
	"path"
	"strconv"
	"strings"
	"sync"
	"time"
)

// served is one file as it goes out: plain, and packed where that is shorter.
type served struct {
	media         string
	plain, packed []byte
	tag           string
}

// Handler returns the handler of the page mounted at prefix: "" for the root, else like "/shop/fit". It packs
// every file once, which takes about a second; after that it only copies bytes.
func (s *Site) Handler(prefix string) (http.Handler, error) {
	all, err := s.assemble(prefix, "Laying out the sheet: {progress} %")
	if err != nil {
		return nil, err
	}
	ready := make(map[string]*served, len(all))
	var packing sync.WaitGroup
	for name, body := range all {
		file := &served{media: mediaType(name), plain: body, tag: fmt.Sprintf("%x", sha256.Sum256(body))[:24]}
		ready[name] = file
		packing.Go(func() { file.packed = pack(body) })
	}
	packing.Wait()
	ready["/index.html"] = ready["/"]
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) { answer(w, r, prefix, ready) }), nil
}

func answer(w http.ResponseWriter, r *http.Request, prefix string, ready map[string]*served) {
	header := w.Header()
	header.Set("Content-Security-Policy", policy)
	header.Set("X-Content-Type-Options", "nosniff")
	header.Set("Referrer-Policy", "no-referrer")
	if r.Method != http.MethodGet && r.Method != http.MethodHead {
		header.Set("Allow", "GET, HEAD")
		http.Error(w, "this page is only read", http.StatusMethodNotAllowed)
		return
	}
	if prefix != "" && r.URL.Path == prefix {
		http.Redirect(w, r, prefix+"/", http.StatusMovedPermanently)
		return
	}
	name, below := strings.CutPrefix(r.URL.Path, prefix)
	file := ready[name]
	if !below || file == nil {
		http.Error(w, "no such file in this page", http.StatusNotFound)
		return
	}
	body, tag := file.plain, `"`+file.tag+`"`
	if file.packed != nil {
		header.Set("Vary", "Accept-Encoding")
		header.Set(lengthHeader, strconv.Itoa(len(file.plain)))
		if acceptsGzip(r) {
			body, tag = file.packed, `"`+file.tag+`-gz"`
			header.Set("Content-Encoding", "gzip")
		}
	}
	// The browser asks each time whether a file has changed; what works offline is the page's own copy.
	header.Set("Cache-Control", "no-cache")
	header.Set("ETag", tag)
	if r.Header.Get("If-None-Match") == tag {
		header.Del("Content-Encoding")
		w.WriteHeader(http.StatusNotModified)
		return
	}
	header.Set("Content-Type", file.media)
	header.Set("Content-Length", strconv.Itoa(len(body)))
	if r.Method == http.MethodHead {
		return
	}
	w.Write(body)
}

// acceptsGzip reads Accept-Encoding as far as it decides between gzip and plain: RFC 9110, section 12.5.3.
func acceptsGzip(r *http.Request) bool {
	for _, offer := range strings.Split(r.Header.Get("Accept-Encoding"), ",") {
		coding, weight, _ := strings.Cut(offer, ";")
		if strings.EqualFold(strings.TrimSpace(coding), "gzip") {
			q, err := strconv.ParseFloat(strings.TrimPrefix(strings.TrimSpace(weight), "q="), 64)
			return err != nil || q > 0
		}
	}
	return false
}

func mediaType(name string) string {
	switch path.Ext(name) {
	case ".js":
		return "text/javascript; charset=utf-8"
	case ".css":
		return "text/css; charset=utf-8"
	case ".wasm":
		return "application/wasm"
	case ".webmanifest":
		return "application/manifest+json"
	case ".svg":
		return "image/svg+xml"
	case ".png":
		return "image/png"
	}
	return "text/html; charset=utf-8"
}

// pack returns body in gzip, or nothing where that is not shorter.
func pack(body []byte) []byte {
	var b bytes.Buffer
	w, err := gzip.NewWriterLevel(&b, gzip.BestCompression)
	if err != nil {
		panic(err)
	}
	w.Write(body)
	w.Close()
	if b.Len() >= len(body) {
		return nil
	}
	return b.Bytes()
}

// Serve answers on the listener until ctx ends, and then lets what is under way finish for some seconds.
func Serve(ctx context.Context, l net.Listener, h http.Handler) error {
	server := &http.Server{Handler: h, ReadHeaderTimeout: 10 * time.Second}
	ended := make(chan error, 1)
	go func() {
		<-ctx.Done()
		grace, cancel := context.WithTimeout(context.WithoutCancel(ctx), 5*time.Second)
		defer cancel()
		ended <- server.Shutdown(grace)
	}()
	if err := server.Serve(l); !errors.Is(err, http.ErrServerClosed) {
		return fmt.Errorf("serve the page: %w", err)
	}
	return <-ended
}
