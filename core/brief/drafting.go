package brief

import (
	"fmt"

	"slipfit/core/unit"
)

// Drafting is technical drawing and construction in three dimensions.
type Drafting struct {
	Parts    unit.Figure[unit.Whole] `json:"parts,omitzero" range:"1..1000000" doc:"Parts of the largest assembly; 500 where not said."`
	Analysis bool                    `json:"analysis,omitempty" doc:"Whether strength or flow is computed."`
	Flat     bool                    `json:"flat,omitempty" doc:"Whether drawings are flat only."`
}

// wholeParts is how many parts of an assembly are opened with all that makes them; of larger ones the rest is opened lightly, as
// surfaces alone. Common practice: ten thousand parts are turned on a card of 12 to 16 GB in 64 to 96 GB of memory.
const wholeParts = 10_000

func (*Drafting) name() string { return "drafting" }

// ask turns an assembly into needs.
//
//	one thread   a model is rebuilt on one core: 1300 points, 100 more for every tenfold of parts past 100
//	memory       8 MiB a part up to 10 000, which are opened whole, 1 MiB past that + 6 GiB; analysis asks 16 GiB more
//	graphics     points by the parts in view, at most 2000; 2 GiB + 1 MiB a part, an eighth of it past 10 000; flat drawings 1 GiB
//
// Source: common practice.
func (d *Drafting) ask(a *asker) {
	parts := take(a, d.Parts, "parts", "parts of the largest assembly", 500, 2000)
	single := int64(1300)
	for n := parts; n > 100; n /= 10 {
		single += 100
	}
	whole, light := min(parts, wholeParts), max(parts-wholeParts, 0)
	draw, memory, video := min(200+parts/2, 2000), int64(6*unit.GiB)+8*whole+light, int64(2*unit.GiB)+whole+ceil(light, 8)
	memoryWhy, videoWhy := fmt.Sprintf("%d parts × 8 MiB + 6 GiB", whole), fmt.Sprintf("meshes of %d parts × 1 MiB + 2 GiB", whole)
	if light > 0 {
		further := fmt.Sprintf(", %d more opened lightly at an eighth", light)
		memoryWhy, videoWhy = memoryWhy+further, videoWhy+further
	}
	if d.Flat {
		single, draw, memory, video = 1100, 60, int64(4*unit.GiB), int64(unit.GiB)
		memoryWhy, videoWhy = "4 GiB for flat drawings", "flat drawings"
	}
	a.need(SingleWork, min(single, 1700), min(single+400, 2000), 70, practice, "a model of %d parts is rebuilt on one thread", parts)
	a.need(DrawWork, draw, 2*draw, 30, practice, "%d parts turned under the hand", parts)
	a.need(GraphicsMemory, video, 2*video, 20, practice, "%s", videoWhy)
	a.need(AllWork, 5000, 10000, 20, practice, "drawings are derived side by side")
	a.need(Threads, 8, 12, 10, practice, "rebuilding uses one thread, drawings a few")
	a.need(MemorySize, memory, 2*memory, 40, practice, "%s", memoryWhy)
	if d.Analysis {
		a.need(AllWork, 12000, 24000, 50, practice, "strength or flow is computed on all threads")
		a.need(Threads, 12, 24, 20, practice, "strength or flow is computed on all threads")
		a.need(MemorySize, memory+int64(16*unit.GiB), 2*memory+int64(32*unit.GiB), 50, practice, "%s + 16 GiB for the analysis", memoryWhy)
		a.need(MemoryRate, 60_000, 90_000, 30, "Williams, Waterman, Patterson, CACM 52(4), 2009", "sparse equations run at the speed of memory")
	}
	a.pairs(2)
	a.need(BootSize, int64(40*unit.Gigabyte), int64(80*unit.Gigabyte), 10, practice, "40 GB for drawing programs and parts libraries")
	a.need(CacheSize, int64(50*unit.Gigabyte), int64(100*unit.Gigabyte), 10, practice, "50 GB of projects in hand")
	a.need(ArchiveSize, max(parts*20, int64(100*unit.Gigabyte)), max(parts*60, int64(200*unit.Gigabyte)), 10, practice, "finished projects")
	a.writesYearly(0, 2*int64(unit.Terabyte), 1*int64(unit.Terabyte)/5)
	a.load(40, 40, 50, 5)
	a.mode(2560, 1440, 60, 8)
	if !d.Flat {
		a.reach("parts of an assembly turned and rebuilt without waiting", partUnit, parts, Practice, practice,
			limit(DrawWork, draw-min(parts/2, draw), min(parts/2, draw)), limit(MemorySize, int64(6*unit.GiB), memory-int64(6*unit.GiB)), limit(GraphicsMemory, int64(2*unit.GiB), video-int64(2*unit.GiB)))
	}
}
