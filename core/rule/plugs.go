package rule

import (
	"fmt"

	"slipfit/core/build"
	"slipfit/core/feed"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// Plugs gives every power socket of the machine a plug of the supply.
var Plugs = Rule{
	ID:    "plugs",
	Group: Feed,
	Title: "Every power socket gets a plug, and its own cable if asked",
	Doc: `For board, processor, graphics card, drives, and cards and hubs: have = sockets that get a plug; need = sockets
Plugs are given to sockets over every way there is: most sockets fed. Two card sockets share a cable of two plugs only while the load
	of both stays within what one cable carries; a socket's load is the card's power in proportion to what slot and plugs may give. A
	12-contact plug feeds a card only while its sense pins announce the load. Sockets that a board may leave empty at ordinary load only
	advise. Card, processor and drive plugs look alike and are pinned differently: never use a cable of another supply, nor force a plug.
	When short: another supply. Graphics cards are never fed through SATA adapters.`,
	Source: "ATX 3.0 design guide § 2.2.1 (plugs and pin loads) and table 3-5 (ratings); no shared cable beyond three wires at 6 A: common practice",
	Reads:  []build.Seat{build.Board, build.Graphics, build.Supply, build.Boot, build.Cache, build.Archive, build.Cards},
	Early:  []Early{{Seats: []build.Seat{build.Board, build.Supply}}, {Seats: []build.Seat{build.Board, build.Graphics, build.Supply}}},
	Check: func(v *View) []Margin {
		if !v.both(build.Supply, build.Board) {
			return nil
		}
		var n socketList
		n.gather(v)
		if len(n.sockets) > feed.MaxSockets {
			v.find("", unit.Count(feed.MaxSockets), unit.Count(len(n.sockets)), say("more sockets than the check takes"))
			return v.margins
		}
		lacking := v.missing
		given, err := feed.AssignPlugs(n.sockets, cablesOf(v, v.Supply))
		if err != nil {
			v.find("", unit.Count(0), unit.Count(len(n.sockets)), err.Error)
			return v.margins
		}
		unsure := len(lacking) > 0 || len(v.missing) > 0
		for g := range groups {
			want, fed := 0, 0
			for i := range n.sockets {
				if n.group[i] == g {
					want++
					if given.Feeds[i].Cable >= 0 {
						fed++
					}
				}
			}
			if want == 0 {
				continue
			}
			supply, title := v.Supply, groupTitles[g]
			why := func() string {
				if fed == want {
					return fmt.Sprintf("%s of the %s fed by %s", plural(want, "socket"), title, supply.Name)
				}
				return fmt.Sprintf("%s has plugs for %d of %s of the %s", supply.Name, fed, plural(want, "socket"), title)
			}
			if g == optionalSockets {
				v.advise(title, unit.Count(fed), unit.Count(want), why)
			} else {
				v.find(title, unit.Count(fed), unit.Count(want), why)
			}
			if unsure { // the figures that lack bear on every group
				n.gather(v)
				cablesOf(v, v.Supply)
			}
		}
		v.missing = v.missing[:0]
		return v.margins
	},
}

// Groups of sockets, in the order of importance in which they are fed.
const (
	boardSocket = iota
	processorSockets
	graphicsSockets
	driveSockets
	cardSockets
	optionalSockets
	groups
)

var groupTitles = [groups]string{"main board", "processor", "graphics card", "drives", "cards and hubs", "optional board sockets"}

// socketList is the power sockets of a machine with the group of each.
type socketList struct {
	sockets []feed.Socket
	group   []int
}

func (n *socketList) add(group int, count unit.Whole, s feed.Socket) {
	for range count {
		n.sockets = append(n.sockets, s)
		n.group = append(n.group, group)
	}
}

// gather lists the sockets in order of importance.
func (n *socketList) gather(v *View) {
	n.sockets, n.group = n.sockets[:0], n.group[:0]
	for _, want := range [...]int{boardSocket, processorSockets} {
		n.board(v, want)
	}
	if v.Graphics != nil {
		for i := range v.Graphics.Sockets {
			s := &v.Graphics.Sockets[i]
			kind, load := socketOf(s.Kind), socketLoad(v, s.Kind)
			n.add(graphicsSockets, figure(v, s.Count, &v.Graphics.Article, "power_sockets.count"),
				feed.Socket{Kind: kind, LoadMW: load, OwnCable: feed.AsksOwnCable(kind, load)})
		}
	}
	for _, t := range [...]build.Storage{v.Boot, v.Cache, v.Archive} {
		if t.Drive != nil && t.Drive.Form != part.FormM2 {
			n.add(driveSockets, unit.Whole(t.Count), feed.Socket{Kind: feed.SocketSATA})
		}
	}
	for i := range v.Cards {
		for _, p := range v.Cards[i].Card.Fed {
			n.add(cardSockets, unit.Whole(v.Cards[i].Count), feed.Socket{Kind: servedBy(p)})
		}
	}
	n.board(v, optionalSockets)
}

func (n *socketList) board(v *View, want int) {
	for i := range v.Board.PowerPlugs {
		s := &v.Board.PowerPlugs[i]
		group := processorSockets
		switch {
		case s.Optional:
			group = optionalSockets
		case s.Kind == part.SocketMain24:
			group = boardSocket
		}
		if group == want {
			n.add(group, figure(v, s.Count, &v.Board.Article, "power_sockets.count"), feed.Socket{Kind: socketOf(s.Kind)})
		}
	}
}

// socketLoad is what one socket of a kind on the graphics card carries: the card's power in proportion to what the slot and
// its sockets may give.
func socketLoad(v *View, kind part.SocketKind) int64 {
	limit := socketOf(kind).LimitMW()
	slot, _ := feed.SlotPower(16, true)
	all := slot.TotalMW
	for i := range v.Graphics.Sockets {
		s := &v.Graphics.Sockets[i]
		all += socketOf(s.Kind).LimitMW() * int64(figure(v, s.Count, &v.Graphics.Article, "power_sockets.count"))
	}
	return (int64(figure(v, v.Graphics.Power, &v.Graphics.Article, "power_w"))*limit + all - 1) / all
}

// cablesOf is the cables of a supply, one by one.
func cablesOf(v *View, s *part.Supply) []feed.Cable {
	list := make([]feed.Cable, 0, 16)
	for i := range s.Cables {
		c := &s.Cables[i]
		plugs := make([]feed.Plug, 0, len(c.Plugs))
		for _, p := range c.Plugs {
			plug := feed.Plug{Kind: plugOf(p)}
			if p == part.PlugCard12 {
				plug.LimitMW = int64(figure(v, c.Rated, &s.Article, "cables.rated_w"))
			}
			plugs = append(plugs, plug)
		}
		for range figure(v, c.Count, &s.Article, "cables.count") {
			list = append(list, feed.Cable{Plugs: plugs})
		}
	}
	return list
}

func socketOf(k part.SocketKind) feed.SocketKind {
	switch k {
	case part.SocketProcessor8:
		return feed.SocketProcessor8
	case part.SocketProcessor4:
		return feed.SocketProcessor4
	case part.SocketCard8:
		return feed.SocketCard8
	case part.SocketCard6:
		return feed.SocketCard6
	case part.SocketCard12:
		return feed.SocketCard12
	}
	return feed.SocketMain24
}

func plugOf(k part.PlugKind) feed.PlugKind {
	switch k {
	case part.PlugProcessor44:
		return feed.PlugProcessor4Plus4
	case part.PlugProcessor8:
		return feed.PlugProcessor8
	case part.PlugProcessor4:
		return feed.PlugProcessor4
	case part.PlugCard62:
		return feed.PlugCard6Plus2
	case part.PlugCard8:
		return feed.PlugCard8
	case part.PlugCard6:
		return feed.PlugCard6
	case part.PlugCard12:
		return feed.PlugCard12
	case part.PlugSATA:
		return feed.PlugSATA
	case part.PlugPeripheral:
		return feed.PlugPeripheral
	}
	return feed.PlugMain24
}

// servedBy is the socket that a plug is for.
func servedBy(k part.PlugKind) feed.SocketKind {
	switch k {
	case part.PlugSATA:
		return feed.SocketSATA
	case part.PlugPeripheral:
		return feed.SocketPeripheral
	case part.PlugCard62, part.PlugCard8:
		return feed.SocketCard8
	case part.PlugCard6:
		return feed.SocketCard6
	case part.PlugCard12:
		return feed.SocketCard12
	case part.PlugProcessor44, part.PlugProcessor8:
		return feed.SocketProcessor8
	case part.PlugProcessor4:
		return feed.SocketProcessor4
	}
	return feed.SocketMain24
}
