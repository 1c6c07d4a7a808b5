package rule

import (
	"slipfit/core/build"
	"slipfit/core/unit"
)

// Cautions prints the usual cautions that apply to the parts of a build.
var Cautions = Rule{
	ID:    "cautions",
	Group: Care,
	Title: "The usual cautions are taken",
	Doc: `one margin for each danger the build brings: have = 0, precautions that paper can take; need = 1
Advice only, printed on the sheets. They stand in for no local code, no maker's instructions and no licensed person: where those
	say more, they rule. Lifting is another rule's business (desk-mass).`,
	Source: "common practice; static: IEC 61340-5-1; waste: Directive 2012/19/EU and local rules (titles from memory)",
	Reads: []build.Seat{build.Case, build.Board, build.Processor, build.Cooler, build.Memory, build.Graphics, build.Supply, build.Archive,
		build.UPS},
	Check: func(v *View) []Margin {
		caution := func(applies bool, subject, text string) {
			if applies {
				v.advise(subject, unit.Count(0), unit.Count(1), func() string { return text })
			}
		}
		caution(v.Supply != nil, "mains",
			"pull the mains plug and press the power button for some seconds before a hand goes in; never open the supply, its capacitors hold their charge; outlets, fuses and earthing follow local codes and are a licensed electrician's work")
		caution(v.Board != nil || v.Processor != nil || v.Memory != nil || v.Graphics != nil, "static",
			"wear an earthed wrist strap or touch earthed bare metal before each part; leave parts in their bags until they are seated")
		caution(v.Case != nil, "sharp edges", "edges of sheet metal, fins and brackets cut: wear thin gloves where the case is handled")
		caution(v.Case != nil && len(v.Case.Glazed) > 0, "glass",
			"a glazed panel shatters when a corner meets a hard floor: lay it flat on cloth, hold it by two sides, last off the bench and last on")
		caution(v.Board != nil, "coin cell",
			"the board carries a lithium coin cell: keep it from children; if one is swallowed seek emergency help at once; do not charge or short it, hand it in when spent")
		caution(v.Cooler != nil && v.Cooler.Liquid != nil, "liquid",
			"the cooling loop is sealed: do not open, kink or top it up; run it for an hour outside the closed case; at any drop pull the mains plug first")
		caution(v.Graphics != nil || v.Cooler != nil, "hot surfaces", "heat-sinks stay hot for minutes after work: let them cool before a hand goes in")
		caution(v.Archive.Drive != nil && v.Archive.Drive.Disk, "disks", "a disk that turns is damaged by a knock: move the machine only when it has stood still for half a minute")
		caution(v.UPS != nil, "battery",
			"the uninterruptible supply is heavy and its outlets are live with its plug pulled: two hands low, and its battery is changed by its maker's instructions only")
		caution(v.Case != nil, "waste", "packing, old parts and cells go to the collection the local rules name, never to household waste")
		return v.margins
	},
}
