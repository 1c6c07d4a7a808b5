// A worker for the tests of the page: beside echoing, it can be slow, refuse, and break.
package main

import (
	"context"
	"encoding/json"
	"fmt"
	"os"

	"slipfit/web/wire"
)

func main() { wire.Run(answer) }

func answer(ctx context.Context, verb string, args []byte, progress func(wire.Progress)) ([]byte, error) {
	switch verb {
	case "echo":
		progress(wire.Progress{Done: 0.5, Note: "half way"})
		return args, nil
	case "spin":
		progress(wire.Progress{Note: "for ever"})
		for n := 1; n > 0; n++ { // it overflows in some centuries
		}
	case "seek": // until it is told to stop
		progress(wire.Progress{Note: "seeking"})
		looks := 0
		for ctx.Err() == nil {
			looks++
		}
		return json.Marshal(looks > 0)
	case "exit":
		os.Exit(3)
	case "version":
		return json.Marshal(map[string]string{"go": "probe"})
	}
	return nil, fmt.Errorf("verb %q is not one of the probe", verb)
}
