//go:build !wasm

package web

// SaveFile does nothing outside a browser: there is nobody to hand the file to.
func SaveFile(name, media string, data []byte) {}

// OpenFile returns ErrNoFile outside a browser: there is nobody to choose one.
func OpenFile(accept string) (name string, data []byte, err error) { return "", nil, ErrNoFile }

// PrintSheet does nothing outside a browser.
func PrintSheet() {}
