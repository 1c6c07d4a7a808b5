package wire

import "syscall/js"

// Run is the life of a worker: it says that it is ready, then answers one request after the other, for ever.
func Run(answer Answer) {
	post := func(message string) { js.Global().Call("postMessage", message) }
	requests := make(chan string)
	js.Global().Call("addEventListener", "message", js.FuncOf(func(_ js.Value, args []js.Value) any {
		// Hand over without waiting here: a handler that waits stops the worker for good.
		request := args[0].Get("data").String()
		go func() { requests <- request }()
		return nil
	}))
	post(Encode(Message{Ready: true}))
	for request := range requests {
		Serve(request, answer, post)
	}
}
