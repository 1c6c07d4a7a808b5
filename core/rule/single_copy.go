package rule

import (
	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/unit"
)

// SingleCopy holds the copies of what is kept against what the brief asks and the usual advice.
var SingleCopy = Rule{
	ID:    "single-copy",
	Group: Care,
	Title: "What is kept exists more than once",
	Doc: `in the machine: have = drives that hold what is kept, 2 where the archive's drives stand in pairs, else 1; need = 2.
	Only where the brief asks for copies, and binding then.
in all: have = the same; need = 3. Advice: three copies, on two kinds of medium, one of them in another building. A pair of
	drives in one machine survives a drive and nothing else: not a theft, a fire, a wrong key or a program that encrypts. It is not
	a backup.`,
	Source: "three copies, two media, one away: Data Backup Options, US-CERT 2012 (attribution from memory); a pair is not a backup: common practice",
	Reads:  []build.Seat{build.Boot, build.Archive},
	Check: func(v *View) []Margin {
		if _, kept := v.Needs.Get(brief.ArchiveSize); !kept && !v.Needs.Copies {
			return nil
		}
		on := v.carrier(build.Archive)
		if on.Drive == nil {
			return nil
		}
		copies := 1
		if v.Needs.Copies && v.Archive.Count > 1 {
			copies = 2
		}
		if v.Needs.Copies {
			v.find("in the machine", unit.Count(copies), unit.Count(2), func() string {
				if copies < 2 {
					return say("what is kept lies on %s alone; it must lie on two drives: fit the archive drives in pairs", on.Drive.Name)()
				}
				return say("what is kept lies on %d × %s in pairs", on.Count, on.Drive.Name)()
			})
		}
		v.advise("in all", unit.Count(copies), unit.Count(3),
			say("this machine holds %d of the three copies advised: keep another on a drive outside it and one in another building", copies))
		return v.margins
	},
}
