package brief

import (
	"fmt"

	"slipfit/core/media"
	"slipfit/core/unit"
)

// Photography is developing and retouching photographs.
type Photography struct {
	Mpx    unit.Figure[unit.Whole] `json:"megapixels,omitzero" range:"1..400" doc:"Millions of pixels of a photograph; 24 where not said."`
	Year   unit.Figure[unit.Whole] `json:"pictures_year,omitzero" range:"0..1000000" doc:"Photographs kept a year; 8000 where not said."`
	Years  unit.Figure[unit.Whole] `json:"years_kept,omitzero" range:"0..50" doc:"Years of photographs kept on the machine; 5 where not said."`
	Batch  unit.Figure[unit.Whole] `json:"pictures_at_once,omitzero" range:"1..20000" doc:"Photographs developed in one go; 200 where not said."`
	Layers unit.Figure[unit.Whole] `json:"layers,omitzero" range:"1..200" doc:"Layers of a retouched photograph; 8 where not said."`
}

// inEarnest is the millions of pixels developed in one go from which on a photographer works through jobs, not albums: eighty
// photographs of 24 Mpx. Common practice: from there on noise is taken out and skies are masked on a card of 6 to 8 GB.
const inEarnest = 2000

func (*Photography) name() string { return "photography" }

// ask turns photographs into needs.
//
//	time      batch × megapixels × develop_core, spread over threads by Amdahl, in ten minutes; in four it is enough
//	memory    layers × photograph at 8 bytes a pixel (16 bits, four channels) × 4 for history and scratch + 4 GiB
//	graphics  1 GiB and what a processor's own graphics give; for batches past 2000 million pixels 3 GiB + 40 MiB a megapixel
//	archive   raw photographs at 1.75 MB a megapixel, years kept
//	cache     previews and the catalog: a tenth of a year's photographs, at least 50 GB
//
// Source: 14 bits a raw pixel; the rest common practice and the calibration block.
func (p *Photography) ask(a *asker) {
	mpx := take(a, p.Mpx, "megapixels", "megapixels", 24, 45)
	year := take(a, p.Year, "pictures_year", "photographs a year", 8000, 12000)
	years := take(a, p.Years, "years_kept", "years kept", 5, 6)
	batch := take(a, p.Batch, "pictures_at_once", "photographs developed in one go", 200, 500)
	layers := take(a, p.Layers, "layers", "layers", 8, 12)
	core := batch * mpx * int64(a.cal.DevelopCore)
	a.need(AllWork, allPoints(core, a.cal.DevelopParallel, 600, 1200), enoughPoints(core, a.cal.DevelopParallel, 240, 1500), 40, "Amdahl 1967; calibration block",
		"%d photographs × %d Mpx × %d core ms, %s, in ten minutes", batch, mpx, a.cal.DevelopCore, hundredths(a.cal.DevelopParallel))
	a.need(SingleWork, 1200, 1700, 40, practice, "a brush follows the hand")
	threads, video, compute := int64(4), int64(unit.GiB), int64(60)
	if batch*mpx > inEarnest {
		threads, video, compute = 8, int64(3*unit.GiB)+40*mpx, 400
	}
	a.need(Threads, threads, 2*threads, 15, practice, "%d photographs of %d Mpx are developed side by side", batch, mpx)
	picture := media.RasterBytes(mpx*1000, 1000, 8)
	memory := int64(4*unit.GiB) + ceil(picture*layers*4, media.MiB)
	a.pairs(2)
	a.need(MemorySize, memory, 2*memory, 40, practice, "%d layers × %d MB × 4 for history and scratch + 4 GiB", layers, ceil(picture, media.MB))
	a.need(GraphicsMemory, video, max(int64(6*unit.GiB), 2*video), 15, practice, "filters on a photograph of %d Mpx, %d at a time", mpx, batch)
	a.need(ComputeWork, compute, max(600, 2*compute), 20, practice, "noise is taken out of %d photographs by the graphics engine", batch)
	a.need(DrawWork, 60, 200, 10, practice, "a large photograph is moved and scaled")
	yearMB := ceil(year*mpx*rawBytesPerMpx, media.MB)
	a.need(BootSize, int64(40*unit.Gigabyte), int64(80*unit.Gigabyte), 10, practice, "40 GB for developing and retouching programs")
	a.need(CacheSize, max(yearMB/10, int64(50*unit.Gigabyte)), max(yearMB/4, int64(100*unit.Gigabyte)), 15, practice, "previews: a tenth of a year's %s, at least 50 GB", size(yearMB))
	a.need(CacheWrite, 150, 500, 5, practice, "a card is read in")
	a.need(ArchiveSize, years*yearMB, (years+1)*yearMB, 30, "14 bits a raw pixel; common practice", "%d years × %d photographs × %d Mpx × 1.75 MB", years, year, mpx)
	a.need(ArchiveWrite, 60, 150, 5, practice, "a day's photographs are put away in minutes")
	a.need(FastPorts, 1, 2, 5, practice, "a card reader")
	a.writesYearly(0, 2*yearMB, yearMB)
	a.load(50, 30, 50, 20)
	bits := 8
	if layers > 4 {
		bits = 10 // retouching in earnest
	}
	a.mode(2560, 1440, 60, bits)
	a.job(fmt.Sprintf("%d photographs developed in one go", batch), 10, Job{CoreMS: core, Parallel: a.cal.DevelopParallel})
	a.reach("layers of a retouched photograph held in memory", layerUnit, layers, Practice, practice, limit(MemorySize, int64(4*unit.GiB), memory-int64(4*unit.GiB)))
	a.reach("photographs the archive holds", photoUnit, years*year, Practice, practice, limit(ArchiveSize, 0, years*yearMB))
	a.window(Practice, practice, years*yearMB, yearMB)
}
