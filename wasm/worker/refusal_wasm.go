package main

import (
	"encoding/json"
	"errors"

	"slipfit/core/format"
)

// refusal is an error as the page gets it: its message, and every fault of a file with its place in the file.
type refusal struct{ error }

// MarshalJSON writes {"message": ..., "errors": [{"file", "path", "value", "want"}]}.
func (r refusal) MarshalJSON() ([]byte, error) {
	type fault struct {
		File  string `json:"file"`
		Path  string `json:"path"`
		Value string `json:"value"`
		Want  string `json:"want"`
	}
	out := struct {
		Message string  `json:"message"`
		Errors  []fault `json:"errors,omitempty"`
	}{Message: r.Error()}
	var walk func(error)
	walk = func(err error) {
		var one *format.Error
		if several, ok := err.(interface{ Unwrap() []error }); ok {
			for _, e := range several.Unwrap() {
				walk(e)
			}
		} else if errors.As(err, &one) {
			out.Errors = append(out.Errors, fault{one.File, one.Path, one.Value, one.Want})
		}
	}
	walk(r.error)
	return json.Marshal(out)
}
