package brief

import (
	"fmt"

	"slipfit/core/media"
	"slipfit/core/unit"
)

// Software is writing and building software.
type Software struct {
	Files   unit.Figure[unit.Whole]    `json:"source_files,omitzero" range:"1..1000000" doc:"Source files of a full build; 2000 where not said."`
	Class   CodeClass                  `json:"language,omitempty" doc:"scripted, compiled or heavy (templates)."`
	Wait    unit.Figure[unit.Duration] `json:"wait_min,omitzero" range:"1..1000" doc:"How long a full build may take; 10 minutes where not said."`
	Project unit.Figure[unit.Storage]  `json:"projects_gb,omitzero" range:"1..50000" doc:"Source, tools and built files of all projects; 150 GB where not said."`
}

// CodeClass is how much work a source file is.
type CodeClass string

// Classes of source code.
const (
	CodeScripted CodeClass = "scripted"
	CodeCompiled CodeClass = "compiled"
	CodeHeavy    CodeClass = "heavy"
)

// Values lists the accepted words.
func (CodeClass) Values() []string { return []string{"scripted", "compiled", "heavy"} }

// pointsPerJob is the all-thread points that a compile job beside many others takes: two threads of a core, of which one
// waits. Common practice: sixteen cores build with about as many gigabytes twice over, not with four for every thread.
const pointsPerJob = 2000

func (*Software) name() string { return "software" }

// ask turns a code base into needs.
//
//	time      files × compile_core × (0.1 scripted, 1 compiled, 4 heavy), spread over threads by Amdahl, in the wait; in half of
//	          it is enough
//	jobs      side by side: one for every 2000 points asked for, at least eight (four scripted); a thread each
//	memory    jobs × 2 GB (4 GB heavy) + 6 GiB for editor, browser and tests
//
// Sources: the calibration block; memory a job as package media gives it.
func (s *Software) ask(a *asker) {
	files := take(a, s.Files, "source_files", "source files", 2000, 6000)
	class := takeWord(a, s.Class, "language", "language", CodeCompiled, CodeCompiled)
	wait := take(a, s.Wait, "wait_min", "time of a full build", 10, 10)
	project := take(a, s.Project, "projects_gb", "projects", 150*unit.Gigabyte, 400*unit.Gigabyte)
	permille, jobBytes, fewest := int64(1000), int64(media.CompileJobBytes), int64(8)
	switch class {
	case CodeScripted:
		permille, fewest = 100, 4
	case CodeHeavy:
		permille, jobBytes = 4000, media.CompileJobHeavyBytes
	}
	core := ceil(files*int64(a.cal.CompileCore)*permille, 1000)
	all := allPoints(core, a.cal.CompileParallel, wait*60, 1200)
	jobs := max(fewest, ceil(all, pointsPerJob))
	a.need(AllWork, all, enoughPoints(core, a.cal.CompileParallel, wait*30, 1500), 60, "Amdahl 1967; calibration block",
		"%d files × %d core ms, %s, %s, in %d minutes", files, a.cal.CompileCore, class, hundredths(a.cal.CompileParallel), wait)
	a.need(SingleWork, 1200, 1800, 40, practice, "the last step of a build, linking, runs on one thread")
	a.need(Threads, jobs, max(3*fewest, 2*jobs), 25, practice, "%d jobs side by side", jobs)
	memory := int64(6*unit.GiB) + ceil(jobs*jobBytes, media.MiB)
	a.pairs(2)
	a.need(MemorySize, memory, memory+ceil(jobs*jobBytes, media.MiB), 40, practice, "%d jobs × %d GB + 6 GiB for editor, browser and tests", jobs, jobBytes/media.GB)
	a.need(BootSize, project, 2*project, 20, practice, "%s of source, tools and built files", size(project))
	a.need(BootRead, 500, 3000, 10, practice, "thousands of small files are read")
	a.need(DrawWork, 40, 100, 5, practice, "text on large screens")
	a.writesYearly(15*int64(unit.Terabyte), 0, 0)
	a.load(60, 5, 60, 20)
	a.mode(2560, 1440, 60, 8)
	a.job(fmt.Sprintf("a full build of %d files", files), wait, Job{CoreMS: core, Parallel: a.cal.CompileParallel})
	a.reach("compile jobs side by side in memory", jobUnit, jobs, Practice, practice, limit(MemorySize, int64(6*unit.GiB), memory-int64(6*unit.GiB)))
}
