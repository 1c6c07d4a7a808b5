package web

import "syscall/js"

// editionWaiting reports whether a newer edition of the page is stored and waits to take over. It waits for
// the browser: call it from a goroutine.
func editionWaiting() bool {
	r := registration()
	return r.Truthy() && r.Get("waiting").Truthy()
}

// changeOver lets the newer edition take over and loads it. It waits for the browser: call it from a goroutine.
func changeOver() {
	r := registration()
	reload := func() { js.Global().Get("location").Call("reload") }
	if !r.Truthy() || !r.Get("waiting").Truthy() {
		reload()
		return
	}
	waiting := r.Get("waiting")
	active := make(chan struct{}, 1)
	onChange := js.FuncOf(func(js.Value, []js.Value) any {
		if waiting.Get("state").String() == "activated" {
			active <- struct{}{}
		}
		return nil
	})
	waiting.Call("addEventListener", "statechange", onChange)
	waiting.Call("postMessage", "take over")
	<-active
	reload()
}

// registration is the page's hold on its offline copy, or a false value where the browser keeps none.
func registration() js.Value {
	container := js.Global().Get("navigator").Get("serviceWorker")
	if !container.Truthy() {
		return js.Null()
	}
	r, err := settled(container.Call("getRegistration"))
	if err != nil {
		return js.Null()
	}
	return r
}
