package brief

import (
	"slipfit/core/media"
	"slipfit/core/unit"
)

// Guests is running other systems inside this one.
type Guests struct {
	Count   unit.Figure[unit.Whole]   `json:"guests,omitzero" range:"1..200" doc:"Guests running at once; 2 where not said."`
	Threads unit.Figure[unit.Whole]   `json:"threads_each,omitzero" range:"1..64" doc:"Threads of each; 4 where not said."`
	Memory  unit.Figure[unit.Memory]  `json:"memory_each_gib,omitzero" range:"1..512" doc:"Memory of each; 8 GiB where not said."`
	Disk    unit.Figure[unit.Storage] `json:"disk_each_gb,omitzero" range:"5..20000" doc:"Disk of each; 80 GB where not said."`
}

func (*Guests) name() string { return "virtual machines" }

// ask turns guests into needs.
//
//	threads   all guests' threads for what is enough; two guests' threads share one for the floor
//	memory    sum of the guests + 8 GB for the host, which the system's own share is part of
//	cache     sum of the guests' disks
//
// Sources: guests' sum + 4 to 8 GB as package media gives it; sharing: common practice.
func (g *Guests) ask(a *asker) {
	count := take(a, g.Count, "guests", "guests", 2, 4)
	threads := take(a, g.Threads, "threads_each", "threads of a guest", 4, 4)
	memory := take(a, g.Memory, "memory_each_gib", "memory of a guest", 8*unit.GiB, 16*unit.GiB)
	disk := take(a, g.Disk, "disk_each_gb", "disk of a guest", 80*unit.Gigabyte, 160*unit.Gigabyte)
	total := count * threads
	a.need(Threads, ceil(total, 2), total, 40, practice, "%d guests × %d threads, two sharing one", count, threads)
	points := ceil(total*int64(a.cal.GuestPoints), 2)
	a.need(AllWork, points, 2*points, 40, "calibration block", "%d guests × %d threads × %d points, half of them busy", count, threads, a.cal.GuestPoints)
	own := int64(4*unit.GiB + LentMemory) // asked for by the system
	sum := max(ceil(media.GuestBytes(count*memory*media.MiB), media.MiB)-own, count*memory)
	a.pairs(4)
	a.need(MemorySize, sum, sum+count*memory/2, 60, practice, "%d guests × %s + 8 GB for the host, less the system's own 6 GiB", count, unit.Memory(memory).Q())
	a.need(SingleWork, 1000, 1400, 10, practice, "a guest answers")
	a.need(BootSize, int64(20*unit.Gigabyte), int64(40*unit.Gigabyte), 5, practice, "20 GB for the host's programs and images")
	a.need(CacheSize, count*disk, 2*count*disk, 25, practice, "%d guests × %s", count, size(disk))
	a.need(CacheWrite, hither, 800, 10, practice, "guests write side by side")
	a.writesYearly(0, count*10*int64(unit.Terabyte), 0)
	a.load(50, 0, 60, 20)
	a.reach("guests running at once", guestUnit, count, Practice, practice,
		limit(MemorySize, sum-count*memory, count*memory), limit(Threads, 0, ceil(total, 2)), limit(AllWork, 0, points), limit(CacheSize, 0, count*disk))
}
