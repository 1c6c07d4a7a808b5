package brief

import (
	"fmt"

	"slipfit/core/media"
	"slipfit/core/unit"
)

// Photogrammetry is models made from photographs.
type Photogrammetry struct {
	Pictures unit.Figure[unit.Whole]    `json:"pictures,omitzero" range:"3..100000" doc:"Photographs of one object; 150 where not said."`
	Mpx      unit.Figure[unit.Whole]    `json:"megapixels,omitzero" range:"1..400" doc:"Millions of pixels of a photograph; 24 where not said."`
	Wait     unit.Figure[unit.Duration] `json:"wait_min,omitzero" range:"5..10000" doc:"How long a model may take; 120 minutes where not said."`
	Week     unit.Figure[unit.Whole]    `json:"objects_week,omitzero" range:"0..1000" doc:"Objects a week; 5 where not said."`
	Kept     unit.Figure[unit.Whole]    `json:"objects_kept,omitzero" range:"0..100000" doc:"Objects kept with their photographs; 200 where not said."`
	Raw      bool                       `json:"raw,omitempty" doc:"Whether the raw photographs are kept too."`
}

func (*Photogrammetry) name() string { return "photogrammetry" }

// rawBytesPerMpx is a raw photograph: 14 bits a pixel, packed; jpegBytesPerMpx is a finely compressed one. Common practice.
const (
	rawBytesPerMpx  = 1_750_000
	jpegBytesPerMpx = 500_000
)

// wholeMpx is the millions of pixels that are matched as a whole; larger works are cut into regions. Common practice: a flight of
// a thousand photographs of 20 Mpx is worked through with 64 GB, one of five thousand with 128 to 256 GB.
const wholeMpx = 10_000

// ask turns photographs into needs. With m = photographs × megapixels:
//
//	time       m × match_core on the processor (spread over threads by Amdahl), then m × match_card on the card; each is given
//	           half of the wait for the floor, a third of it for what is enough
//	memory     4 bytes a pixel of all photographs up to 10 000 million, 1 byte past that, + 4 GiB
//	graphics   6 GiB up to 30 megapixels and 1 GiB more for every 10 above it (a pair of depth maps in float, with their pyramid)
//	cache      an object's photographs and twice their volume in depth maps and meshes, for two weeks' objects
//	archive    photographs, and a quarter of their volume for the finished model, for every object kept; with a
//	           month's new objects it is enough
//
// Source: the calibration block; 4 bytes a pixel, the shares of the volume and the graphics memory are common practice.
func (p *Photogrammetry) ask(a *asker) {
	pictures := take(a, p.Pictures, "pictures", "photographs of an object", 150, 300)
	mpx := take(a, p.Mpx, "megapixels", "megapixels", 24, 45)
	wait := take(a, p.Wait, "wait_min", "time a model may take", 120, 120)
	week := take(a, p.Week, "objects_week", "objects a week", 5, 10)
	kept := take(a, p.Kept, "objects_kept", "objects kept", 200, 500)
	total := pictures * mpx

	core, card := total*int64(a.cal.MatchCore), total*int64(a.cal.MatchCard)
	half := wait * 30
	parallel := a.cal.MatchParallel
	all := allPoints(core, parallel, half, 1200)
	a.need(AllWork, all, enoughPoints(core, parallel, half*2/3, 1500), 60, "Amdahl 1967; calibration block",
		"%d photographs × %d Mpx × %d core ms, %s, in half of %d minutes", pictures, mpx, a.cal.MatchCore, hundredths(parallel), wait)
	compute := ceil(card, max(half, 1))
	a.need(ComputeWork, compute, ceil(card, max(half*2/3, 1)), 60, "calibration block",
		"%d photographs × %d Mpx × %d card ms in the other half of %d minutes", pictures, mpx, a.cal.MatchCard, wait)
	a.need(SingleWork, 1200, 1600, 20, practice, "a tenth of the matching runs on one thread")
	a.need(Threads, 12, 24, 20, practice, "matching spreads over every thread")
	memory := int64(4*unit.GiB) + ceil((4*min(total, wholeMpx)+max(total-wholeMpx, 0))*1_000_000, media.MiB)
	cut := ""
	if total > wholeMpx {
		cut = fmt.Sprintf(", a quarter of it for what is past %d Mpx and cut into regions,", wholeMpx)
	}
	a.pairs(2)
	a.need(MemorySize, memory, memory+memory/2, 50, practice, "%d photographs × %d Mpx × 4 bytes%s + 4 GiB", pictures, mpx, cut)
	video := int64(6*unit.GiB) + max(0, ceil(mpx-30, 10))*int64(unit.GiB)
	a.need(GraphicsMemory, video, 2*video, 30, practice, "depth maps of %d Mpx photographs", mpx)
	a.need(DrawWork, 400, 1000, 20, practice, "a mesh of tens of millions of triangles is turned under the hand")

	object := ceil(total*jpegBytesPerMpx, media.MB)
	which := "fine compressed photographs"
	if p.Raw {
		object, which = ceil(total*(rawBytesPerMpx+jpegBytesPerMpx), media.MB), "raw and finely compressed photographs"
	}
	a.need(BootSize, int64(30*unit.Gigabyte), int64(60*unit.Gigabyte), 10, practice, "30 GB for matching and modelling programs")
	a.need(CacheSize, 2*week*3*object, 4*week*3*object, 20, practice,
		"%d objects of two weeks × 3 × %s of %s", 2*week, size(object), which)
	a.need(CacheWrite, hither, 1200, 10, practice, "depth maps are written as fast as they are made")
	a.need(ArchiveSize, ceil(kept*5*object, 4), ceil((kept+tidied*week)*5*object, 4), 30, practice, "%d objects × 1.25 × %s of photographs and model", kept, size(object))
	a.need(ArchiveWrite, 60, 150, 5, practice, "an object is put away in minutes")
	a.need(FastPorts, 1, 2, 5, practice, "a card reader")
	a.writesYearly(0, 52*week*3*object, 65*week*object)
	a.load(95, 80, 80, 20)
	a.mode(2560, 1440, 60, 8)
	a.job(fmt.Sprintf("a model of %d photographs of %d Mpx", pictures, mpx), wait, Job{CoreMS: core, Parallel: parallel, CardMS: card})
	a.reach("photographs of one object held in memory", photoUnit, pictures, Practice, practice, limit(MemorySize, int64(4*unit.GiB), memory-int64(4*unit.GiB)))
	a.reach("objects the archive holds", objectUnit, kept, Practice, practice, limit(ArchiveSize, 0, ceil(kept*5*object, 4)))
	a.window(Practice, practice, ceil(kept*5*object, 4), 65*week*object)
}
