package rule

import (
	"slipfit/core/brief"
	"slipfit/core/build"
)

// ServeChannels holds the memory channels in use against the need.
var ServeChannels = Rule{
	ID:    "serve-channels",
	Group: Serve,
	Title: "Memory modules work side by side",
	Doc: `have = memory channels that hold a module: least of the processor's channels and the modules fitted
need = floor of the brief: 2 for everything past letters and the web
One module in a machine of two channels leaves half of the bandwidth unused, and processors' own graphics feel it most. When
	short: the same size in two modules, which costs little more.`,
	Source: "JESD79-4, JESD79-5: a channel is 64 data bits wide; two modules for all but light use: common practice",
	Reads:  []build.Seat{build.Processor, build.Memory},
	Check: func(v *View) []Margin {
		n, ok := v.Needs.Get(brief.Channels)
		if !ok || !v.both(build.Processor, build.Memory) {
			return nil
		}
		used, channels, _ := memoryChannels(v)
		v.serve(n, int64(used), say("%d of %d memory channels %s a module; %s", used, channels, agree(used, "holds", "hold"), n.Reason))
		return v.margins
	},
}
