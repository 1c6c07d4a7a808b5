// The page, as the browser runs it. Nothing that serves it is linked in.
package main

import (
	"slipfit/core/heap"
	"slipfit/web"

	"github.com/maxence-charriere/go-app/v9/pkg/app"
)

func main() {
	heap.Settle()
	web.NextTask() // the start of the runtime has taken its time
	web.Routes()
	web.NextTask()
	app.RunWhenOnBrowser()
}
