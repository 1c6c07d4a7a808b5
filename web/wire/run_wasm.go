package wire

import (
	"context"
	"syscall/js"
	"time"
)

// Run is the life of a worker: it says that it is ready, then answers one request after the other, for ever.
func Run(answer Answer) {
	post := func(message string) { js.Global().Call("postMessage", message) }
	requests := make(chan string)
	stopped := 0 // the request that was last asked to stop
	js.Global().Call("addEventListener", "message", js.FuncOf(func(_ js.Value, args []js.Value) any {
		message := args[0].Get("data").String()
		if id := stops(message); id != 0 {
			stopped = id
			send(post, Message{ID: id, Stopping: true})
			return nil
		}
		// Hand over without waiting here: a handler that waits stops the worker for good.
		go func() { requests <- message }()
		return nil
	}))
	listen := hop()
	post(Encode(Message{Ready: true}))
	for request := range requests {
		heard := time.Now()
		Serve(request, answer, post, func(id int) context.Context {
			return hearing{context.Background(), listen, &heard, func() bool { return stopped == id }}
		})
	}
}

// hop is a wait of one turn of the worker's event loop: a message to itself comes in after those that wait already. A timer of Go
// will not do for this: one that is due lets no message in.
func hop() func() {
	channel := js.Global().Get("MessageChannel").New()
	back := make(chan struct{}, 1)
	channel.Get("port1").Set("onmessage", js.FuncOf(func(js.Value, []js.Value) any {
		back <- struct{}{}
		return nil
	}))
	return func() {
		channel.Get("port2").Call("postMessage", nil)
		<-back
	}
}
