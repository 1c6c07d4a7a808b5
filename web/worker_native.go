//go:build !wasm

package web

import "errors"

// BrowserWorker returns a start that fails: a worker from a script exists in a browser alone.
func BrowserWorker(url string) Start {
	return func(func(string)) (Link, error) {
		return Link{}, errors.New("no browser to run " + url)
	}
}
