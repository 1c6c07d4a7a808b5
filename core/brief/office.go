package brief

import "slipfit/core/unit"

// Office is office and home: letters, tables, the web, mail, films, calls.
type Office struct {
	Tabs   unit.Figure[unit.Whole]   `json:"web_pages,omitzero" range:"0..1000" doc:"Web pages open at once; 30 where not said."`
	People unit.Figure[unit.Whole]   `json:"people,omitzero" range:"1..20" doc:"People with a desk of their own on the machine; 1 where not said."`
	Files  unit.Figure[unit.Storage] `json:"files_gb,omitzero" range:"0..50000" doc:"Letters, photographs and music of all; 200 GB where not said."`
	Films  unit.Figure[unit.Whole]   `json:"film_hours,omitzero" range:"0..50000" doc:"Hours of films kept; none where not said."`
}

func (*Office) name() string { return "office" }

// filmHourMB is an hour of film at 1080 lines as it is kept at home, 12 Mbit/s. Common practice.
const filmHourMB = 5400

// ask turns a household into needs: 100 MiB a web page, 2 GiB for programs left open and 1 GiB for each further person, files, and films on the
// slow tier.
//
// Source: common practice.
func (o *Office) ask(a *asker) {
	tabs := take(a, o.Tabs, "web_pages", "web pages", 30, 60)
	people := take(a, o.People, "people", "people", 1, 2)
	files := take(a, o.Files, "files_gb", "files", 200*unit.Gigabyte, 500*unit.Gigabyte)
	films := int64(o.Films.Or(0))
	a.need(SingleWork, 950, 1400, 40, practice, "a web page answers at once")
	a.need(AllWork, 2500, 6000, 15, practice, "a call with pictures beside open programs")
	a.need(Threads, 4, 6, 10, practice, "a call with pictures beside open programs")
	memory := 100*tabs + (1+people)*int64(unit.GiB)
	a.need(MemorySize, memory, memory+memory/2, 25, practice, "%d web pages × 100 MiB + 1 GiB and %d × 1 GiB a person for programs left open", tabs, people)
	a.need(DrawWork, 30, 60, 5, practice, "films and pages are drawn")
	a.need(GraphicsMemory, int64(unit.GiB)/2, int64(unit.GiB), 5, practice, "films and pages")
	a.need(BootSize, int64(20*unit.Gigabyte)+people*int64(10*unit.Gigabyte), int64(60*unit.Gigabyte)+people*int64(20*unit.Gigabyte), 5, practice, "20 GB of programs + %d × 10 GB a person", people)
	a.need(ArchiveSize, files+films*filmHourMB, 2*files+films*filmHourMB, 20, practice, "%s of files and %d h of films × 5.4 GB", size(files), films)
	a.need(ArchiveWrite, 30, 60, 5, practice, "films and photographs are put away")
	a.need(FastPorts, 1, 2, 5, practice, "a stick or a telephone")
	a.writesYearly(2*int64(unit.Terabyte), 0, files/2)
	a.load(15, 10, 30, 5)
	a.reach("web pages open at once", pageUnit, tabs, Practice, practice, limit(MemorySize, memory-100*tabs, 100*tabs))
	a.reach("hours of films the archive holds", hourUnit, films, Practice, practice, limit(ArchiveSize, files, films*filmHourMB))
	a.reach("files kept", gigabyteUnit, ceil(files, int64(unit.Gigabyte)), Arithmetic, "sizes as said", limit(ArchiveSize, films*filmHourMB, files))
}
