package main

import (
	"fmt"
	"runtime"

	"slipfit/web/wire"
)

// answer does one verb for the page. Args and the result are JSON.
func answer(verb string, args []byte, progress func(wire.Progress)) ([]byte, error) {
	switch verb {
	case "echo":
		progress(wire.Progress{Done: 1, Note: fmt.Sprintf("%d bytes", len(args))})
		return args, nil
	case "version":
		return []byte(fmt.Sprintf(`{"go":%q}`, runtime.Version())), nil
	}
	return nil, fmt.Errorf("verb %q: want echo or version", verb)
}
