//go:build !wasm

package web

import (
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// Export writes the page into dir, made if need be, for a plain file server that shows dir at prefix: "" for
// its root, else like "/shop/fit". Files of an earlier export are replaced, each at once, and last the
// script that makes browsers keep a copy; others in dir are left alone. The same site gives the same bytes.
func (s *Site) Export(dir, prefix string) error {
	// A plain server says nothing of unpacked lengths, so a percentage could run past a hundred.
	all, err := s.assemble(prefix, "Laying out the sheet")
	if err != nil {
		return err
	}
	const last = "/app-worker.js"
	names := slices.DeleteFunc(slices.Sorted(maps.Keys(all)), func(name string) bool { return name == last })
	names = append(names, last)
	for _, name := range names {
		to := strings.TrimPrefix(name, "/")
		if to == "" {
			to = "index.html"
		}
		if err := replace(filepath.Join(dir, filepath.FromSlash(to)), all[name]); err != nil {
			return fmt.Errorf("export the page: %w", err)
		}
	}
	return nil
}

// replace writes a file so that it is there whole or, on an error, as it was before.
func replace(name string, data []byte) (err error) {
	if err := os.MkdirAll(filepath.Dir(name), 0o755); err != nil {
		return err
	}
	f, err := os.CreateTemp(filepath.Dir(name), ".slipfit-*")
	if err != nil {
		return err
	}
	defer func() {
		if err != nil {
			os.Remove(f.Name())
		}
	}()
	if _, err = f.Write(data); err != nil {
		f.Close()
		return err
	}
	if err = f.Chmod(0o644); err != nil {
		f.Close()
		return err
	}
	if err = f.Close(); err != nil {
		return err
	}
	return os.Rename(f.Name(), name)
}
