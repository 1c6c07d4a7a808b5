package rule

import "slipfit/core/build"

// SupplyLength keeps the power supply, its plugs and their first bend within the bay.
var SupplyLength = Rule{
	ID:    "supply-length",
	Group: Fit,
	Title: "Supply, plugs and first bend fit the bay's length",
	Doc: `have = length of the supply bay in this layout, mm
need = depth of the supply's body + room its plugs and the first bend need behind it, mm
The bay's length is what the case's sheet gives for body and plugs together. A body alone that just fits leaves no way to
	plug its cables in. When short: a supply with a shorter body, or a layout with a longer bay.`,
	Source: "room for plugs 20 to 50 mm: common practice; body depth is the maker's choice (design guide, mechanical chapter)",
	Reads:  []build.Seat{build.Case, build.Supply},
	Check: func(v *View) []Margin {
		if !v.both(build.Case, build.Supply) {
			return nil
		}
		bay := figure(v, v.Layout.Supply.Length, &v.Case.Article, "supply.length_mm")
		body := figure(v, v.Supply.Length, &v.Supply.Article, "length_mm")
		bend := figure(v, v.Supply.PlugBend, &v.Supply.Article, "plug_bend_mm")
		v.find("", bay.Q(), (body + bend).Q(),
			say("the bay of %s is %s long, the supply takes %s and its plugs %s", v.Case.Name, bay.Q(), body.Q(), bend.Q()))
		return v.margins
	},
}
