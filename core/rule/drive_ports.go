package rule

import (
	"fmt"
	"strings"

	"slipfit/core/build"
	"slipfit/core/unit"
)

// DrivePorts is the SATA ports that stay live against the drives on a data cable.
var DrivePorts = Rule{
	ID:    "drive-ports",
	Group: Mate,
	Title: "There is a live SATA port for every drive on a cable",
	Doc: `have = SATA ports of the board less those that slots and sockets in use switch off; need = 2.5 and 3.5 inch drives
Cards and modules are placed first so that all find a place, then so that most ports stay live (see the rule lanes). Whether the
	supply has a plug for each drive is the rule plugs. When short: a board with more ports, a module in another socket, fewer and
	larger drives, or a storage card.`,
	Source: "port sharing: the board's manual, common practice; SATA 3.x: one drive a port",
	Reads:  []build.Seat{build.Case, build.Board, build.Graphics, build.Cards, build.Boot, build.Cache, build.Archive},
	Check: func(v *View) []Margin {
		if !v.both(build.Case, build.Board) {
			return nil
		}
		need := 0
		for _, t := range [...]build.Storage{v.Boot, v.Cache, v.Archive} {
			if t.Drive != nil && t.Drive.Form != "m.2" {
				need += t.Count
			}
		}
		if need == 0 {
			return nil
		}
		placing := v.placing()
		ports := figure(v, v.Board.SATA, &v.Board.Article, "sata")
		off := int(ports) - placing.Ports
		board := v.Board
		v.find("", unit.Count(placing.Ports), unit.Count(need), func() string {
			if off > 0 {
				return fmt.Sprintf("%s has %s, of which %d %s switched off by what sits in slots and sockets (%s), for %s", board.Name, plural(ports, "SATA port"), off, agree(off, "is", "are"), strings.Join(placing.Off, ", "), plural(need, "drive"))
			}
			return fmt.Sprintf("%s has %s for %s", board.Name, plural(ports, "SATA port"), plural(need, "drive"))
		})
		return v.margins
	},
}

// placing is where cards and drives go in the whole build.
func (v *View) placing() build.Assignment {
	return v.Assign(build.SetOf(build.Case, build.Graphics, build.Cards, build.Boot, build.Cache, build.Archive))
}
