package rule

import (
	"fmt"

	"slipfit/core/build"
	"slipfit/core/unit"
)

// MemorySpeed is the transfer rate at which the memory will really run.
var MemorySpeed = Rule{
	ID:    "memory-speed",
	Group: Mate,
	Title: "The memory runs at the speed it is sold for",
	Doc: `speed: have = least of the kit's fastest profile, the processor's rate and the board's rate, both for the number of modules
	that share a channel (one, or two and more), MT/s; need = the kit's fastest profile, MT/s
channels: have = modules, at most the processor's channels; need = the processor's channels
Both only advise: slower memory works, and the money for a faster profile is lost. Modules are taken to be
	spread evenly over the channels. When short: two large modules in place of four small ones, a board and a processor rated for
	more, or a cheaper kit.`,
	Source: "rate of a channel, MT/s × 8 bytes: JESD79-4 and JESD79-5; that two modules a channel run slower: memory tables of processors and boards, common practice",
	Reads:  []build.Seat{build.Board, build.Processor, build.Memory},
	Check: func(v *View) []Margin {
		if !v.both(build.Board, build.Processor, build.Memory) || memoryRateOf(v.Processor, v.Memory.Type) == nil {
			return nil
		}
		kit := v.Memory
		if slots, known := v.Board.Slots.Get(); known && kit.Modules.Or(0)*unit.Whole(v.Kits) > slots {
			return nil // they do not go in, which the rule memory-count tells
		}
		run := runMemory(v)
		v.advise("speed", run.speed.Q(), run.profile.Q(), func() string {
			switch {
			case run.speed >= run.profile:
				return fmt.Sprintf("%s runs at its full %s", kit.Name, run.profile.Q())
			case run.perChannel > 1:
				return fmt.Sprintf("%s is sold for %s and runs at %s, because %d modules share a channel: two larger modules would run faster", kit.Name, run.profile.Q(), run.speed.Q(), run.perChannel)
			}
			return fmt.Sprintf("%s is sold for %s and runs at %s, which is what processor and board are rated for", kit.Name, run.profile.Q(), run.speed.Q())
		})
		used, channels, _ := memoryChannels(v)
		v.advise("channels", used.Q(), channels.Q(), func() string {
			if used < channels {
				return fmt.Sprintf("only %d of %d memory channels %s in use, and the rest of the bandwidth is lost: take the same size in more modules", used, channels, agree(used, "is", "are"))
			}
			return fmt.Sprintf("all %d memory channels are in use", channels)
		})
		return v.margins
	},
}

// memoryRun is how the memory of a build runs.
type memoryRun struct {
	speed, profile unit.TransferRate // as it runs, and as it is sold
	used           unit.Whole        // channels in use
	perChannel     unit.Whole        // modules on the fullest channel
}

// runMemory reads how the memory of a build with board, processor and memory runs; the processor drives its generation.
func runMemory(v *View) memoryRun {
	board, processor := v.Board, v.Processor
	rate := memoryRateOf(processor, v.Memory.Type)
	r := memoryRun{profile: figure(v, v.Memory.Speed, &v.Memory.Article, "speed_mt_s")}
	r.used, _, r.perChannel = memoryChannels(v)
	processorTo, boardTo := rate.One, board.Speed
	processorField, boardField := ".one_mt_s", "memory_speed_mt_s"
	if r.perChannel > 1 {
		processorTo, boardTo = rate.Two, board.SpeedTwo
		processorField, boardField = ".two_mt_s", "memory_speed_two_mt_s"
	}
	r.speed = min(r.profile, figure(v, boardTo, &board.Article, boardField))
	if to, known := processorTo.Get(); known {
		r.speed = min(r.speed, to)
	} else {
		figure(v, processorTo, &processor.Article, "memory."+string(rate.Type)+processorField)
	}
	return r
}

// memoryChannels is the channels in use, those the processor has, and the modules on the fullest one.
func memoryChannels(v *View) (used, channels, perChannel unit.Whole) {
	channels = figure(v, v.Processor.Channels, &v.Processor.Article, "channels")
	modules := figure(v, v.Memory.Modules, &v.Memory.Article, "modules") * unit.Whole(v.Kits)
	return min(modules, channels), channels, (modules + channels - 1) / max(channels, 1)
}
