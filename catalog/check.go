package catalog

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"slipfit/core/format"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// checker gathers what the schemas cannot say: names that must exist, figures that must agree with one another. A figure
// that is missing is never wrong here; the verdicts that need it are unknown.
type checker struct {
	file string
	errs []error
}

func (c *checker) fail(path, value, want string) {
	c.errs = append(c.errs, &format.Error{File: c.file, Path: path, Value: value, Want: want})
}

// check checks a whole stock.
func check(s *part.Stock) []error {
	c := &checker{}
	c.ids(s)
	c.shop(s)
	c.calibration(s)
	each(c, "cases.json", s.Cases, c.enclosure)
	each(c, "boards.json", s.Boards, c.board)
	each(c, "processors.json", s.Processors, c.processor)
	each(c, "coolers.json", s.Coolers, c.cooler)
	each(c, "graphics.json", s.Graphics, c.graphics)
	each(c, "supplies.json", s.Supplies, c.supply)
	each(c, "drives.json", s.Drives, c.drive)
	each(c, "fans.json", s.Fans, func(at string, f *part.Fan) { c.fan(at, f.FanFigures) })
	each(c, "cards.json", s.Cards, c.card)
	each(c, "ups.json", s.UPS, c.ups)
	return c.errs
}

// each checks the parts of one file.
func each[P any](c *checker, file string, list []*P, one func(at string, p *P)) {
	c.file = file
	for i, p := range list {
		one("parts["+strconv.Itoa(i)+"]", p)
	}
}

// ids checks that no two parts of any kind share an id.
func (c *checker) ids(s *part.Stock) {
	first := make(map[string]place, len(s.Articles()))
	own(c, first, "cases.json", s.Cases)
	own(c, first, "boards.json", s.Boards)
	own(c, first, "processors.json", s.Processors)
	own(c, first, "coolers.json", s.Coolers)
	own(c, first, "memory.json", s.Memory)
	own(c, first, "graphics.json", s.Graphics)
	own(c, first, "supplies.json", s.Supplies)
	own(c, first, "drives.json", s.Drives)
	own(c, first, "fans.json", s.Fans)
	own(c, first, "monitors.json", s.Monitors)
	own(c, first, "cards.json", s.Cards)
	own(c, first, "ups.json", s.UPS)
	own(c, first, "services.json", s.Services)
}

// place is where a part stands: the file and the position in it.
type place struct {
	file string
	i    int
}

func (p place) at() string { return fmt.Sprintf("parts[%d].id", p.i) }

func own[P interface{ Common() *part.Article }](c *checker, first map[string]place, file string, list []P) {
	c.file = file
	for i, p := range list {
		id, here := p.Common().ID, place{file, i}
		if other, taken := first[id]; taken {
			c.fail(here.at(), strconv.Quote(id), "an id of its own; "+other.file+": "+other.at()+" has this one")
			continue
		}
		first[id] = here
	}
}

func (c *checker) shop(s *part.Stock) {
	c.file = "shop.json"
	for i, id := range s.Shop.Labour {
		if _, ok := part.Find(s.Services, id); !ok {
			c.fail(fmt.Sprintf("shop.labour[%d]", i), strconv.Quote(id), "the id of a part in services.json")
		}
	}
}

// calibration checks that the references are of this catalog and are what their points say.
func (c *checker) calibration(s *part.Stock) {
	c.file = "calibration.json"
	if core := s.Calibration.Core; core != "" {
		p, ok := part.Find(s.Processors, core)
		if !ok || p.Single.Or(1000) != 1000 {
			c.fail("calibration.core", strconv.Quote(core), "the id of a processor of 1000 single_points in processors.json")
		}
	}
	if card := s.Calibration.Card; card != "" {
		p, ok := part.Find(s.Graphics, card)
		if !ok || p.Draw.Or(1000) != 1000 || p.Compute.Or(1000) != 1000 {
			c.fail("calibration.card", strconv.Quote(card), "the id of a card of 1000 draw_points and 1000 compute_points in graphics.json")
		}
	}
}

// once checks that names do not repeat within one list.
func (c *checker) once(at, field string, seen map[string]bool, name string) {
	if seen[name] {
		c.fail(at+field, strconv.Quote(name), "a name used once")
	}
	seen[name] = true
}

// ordered checks that one stated figure is not under another.
func ordered[T ~int64](c *checker, at string, high unit.Figure[T], name string, low unit.Figure[T], show func(T) string) {
	h, okH := high.Get()
	l, okL := low.Get()
	if okH && okL && h < l {
		c.fail(at, show(h), "no less than "+name+", "+show(l))
	}
}

func watts(p unit.Power) string  { return p.Q().String() }
func number(n unit.Whole) string { return n.Q().String() }
func turns(n unit.Speed) string  { return fmt.Sprintf("%d rpm", n) }

func (c *checker) fan(at string, f part.FanFigures) {
	ordered(c, at+".speed_rpm", f.Speed, "lowest_rpm", f.Lowest, turns)
}

// holes is what each board form screws to, after the microATX specification 1.2, figure 2 and section 2.2 (S is
// optional), and the Mini-ITX addendum 1.1, table 1.
func holes(f part.BoardForm) string {
	switch f {
	case part.ATX:
		return "ACFGHJKLM"
	case part.MicroATX:
		return "BCFHJLMR"
	}
	return "CFHJ"
}

func (c *checker) enclosure(at string, p *part.Case) {
	if slices.Contains(p.Glazed, part.Side) != (p.GlazedSide != "") {
		c.fail(at+".glazed_side", strconv.Quote(p.GlazedSide), `left, right or both where glazed names the side, and nothing where it does not`)
	}
	w, okW := p.Outer.Width.Get()
	h, okH := p.Outer.Height.Get()
	d, okD := p.Outer.Depth.Get()
	v, okV := p.Volume.Get()
	if box := unit.Millilitre(w / 1000 * h / 1000 * d / 1e6); okW && okH && okD && okV && v > box {
		c.fail(at+".volume_l", v.Q().String(), "no more than its outer size holds, "+box.Q().String())
	}
	for i, f := range p.Fans {
		c.fan(fmt.Sprintf("%s.fans[%d]", at, i), f.FanFigures)
	}
	layouts := map[string]bool{}
	for i := range p.Layouts {
		l := &p.Layouts[i]
		in := fmt.Sprintf("%s.layouts[%d]", at, i)
		c.once(in, ".id", layouts, l.ID)
		c.layout(in, l)
	}
}

func (c *checker) layout(at string, l *part.Layout) {
	for i, s := range l.Standoffs {
		if len(s) != 1 || !strings.Contains("ABCFGHJKLMRS", s) {
			c.fail(fmt.Sprintf("%s.standoffs[%d]", at, i), strconv.Quote(s), "one of A, B, C, F, G, H, J, K, L, M, R, S")
		}
	}
	for i, f := range l.Boards {
		for _, hole := range holes(f) {
			if !slices.Contains(l.Standoffs, string(hole)) {
				c.fail(fmt.Sprintf("%s.boards[%d]", at, i), strconv.Quote(string(f)), "a form whose holes "+holes(f)+" all have a standoff; "+string(hole)+" has none")
			}
		}
	}
	if cooler, ok := l.Cooler.Get(); ok && l.Plate != nil {
		if travel := l.Plate.Step * unit.Length(l.Plate.Steps); travel >= cooler {
			c.fail(at+".plate.steps", number(l.Plate.Steps), "steps that leave room for a cooler; they take "+travel.Q().String()+" of "+cooler.Q().String())
		}
	}
	bays := map[string]bool{}
	for i, b := range l.Bays {
		c.once(fmt.Sprintf("%s.bays[%d]", at, i), ".id", bays, b.ID)
	}
	for i, r := range l.Radiators {
		for j, id := range r.Bays {
			if !bays[id] {
				c.fail(fmt.Sprintf("%s.radiators[%d].takes_bays[%d]", at, i, j), strconv.Quote(id), "the id of a bay of this layout")
			}
		}
	}
}

func (c *checker) board(at string, p *part.Board) {
	lanes := map[string]unit.Figure[unit.Whole]{}
	names := map[string]bool{}
	for i, s := range p.Cards {
		in := fmt.Sprintf("%s.slots[%d]", at, i)
		c.once(in, ".id", names, s.ID)
		lanes[s.ID] = s.Lanes
		ordered(c, in+".size_lanes", s.Size, "lanes", s.Lanes, number)
	}
	for i, s := range p.M2 {
		c.once(fmt.Sprintf("%s.m2[%d]", at, i), ".id", names, s.ID)
		lanes[s.ID] = s.Lanes
	}
	for i := range p.SATA.Or(0) {
		name := fmt.Sprintf("sata%d", i+1)
		c.once(at, ".sata", names, name)
		lanes[name] = unit.Known(unit.Whole(0))
	}
	for i, s := range p.Cards {
		c.sharing(fmt.Sprintf("%s.slots[%d]", at, i), s.ID, s.Shares, lanes)
	}
	for i, s := range p.M2 {
		c.sharing(fmt.Sprintf("%s.m2[%d]", at, i), s.ID, s.Shares, lanes)
	}
	ordered(c, at+".memory_speed_mt_s", p.Speed, "memory_speed_two_mt_s", p.SpeedTwo, func(r unit.TransferRate) string { return r.Q().String() })
	ordered(c, at+".memory_limit_gib", p.MemoryTo, "module_limit_gib", p.ModuleTo, func(m unit.Memory) string { return m.Q().String() })
}

// sharing checks that what a slot or socket takes lanes from exists and had as many.
func (c *checker) sharing(at, self string, shares []part.Sharing, lanes map[string]unit.Figure[unit.Whole]) {
	for i, s := range shares {
		in := fmt.Sprintf("%s.shares[%d]", at, i)
		has, exists := lanes[s.With]
		if !exists || s.With == self {
			c.fail(in+".with", strconv.Quote(s.With), "the id of another slot, socket or SATA port of this board")
			continue
		}
		if n, ok := has.Get(); ok && s.Lanes > n {
			c.fail(in+".leaves_lanes", number(s.Lanes), "no more than the "+number(n)+" lanes "+s.With+" has")
		}
	}
}
