package main

import (
	"net"
	"os"
	"os/signal"

	"slipfit/web"
)

var serveCommand = command{
	name:  "serve",
	usage: "[-address HOST:PORT] [-site DIR]",
	short: "serve the page on this machine",
	long: `Serves the page until interrupted. Without -address only this machine can reach
it. The page plans and proves in the browser; nothing is sent back.`,
	example: "slipfit serve -address 127.0.0.1:8080",
	setup: func(k *call) {
		k.flags.String("address", "127.0.0.1:8080", "listen on `HOST:PORT`")
		k.flags.String("prefix", "", "mount the page under `PATH`, like /shop/fit")
		siteFlag(k)
	},
	run: func(k *call) int {
		if len(k.args) != 0 {
			return k.usage("takes no arguments")
		}
		site, err := k.site()
		if err != nil {
			return k.fail(err)
		}
		handler, err := site.Handler(k.text("prefix"))
		if err != nil {
			return k.fail(err)
		}
		l, err := net.Listen("tcp", k.text("address"))
		if err != nil {
			return k.fail(err)
		}
		k.printf("slipfit serves the page at http://%s%s/\n", l.Addr(), k.text("prefix"))
		ctx, stop := signal.NotifyContext(k.ctx, os.Interrupt)
		defer stop()
		if err := web.Serve(ctx, l, handler); err != nil {
			return k.fail(err)
		}
		return fine
	},
}

func siteFlag(k *call) {
	k.flags.String("site", "", "the built page is in `DIR` (default: site beside the program, or build/site)")
}

// site opens the built page.
func (k *call) site() (*web.Site, error) {
	dir := k.text("site")
	if dir == "" {
		var err error
		if dir, err = web.FindBuilt(); err != nil {
			return nil, err
		}
	}
	return web.Open(dir)
}
