package brief

import (
	"fmt"

	"slipfit/core/media"
	"slipfit/core/unit"
)

// Modelling is modelling and rendering in three dimensions.
type Modelling struct {
	Triangles unit.Figure[unit.Whole]    `json:"million_triangles,omitzero" range:"0..10000" doc:"Millions of triangles of a scene; 20 where not said."`
	Textures  unit.Figure[unit.Whole]    `json:"textures,omitzero" range:"0..10000" doc:"Textures of 4096 × 4096 pixels; 40 where not said."`
	Width     unit.Figure[unit.Whole]    `json:"width_px,omitzero" range:"320..16384" doc:"Width of a rendered picture; 1920 where not said."`
	Height    unit.Figure[unit.Whole]    `json:"height_px,omitzero" range:"240..16384" doc:"Height of a rendered picture; 1080 where not said."`
	Samples   unit.Figure[unit.Whole]    `json:"samples,omitzero" range:"1..10000" doc:"Samples a pixel; 256 where not said."`
	Pictures  unit.Figure[unit.Whole]    `json:"pictures,omitzero" range:"1..100000" doc:"Pictures rendered in one go: 1 for a still, thousands for a film; 50 where not said."`
	Wait      unit.Figure[unit.Duration] `json:"wait_min,omitzero" range:"1..100000" doc:"How long they may take; a night of 600 minutes where not said."`
	On        RenderOn                   `json:"renders_on,omitempty" doc:"card or processor: what the program renders on; the card where not said."`
	Kept      unit.Figure[unit.Storage]  `json:"kept_gb,omitzero" range:"0..500000" doc:"Projects kept; 1000 GB where not said."`
}

// RenderOn is what a program renders on.
type RenderOn string

// What programs render on.
const (
	OnCard      RenderOn = "card"
	OnProcessor RenderOn = "processor"
)

// Values lists the accepted words.
func (RenderOn) Values() []string { return []string{"card", "processor"} }

func (*Modelling) name() string { return "modelling" }

// ask turns a scene into needs.
//
//	samples         pictures × width × height × samples a pixel; render_card or render_core each 10^9
//	graphics        samples in the wait for the floor, in a third of it for what is enough
//	scene           200 bytes a triangle + textures with their smaller copies, a fifth of the whole kept spare; it must fit the
//	                card that renders it, where the spare is at least the program's 2 GiB, and twice over in main memory
//
// Sources: scene as package media computes it; rendering: the calibration block.
func (m *Modelling) ask(a *asker) {
	triangles := take(a, m.Triangles, "million_triangles", "triangles of a scene in millions", 20, 40)
	textures := take(a, m.Textures, "textures", "textures", 40, 80)
	w := take(a, m.Width, "width_px", "picture width", 1920, 3840)
	h := take(a, m.Height, "height_px", "picture height", 1080, 2160)
	samples := take(a, m.Samples, "samples", "samples a pixel", 256, 256)
	pictures := take(a, m.Pictures, "pictures", "pictures in one go", 50, 100)
	wait := take(a, m.Wait, "wait_min", "time they may take", 600, 600)
	on := takeWord(a, m.On, "renders_on", "what renders", OnCard, OnCard)
	kept := take(a, m.Kept, "kept_gb", "projects kept", 1000*unit.Gigabyte, 2000*unit.Gigabyte)

	mega := ceil(pictures*w*h*samples, 1_000_000) // millions of samples
	seconds := wait * 60
	why := "%d pictures × %d × %d × %d samples × %d s for 10^9 samples, in %d minutes"
	a.need(ComputeWork, 400, 800, 30, practice, "the view is shaded while it is worked on")
	a.need(AllWork, 7000, 14000, 25, practice, "simulation, baking and export spread over threads")
	scene := media.SceneBytes(triangles*1_000_000, textures*media.TextureBytes(4096, 4096, 4))
	sceneMiB := ceil(scene, media.MiB)
	textureMiB := ceil(textures*media.TextureBytes(4096, 4096, 4), media.MiB)
	meshMiB := ceil(triangles*200*1_000_000, media.MiB)
	video := max(sceneMiB, meshMiB+textureMiB+int64(2*unit.GiB))
	var job Job
	threads := int64(8)
	told := "scene of %d million triangles × 200 bytes + %d textures × 89 MB, a fifth kept spare"
	if on == OnCard {
		card := ceil(mega*int64(a.cal.RenderCard), seconds)
		a.need(ComputeWork, card, 3*card, 70, "calibration block", why, pictures, w, h, samples, a.cal.RenderCard, wait)
		a.need(GraphicsMemory, video, ceil(3*video, 2), 50, practice, told+" and at least 2 GiB", triangles, textures)
		a.load(30, 100, 50, 5)
		job = Job{CardMS: mega * int64(a.cal.RenderCard)}
		a.reach("million triangles of a scene that fit the card with their textures", triangleUnit, triangles, Practice, practice,
			limit(GraphicsMemory, video-meshMiB, meshMiB))
	} else {
		core := mega * int64(a.cal.RenderCore)
		threads = 12
		a.need(AllWork, allPoints(core, a.cal.RenderParallel, seconds, 1300), enoughPoints(core, a.cal.RenderParallel, seconds/3, 1800), 70, "Amdahl 1967; calibration block",
			why, pictures, w, h, samples, a.cal.RenderCore, wait)
		a.need(GraphicsMemory, int64(3*unit.GiB), int64(6*unit.GiB), 20, practice, "the view is shaded while it is worked on")
		a.load(100, 30, 80, 5)
		job = Job{CoreMS: core, Parallel: a.cal.RenderParallel}
	}
	a.pairs(2)
	a.need(MemorySize, int64(8*unit.GiB)+2*sceneMiB, int64(16*unit.GiB)+4*sceneMiB, 40, practice, "twice the "+told+" + 8 GiB", triangles, textures)
	a.need(SingleWork, 1300, 1800, 40, practice, "modifiers and the view run on one thread")
	a.need(Threads, threads, 2*threads, 20, practice, "simulation and export spread over threads")
	a.need(DrawWork, 500, 1200, 30, practice, "a scene of %d million triangles is turned under the hand", triangles)
	a.need(BootSize, int64(60*unit.Gigabyte), int64(150*unit.Gigabyte), 10, practice, "60 GB for programs and a library of materials")
	a.need(CacheSize, int64(200*unit.Gigabyte), int64(500*unit.Gigabyte), 15, practice, "200 GB for simulation and rendered pictures in hand")
	a.need(CacheWrite, hither, 1000, 5, practice, "simulation is written as it runs")
	a.need(ArchiveSize, kept, 2*kept, 20, practice, "%s of projects", size(kept))
	a.need(ArchiveWrite, 60, 150, 5, practice, "a project is put away in minutes")
	a.writesYearly(0, 20*int64(unit.Terabyte), kept/2)
	a.mode(2560, 1440, 60, 8)
	a.job(fmt.Sprintf("%d pictures of %d × %d with %d samples, rendered in one go", pictures, w, h, samples), wait, job)
	job.Pieces = pictures
	a.work("a rendered picture", waitUnit, ceil(wait*60_000, pictures), Calibrated, "calibration block", job)
	a.reach("projects kept", gigabyteUnit, ceil(kept, int64(unit.Gigabyte)), Arithmetic, "sizes as said", limit(ArchiveSize, 0, kept))
}
