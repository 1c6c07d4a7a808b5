//go:build !wasm

package web

// claimName takes a name for this window, of which there is one where there is no browser.
func claimName(string) (bool, error) { return true, nil }
