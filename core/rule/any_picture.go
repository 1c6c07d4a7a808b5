package rule

import "slipfit/core/build"

// AnyPicture asks for something that makes a picture.
var AnyPicture = Rule{
	ID:    "any-picture",
	Group: Mate,
	Title: "Something in the machine makes a picture",
	Doc: `have = 1 where the processor has graphics or a graphics card is fitted, else 0; need = 1
Without either the machine starts and shows nothing. When it clashes: a processor with graphics, or a graphics card.`,
	Source: "common practice",
	Reads:  []build.Seat{build.Processor, build.Graphics},
	Check: func(v *View) []Margin {
		if !v.both(build.Processor) {
			return nil
		}
		processor, card := v.Processor, v.Graphics
		v.met("", processor.Graphics != nil || card != nil, func() string {
			switch {
			case card != nil:
				return card.Name + " makes the picture"
			case processor.Graphics != nil:
				return "the graphics of " + processor.Name + " make the picture"
			}
			return processor.Name + " has no graphics and there is no graphics card"
		})
		return v.margins
	},
}
