package rule

import (
	"slipfit/core/brief"
	"slipfit/core/build"
)

// ServeArchiveWrite holds the held writing speed under what is kept against the need.
var ServeArchiveWrite = Rule{
	ID:    "serve-archive-write",
	Group: Serve,
	Title: "What is kept is written fast enough",
	Doc: `have = writing speed of the archive drive once its fast cache is full, MB/s; of the boot drive where there is no archive drive
need = floor of the brief for copying finished work, MB/s
When short: a faster disk, or a solid-state drive.`,
	Source: "common practice",
	Reads:  []build.Seat{build.Boot, build.Archive},
	First:  []build.Seat{build.Archive, build.Boot},
	Check: func(v *View) []Margin {
		return v.writes(brief.ArchiveWrite, build.Archive)
	},
}
