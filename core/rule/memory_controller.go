package rule

import (
	"fmt"
	"slices"

	"slipfit/core/build"
	"slipfit/core/part"
)

// MemoryController is the generation of the memory against those the processor drives.
var MemoryController = Rule{
	ID:    "memory-controller",
	Group: Mate,
	Title: "The processor drives this generation of memory",
	Doc: `have = 1 where the processor's sheet lists the kit's generation, else 0; need = 1
The controller sits in the processor, so that a board alone does not settle it. When it clashes: another kit and a board
	for it, or another processor.`,
	Source: "common practice: the memory table of a processor's sheet",
	Reads:  []build.Seat{build.Processor, build.Memory},
	Check: func(v *View) []Margin {
		if !v.both(build.Processor, build.Memory) {
			return nil
		}
		processor, kit := v.Processor, v.Memory
		drives := memoryRateOf(processor, kit.Type) != nil
		v.met("", drives, func() string {
			if drives {
				return fmt.Sprintf("%s drives %s", processor.Name, kit.Type)
			}
			return fmt.Sprintf("%s does not drive %s, of which %s is", processor.Name, kit.Type, kit.Name)
		})
		return v.margins
	},
}

// memoryRateOf is how fast a processor drives a generation of memory, nil where it does not.
func memoryRateOf(p *part.Processor, t part.MemoryType) *part.MemoryRate {
	i := slices.IndexFunc(p.Memory, func(r part.MemoryRate) bool { return r.Type == t })
	if i < 0 {
		return nil
	}
	return &p.Memory[i]
}
