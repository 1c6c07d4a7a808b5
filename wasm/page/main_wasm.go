// The page, as the browser runs it. Nothing that serves it is linked in.
package main

import (
	"runtime/debug"

	"slipfit/web"

	"github.com/maxence-charriere/go-app/v9/pkg/app"
)

// heapGrowth is by how many percent the heap may grow before garbage is collected: collecting holds the page up, and its heap
// is small.
const heapGrowth = 400

func main() {
	debug.SetGCPercent(heapGrowth)
	web.NextTask() // the start of the runtime has taken its time
	web.Routes()
	web.NextTask()
	app.RunWhenOnBrowser()
}
