package rule

import (
	"fmt"

	"slipfit/core/build"
	"slipfit/core/feed"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// FrontUSBCurrent is the current of each front USB header against the sockets it serves.
var FrontUSBCurrent = Rule{
	ID:    "front-usb-current",
	Group: Feed,
	Title: "Front USB headers give their sockets the current",
	Doc: `For each kind of front USB lead: have = least current of the board's headers of that kind, A; need = sockets a lead serves × current of
	a socket, A: 0.5 A (USB 2.0), 0.9 A (5 Gbit/s and more, and Type-C by default)
A Type-C socket may announce 1.5 or 3 A where the header gives it; that charges a telephone sooner and is not asked for. A front
	panel with more sockets than its lead may feed shares the current among them. When short: another board, or a case with fewer
	sockets a lead.`,
	Source: "500 mA and 900 mA a port: encyclopaedia article \"USB hardware\"; sockets a header serves: board practice",
	Reads:  []build.Seat{build.Case, build.Board},
	Check: func(v *View) []Margin {
		if !v.both(build.Case, build.Board) {
			return nil
		}
		frontUSB(v, part.HeaderUSB2, feed.USB2PortMA, "front USB 2.0")
		frontUSB(v, part.HeaderUSB19, feed.USB3PortMA, "front USB 19-pin")
		frontUSB(v, part.HeaderUSBC, feed.USB3PortMA, "front USB Type-C")
		return v.margins
	},
}

func frontUSB(v *View, kind part.HeaderKind, each unit.Current, subject string) {
	var perLead unit.Whole
	for i := range v.Case.FrontPorts {
		p := &v.Case.FrontPorts[i]
		if p.Kind != kind {
			continue
		}
		leads := max(figure(v, p.Leads, &v.Case.Article, "front_ports.leads"), 1)
		perLead = max(perLead, (figure(v, p.Ports, &v.Case.Article, "front_ports.ports")+leads-1)/leads)
	}
	if perLead == 0 && len(v.missing) == 0 {
		return
	}
	least, found := unit.Current(0), false
	for i := range v.Board.Headers {
		h := &v.Board.Headers[i]
		if h.Kind == kind {
			if i := figure(v, h.Current, &v.Board.Article, "headers.current_a"); !found || i < least {
				least, found = i, true
			}
		}
	}
	if !found { // no such header: the rule headers
		v.missing = v.missing[:0]
		return
	}
	need := each * unit.Current(perLead)
	v.find(subject, least.Q(), need.Q(), func() string {
		return fmt.Sprintf("the header gives %s, and %s on a lead %s %s", least.Q(), plural(perLead, "socket"), agree(perLead, "takes", "take"), need.Q())
	})
}
