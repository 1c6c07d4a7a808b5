package web

import (
	"fmt"
	"syscall/js"
	"time"
)

// SaveFile hands data to the browser to save under name. Media is its type, as "application/json". Whether
// and where the file is saved is between the browser and the user.
func SaveFile(name, media string, data []byte) {
	bytes := js.Global().Get("Uint8Array").New(len(data))
	js.CopyBytesToJS(bytes, data)
	blob := js.Global().Get("Blob").New([]any{bytes}, map[string]any{"type": media})
	url := js.Global().Get("URL").Call("createObjectURL", blob)
	anchor := js.Global().Get("document").Call("createElement", "a")
	anchor.Set("href", url)
	anchor.Set("download", name)
	anchor.Call("click")
	// The browser reads the address after the click has returned; a minute is ample and frees the copy.
	time.AfterFunc(time.Minute, func() { js.Global().Get("URL").Call("revokeObjectURL", url) })
}

// OpenFile asks the user for one file and returns its name and bytes, or an error that says why not. Accept
// lists what to offer, as ".json,application/json". It must be begun by an event of the user. It waits for
// the user, so call it from a goroutine of its own (ctx.Async). A user who chooses nothing gives ErrNoFile.
func OpenFile(accept string) (name string, data []byte, err error) {
	input := js.Global().Get("document").Call("createElement", "input")
	input.Set("type", "file")
	input.Set("accept", accept)
	chosen := make(chan js.Value, 1)
	onChange := js.FuncOf(func(js.Value, []js.Value) any {
		chosen <- input.Get("files")
		return nil
	})
	defer onChange.Release()
	input.Call("addEventListener", "change", onChange)
	input.Call("addEventListener", "cancel", onChange)
	input.Call("click")
	files := <-chosen
	if files.Length() == 0 {
		return "", nil, ErrNoFile
	}
	file := files.Index(0)
	name = file.Get("name").String()
	if size := file.Get("size").Float(); size > MaxFileBytes {
		return name, nil, fmt.Errorf("%s: %.0f bytes, want at most %d", name, size, MaxFileBytes)
	}
	buffer, err := settled(file.Call("arrayBuffer"))
	if err != nil {
		return name, nil, fmt.Errorf("%s: %w", name, err)
	}
	bytes := js.Global().Get("Uint8Array").New(buffer)
	data = make([]byte, bytes.Length())
	js.CopyBytesToGo(data, bytes)
	return name, data, nil
}

// settled waits for a promise.
func settled(promise js.Value) (js.Value, error) {
	type end struct {
		value js.Value
		err   error
	}
	ended := make(chan end, 1)
	onValue := js.FuncOf(func(_ js.Value, args []js.Value) any {
		ended <- end{value: args[0]}
		return nil
	})
	defer onValue.Release()
	onError := js.FuncOf(func(_ js.Value, args []js.Value) any {
		ended <- end{err: domError(args[0])}
		return nil
	})
	defer onError.Release()
	promise.Call("then", onValue, onError)
	first := <-ended
	return first.value, first.err
}

// PrintSheet opens the browser's print dialogue, where the browser has one.
func PrintSheet() {
	if print := js.Global().Get("print"); print.Type() == js.TypeFunction {
		print.Invoke()
	}
}
