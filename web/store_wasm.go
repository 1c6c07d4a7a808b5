package web

import (
	"errors"
	"fmt"
	"strings"
	"syscall/js"
)

// storeName names both the database and its one table.
const storeName = "slipfit-records"

// Store keeps records under keys in the browser, across visits. Every method waits for the browser and so
// must be called from a goroutine of its own (ctx.Async), never from inside an event handler. What the
// browser keeps it may also throw away: a file that the user saves is the lasting copy.
type Store struct{ db js.Value }

// OpenStore opens the page's store, or returns an error that wraps ErrNoStore.
func OpenStore() (*Store, error) {
	factory := js.Global().Get("indexedDB")
	if !factory.Truthy() {
		return nil, fmt.Errorf("store: %w", ErrNoStore)
	}
	db, err := await(func() js.Value {
		request := factory.Call("open", storeName, 1)
		request.Set("onupgradeneeded", js.FuncOf(func(js.Value, []js.Value) any {
			return request.Get("result").Call("createObjectStore", storeName)
		}))
		return request
	}, "success", "error")
	if err != nil {
		return nil, fmt.Errorf("store: %w: %w", ErrNoStore, err)
	}
	return &Store{db}, nil
}

// Put keeps value under key, in place of what was there. It returns when the browser has written the whole
// record; on an error the earlier record is still there.
func (s *Store) Put(key string, value []byte) error {
	return s.write("put", key, func(table js.Value) {
		data := js.Global().Get("Uint8Array").New(len(value))
		js.CopyBytesToJS(data, value)
		table.Call("put", data, key)
	})
}

// Delete removes the record under key. It is no error when there is none.
func (s *Store) Delete(key string) error {
	return s.write("delete", key, func(table js.Value) { table.Call("delete", key) })
}

// Get returns the record under key, and whether there is one.
func (s *Store) Get(key string) ([]byte, bool, error) {
	data, err := await(func() js.Value { return s.table("readonly").Call("get", key) }, "success", "error")
	if err != nil {
		return nil, false, fmt.Errorf("store: get %q: %w", key, err)
	}
	if data.IsUndefined() {
		return nil, false, nil
	}
	value := make([]byte, data.Length())
	js.CopyBytesToGo(value, data)
	return value, true, nil
}

// List returns the keys that begin with prefix, in order.
func (s *Store) List(prefix string) ([]string, error) {
	all, err := await(func() js.Value { return s.table("readonly").Call("getAllKeys") }, "success", "error")
	if err != nil {
		return nil, fmt.Errorf("store: list %q: %w", prefix, err)
	}
	var keys []string
	for i := range all.Length() {
		if key := all.Index(i).String(); strings.HasPrefix(key, prefix) {
			keys = append(keys, key)
		}
	}
	return keys, nil
}

func (s *Store) table(mode string) js.Value {
	strict := map[string]any{"durability": "strict"}
	return s.db.Call("transaction", storeName, mode, strict).Call("objectStore", storeName)
}

// write waits for the transaction to complete, not for its request alone.
func (s *Store) write(what, key string, change func(table js.Value)) error {
	_, err := await(func() js.Value {
		table := s.table("readwrite")
		change(table)
		return table.Get("transaction")
	}, "complete", "abort")
	if err != nil {
		return fmt.Errorf("store: %s %q: %w", what, key, err)
	}
	return nil
}

// await begins a request or a transaction and returns its result when it succeeds, or an error when it fails or
// cannot even begin. The two events are named by the caller: a transaction hears of the error of one of its
// requests before it knows its own, so for it failure is "abort".
func await(begin func() js.Value, success, failure string) (result js.Value, err error) {
	defer func() {
		if fault := recover(); fault != nil {
			thrown, ok := fault.(js.Error)
			if !ok {
				panic(fault)
			}
			err = domError(thrown.Value)
		}
	}()
	request := begin()
	ended := make(chan bool, 1)
	onSuccess := js.FuncOf(func(js.Value, []js.Value) any { ended <- true; return nil })
	defer onSuccess.Release()
	onFailure := js.FuncOf(func(js.Value, []js.Value) any { ended <- false; return nil })
	defer onFailure.Release()
	request.Call("addEventListener", success, onSuccess)
	request.Call("addEventListener", failure, onFailure)
	if <-ended {
		return request.Get("result"), nil
	}
	return js.Value{}, domError(request.Get("error"))
}

func domError(v js.Value) error {
	if !v.Truthy() {
		return errors.New("the browser gave up without a reason")
	}
	name, message := v.Get("name").String(), v.Get("message").String()
	if message == "" {
		return errors.New(name)
	}
	return fmt.Errorf("%s: %s", name, message)
}
