package rule

import (
	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/unit"
)

// ServeMemory holds the memory fitted against the need.
var ServeMemory = Rule{
	ID:    "serve-memory",
	Group: Serve,
	Title: "Enough memory",
	Doc: `have = kits × modules in a kit × size of a module, GiB
need = floor of the brief for memory, GiB
The need is rounded up to what two equal modules make, since a two-slot board takes two. Memory a machine does not use buys
	nothing. When short: larger modules; only then more of them, which run slower.`,
	Source: "common practice",
	Reads:  []build.Seat{build.Memory},
	Check: func(v *View) []Margin {
		n, ok := v.Needs.Get(brief.MemorySize)
		if !ok || v.Memory == nil {
			return nil
		}
		fitted := figure(v, v.Memory.Modules, &v.Memory.Article, "modules") * unit.Whole(v.Kits)
		size := figure(v, v.Memory.Module, &v.Memory.Article, "module_gib")
		have := size * unit.Memory(fitted)
		v.serve(n, int64(have), say("%d × %s %s %s; %s", fitted, size.Q(), agree(fitted, "makes", "make"), have.Q(), n.Reason))
		return v.margins
	},
}
