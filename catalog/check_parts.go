package catalog

import (
	"fmt"
	"slices"
	"strconv"

	"slipfit/core/part"
	"slipfit/core/unit"
)

func (c *checker) processor(at string, p *part.Processor) {
	ordered(c, at+".boost_w", p.Boost, "sustained_w", p.Sustained, watts)
	ordered(c, at+".sustained_w", p.Sustained, "idle_w", p.Idle, watts)
	ordered(c, at+".threads", p.Threads, "cores", p.Cores, number)
	ordered(c, at+".all_points", p.All, "single_points", p.Single, func(w unit.Points) string { return w.Q().String() })
	chipsets, types := map[string]bool{}, map[string]bool{}
	for i, f := range p.Platforms {
		c.once(fmt.Sprintf("%s.platforms[%d]", at, i), ".chipset", chipsets, f.Chipset)
	}
	for i, m := range p.Memory {
		in := fmt.Sprintf("%s.memory[%d]", at, i)
		c.once(in, ".type", types, string(m.Type))
		ordered(c, in+".one_mt_s", m.One, "two_mt_s", m.Two, func(r unit.TransferRate) string { return r.Q().String() })
	}
}

func (c *checker) cooler(at string, p *part.Cooler) {
	if (p.Air == nil) == (p.Liquid == nil) {
		got := "neither"
		if p.Air != nil {
			got = "both"
		}
		c.fail(at, got, "the figures of an air cooler or those of a liquid one")
	}
	c.fan(at+".fan", p.Fan)
}

func (c *checker) graphics(at string, p *part.Graphics) {
	ordered(c, at+".peak_w", p.Peak, "power_w", p.Power, watts)
	ordered(c, at+".power_w", p.Power, "idle_w", p.Idle, watts)
	if (p.PlugSide == "none") != (len(p.Sockets) == 0) {
		c.fail(at+".plug_side", strconv.Quote(p.PlugSide), "none exactly where the card has no power socket")
	}
}

func (c *checker) supply(at string, p *part.Supply) {
	c.fan(at+".fan", p.Fan)
	for i := 1; i < len(p.Curve); i++ {
		if p.Curve[i].Load <= p.Curve[i-1].Load {
			c.fail(fmt.Sprintf("%s.efficiency[%d].load_percent", at, i), p.Curve[i].Load.Q().String(), "more than the load point before it, "+p.Curve[i-1].Load.Q().String())
		}
	}
	for i, cable := range p.Cables {
		if w, ok := cable.Rated.Get(); ok && !slices.Contains(cable.Plugs, part.PlugCard12) {
			c.fail(fmt.Sprintf("%s.cables[%d].rated_w", at, i), watts(w), "a power only where the cable has a 12-contact plug")
		}
	}
}

func (c *checker) drive(at string, p *part.Drive) {
	if n, ok := p.Module.Get(); ok && p.Form != part.FormM2 {
		c.fail(at+".module_length", number(n), "a module length only for form m.2")
	}
	if h, ok := p.Height.Get(); ok && p.Form == part.FormM2 {
		c.fail(at+".height_mm", h.Q().String(), "a height only for forms 2.5 and 3.5; a module states height_above_mm")
	}
	if n, ok := p.Lanes.Get(); ok && p.Bus != part.BusPCIe {
		c.fail(at+".lanes", number(n), "PCIe lanes only on bus pcie")
	}
	if p.Disk && (p.Bus != part.BusSATA || p.Form == part.FormM2) {
		c.fail(at+".disk", "true", "turning disks only on bus sata in forms 2.5 and 3.5")
	}
	if _, ok := p.Endures.Get(); ok && p.Disk {
		c.fail(at+".endurance_tbw", "a figure", "nothing: turning disks state no endurance in this sense")
	}
	ordered(c, at+".write_mb_s", p.Write, "write_held_mb_s", p.Held, func(t unit.Throughput) string { return t.Q().String() })
	ordered(c, at+".power_w", p.Power, "idle_w", p.Idle, watts)
}

func (c *checker) card(at string, p *part.Card) {
	if (p.From == "") != (p.To == "") || (p.Use == part.UseDisplay) != (p.From != "") {
		c.fail(at+".from_link", strconv.Quote(string(p.From)), "from_link and to_link together, on a display adapter and on nothing else")
	}
	if w, ok := p.Holds.Get(); ok && p.Use != part.UseHolder {
		c.fail(at+".holds_kg", w.Q().String(), "a mass only for a card holder")
	}
}

func (c *checker) ups(at string, p *part.UPS) {
	ordered(c, at+".rating_va", p.Apparent, "rating_w", p.Real, func(w unit.Power) string { return w.Q().Figure() })
	for i := 1; i < len(p.Runtime); i++ {
		in, now, before := fmt.Sprintf("%s.runtime[%d]", at, i), p.Runtime[i], p.Runtime[i-1]
		if now.Load <= before.Load {
			c.fail(in+".load_w", watts(now.Load), "more than the load before it, "+watts(before.Load))
		}
		if now.Minutes > before.Minutes {
			c.fail(in+".minutes_min", now.Minutes.Q().String(), "no longer than at the smaller load before it, "+before.Minutes.Q().String())
		}
	}
}
