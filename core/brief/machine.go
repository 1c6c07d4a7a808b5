package brief

import (
	"slipfit/core/part"
	"slipfit/core/unit"
)

// machine is what any machine asks before any work is done on it: the system itself, its programs, a click that is answered,
// a network, years of life.
//
//	memory   4 GiB for system and desktop + 2 GiB that graphics without memory of their own borrow
//	boot     100 GB for the system, its updates and ordinary programs
//	life     5 years, or as many as pass until an upgrade is thought of
//
// Source: common practice.
func (b *Brief) machine(cal *part.Calibration) demand {
	d := demand{name: "system", atOnce: true, unseen: true}
	a := asker{cal: cal, out: &d}
	for _, a.high = range []bool{false, true} {
		a.need(SingleWork, 900, 1300, 30, practice, "a click is answered at once")
		a.need(AllWork, 1000, 2000, 5, practice, "the system's own work")
		a.need(Threads, 2, 2, 5, practice, "two threads for the system's own work")
		a.need(MemorySize, int64(4*unit.GiB+LentMemory), int64(6*unit.GiB+LentMemory), 20, practice,
			"4 GiB for system and desktop and %s that graphics may borrow", LentMemory.Q())
		a.need(GraphicsMemory, int64(unit.GiB), int64(unit.GiB), 5, practice, "1 GiB for the desktop")
		a.need(DrawWork, 20, 40, 5, practice, "the desktop is drawn")
		a.need(BootSize, int64(100*unit.Gigabyte), int64(200*unit.Gigabyte), 10, practice, "100 GB for the system, its updates and ordinary programs")
		a.need(BootRead, 450, 3000, 10, practice, "a solid-state drive starts the system in seconds, a disk in minutes")
		a.need(FastPorts, 2, 4, 5, practice, "two fast ports for sticks and drives")
		life := max(5, int64(b.Wish.Growth.Or(5)))
		a.need(Endurance, life*1000, 2*life*1000, 5, "JESD218", "%d years until the machine is thought of anew", life)
		b.network(&a)
	}
	a.high = false
	a.writesYearly(7*int64(unit.Terabyte), 0, 0)
	d.screen = Screen{Width: 1920, Height: 1080, Refresh: 60, Bits: 8, Count: 1}
	return d
}

// network asks for the network the customer uses.
func (b *Brief) network(a *asker) {
	const source = "IEEE 802.3: 1000 Mbit/s carries about 119 MB/s; common practice"
	switch b.Network {
	case "none":
	case "radio":
		a.need(Wireless, 1000, 2400, 10, source, "the network is reached by radio")
	case "both":
		a.need(Wireless, 1000, 2400, 10, source, "the network is reached by radio too")
		a.need(Wired, 1000, 2500, 10, source, "the network is reached by cable")
	case "":
		a.assume("network not said: a cable taken")
		a.need(Wired, 1000, 1000, 5, source, "the network is reached by cable")
	default:
		a.need(Wired, 1000, 2500, 10, source, "the network is reached by cable")
	}
}
