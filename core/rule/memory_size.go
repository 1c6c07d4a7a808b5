package rule

import (
	"fmt"

	"slipfit/core/build"
	"slipfit/core/unit"
)

// MemorySize is the limits of board and processor against the size of a module and of all modules.
var MemorySize = Rule{
	ID:    "memory-size",
	Group: Mate,
	Title: "Board and processor take memory of this size",
	Doc: `module: have = largest module the board takes, GiB; need = size of one module, GiB
board: have = most memory the board takes in all, GiB; need = module size × modules × kits, GiB
processor: have = most memory the processor takes in all, GiB; need = the same
When short: smaller modules, or another board or processor.`,
	Source: "common practice: memory tables of the board's and the processor's sheets",
	Reads:  []build.Seat{build.Board, build.Processor, build.Memory},
	Check: func(v *View) []Margin {
		if !v.both(build.Board, build.Processor, build.Memory) {
			return nil
		}
		board, processor, kit := v.Board, v.Processor, v.Memory
		most := figure(v, board.ModuleTo, &board.Article, "module_limit_gib")
		one := figure(v, kit.Module, &kit.Article, "module_gib")
		v.find("module", most.Q(), one.Q(), func() string {
			return fmt.Sprintf("%s takes modules of up to %s, and one of %s is %s", board.Name, most.Q(), kit.Name, one.Q())
		})
		boardMost := figure(v, board.MemoryTo, &board.Article, "memory_limit_gib")
		total := memoryTotal(v)
		v.find("board", boardMost.Q(), total.Q(), func() string {
			return fmt.Sprintf("%s takes %s in all, and %s is fitted", board.Name, boardMost.Q(), total.Q())
		})
		processorMost := figure(v, processor.MemoryTo, &processor.Article, "memory_limit_gib")
		total = memoryTotal(v)
		sum := total
		v.find("processor", processorMost.Q(), sum.Q(), func() string {
			return fmt.Sprintf("%s takes %s in all, and %s is fitted", processor.Name, processorMost.Q(), sum.Q())
		})
		return v.margins
	},
}

// memoryTotal is the memory of all kits together.
func memoryTotal(v *View) unit.Memory {
	one := figure(v, v.Memory.Module, &v.Memory.Article, "module_gib")
	modules := figure(v, v.Memory.Modules, &v.Memory.Article, "modules")
	return one * unit.Memory(modules) * unit.Memory(v.Kits)
}
