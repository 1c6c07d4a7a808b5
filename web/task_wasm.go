package web

import "syscall/js"

// inTaskOfItsOwn runs a step in another task of the page's thread. A timer of Go will not do for this: one that is due runs
// on in the task at hand.
func inTaskOfItsOwn(step func()) {
	var f js.Func
	f = js.FuncOf(func(js.Value, []js.Value) any {
		f.Release()
		step()
		return nil
	})
	js.Global().Call("setTimeout", f, 0)
}
