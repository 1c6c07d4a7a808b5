package main

import "time"

// measure is one row of the table.
type measure struct {
	name  string // as in JSON
	title string
	four  bool   // whether the page's worker is held to it
	upTo  int    // the largest stock in parts that is asked; 0 is any
	bytes bool   // the figure is bytes, not a time
	rest  string // what an unproven answer leaves, after "to 12 %"
	goals []goal
}

// goal is what a measure is held to at a size of stock.
type goal struct {
	parts int           // 0 is the catalog
	most  int64         // of the median, nanoseconds or bytes
	worst time.Duration // of the worst; 0 asks nothing
}

// The names of the measures.
const (
	leastNew  = "least-new"
	leastKept = "least-kept"
	bestNew   = "best-new"
	bestKept  = "best-kept"
	weight    = "heap"
	tight     = "best-in-small-case"
	open      = "open-choices"
	openMore  = "open-choices-next"
	small     = "small"
	frontier  = "frontier"
	conflict  = "conflict"
	repairs   = "repairs"
)

// conflictTo and frontierTo are the largest stocks that are asked for conflicts and repairs, and for frontiers.
const (
	conflictTo = 2000
	frontierTo = 500
)

const ms = int64(time.Millisecond)

// measures in the order of the table. On a new index the time to lay out the stock is counted; a kept one has answered least
// and best of the same brief with a tenth less to spend, as the page's worker has when one answer changes. The first click is on the
// processor of the cheapest build, where nothing was asked of what is open before; the next one on its memory.
var measures = [...]measure{
	{name: leastNew, title: "least price, new index", four: true, rest: "gap", goals: []goal{{2000, 2 * ms, 0}, {10_000, 10 * ms, 0}}},
	{name: leastKept, title: "least price, kept index", four: true, rest: "gap", goals: []goal{{2000, 2 * ms, 0}, {10_000, 10 * ms, 0}}},
	{name: bestNew, title: "best, new index", four: true, rest: "gap", goals: []goal{{2000, 10 * ms, 100 * time.Millisecond}, {10_000, 30 * ms, 100 * time.Millisecond}}},
	{name: bestKept, title: "best, kept index", four: true, rest: "gap", goals: []goal{{2000, 10 * ms, 100 * time.Millisecond}, {10_000, 30 * ms, 100 * time.Millisecond}}},
	{name: tight, title: "best in small cases", four: true, rest: "gap", goals: []goal{{2000, 10 * ms, 0}, {10_000, 30 * ms, 0}}},
	{name: small, title: "smallest case", rest: "gap", goals: []goal{{2000, 10 * ms, 0}, {10_000, 30 * ms, 0}}},
	{name: open, title: "open after a click", four: true, rest: "of parts", goals: []goal{{2000, 30 * ms, 0}, {10_000, 150 * ms, 0}}},
	{name: openMore, title: "open after the next click", rest: "of parts", goals: []goal{{2000, 30 * ms, 0}, {10_000, 150 * ms, 0}}},
	{name: conflict, title: "conflict", upTo: conflictTo, goals: []goal{{2000, 20 * ms, 0}}},
	{name: repairs, title: "repairs", upTo: conflictTo, goals: []goal{{2000, 100 * ms, 0}}},
	{name: frontier, title: "frontier", upTo: frontierTo, rest: "gap", goals: []goal{{0, 500 * ms, 0}}},
	{name: weight, title: "heap with a kept index", bytes: true, goals: []goal{{20_000, 200_000_000, 0}}},
}

// named finds a measure.
func named(name string) *measure {
	for i := range measures {
		if measures[i].name == name {
			return &measures[i]
		}
	}
	return nil
}
