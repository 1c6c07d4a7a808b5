// The worker runs the core away from the page's own thread.
package main

import "slipfit/web/wire"

func main() {
	w := worker{}
	wire.Run(w.answer)
}
