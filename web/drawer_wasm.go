package web

import "syscall/js"

// claimName takes a name for this window until it closes, by the Web Locks API (W3C), and reports whether no other window has
// it. It waits for the browser.
func claimName(name string) (bool, error) {
	locks := js.Global().Get("navigator").Get("locks")
	if !locks.Truthy() {
		return false, errWindows
	}
	type answer struct {
		free bool
		err  error
	}
	answered := make(chan answer, 1)
	never := js.FuncOf(func(js.Value, []js.Value) any { return nil })
	defer never.Release()
	// The lock is held until the promise that its holder returns is settled: this one's is not.
	hold := js.FuncOf(func(_ js.Value, args []js.Value) any {
		if args[0].IsNull() {
			answered <- answer{}
			return nil
		}
		held := js.Global().Get("Promise").New(never)
		answered <- answer{free: true}
		return held
	})
	defer hold.Release()
	refused := js.FuncOf(func(js.Value, []js.Value) any {
		answered <- answer{err: errWindows}
		return nil
	})
	defer refused.Release()
	locks.Call("request", "slipfit "+name, map[string]any{"ifAvailable": true}, hold).Call("catch", refused)
	a := <-answered
	return a.free, a.err
}
