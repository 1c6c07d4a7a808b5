package rule

import (
	"strings"

	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// DriveSlots keeps M.2 modules within the board's sockets: length, height, both sides, bus, and what sockets share.
var DriveSlots = Rule{
	ID:    "drive-slots",
	Group: Fit,
	Title: "Storage modules have sockets that take them",
	Doc: `boot, cache, archive: have = modules of that tier with a socket of their own; need = modules of that tier
room: have = height above the module's board in its socket, under the heat-sink or up to what covers it; need = height of the
	module above its board, own heat-sink included, mm; the tightest of the tier
A module goes where there is a post for its length, room above it, lanes or SATA for its bus, and room below where it has chips on
	both sides. Modules are matched to sockets exactly, for the fastest; sockets that others switch off are left out. Graphics and add-in
	cards that share lanes with sockets come in with rule lanes. When short: a one-sided module, one without its own heat-sink, one large
	module for two, or a drive on a cable.`,
	Source: "PCI-SIG M.2 module codes 2230 to 22110; makers' sheets",
	Reads:  []build.Seat{build.Board, build.Boot, build.Cache, build.Archive},
	Harder: []string{"Drive.Above", "Storage.Count"},
	Early:  []Early{{Seats: []build.Seat{build.Board, build.Boot}}, {Seats: []build.Seat{build.Board, build.Cache}}, {Seats: []build.Seat{build.Board, build.Archive}}},
	Check: func(v *View) []Margin {
		if !v.both(build.Board) || !v.modules() {
			return nil
		}
		drives := v.Assign(build.SetOf(build.Board, build.Boot, build.Cache, build.Archive)).Drives
		for len(drives) > 0 {
			n := 1
			for n < len(drives) && drives[n].Seat == drives[0].Seat {
				n++
			}
			if drives[0].Drive.Form == part.FormM2 {
				v.tier(drives[:n])
			}
			drives = drives[n:]
		}
		return v.margins
	},
}

// tier adds the margins of the modules of one tier.
func (v *View) tier(modules []build.DrivePlace) {
	seat, drive := modules[0].Seat, modules[0].Drive
	board := v.Board
	placed := 0
	var tightest *build.DrivePlace
	for i := range modules {
		m := &modules[i]
		if m.Socket == nil {
			continue
		}
		placed++
		if m.State == build.Unsure {
			_, missing := build.ModuleFits(drive, m.Socket)
			if missing[0] == "board" {
				v.lacks(&board.Article, "m2."+missing[1])
			} else {
				v.lacks(&drive.Article, missing[1])
			}
			continue
		}
		if tightest == nil || m.Socket.Height.Or(0) < tightest.Socket.Height.Or(0) {
			tightest = m
		}
	}
	v.find(seat.String(), unit.Count(placed), unit.Count(len(modules)), func() string {
		var in []string
		for _, m := range modules {
			if m.Socket != nil {
				in = append(in, m.Socket.ID)
			}
		}
		s := "no socket of " + board.Name + " takes it beside the others"
		if in != nil {
			s = drive.Name + " in " + strings.Join(in, ", ")
		}
		if placed < len(modules) {
			s += say("; %d of %d without a socket: %s", len(modules)-placed, len(modules), whyNot(drive, board))()
		}
		return s
	})
	if tightest != nil {
		room, _ := tightest.Socket.Height.Get()
		above, _ := drive.Above.Get()
		id := tightest.Socket.ID
		v.find(roomOf[seat], room.Q(), above.Q(), say("%s above the module's board in %s, the module stands %s", room.Q(), id, above.Q()))
	}
}

var roomOf = [build.Seats]string{build.Boot: "boot, room above", build.Cache: "cache, room above", build.Archive: "archive, room above"}

// whyNot says of each module socket of a board what keeps the drive out of it.
func whyNot(d *part.Drive, b *part.Board) string {
	if len(b.M2) == 0 {
		return "the board has none"
	}
	var reasons []string
	for i := range b.M2 {
		s := &b.M2[i]
		r := "taken or switched off by another"
		if state, _ := build.ModuleFits(d, s); state == build.Out {
			r = refuses(d, s)
		}
		reasons = append(reasons, s.ID+" "+r)
	}
	return strings.Join(reasons, ", ")
}

// refuses says what keeps a module out of a socket.
func refuses(d *part.Drive, s *part.M2Slot) string {
	if above, ok := d.Above.Get(); ok {
		if room, ok := s.Height.Get(); ok && above > room {
			return say("has %s above the module, it stands %s", room.Q(), above.Q())()
		}
	}
	if two, _ := d.TwoSided.Get(); two {
		if takes, ok := s.TwoSided.Get(); ok && !takes {
			return "takes no two-sided module"
		}
	}
	if sata, ok := s.SATA.Get(); d.Bus == part.BusSATA && ok && !sata {
		return "takes no SATA module"
	}
	if lanes, ok := s.Lanes.Get(); d.Bus == part.BusPCIe && ok && lanes == 0 {
		return "takes SATA modules alone"
	}
	return say("has no post for a length of %d mm", d.Module.Or(0))()
}

// modules reports whether the build has a storage module.
func (v *View) modules() bool {
	for _, s := range [...]build.Storage{v.Boot, v.Cache, v.Archive} {
		if s.Drive != nil && s.Drive.Form == part.FormM2 {
			return true
		}
	}
	return false
}
