package rule

import (
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// MemoryECC asks error correction of memory, board and processor where the brief asks for it.
var MemoryECC = Rule{
	ID:    "memory-ecc",
	Group: Mate,
	Title: "Error-correcting memory works throughout",
	Doc: `For memory, board and processor each: have = 1 where its sheet says it runs error correction, else 0; need = 1 where the
	brief asks for error-correcting memory. One that does not turns the correction off for all. Correction inside the memory chips,
	which every DDR5 module has, does not count: it does not cover the way to the processor. When it clashes: change the part named.`,
	Source: "JESD79-5: side-band error correction takes 40-bit subchannels; that all three must support it: common practice",
	Reads:  []build.Seat{build.Board, build.Processor, build.Memory},
	Check: func(v *View) []Margin {
		if !v.Needs.ECC || !v.both(build.Board, build.Processor, build.Memory) {
			return nil
		}
		corrects(v, "memory", v.Memory.ECC, &v.Memory.Article)
		corrects(v, "board", v.Board.ECC, &v.Board.Article)
		corrects(v, "processor", v.Processor.ECC, &v.Processor.Article)
		return v.margins
	},
}

func corrects(v *View, subject string, ecc unit.Figure[bool], a *part.Article) {
	ok := figure(v, ecc, a, "ecc")
	v.met(subject, ok, func() string {
		if ok {
			return a.Name + " runs error-correcting memory"
		}
		return a.Name + " does not run error-correcting memory, which the brief asks for"
	})
}
