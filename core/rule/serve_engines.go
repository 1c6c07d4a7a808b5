package rule

import (
	"slices"

	"slipfit/core/build"
	"slipfit/core/part"
)

// ServeEngines holds the video formats read and written in hardware against those the brief asks for.
var ServeEngines = Rule{
	ID:    "serve-engines",
	Group: Serve,
	Title: "Video formats are read and written in hardware",
	Doc: `have = 1 where the graphics card or the processor's own graphics reads (or writes) the format in hardware, else 0
need = 1 for every format the brief asks for
Either engine serves: both stay usable with a card fitted. A format without an engine falls on the processor's cores, and
	playing several streams of it then stutters. When short: another card or a processor whose graphics knows the format; or
	convert the footage to an editing format first, which the brief can say.`,
	Source: "formats by their open standards (ITU-T H.264, H.265; AV1 bitstream specification); the need is common practice",
	Reads:  []build.Seat{build.Processor, build.Graphics},
	Check: func(v *View) []Margin {
		if v.Graphics == nil && v.Processor == nil {
			return nil
		}
		for _, c := range v.Needs.Decode {
			who := v.coder(c.Codec, func(e *part.Engine) []part.Codec { return e.Decode })
			v.met("reads "+string(c.Codec), who != nil, told(who, "reads", c.Codec, c.Reason))
		}
		for _, c := range v.Needs.Encode {
			who := v.coder(c.Codec, func(e *part.Engine) []part.Codec { return e.Encode })
			v.met("writes "+string(c.Codec), who != nil, told(who, "writes", c.Codec, c.Reason))
		}
		return v.margins
	},
}

// coder is the part whose engine has the format in its list, the card first; nil where none has.
func (v *View) coder(c part.Codec, list func(*part.Engine) []part.Codec) *part.Article {
	if v.Graphics != nil && slices.Contains(list(&v.Graphics.Engine), c) {
		return &v.Graphics.Article
	}
	if v.Processor != nil && v.Processor.Graphics != nil && slices.Contains(list(v.Processor.Graphics), c) {
		return &v.Processor.Article
	}
	return nil
}

func told(who *part.Article, does string, c part.Codec, reason string) func() string {
	if who == nil {
		return say("no engine of this build %s %s; %s", does, c, reason)
	}
	return say("%s %s %s; %s", who.Name, does, c, reason)
}
