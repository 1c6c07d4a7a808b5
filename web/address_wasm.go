package web

import (
	"strings"
	"syscall/js"
)

// pageAddress is where the page lies, without a fragment.
func pageAddress() string {
	address, _, _ := strings.Cut(js.Global().Get("location").Get("href").String(), "#")
	return address
}

// selectAll moves the keyboard to a field and selects what it holds.
func selectAll(id string) {
	if e := js.Global().Get("document").Call("getElementById", id); e.Truthy() {
		e.Call("focus")
		e.Call("select")
	}
}
