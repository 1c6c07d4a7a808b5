//go:build !wasm

package web

// pageAddress is not known outside a browser.
func pageAddress() string { return "" }

// selectAll does nothing outside a browser.
func selectAll(id string) {}
