//go:build !wasm

package web

// editionWaiting reports false outside a browser: no copy of the page is stored.
func editionWaiting() bool { return false }

// changeOver does nothing outside a browser.
func changeOver() {}
