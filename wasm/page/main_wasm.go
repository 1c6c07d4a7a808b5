// The page, as the browser runs it. Nothing that serves it is linked in.
package main

import (
	"slipfit/web"

	"github.com/maxence-charriere/go-app/v9/pkg/app"
)

func main() {
	web.Routes()
	app.RunWhenOnBrowser()
}
