package grow

import (
	"fmt"

	"slipfit/core/link"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// drive varies a drive: rates within its bus, endurance, power. Form, bus, capacity, heights of bare modules and of boxes
// stay.
func (g *grower) drive(p *part.Drive) string {
	was := *p
	faster := g.about(70)
	low, top := busRates(p)
	vary(&p.Read, 5, low, top, faster)
	vary(&p.Write, 5, 20, p.Read.Or(20_000), change(p.Read, was.Read), g.about(60))
	if p.Disk { // a disk writes as fast as it reads
		p.Write = p.Read
	}
	vary(&p.Held, 5, 20, p.Write.Or(20_000), faster, g.about(120))
	lasting := g.about(200)
	if size, ok := p.Capacity.Get(); ok { // 200 to 2000 full writes (common practice)
		least := max((unit.Endurance(size)*200+999_999)/1_000_000, 10)
		vary(&p.Endures, 10, least, max(least, min(unit.Endurance(size)*2000/1_000_000, 50_000)), lasting)
	}
	if p.Sink.Or(false) { // a module with a sink of its own is 8 to 20 mm tall (common practice)
		vary(&p.Above, mm/2, 8*mm, 20*mm, g.about(150))
	}
	most := 20 * w
	if p.Form == part.FormM2 { // key M 14.85 W; key B, as a SATA module also fits, 8.25 W (pin-out, from memory)
		most = 14_850
		if p.Bus == part.BusSATA {
			most = 8_250
		}
	}
	vary(&p.Power, w/10, w/2, most, faster.lean(50), g.about(70))
	vary(&p.Idle, w/100, 10, max(min(12*w, p.Power.Or(12*w)-w/10), 10), g.about(120))
	cooler := g.about(70)
	vary(&p.SinkAir, 100, 500, 40_000, cooler)
	if p.Disk {
		if p.SpinUp.Or(0) > 0 { // 1.4 to 2.2 A at 12 V (common practice)
			vary(&p.SpinUp, 100, 1400, 2200, g.about(80))
		}
		move(&p.Sound, unit.Sound(500*g.shift(3)), 20_000, 35_000)
	}
	mass(&p.Article, change(p.Above, was.Above).lean(60), g.about(20))
	price(&p.Article, faster.lean(60), lasting.lean(15), cooler.lean(-10), g.about(50))
	return capacity(p)
}

// busRates is what sequential reads may reach: half to 0.96 of the lanes for modules on PCIe, 600 MB/s on SATA, 300 MB/s for
// disks.
func busRates(p *part.Drive) (low, top unit.Throughput) {
	generation, okG := p.PCIe.Get()
	lanes, okL := p.Lanes.Get()
	switch {
	case p.Disk:
		return 20, 300
	case p.Bus == part.BusSATA:
		return 20, 580
	case okG && okL:
		if bytes, err := link.ExpressBytePerS(int(generation/1000), int(lanes)); err == nil {
			all := unit.Throughput(bytes / 1_000_000)
			return all/2 + 5, all * 96 / 100
		}
	}
	return 20, p.Read.Or(20)
}

// capacity is a drive's size as drives are sold.
func capacity(p *part.Drive) string {
	size, ok := p.Capacity.Get()
	switch {
	case !ok:
		return ""
	case size%unit.Terabyte == 0:
		return fmt.Sprintf("%d TB", size/unit.Terabyte)
	}
	return fmt.Sprintf("%d GB", size/unit.Gigabyte)
}
