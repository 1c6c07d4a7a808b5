package web

import (
	"fmt"
	"syscall/js"

	"slipfit/web/wire"
)

// BrowserWorker returns the start of a worker from the script at url, which must be of the page's own origin.
func BrowserWorker(url string) Start {
	return func(receive func(string)) (link Link, err error) {
		defer func() {
			if fault := recover(); fault != nil {
				err = fmt.Errorf("%v", fault)
			}
		}()
		worker := js.Global().Get("Worker").New(url)
		onMessage := js.FuncOf(func(_ js.Value, args []js.Value) any {
			receive(args[0].Get("data").String())
			return nil
		})
		onError := js.FuncOf(func(_ js.Value, args []js.Value) any {
			why := args[0].Get("message")
			text := "its script does not load"
			if why.Type() == js.TypeString {
				text = why.String()
			}
			receive(wire.Encode(wire.Message{Gone: text}))
			return nil
		})
		worker.Call("addEventListener", "message", onMessage)
		worker.Call("addEventListener", "error", onError)
		return Link{
			Post: func(message string) { worker.Call("postMessage", message) },
			Stop: func() {
				worker.Call("removeEventListener", "message", onMessage)
				worker.Call("removeEventListener", "error", onError)
				worker.Call("terminate")
				onMessage.Release()
				onError.Release()
			},
		}, nil
	}
}
