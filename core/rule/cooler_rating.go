package rule

import "slipfit/core/build"

// CoolerRating is what the cooler's maker rates it for against what the processor draws without end.
var CoolerRating = Rule{
	ID:    "cooler-rating",
	Group: Cool,
	Title: "Cooler is rated for the processor",
	Doc: `have = processor power the cooler is rated for, W; need = processor's sustained draw, W
A maker's rating assumes a good case. What the build really comes to is the rule processor-heat; this one asks that nobody is
	sold a cooler past its own sheet. When short: a larger cooler.`,
	Source: "common practice",
	Reads:  []build.Seat{build.Processor, build.Cooler},
	Check: func(v *View) []Margin {
		if !v.both(build.Processor, build.Cooler) {
			return nil
		}
		have := figure(v, v.Cooler.Rated, &v.Cooler.Article, "rated_w")
		need := figure(v, v.Processor.Sustained, &v.Processor.Article, "sustained_w")
		v.find("", have.Q(), need.Q(), say("%s is rated for %s, %s draws %s without end", v.Cooler.Name, have.Q(), v.Processor.Name, need.Q()))
		return v.margins
	},
}
