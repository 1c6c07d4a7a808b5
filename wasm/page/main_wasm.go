// The page, as the browser runs it. Nothing that serves it is linked in.
package main

import (
	"runtime/debug"
	"time"

	"slipfit/web"

	"github.com/maxence-charriere/go-app/v9/pkg/app"
)

// heapGrowth is by how many percent the heap may grow before garbage is collected: collecting holds the page up, and its heap
// is small.
const heapGrowth = 400

func main() {
	debug.SetGCPercent(heapGrowth)
	time.Sleep(time.Millisecond) // the browser draws and listens between the start of the runtime and that of the page
	web.Routes()
	app.RunWhenOnBrowser()
}
