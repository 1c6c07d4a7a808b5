package rule

import (
	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/link"
	"slipfit/core/unit"
)

// ServeMemoryRate holds the bandwidth of main memory against the need.
var ServeMemoryRate = Rule{
	ID:    "serve-memory-rate",
	Group: Serve,
	Title: "Memory is fast enough",
	Doc: `have = transfer rate that really runs, MT/s × 8 bytes × channels that hold a module, MB/s
need = floor of the brief for memory bandwidth, MB/s
The rate that runs is the least of the kit's profile and what processor and board drive with one or two modules a channel.
Channels = least of the processor's channels and the modules fitted: a single module halves the bandwidth of a two-channel
	machine. Peak figures; streaming reads reach three quarters to nine tenths of them, which the need allows for. When short:
	two modules in place of one, or a faster kit that board and processor drive.`,
	Source: "JESD79-4, JESD79-5: a channel is 64 data bits wide",
	Reads:  []build.Seat{build.Board, build.Processor, build.Memory},
	Check: func(v *View) []Margin {
		n, ok := v.Needs.Get(brief.MemoryRate)
		if !ok || !v.both(build.Board, build.Processor, build.Memory) {
			return nil
		}
		if memoryRateOf(v.Processor, v.Memory.Type) == nil {
			return nil
		}
		run := runMemory(v)
		_, channels, _ := memoryChannels(v)
		have := link.MemoryBytePerS(int64(run.speed), int64(run.used)) / 1_000_000
		v.serve(n, have, say("%s × 8 bytes, on %d of %d channels = %s; %s", run.speed.Q(), run.used, channels, unit.Throughput(have).Q(), n.Reason))
		return v.margins
	},
}
