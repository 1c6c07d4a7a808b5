package rule

import (
	"fmt"

	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// RearPorts is the fast USB ports of the machine against those the brief asks for.
var RearPorts = Rule{
	ID:    "rear-ports",
	Group: Mate,
	Title: "The machine has the USB ports asked for",
	Doc: `have = USB ports of 5 Gbit/s and more: rear ports of the board + ports of cards + front sockets of the case on 19-pin and
	Type-C headers; need = what the brief asks
Front sockets count as far as the board and the cards have headers for their leads. When short: a board or a card with more ports;
	a hub on a port shares the rate of that port.`,
	Source: "USB 3.2 (5 Gbit/s is Gen 1×1); ports of front headers: board practice",
	Reads:  []build.Seat{build.Case, build.Board, build.Cards},
	Check: func(v *View) []Margin {
		need, asked := v.Needs.Get(brief.FastPorts)
		if !asked || !v.both(build.Case, build.Board) {
			return nil
		}
		rear := fastPorts(v, v.Board.Rear, &v.Board.Article)
		for i := range v.Cards {
			rear += fastPorts(v, v.Cards[i].Card.Rear, &v.Cards[i].Card.Article) * unit.Whole(v.Cards[i].Count)
		}
		front := frontPorts(v, part.HeaderUSB19) + frontPorts(v, part.HeaderUSBC)
		v.serve(need, int64(rear+front), func() string {
			return fmt.Sprintf("%s at the rear and %d at the front", plural(rear, "fast USB port"), front)
		})
		return v.margins
	},
}

// fastPorts counts the USB ports of 5 Gbit/s and more.
func fastPorts(v *View, ports []part.RearPort, owner *part.Article) unit.Whole {
	var sum unit.Whole
	for i := range ports {
		switch ports[i].Kind {
		case part.PortUSBA5, part.PortUSBA10, part.PortUSBC10, part.PortUSBC20, part.PortUSBC40:
			sum += figure(v, ports[i].Count, owner, "rear.count")
		}
	}
	return sum
}

// frontPorts counts the front sockets of a kind whose leads find a header.
func frontPorts(v *View, kind part.HeaderKind) unit.Whole {
	headers := headersOf(v, kind)
	var sum unit.Whole
	for i := range v.Case.FrontPorts {
		p := &v.Case.FrontPorts[i]
		if p.Kind != kind {
			continue
		}
		leads := figure(v, p.Leads, &v.Case.Article, "front_ports.leads")
		ports := figure(v, p.Ports, &v.Case.Article, "front_ports.ports")
		fed := min(leads, headers)
		headers -= fed
		sum += ports * fed / max(leads, 1)
	}
	return sum
}
