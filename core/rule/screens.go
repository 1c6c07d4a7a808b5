package rule

import (
	"fmt"

	"slipfit/core/build"
	"slipfit/core/link"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// Screens gives every screen an output that carries its picture.
var Screens = Rule{
	ID:    "screens",
	Group: Mate,
	Title: "Every screen has an output that carries its picture",
	Doc: `For each screen: have = payload of the output it gets, Mbit/s; need = pixel clock × bits per pixel of its mode at its depth in full
	colour, Mbit/s; with display stream compression 8 bits per pixel
Screens are the customer's own and those bought with the machine. Outputs are the graphics card's where there is one, and the
	board's where the processor has graphics. Every way of giving outputs and adapters to screens is tried: most screens carried, then
	fewest compressed, then fewest adapters. The pixel clock is that of CVT reduced blanking version 2, on HDMI that of CTA-861 for
	television modes; the screen must accept it. A link is the slower of output, adapter and input. A screen of the customer's own with no
	input named is taken to have the input of the output and to accept compression. On an HDMI FRL link 3 % are kept for coding. An engine
	drives no more screens than its sheet says. With no screen in the brief: have = outputs, need = 1. When it clashes: a card or board with
	a faster or one more output, an adapter, or less refresh or depth.`,
	Source: "VESA CVT 1.2, CTA-861; payloads: VESA DisplayPort 1.4 and 2.1, HDMI 1.4, 2.0 and 2.1; compression 8 bits per pixel: VESA DisplayPort 2.0, table 2-157",
	Reads:  []build.Seat{build.Board, build.Processor, build.Graphics, build.Cards, build.Screens},
	Check: func(v *View) []Margin {
		if !v.both(build.Board, build.Processor) {
			return nil
		}
		var s screenMatch
		s.gather(v)
		if len(s.pictures) == 0 || len(v.missing) > 0 {
			n := len(s.outputs)
			v.find("outputs", unit.Count(n), unit.Count(1), func() string {
				return plural(n, "display output") + " of the machine " + agree(n, "is", "are") + " live"
			})
			return v.margins
		}
		s.solve()
		for i := range s.pictures {
			s.margin(v, i)
		}
		return v.margins
	},
}

// picture is one screen with its mode; inputs is nil for one whose inputs are not known.
type picture struct {
	width, height, refresh, bits int64
	monitor                      *part.Monitor // nil for one the customer owns or has not chosen
	input                        string        // family of the only input, empty for any
}

// output is one display output with the engine that drives it.
type output struct {
	part.Output
	engine int
	owner  *part.Article
}

// carried is how a link carries a picture.
type carried struct {
	carriage   link.Carriage
	have, need int64 // bit/s
}

// screenMatch is the search for the outputs of all screens.
type screenMatch struct {
	pictures []picture
	outputs  []output
	adapters []*part.Card
	limit    [2]int // screens each engine drives at once
	grid     [][]carried
	via      [][][]carried // by adapter

	now, best   []route
	drives      [2]int
	usedOutput  uint64
	usedAdapter uint64
	bestCost    int
}

// route is the output and the adapter of a screen, −1 for none.
type route struct{ output, adapter int }

const (
	costUncarried  = 10_000
	costCompressed = 100
	costAdapter    = 1
)

// gather lists screens, outputs and adapters. A figure that decides whether something is there is noted where it lacks.
func (s *screenMatch) gather(v *View) {
	bought := 0
	for i := range v.Screens {
		bought += v.Screens[i].Count
	}
	for i := range v.Needs.Screens {
		n := &v.Needs.Screens[i]
		count := n.Count
		if !n.Owned { // those chosen already are counted by their own figures
			taken := min(count, bought)
			bought -= taken
			count -= taken
		}
		for range count {
			s.pictures = append(s.pictures, picture{width: int64(n.Width), height: int64(n.Height), refresh: int64(n.Refresh), bits: int64(n.Bits), input: n.Input})
		}
	}
	for i := range v.Screens {
		m := v.Screens[i].Monitor
		p := picture{monitor: m,
			width:   int64(figure(v, m.Width, &m.Article, "width_px")),
			height:  int64(figure(v, m.Height, &m.Article, "height_px")),
			refresh: int64(figure(v, m.Refresh, &m.Article, "refresh_hz")),
			bits:    int64(figure(v, m.Depth, &m.Article, "bits_per_colour"))}
		for range v.Screens[i].Count {
			s.pictures = append(s.pictures, p)
		}
	}
	if v.Graphics != nil {
		s.limit[0] = int(figure(v, v.Graphics.Screens, &v.Graphics.Article, "screens"))
		s.add(v, v.Graphics.Outputs, 0, &v.Graphics.Article)
	}
	if v.Processor.Graphics != nil {
		s.limit[1] = int(figure(v, v.Processor.Graphics.Screens, &v.Processor.Article, "graphics.screens"))
		s.add(v, v.Board.Outputs, 1, &v.Board.Article)
	}
	for i := range v.Cards {
		if c := &v.Cards[i]; c.Card.Use == part.UseDisplay {
			for range c.Count {
				s.adapters = append(s.adapters, c.Card)
			}
		}
	}
}

func (s *screenMatch) add(v *View, outputs []part.Output, engine int, owner *part.Article) {
	for i := range outputs {
		for range figure(v, outputs[i].Count, owner, "outputs.count") {
			s.outputs = append(s.outputs, output{outputs[i], engine, owner})
		}
	}
}

// solve finds the outputs of all screens.
func (s *screenMatch) solve() {
	s.now = make([]route, 2*len(s.pictures))
	s.best, s.now = s.now[len(s.pictures):], s.now[:len(s.pictures)]
	s.grid = make([][]carried, len(s.pictures))
	s.via = make([][][]carried, len(s.pictures))
	for p := range s.pictures {
		if p > 0 && s.pictures[p] == s.pictures[p-1] {
			s.grid[p], s.via[p] = s.grid[p-1], s.via[p-1]
			continue
		}
		s.grid[p] = make([]carried, len(s.outputs))
		s.via[p] = make([][]carried, len(s.adapters))
		for a := range s.adapters {
			s.via[p][a] = make([]carried, len(s.outputs))
		}
		for o := range s.outputs {
			s.grid[p][o] = s.carry(&s.pictures[p], &s.outputs[o], nil)
			for a := range s.adapters {
				s.via[p][a][o] = s.carry(&s.pictures[p], &s.outputs[o], s.adapters[a])
			}
		}
	}
	s.bestCost = 1 << 30
	s.place(0, 0)
}

// place tries every output, plain and by adapter, for screen p and those after it.
func (s *screenMatch) place(p, cost int) {
	if cost >= s.bestCost {
		return
	}
	if p == len(s.pictures) {
		s.bestCost = cost
		copy(s.best, s.now)
		return
	}
	for o := range s.outputs {
		engine := s.outputs[o].engine
		if s.usedOutput&(1<<o) != 0 || s.drives[engine] >= s.limit[engine] {
			continue
		}
		s.usedOutput |= 1 << o
		s.drives[engine]++
		if c, ok := price(s.grid[p][o]); ok {
			s.now[p] = route{o, -1}
			s.place(p+1, cost+c)
		}
		for a := range s.adapters {
			if c, ok := price(s.via[p][a][o]); ok && s.usedAdapter&(1<<a) == 0 {
				s.usedAdapter |= 1 << a
				s.now[p] = route{o, a}
				s.place(p+1, cost+c+costAdapter)
				s.usedAdapter &^= 1 << a
			}
		}
		s.usedOutput &^= 1 << o
		s.drives[engine]--
	}
	s.now[p] = route{-1, -1}
	s.place(p+1, cost+costUncarried)
}

// price is what a carriage costs, false where the picture does not pass.
func price(c carried) (int, bool) {
	switch c.carriage {
	case link.Fits:
		return 0, true
	case link.NeedsCompression:
		return costCompressed, true
	}
	return 0, false
}

// carry is how an output carries a screen's picture, over its best input; the zero value where no plug fits. Through an
// adapter, which passes no compressed stream, it is the tighter of the two ways, to it and from it.
func (s *screenMatch) carry(p *picture, o *output, adapter *part.Card) carried {
	if adapter == nil {
		return p.best(o.Link, o.Connector, o.Compression.Or(false))
	}
	if adapter.From.Family() != o.Link.Family() {
		return carried{}
	}
	to, from := carryMode(slower(o.Link, adapter.From), p, false), p.best(adapter.To, "", false)
	if from.carriage < to.carriage || from.carriage == to.carriage && from.have-from.need < to.have-to.need {
		return from
	}
	return to
}

// best is how a link carries the picture into the best input of its screen. A Type-C input needs a Type-C socket.
func (p *picture) best(over part.LinkKind, connector string, packs bool) carried {
	if p.monitor == nil {
		if p.input == "usb-c" && connector != "usb-c" || (p.input == "dp" || p.input == "hdmi") && p.input != over.Family() {
			return carried{}
		}
		return carryMode(over, p, packs)
	}
	var best carried
	for i := range p.monitor.Inputs {
		in := &p.monitor.Inputs[i]
		if in.Link.Family() != over.Family() || in.Connector == "usb-c" && connector != "usb-c" {
			continue
		}
		c := carryMode(slower(over, in.Link), p, packs && in.Compression.Or(false))
		if c.carriage > best.carriage || c.carriage == best.carriage && c.have > best.have {
			best = c
		}
	}
	return best
}

// screenSubjects names the screens, the most a brief asks for first.
var screenSubjects = [...]string{"screen 1", "screen 2", "screen 3", "screen 4", "screen 5", "screen 6", "screen 7", "screen 8"}

func screenSubject(i int) string {
	if i < len(screenSubjects) {
		return screenSubjects[i]
	}
	return fmt.Sprintf("screen %d", i+1)
}

// margin finds the margin of screen i.
func (s *screenMatch) margin(v *View, i int) {
	p, at := s.pictures[i], s.best[i]
	if at.output < 0 {
		s.without(v, i)
		return
	}
	o := s.outputs[at.output]
	c := s.grid[i][at.output]
	var adapter *part.Card
	if at.adapter >= 0 {
		adapter = s.adapters[at.adapter]
		c = s.via[i][at.adapter][at.output]
	}
	v.find(screenSubject(i), megabits(c.have, false), megabits(c.need, true), func() string {
		text := fmt.Sprintf("%s on the %s output of %s", p.mode(), o.Link, o.owner.Name)
		if adapter != nil {
			text += " through " + adapter.Name
		}
		if c.carriage == link.NeedsCompression {
			text += ", as a compressed stream: both ends must have display stream compression on"
		}
		return text
	})
}

// without finds that a screen has no output, against the best that any output could do.
func (s *screenMatch) without(v *View, i int) {
	p := s.pictures[i]
	var best carried
	for _, c := range s.grid[i] {
		if c.have > best.have {
			best = c
		}
	}
	for o := range s.outputs {
		if s.grid[i][o].have > 0 { // compression might carry it, were it stated
			figure(v, s.outputs[o].Compression, s.outputs[o].owner, "outputs.compression")
		}
	}
	outputs, need := len(s.outputs), best.need
	if need == 0 {
		need = pixelClock(part.DPHBR3, &p) * 1000 * 3 * p.bits
	}
	reason := ""
	switch {
	case best.have == 0:
		reason = "no output of the machine has its plug: an adapter would serve"
	case best.carriage == link.No:
		reason = "no output carries it: less refresh or depth, or a faster output"
	case best.carriage == link.Doubtful:
		reason = "the fastest output carries it only within 3 % of its limit, which is not sure"
	}
	if reason != "" {
		have := megabits(best.have, false)
		if best.carriage == link.Doubtful {
			have = megabits(best.have*97/100, false)
		}
		v.find(screenSubject(i), have, megabits(need, true), func() string { return p.mode() + ": " + reason })
		return
	}
	v.find(screenSubject(i), megabits(0, false), megabits(need, true), func() string {
		if outputs == 1 {
			return p.mode() + ": the one output that the machine can drive is taken by another screen"
		}
		return fmt.Sprintf("%s: all %d outputs that the machine can drive are taken by the other screens", p.mode(), outputs)
	})
}

// mode is the picture in words.
func (p picture) mode() string {
	return fmt.Sprintf("%d × %d at %d Hz, %d bits a colour", p.width, p.height, p.refresh, p.bits)
}

// megabits rounds bit/s to Mbit/s, a need up and a gift down.
func megabits(perSecond int64, up bool) unit.Quantity {
	if up {
		perSecond += 999_999
	}
	return unit.LinkRate(perSecond / 1_000_000).Q()
}
