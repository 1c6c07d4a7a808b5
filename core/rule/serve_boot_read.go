package rule

import (
	"slipfit/core/brief"
	"slipfit/core/build"
)

// ServeBootRead holds the boot drive's reading speed against the need.
var ServeBootRead = Rule{
	ID:    "serve-boot-read",
	Group: Serve,
	Title: "The boot drive reads fast enough",
	Doc: `have = sustained sequential reading of the boot drive, MB/s
need = floor of the brief for reading programs, maps and libraries, MB/s
Equal drives in the seat are not taken to read side by side. When short: a solid-state drive, or one on a faster bus.`,
	Source: "common practice",
	Reads:  []build.Seat{build.Boot},
	Check: func(v *View) []Margin {
		n, ok := v.Needs.Get(brief.BootRead)
		if !ok || !v.Filled(build.Boot) {
			return nil
		}
		have := figure(v, v.Boot.Drive.Read, &v.Boot.Drive.Article, "read_mb_s")
		v.serve(n, int64(have), say("%s reads %s; %s", v.Boot.Drive.Name, have.Q(), n.Reason))
		return v.margins
	},
}
