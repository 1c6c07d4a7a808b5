// The worker runs the core away from the page's own thread.
package main

import (
	"slipfit/core/heap"
	"slipfit/web/wire"
)

func main() {
	heap.Settle()
	w := worker{}
	wire.Run(w.answer)
}
