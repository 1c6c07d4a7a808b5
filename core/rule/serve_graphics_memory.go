package rule

import (
	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/unit"
)

// lentMemory is what a processor's own graphics may borrow of main memory and still count as memory of its own. The
// brief's memory need includes as much.
const lentMemory = brief.LentMemory

// ServeGraphicsMemory holds the memory of the graphics card against the need.
var ServeGraphicsMemory = Rule{
	ID:    "serve-graphics-memory",
	Group: Serve,
	Title: "Enough memory on the graphics card",
	Doc: `have = memory on the graphics card, GiB; without a card, the 2 GiB that a processor's own graphics borrows of main
	memory, which the brief's memory need includes
need = floor of the brief for graphics memory, GiB
What does not fit is fetched over the slot again and again, or does not run at all. When short: a card with more memory; a
	faster card with the same memory does not help.`,
	Source: "common practice",
	Reads:  []build.Seat{build.Processor, build.Graphics},
	First:  []build.Seat{build.Graphics, build.Processor},
	Check: func(v *View) []Margin {
		n, ok := v.Needs.Get(brief.GraphicsMemory)
		if !ok || v.Graphics == nil && v.Processor == nil {
			return nil
		}
		switch e, owner := v.engine(); {
		case e == nil:
			v.serve(n, 0, say("there is no graphics card and %s has no graphics of its own; %s", v.Processor.Name, n.Reason))
		case v.Graphics == nil:
			v.serve(n, int64(lentMemory), say("%s has no memory of its own and borrows %s; %s", owner.Name, unit.Memory(lentMemory).Q(), n.Reason))
		default:
			have := figure(v, v.Graphics.Memory, owner, "memory_gib")
			v.serve(n, int64(have), say("%s carries %s; %s", owner.Name, have.Q(), n.Reason))
		}
		return v.margins
	},
}
