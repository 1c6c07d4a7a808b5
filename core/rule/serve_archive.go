package rule

import (
	"slipfit/core/brief"
	"slipfit/core/build"
)

// ServeArchive holds an archive drive's size against what is kept.
var ServeArchive = Rule{
	ID:    "serve-archive",
	Group: Serve,
	Title: "The archive holds what is kept",
	Doc: `have = drives in the archive seat × capacity, decimal GB; half of it where the brief asks for copies and the drives stand
	in pairs
need = floor of the brief for what is kept, decimal GB
Without an archive drive what is kept lies on the boot drive and this rule says nothing (serve-boot does). A hard disk does
	for what is read now and then; a map of a game or a sample library belongs on a faster tier. When short: larger drives or
	more of them.`,
	Source: "a mirrored pair holds what one drive holds: SNIA definitions, from memory; share kept free: common practice",
	Reads:  []build.Seat{build.Archive},
	Check: func(v *View) []Margin {
		n, ok := v.Needs.Get(brief.ArchiveSize)
		if !ok || !v.Filled(build.Archive) {
			return nil
		}
		have := v.capacity(build.Archive)
		how := ""
		if v.Needs.Copies && v.Archive.Count > 1 {
			how = ", each with a twin"
		}
		v.serve(n, int64(have), say("%d × %s%s %s %s; %s", v.Archive.Count, v.Archive.Drive.Name, how, agree(v.Archive.Count, "holds", "hold"), have.Q(), n.Reason))
		return v.margins
	},
}
