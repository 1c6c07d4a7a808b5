//go:build !wasm

package web

// inTaskOfItsOwn runs a step: where there is no page there is no thread to keep free.
func inTaskOfItsOwn(step func()) { step() }
