package brief

import (
	"fmt"

	"slipfit/core/media"
	"slipfit/core/unit"
)

// Statistics is statistics and data tables.
type Statistics struct {
	Rows    unit.Figure[unit.Whole]    `json:"million_rows,omitzero" range:"0..100000" doc:"Millions of rows of the largest table; 10 where not said."`
	Columns unit.Figure[unit.Whole]    `json:"columns,omitzero" range:"1..10000" doc:"Columns of it; 50 where not said."`
	Passes  unit.Figure[unit.Whole]    `json:"passes,omitzero" range:"1..100000" doc:"How often a model goes through the table: repeats, trees, samples; 200 where not said."`
	Wait    unit.Figure[unit.Duration] `json:"wait_min,omitzero" range:"1..100000" doc:"How long a model may take; 60 minutes where not said."`
	Single  bool                       `json:"one_thread,omitempty" doc:"Whether the program uses one thread only."`
	Kept    unit.Figure[unit.Storage]  `json:"kept_gb,omitzero" range:"0..500000" doc:"Data kept; 500 GB where not said."`
}

func (*Statistics) name() string { return "statistics" }

// ask turns a table into needs. With c = rows × columns, cells of 8 bytes:
//
//	time         c × passes × cell_core, spread over threads by Amdahl (none where the program uses one thread), in the wait
//	memory       3 × table + 4 GiB
//	bandwidth    a pass in two seconds for the floor, in half a second for what is enough: 8 × c bytes
//
// Sources: two to three times the largest table is common practice, as package media gives it; the calibration block.
func (s *Statistics) ask(a *asker) {
	rows := take(a, s.Rows, "million_rows", "rows in millions", 10, 30)
	columns := take(a, s.Columns, "columns", "columns", 50, 100)
	passes := take(a, s.Passes, "passes", "passes of a model", 200, 500)
	wait := take(a, s.Wait, "wait_min", "time a model may take", 60, 60)
	kept := take(a, s.Kept, "kept_gb", "data kept", 500*unit.Gigabyte, 1000*unit.Gigabyte)
	mega := rows * columns // millions of cells
	table := mega * 8 * media.MB
	core := mega * passes * int64(a.cal.CellCore) // millions of cells × ns = ms
	seconds := wait * 60
	why := "%d million cells × %d passes × %d core ns in %d minutes"
	parallel := a.cal.CellParallel
	if s.Single {
		parallel = 0
		one := min(max(ceil(core, seconds), 1200), 1800) // past what any core does, only time helps
		a.need(SingleWork, one, min(2*one, 2200), 60, "calibration block", why+", on one thread", mega, passes, a.cal.CellCore, wait)
		a.need(AllWork, 4000, 8000, 10, practice, "the rest of the work beside a model on one thread")
	} else {
		a.need(SingleWork, 1200, 1700, 40, practice, "reading tables in and reshaping them runs on one thread")
		a.need(AllWork, allPoints(core, parallel, seconds, 1200), enoughPoints(core, parallel, seconds/2, 1500), 50,
			"Amdahl 1967; calibration block", why+", %s", mega, passes, a.cal.CellCore, wait, hundredths(parallel))
		a.need(Threads, 8, 24, 20, practice, "repeats of a model run side by side")
	}
	memory := int64(4*unit.GiB) + ceil(media.TableBytes(table), media.MiB)
	a.pairs(4)
	a.need(MemorySize, memory, memory+memory/2, 60, practice, "3 × %d million cells × 8 bytes + 4 GiB", mega)
	pass := ceil(table, media.MB)
	const roofline = "Williams, Waterman, Patterson, CACM 52(4), 2009"
	a.need(MemoryRate, ceil(pass, 2), 2*pass, 25, roofline, "a pass through %s in two seconds", size(pass))
	whole := a.streamed(ceil(passes*pass, seconds))
	a.need(MemoryRate, whole, 2*whole, 25, roofline+"; streaming reads reach a share of the peak, calibration block",
		"%d passes through %s in %d minutes, at %s of the peak", passes, size(pass), wait, a.cal.Stream.Q())
	a.need(DrawWork, 40, 100, 5, practice, "charts are drawn")
	a.need(BootSize, int64(40*unit.Gigabyte), int64(80*unit.Gigabyte), 10, practice, "40 GB for statistics programs and their packages")
	a.need(CacheSize, 10*pass, 20*pass, 15, practice, "ten tables in hand × %s", size(pass))
	a.need(CacheWrite, 200, 1000, 5, practice, "a table is written out in seconds")
	a.need(ArchiveSize, kept, 2*kept, 15, practice, "%s of data", size(kept))
	a.writesYearly(0, 500*pass, kept/2)
	a.load(80, 5, 90, 10)
	a.mode(2560, 1440, 60, 8)
	a.job(fmt.Sprintf("a model of %d passes through %d million rows", passes, rows), wait, Job{CoreMS: core, Parallel: parallel, MoveMB: a.streamed(passes * pass), Over: MemoryRate, Beside: true})
	a.reach("million rows of the table held in memory", rowUnit, rows, Practice, practice, limit(MemorySize, int64(4*unit.GiB), memory-int64(4*unit.GiB)))
	a.reach("data kept", gigabyteUnit, ceil(kept, int64(unit.Gigabyte)), Arithmetic, "sizes as said", limit(ArchiveSize, 0, kept))
}
